# SPDX-License-Identifier: BSD-3-Clause
"""Loads along members, splices, springs, settlements, warmth, bars and arms. IND-20 to IND-27."""
import sys

from case_file import bar, couple, m, newtons, per_metre, pole, quiet, strap, write

FIRST = "second order in the turns and in the bow within a piece of the library"
AXES = ("the library's couples go along the rotation vector, the other program's about fixed axes: half the turn, 3e-4 "
        "and 1.4e-3 in twist, of the couples across")
SMALL = "a small number between larger ones that cancel"
FIXED = "ux uy uz rx ry rz"


def d(node, direction):
    return {"displacement": [node, direction]}


def r(node, direction):
    return {"reaction": [node, direction]}


def one_member_a_bay():
    """Three uneven bays, each one member of the library, loaded in both planes."""
    names, at = ["bow", "U1", "U2", "stern"], [0.0, 2.0, 3.4, 6.0]
    q = [per_metre(0, 20, -90), per_metre(0, 20, -40), per_metre(0, -30, -60)]
    model = {"nodes": {n: m(x, 0, 0) for n, x in zip(names, at)},
             "held": {"bow": FIXED, "U1": "uy uz", "U2": "uy uz", "stern": "uy uz"},
             "members": [pole(f"bay {i + 1}", names[i], names[i + 1], 1, EI_level=8e3, even_load=q[i])
                         for i in range(3)]}
    write("IND-20", "continuous pole of one member a bay, evenly loaded in both planes", model,
          {"R_bow": r("bow", "uz"), "R_U1": r("U1", "uz"), "R_stern": r("stern", "uz"), "Ry_U2": r("U2", "uy"),
           "M_bow": r("bow", "ry"), "M_U1": {"moment": ["bay 1", "to"]}, "M_U2": {"moment": ["bay 2", "to"]},
           "ML_U2": {"moment_level": ["bay 2", "to"]}, "M_mid_1": {"moment_along": "bay 1", "share": 0.5},
           "M_mid_3": {"moment_along": "bay 3", "share": 0.5}, "r_stern": d("stern", "ry"), "rz_U1": d("U1", "rz")},
          {"all": (1e-3, FIRST)}, fine=16)


def spliced():
    """A hinge and a splice of 15 kN m/rad, soft in shear, loaded down and athwart."""
    model = {"nodes": {"a": m(0, 0, 0), "b": m(2, 0, 0), "h": m(2.5, 0, 0), "s": m(3.4, 0, 0), "c": m(5, 0, 0)},
             "held": {"a": FIXED, "b": "uy uz", "c": "uy uz ry rz"},
             "members": [pole("ab", "a", "b", 1, EI_level=9e3, soft_in_shear=True, spring_from="15.0 kN m",
                              even_load=per_metre(0, 30, -200)),
                         pole("bh", "b", "h", 1, EI_level=9e3, soft_in_shear=True, even_load=per_metre(0, 30, -200)),
                         pole("hs", "h", "s", 1, EI_level=9e3, soft_in_shear=True, hinged="from",
                              even_load=per_metre(0, -20, -100)),
                         pole("sc", "s", "c", 1, EI_level=9e3, soft_in_shear=True, spring_from="8.0 kN m",
                              even_load=per_metre(0, -20, -100))]}
    write("IND-21", "pole with a hinge and two splices that give, soft in shear, one member a piece", model,
          {"Ma": r("a", "ry"), "Mza": r("a", "rz"), "M_b": {"moment": ["ab", "to"]},
           "M_s": {"moment": ["hs", "to"]}, "ML_s": {"moment_level": ["hs", "to"]}, "uz_h": d("h", "uz"),
           "uy_s": d("s", "uy"), "uz_s": d("s", "uz"), "R_b": r("b", "uz"), "M_c": r("c", "ry"),
           "M_mid": {"moment_along": "ab", "share": 0.5}},
          {"all": (1e-3, FIRST), "uz_h": (1e-6, SMALL, "absolute")}, fine=16)


def gable():
    """Pitched frame on feet that turn against springs, snow on the rafters, wind on one post."""
    model = {"nodes": {"A": m(0, 0, 0), "B": m(0, 0, 1.6), "C": m(1.5, 0, 2.2), "D": m(3, 0, 1.6), "E": m(3, 0, 0)},
             "held_everywhere": "uy rx rz", "held": {"A": "ux uz", "E": "ux uz"},
             "boat_springs": [{"node": "A", "about": couple(0, 9e3, 0)}, {"node": "E", "about": couple(0, 25e3, 0)}],
             "members": [pole("windward", "A", "B", 8, even_load=per_metre(60, 0, 0)),
                         pole("rafter 1", "B", "C", 8, even_load=per_metre(0, 0, -250)),
                         pole("rafter 2", "C", "D", 8, even_load=per_metre(0, 0, -120)),
                         pole("lee", "D", "E", 8)]}
    write("IND-22", "pitched frame on feet that turn against springs, snow and wind", model,
          {"Rx_A": r("A", "ux"), "Rz_A": r("A", "uz"), "M_A": r("A", "ry"), "M_E": r("E", "ry"), "Rx_E": r("E", "ux"),
           "uz_C": d("C", "uz"), "ux_B": d("B", "ux"), "M_C": {"moment": ["rafter 1", "to"]},
           "M_B": {"moment": ["rafter 1", "from"]}, "M_mid": {"moment_along": "rafter 1", "share": 0.5},
           "N_lee": {"axial": "lee"}},
          {"all": (1e-3, FIRST), "Rx_A": (0.05, SMALL, "absolute"), "M_A": (0.02, SMALL, "absolute")}, fine=4)


def settling():
    """Two bays, the middle support down 8 mm and the fixed end turned by 0.004 and 0.002."""
    model = {"nodes": {"a": m(0, 0, 0), "b": m(1.8, 0, 0), "c": m(4, 0, 0)},
             "held": {"a": FIXED, "b": "uy uz", "c": "uy uz"},
             "settled": {"b": m(0, 0.003, -0.008)}, "turned": {"a": [0, 0.004, 0.002]},
             "members": [pole("ab", "a", "b", 2, EI_level=12e3, even_load=per_metre(0, 0, -150)),
                         pole("bc", "b", "c", 2, EI_level=12e3, even_load=per_metre(0, 0, -150))]}
    write("IND-23", "continuous pole whose middle support sinks and whose end turns, evenly loaded", model,
          {"R_a": r("a", "uz"), "R_b": r("b", "uz"), "Ry_b": r("b", "uy"), "R_c": r("c", "uz"), "M_a": r("a", "ry"),
           "Mz_a": r("a", "rz"), "M_b": {"moment": ["ab", "to"]}, "r_c": d("c", "ry")},
          {"all": (1e-3, FIRST)}, fine=4)


def warm_tripod():
    """Bars that pull and push and a strap, of unlike warmth, under a load that turns them by a few degrees."""
    model = {"nodes": {"a": m(0, 0, 0), "b": m(2, 0.2, 0), "c": m(0.8, 1.7, 0.1), "top": m(0.9, 0.6, 1.4),
                       "eye": m(-1.0, -1.0, 0.9)},
             "held": {n: "ux uy uz" for n in ("a", "b", "c", "eye")},
             "members": [bar("at", "a", "top", 60e3, expansion=2e-4, warmer_by=30.0),
                         bar("bt", "b", "top", 60e3, expansion=2e-4, warmer_by=-25.0), bar("ct", "c", "top", 40e3),
                         strap("strap", "top", "eye", 30e3, 200) | {"expansion": 1e-3, "warmer_by": -8.0}],
             "forces": {"top": newtons(900, -1500, -2500)}}
    write("IND-24", "tripod of bars, two of them warmer or colder, and a cold strap", model,
          {"at": {"axial": "at"}, "bt": {"axial": "bt"}, "ct": {"axial": "ct"}, "strap": {"axial": "strap"},
           "ux": d("top", "ux"), "uy": d("top", "uy"), "uz": d("top", "uz"), "R_a": r("a", "uz")},
          {"all": (1e-6, "the same mechanics in both programs; residual to which the other one iterates")})


def braced_mast():
    """Mast held by two bars at half height, one of them warm, an eccentric strap at the top, wind along the mast."""
    model = {"nodes": {"foot": m(0, 0, 0), "mid": m(0, 0, 1.2), "top": m(0, 0, 2.6), "p": m(-1, -0.8, 0),
                       "s": m(-1, 0.8, 0), "eye": m(1.6, 0.3, 0.2)},
             "held": {"foot": "ux uy uz rz", "p": "ux uy uz", "s": "ux uy uz", "eye": "ux uy uz"},
             "members": [pole("lower", "foot", "mid", 6, EI_level=16e3, even_load=per_metre(-40, 25, -10)),
                         pole("upper", "mid", "top", 8, EI_level=16e3, even_load=per_metre(-40, 25, -10)),
                         bar("port", "mid", "p", 400e3, expansion=3e-5, warmer_by=20.0),
                         bar("starboard", "mid", "s", 400e3),
                         strap("guy", "top", "eye", 80e3, 90) | {"arm_from": m(0.12, -0.05, 0)}]}
    write("IND-25", "mast on a hinge braced by bars, a strap to an arm at its top, wind along it", model,
          {"port": {"axial": "port"}, "starboard": {"axial": "starboard"}, "guy": {"axial": "guy"},
           "ux_top": d("top", "ux"), "uy_top": d("top", "uy"), "Rz_foot": r("foot", "uz"),
           "Mz_foot": r("foot", "rz")},
          {"all": (2e-3, FIRST)}, fine=4)


def on_springs():
    """Pole on soft supports, a couple at each end, evenly loaded."""
    names, at = ["a", "b", "c", "d"], [0.0, 1.5, 3.0, 4.8]
    model = {"nodes": {n: m(x, 0, 0) for n, x in zip(names, at)},
             "held": {"a": "ux uy rx", "d": "uy"},
             "boat_springs": [{"node": "a", "along": per_metre(0, 0, 40e3), "about": couple(0, 5e3, 2e3)},
                              {"node": "b", "along": per_metre(0, 8e3, 25e3)},
                              {"node": "c", "along": per_metre(0, 3e3, 60e3), "about": couple(4e2, 0, 0)},
                              {"node": "d", "along": per_metre(0, 0, 20e3)}],
             "couples": {"a": couple(0, 2, 0.5), "d": couple(0.4, -3, 1.2), "b": couple(0, 0, -0.8)},
             "members": [pole(f"bay {i + 1}", names[i], names[i + 1], 2, EI_level=7e3,
                              even_load=per_metre(0, 0.6, -5.5)) for i in range(3)]}
    write("IND-26", "pole on springs of the boat, couples at its nodes, evenly loaded", model,
          {"uz_a": d("a", "uz"), "uz_b": d("b", "uz"), "uy_c": d("c", "uy"), "R_c": r("c", "uz"), "R_d": r("d", "uz"),
           "M_a": r("a", "ry"), "Mz_a": r("a", "rz"), "rx_d": d("d", "rx"), "Mx_a": r("a", "rx"),
           "M_b": {"moment": ["bay 1", "to"]}, "ML_c": {"moment_level": ["bay 2", "to"]}},
          {"all": (2e-3, AXES), "uy_c": (5e-3, AXES), "ML_c": (8e-3, AXES)}, fine=4)


def cranked():
    """Two poles that meet on arms of one node, off the line of the posts: an eccentric joint."""
    model = {"nodes": {"a": m(0, 0, 0), "j": m(1.6, 0, 0.1), "c": m(3, 0.2, 0), "foot": m(1.6, 0, -1.2)},
             "held": {"a": FIXED, "c": FIXED, "foot": FIXED},
             "members": [pole("fore", "a", "j", 8, even_load=per_metre(0, 10, -120), arm_to=m(-0.08, 0, 0.15)),
                         pole("aft", "j", "c", 8, even_load=per_metre(0, 10, -120), arm_from=m(0.08, 0.05, 0.15)),
                         pole("post", "foot", "j", 8, arm_to=m(0, 0, -0.1))],
             "forces": {"j": newtons(150, 60, -400)}}
    write("IND-27", "two poles and a post that meet at one node by arms", model,
          {"ux": d("j", "ux"), "uy": d("j", "uy"), "uz": d("j", "uz"), "ry": d("j", "ry"), "N_post": {"axial": "post"},
           "M_fore": {"moment": ["fore", "to"]}, "M_aft": {"moment": ["aft", "from"]}, "My_foot": r("foot", "ry"),
           "Rz_a": r("a", "uz")},
          {"all": (2e-3, FIRST)}, fine=4)


if __name__ == "__main__":
    quiet()
    frames = (one_member_a_bay, spliced, gable, settling, warm_tripod, braced_mast, on_springs, cranked)
    for make in [f for f in frames if f.__name__ in sys.argv[1:] or not sys.argv[1:]]:
        make()
