# SPDX-License-Identifier: BSD-3-Clause
"""Supports of covers: ridges of pole and of strap on uprights, held by straps to the rail. IND-12 to IND-19."""
import math

from case_file import m, newtons, pole, quiet, strap, upright, write

SAME = "the same mechanics in both programs; residual to which the other one iterates"
BENT = ("the library's bending is linear in the turns: relative error of the order of the square of the largest turn; "
        "pieces of the case instead of the finer mesh")
OUT = "slack or lifted in both programs"


def d(node, direction):
    return {"displacement": [node, direction]}


def a(member):
    return {"axial": member}


def support(xs, heights, rail, half_width, set_to, EA=100e3):
    """Uprights at xs with feet on the centre line and a strap from each top to both rails."""
    nodes, held, members = {}, {}, []
    for i, (x, h) in enumerate(zip(xs, heights), 1):
        nodes.update({f"F{i}": m(x, 0, 0), f"T{i}": m(x, 0, h), f"P{i}": m(x - 0.1, -half_width, rail),
                      f"S{i}": m(x - 0.1, half_width, rail)})
        held.update({f"F{i}": "ux uy uz", f"P{i}": "ux uy uz", f"S{i}": "ux uy uz"})
        members += [upright(f"U{i}", f"F{i}", f"T{i}"), strap(f"C{i} port", f"T{i}", f"P{i}", EA, set_to),
                    strap(f"C{i} starboard", f"T{i}", f"S{i}", EA, set_to)]
    return nodes, held, members


def strap_ridge(loads, set_to=400):
    """Strap from bow over three uprights to the stern, drawn taut."""
    nodes, held, members = support([1.5, 3.2, 5.0], [1.3, 1.5, 1.2], 0.6, 1.3, 200)
    nodes.update({"bow": m(0, 0, 0.7), "stern": m(6.4, 0, 0.6)})
    held.update({"bow": "ux uy uz", "stern": "ux uy uz"})
    line = ["bow", "T1", "T2", "T3", "stern"]
    members += [strap(f"ridge {i + 1}", line[i], line[i + 1], 120e3, set_to) for i in range(4)]
    return {"nodes": nodes, "held": held, "members": members, "forces": loads}


def pressed_strap_ridge():
    model = strap_ridge({"T1": newtons(0, 40, -700), "T2": newtons(30, 60, -1100), "T3": newtons(0, 20, -600)})
    write("IND-12", "strap ridge over three uprights, pressed and pushed athwart", model,
          {"U1": a("U1"), "U2": a("U2"), "U3": a("U3"), "ridge_1": a("ridge 1"), "ridge_4": a("ridge 4"),
           "C2_port": a("C2 port"), "C2_starboard": a("C2 starboard"), "uy_T2": d("T2", "uy"), "ux_T2": d("T2", "ux"),
           "uz_T2": d("T2", "uz")}, {"all": (1e-6, SAME), "displacement": (1e-5, SAME)})


def lifted_strap_ridge():
    model = strap_ridge({"T1": newtons(-20, 30, -300), "T2": newtons(60, 90, 1500), "T3": newtons(0, 20, -100)})
    write("IND-13", "strap ridge over three uprights, one of them lifted by wind", model,
          {"U1": a("U1"), "U2": a("U2"), "U3": a("U3"), "ridge_1": a("ridge 1"), "ridge_2": a("ridge 2"),
           "C2_port": a("C2 port"), "C2_starboard": a("C2 starboard"), "uy_T2": d("T2", "uy"), "uz_T2": d("T2", "uz")},
          {"all": (1e-6, SAME), "displacement": (1e-5, SAME), "U2": (1e-6, OUT, "absolute")})


def one_sided():
    """Straps set to 60 N only and a push athwart: the lee straps go slack."""
    nodes, held, members = support([1.5, 3.2, 5.0], [1.3, 1.5, 1.2], 0.6, 1.3, 60)
    nodes.update({"bow": m(0, 0, 0.7), "stern": m(6.4, 0, 0.6)})
    held.update({"bow": "ux uy uz", "stern": "ux uy uz"})
    line = ["bow", "T1", "T2", "T3", "stern"]
    members += [strap(f"ridge {i + 1}", line[i], line[i + 1], 120e3, 150) for i in range(4)]
    model = {"nodes": nodes, "held": held, "members": members,
             "forces": {"T1": newtons(0, 250, -500), "T2": newtons(0, 500, -900), "T3": newtons(0, 250, -400)}}
    write("IND-14", "strap ridge over three uprights, pushed athwart until the lee straps are slack", model,
          {"U1": a("U1"), "U2": a("U2"), "U3": a("U3"), "ridge_2": a("ridge 2"), "C1_port": a("C1 port"),
           "C2_port": a("C2 port"), "C3_port": a("C3 port"), "C2_starboard": a("C2 starboard"),
           "uy_T2": d("T2", "uy"), "uz_T2": d("T2", "uz")},
          {"all": (1e-6, SAME), "displacement": (1e-5, SAME), "C2_starboard": (1e-6, OUT, "absolute")})


def pole_ridge(loads, push, set_to, side=1.0):
    """Pole of three straight pieces in line, in members of 0.25 m or so, on uprights; its bow end pinned."""
    xs = [1.6, 3.2, 4.8]
    nodes, held, members = support(xs, [1.4] * 3, 0.6, 1.3, set_to)
    nodes.update({"bow": m(0, 0, 1.4), "stern": m(6.2, 0, 1.4)})
    held.update({"bow": "ux uy uz rx", "stern": "uy uz"})
    line = ["bow", "T1", "T2", "T3", "stern"]
    for i, load in enumerate(loads):
        members.append(pole(f"bay {i + 1}", line[i], line[i + 1], 6, 20e3, 18e3, load=load))
    model = {"nodes": nodes, "held": held, "members": members, "forces": {"stern": newtons(push, 0, 0)}}
    return model


def pressed_pole_ridge():
    model = pole_ridge([(0, 15, -450)] * 4, -3000, 150)
    write("IND-15", "pole ridge on three uprights with cross straps, snow and a push along it", model,
          {"U1": a("U1"), "U2": a("U2"), "U3": a("U3"), "C1_port": a("C1 port"), "C2_starboard": a("C2 starboard"),
           "M_T1": {"moment": ["bay 1", "to"]}, "M_T2": {"moment": ["bay 2", "to"]},
           "ML_T2": {"moment_level": ["bay 2", "to"]}, "uy_T2": d("T2", "uy"), "R_bow": {"reaction": ["bow", "uz"]}},
          {"all": (1e-3, BENT)})


def lifted_pole_ridge():
    """Suction over the middle bays lifts the middle upright; snow still lies fore and aft."""
    model = pole_ridge([(0, 20, -700), (0, 60, 350), (0, 60, 350), (0, 20, -700)], -500, 40)
    write("IND-16", "pole ridge on three uprights, lifted off the middle one, lee straps slack", model,
          {"U1": a("U1"), "U2": a("U2"), "U3": a("U3"), "C1_port": a("C1 port"), "C2_port": a("C2 port"),
           "C2_starboard": a("C2 starboard"), "M_T1": {"moment": ["bay 1", "to"]},
           "M_T2": {"moment": ["bay 2", "to"]}, "uz_T2": d("T2", "uz"), "uy_T2": d("T2", "uy")},
          {"all": (1e-3, BENT), "U2": (1e-6, OUT, "absolute")})


def angled(name, pieces, tolerance, fine=4):
    """Two poles that meet on a tall upright at an angle of 20 degrees, straps to the rails, ends held on the deck.

    Between ends that do not give, the thrust lives on the shortening by the bow (the square of the slopes), of which a
    chain of n pieces sees all but about 1/n2."""
    nodes, held, members = support([2.0], [1.5], 0.5, 1.2, 120)
    rise = 2.0 * math.tan(math.radians(10))
    nodes.update({"bow": m(0, 0, 1.5 - rise), "stern": m(4.4, 0, 1.5 - rise), "side": m(2.6, 0.9, 0.4)})
    held.update({"bow": "ux uy uz rx", "stern": "ux uy uz", "side": "ux uy uz"})
    members += [pole("fore", "bow", "T1", pieces, load=(0, 30, -500)),
                pole("aft", "T1", "stern", pieces, load=(0, 30, -500)),
                strap("guy", "T1", "side", 60e3, free_length=math.dist((2, 0, 1.5), (2.6, 0.9, 0.4)) + 0.03)]
    model = {"nodes": nodes, "held": held, "members": members, "forces": {"T1": newtons(0, 50, -800)}}
    write(name, f"two poles of {pieces} pieces meeting on an upright at an angle, a loose guy beside", model,
          {"U1": a("U1"), "C1_port": a("C1 port"), "C1_starboard": a("C1 starboard"), "guy": a("guy"),
           "N_fore": a("fore"), "M_T1": {"moment": ["fore", "to"]}, "uy_T1": d("T1", "uy"),
           "R_bow": {"reaction": ["bow", "ux"]}},
          {"all": (tolerance, BENT + "; thrust between ends that do not give, from the bow within the pieces"),
           "guy": (1e-6, OUT, "absolute")}, fine=fine)


def spliced_on_upright():
    angled("IND-17", 8, 1e-2)


def spliced_on_upright_fine():
    angled("IND-19", 20, 2e-3, fine=2)


def mixed():
    """Pole ridge forward, strap ridge aft, uprights of which one leans by its making; uneven snow."""
    nodes = {"bow": m(0, 0, 1.0), "T1": m(1.8, 0, 1.35), "T2": m(3.6, 0.05, 1.5), "stern": m(5.6, 0, 0.8),
             "F1": m(1.8, 0, 0), "F2": m(3.5, -0.1, 0.1), "P1": m(1.7, -1.2, 0.6), "S1": m(1.7, 1.2, 0.6),
             "P2": m(3.7, -1.3, 0.6), "S2": m(3.7, 1.3, 0.6), "A2": m(4.6, 1.2, 0.6)}
    held = {"bow": "ux uy uz rx", "stern": "ux uy uz"}
    held.update({n: "ux uy uz" for n in ("F1", "F2", "P1", "S1", "P2", "S2", "A2")})
    members = [pole("pole", "bow", "T1", 6, load=(0, 0, -600)), pole("pole aft", "T1", "T2", 6, load=(0, 40, -600)),
               strap("ridge", "T2", "stern", 120e3, 500), upright("U1", "F1", "T1"), upright("U2", "F2", "T2"),
               strap("C1 port", "T1", "P1", 100e3, 100), strap("C1 starboard", "T1", "S1", 100e3, 100),
               strap("C2 port", "T2", "P2", 100e3, 250), strap("C2 starboard", "T2", "S2", 100e3, 250),
               strap("A2", "T2", "A2", 60e3, 30)]
    model = {"nodes": nodes, "held": held, "members": members,
             "forces": {"T2": newtons(0, 180, -900), "T1": newtons(0, 0, -200)}}
    write("IND-18", "pole ridge forward and strap ridge aft on two uprights, one leaning", model,
          {"U1": a("U1"), "U2": a("U2"), "ridge": a("ridge"), "C1_port": a("C1 port"), "C2_port": a("C2 port"),
           "C2_starboard": a("C2 starboard"), "M_T1": {"moment": ["pole", "to"]}, "ux_T2": d("T2", "ux"),
           "uy_T2": d("T2", "uy"), "R_stern": {"reaction": ["stern", "ux"]}},
          {"all": (2e-3, BENT), "C2_starboard": (0.15, "almost slack: 5 N of its 250 N are left", "absolute"),
           "ux_T2": (1e-6, "a small number", "absolute")})


if __name__ == "__main__":
    quiet()
    for make in (pressed_strap_ridge, lifted_strap_ridge, one_sided, pressed_pole_ridge, lifted_pole_ridge,
                 spliced_on_upright, spliced_on_upright_fine, mixed):
        make()
