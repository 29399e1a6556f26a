# SPDX-License-Identifier: BSD-3-Clause
"""Straps alone: nets with pretension, straps that turn far, straps that go slack. IND-07 to IND-11."""
import math

from case_file import m, newtons, quiet, strap, write

SAME = "the same mechanics in both programs; residual to which the other one iterates"


def d(node, direction):
    return {"displacement": [node, direction]}


def flat_net():
    """Net of three by three inner nodes over 4 m by 2.4 m, straps set to 600 N, loaded down and unevenly."""
    nodes, held, members, forces = {}, {}, [], {}
    for i in range(5):
        for j in range(5):
            if (i in (0, 4)) and (j in (0, 4)):
                continue
            nodes[f"{i}{j}"] = m(1.0 * i, 0.6 * j, 0)
            if i in (0, 4) or j in (0, 4):
                held[f"{i}{j}"] = "ux uy uz"
            else:
                forces[f"{i}{j}"] = newtons(0, 0, -90 - 40 * i + 25 * j)
    for k in (1, 2, 3):
        members += [strap(f"fore {i}{k}", f"{i}{k}", f"{i + 1}{k}", 100e3, 600) for i in range(4)]
        members += [strap(f"athwart {k}{j}", f"{k}{j}", f"{k}{j + 1}", 60e3, 300) for j in range(4)]
    model = {"nodes": nodes, "held": held, "members": members, "forces": forces}
    write("IND-07", "flat strap net with pretension under an uneven load", model,
          {"uz_11": d("11", "uz"), "uz_22": d("22", "uz"), "uz_31": d("31", "uz"), "ux_31": d("31", "ux"),
           "T_fore_01": {"axial": "fore 01"}, "T_fore_32": {"axial": "fore 32"},
           "T_athwart_10": {"axial": "athwart 10"}, "T_athwart_33": {"axial": "athwart 33"},
           "R_20": {"reaction": ["20", "uz"]}},
          {"all": (1e-6, SAME)})


def saddle_net():
    """Saddle: the bow and stern high, the rails low. Pulled up on one side until straps of the other go slack."""
    nodes, held, members, forces = {}, {}, [], {}
    for i in range(5):
        for j in range(5):
            if (i in (0, 4)) and (j in (0, 4)):
                continue
            x, y = 0.9 * i, 0.55 * j
            nodes[f"{i}{j}"] = m(x, y, 0.12 * ((i - 2) ** 2 - (j - 2) ** 2))
            if i in (0, 4) or j in (0, 4):
                held[f"{i}{j}"] = "ux uy uz"
            else:
                forces[f"{i}{j}"] = newtons(10, 15, 420 if j == 1 else -260)
    for k in (1, 2, 3):
        members += [strap(f"fore {i}{k}", f"{i}{k}", f"{i + 1}{k}", 100e3, 150) for i in range(4)]
        members += [strap(f"athwart {k}{j}", f"{k}{j}", f"{k}{j + 1}", 100e3, 150) for j in range(4)]
    model = {"nodes": nodes, "held": held, "members": members, "forces": forces}
    write("IND-08", "saddle of straps, lifted on one side and pressed on the other", model,
          {"uz_11": d("11", "uz"), "uz_21": d("21", "uz"), "uz_22": d("22", "uz"), "uz_33": d("33", "uz"),
           "uy_22": d("22", "uy"), "T_fore_03": {"axial": "fore 03"}, "T_fore_12": {"axial": "fore 12"},
           "T_fore_01": {"axial": "fore 01"}, "T_athwart_20": {"axial": "athwart 20"},
           "T_athwart_23": {"axial": "athwart 23"}},
          {"all": (1e-6, SAME), "T_fore_01": (1e-6, "slack in both programs", "absolute")})


def inclined_pair():
    """Two soft straps of unequal slope with little pretension; the load turns the flatter one by tens of degrees."""
    model = {"nodes": {"a": m(0, 0, 1.2), "b": m(3, 0.4, 0.2), "q": m(1.1, 0.1, 0.5), "c": m(1.4, -1.5, 0.1)},
             "held": {"a": "ux uy uz", "b": "ux uy uz", "c": "ux uy uz"},
             "members": [strap("aq", "a", "q", 4e3, 20), strap("qb", "q", "b", 4e3, 20),
                         strap("qc", "q", "c", 4e3, 20)],
             "forces": {"q": newtons(900, 700, -1500)}}
    write("IND-09", "three inclined straps, soft, with large displacement", model,
          {"ux": d("q", "ux"), "uy": d("q", "uy"), "uz": d("q", "uz"), "T_aq": {"axial": "aq"}, "T_qb": {"axial": "qb"},
           "T_qc": {"axial": "qc"}, "Rz_a": {"reaction": ["a", "uz"]}},
          {"all": (1e-6, SAME)})


def hanging_chain():
    """An inclined strap in 12 pieces, set to 50 N, under a load down and athwart."""
    length = math.hypot(5, 1.5)
    model = {"nodes": {"low": m(0, 0, 0), "high": m(5, 0, 1.5)}, "held": {"low": "ux uy uz", "high": "ux uy uz"},
             "members": [strap("lee", "low", "high", 80e3, pieces=12, set_to=50, load=(0, 60, -180))], "forces": {}}
    write("IND-10", "inclined strap in twelve pieces, loaded down and athwart", model,
          {"T_low": {"axial": "lee"}, "T_high": {"axial_to": "lee"}, "Rx": {"reaction": ["low", "ux"]},
           "Ry": {"reaction": ["low", "uy"]}, "Rz": {"reaction": ["low", "uz"]},
           "Rz_high": {"reaction": ["high", "uz"]}},
          {"all": (1e-6, SAME)}, note=f"Drawn length {length:.6f} m.")


def slack_tower():
    """A node held by six straps, two of them longer than their chord: pulled aside until one of these is taut."""
    feet = [(-1.5, -1, 0), (1.5, -1, 0), (1.5, 1, 0), (-1.5, 1, 0), (0, 0, 3.0), (-2.2, 0.2, 1.0)]
    nodes = {f"f{i}": m(*p) for i, p in enumerate(feet)}
    nodes["q"] = m(0, 0, 1.0)
    lengths = [math.dist(p, (0, 0, 1.0)) for p in feet]
    members = [strap(f"s{i}", f"f{i}", "q", 50e3, set_to=200) for i in range(4)]
    members += [strap("up", "f4", "q", 50e3, free_length=lengths[4] + 0.02),
                strap("back", "f5", "q", 50e3, free_length=lengths[5] + 0.01)]
    model = {"nodes": nodes, "held": {f"f{i}": "ux uy uz" for i in range(6)}, "members": members,
             "forces": {"q": newtons(2600, 350, 250)}}
    write("IND-11", "node between six straps of which some go slack and one becomes taut", model,
          {"ux": d("q", "ux"), "uy": d("q", "uy"), "uz": d("q", "uz"), "T_s0": {"axial": "s0"}, "T_s3": {"axial": "s3"},
           "T_back": {"axial": "back"}, "T_s1": {"axial": "s1"}, "T_s2": {"axial": "s2"}, "T_up": {"axial": "up"}},
          {"all": (1e-6, SAME), "T_s1": (1e-6, "slack in both programs", "absolute"),
           "T_s2": (1e-6, "slack in both programs", "absolute"),
           "T_up": (1e-6, "slack in both programs", "absolute")})


if __name__ == "__main__":
    quiet()
    for make in (flat_net, saddle_net, inclined_pair, hanging_chain, slack_tower):
        make()
