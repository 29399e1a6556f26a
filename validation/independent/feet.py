# SPDX-License-Identifier: BSD-3-Clause
"""Frames on feet that push only, and straps with a load along their length. IND-40 to IND-45.

Kratos has neither. A foot goes to it as an upright of one metre under the node, left out by the program when it would
be pulled, with k (1 m - gap) for its EA and its free length shorter by the gap; the node is held level. Where it
slides, that upright is a thousand metres long, so that it does not turn, and friction is a force. A strap with a load
along its length goes to it as a chain of straight pieces with half of their load at each end, twice: what is written
is extrapolated from both, the error of such a chain being in proportion to the square of a piece.
"""
import copy
import json
import math

from case_file import FOLDER, UNITS, VERSION, m, newtons, quiet, script, strap, upright
from other_program import answer, number, solve
from supports import a, d, support

SAME = "the same mechanics in both programs; residual to which the other one iterates"
CHAIN = "chains of straight pieces in the other program, extrapolated from two numbers of pieces"
OUT = "slack or lifted in both programs"


def foot(node, stiffness, gap=0.0, friction=0.0, side=0.0):
    made = {"node": node, "stiffness": f"{stiffness!r} N/m"}
    if gap:
        made["gap"] = f"{gap!r} m"
    if friction:
        made |= {"friction": friction, "side_stiffness": f"{side!r} N/m"}
    return made


def hung(name, start, end, EA, load, **more):
    """A strap with a load per drawn length, down and athwart."""
    return strap(name, start, end, EA, **more) | {"even_load": [repr(float(w)) + " N/m" for w in load]}


def for_kratos(model, pieces, lifted=()):
    """The model as Kratos can have it."""
    other = copy.deepcopy(model)
    for member in other["members"]:
        if "even_load" in member:
            member["load"] = member.pop("even_load")
            member["pieces"] = pieces
    for made in other.pop("feet", []):
        node, k, gap = made["node"], number(made["stiffness"]), number(made.get("gap", "0.0 m"))
        if node in lifted:  # nothing is left that would hold it
            other["held"][node] = "ux uy uz"
            continue
        x, y, z = (number(t) for t in other["nodes"][node])
        below = "under " + node
        other["nodes"][below] = m(x, y, z - 1.0)
        other["held"][below] = "ux uy uz"
        pad = upright("pad " + node, below, node, k * (1.0 - gap))
        pad["free_length"] = f"{1.0 - gap!r} m"
        other["members"].append(pad)
    return other


def push_of(frame, node):
    """Of a foot in Kratos; nothing if it was left out."""
    return -frame.axial("pad " + node) if "pad " + node in frame.runs else 0.0


def numbers(model, results, pieces, lifted, steps):
    frame = solve(for_kratos(model, pieces, lifted), steps=steps)
    found = {}
    for quantity, what in results.items():
        found[quantity] = push_of(frame, what["push"]) if "push" in what else answer(frame, what)
    return found


def write(name, title, model, results, tolerances, note="", lifted=(), steps=20):
    chains = any("even_load" in member for member in model["members"])
    found = numbers(model, results, 40 if chains else 1, lifted, steps)
    text = (f"Kratos Multiphysics {VERSION}, StructuralMechanicsApplication (BSD licence), run by "
            f"validation/independent/{script()}. Straps CableElement3D2N, uprights and pads TrussElement3D2N left out "
            "while they are pulled; Hooke's law in the change of length. ")
    if chains:
        coarse = numbers(model, results, 20, lifted, steps)
        fine, found = found, {q: (4 * found[q] - coarse[q]) / 3 for q in found}
        moved = max(abs(fine[q] / found[q] - 1) for q in found if abs(found[q]) > 1e-9)
        text += (f"Loaded straps in 20 and in 40 pieces, extrapolated; 40 pieces alone are within {moved:.0e} of the "
                 "numbers below. ")
    if lifted:
        text += "Lifted there: the feet at " + ", ".join(lifted) + ". "
    expected = []
    for quantity, what in results.items():
        kind = next((k for k in UNITS if k in what), "push")
        tolerance = tolerances.get(quantity) or tolerances.get(kind) or tolerances["all"]
        entry = {"quantity": quantity, "printed": None, "value": float(f"{found[quantity]:.10g}"), "unrounded": None,
                 "unit": UNITS.get(kind, "N")}
        entry["absolute" if len(tolerance) == 3 else "relative"] = tolerance[0]
        entry["reason"] = tolerance[1]
        expected.append(entry)
    model["results"] = results
    case = {"id": name, "title": title, "kind": "independent",
            "source": {"key": "kratos", "place": "no print: solved with it"}, "how_read": "independent program",
            "quality": "recomputed by another program", "note": (text + note).strip(), "model": "frame",
            "input": model, "expected": expected, "status": "agrees"}
    (FOLDER / (name + ".json")).write_text(json.dumps(case, indent=1) + "\n")
    print(name, found)


def push(node):
    return {"push": node}


def ridge_on_feet(gaps, loads, stiffness=3e5):
    """A strap ridge over three uprights that stand on pads; feet held level, pads give and may have gaps."""
    nodes, held, members = support([1.5, 3.2, 5.0], [1.3, 1.5, 1.2], 0.6, 1.3, 200)
    nodes.update({"bow": m(0, 0, 0.7), "stern": m(6.4, 0, 0.6)})
    held.update({"bow": "ux uy uz", "stern": "ux uy uz"})
    held.update({f"F{i}": "ux uy" for i in (1, 2, 3)})
    line = ["bow", "T1", "T2", "T3", "stern"]
    members += [strap(f"ridge {i + 1}", line[i], line[i + 1], 120e3, 400) for i in range(4)]
    feet = [foot(f"F{i}", stiffness, gap) for i, gap in enumerate(gaps, 1)]
    return {"nodes": nodes, "held": held, "members": members, "forces": loads, "feet": feet}


def pads():
    model = ridge_on_feet([0.0, 0.0, 0.0],
                          {"T1": newtons(0, 40, -700), "T2": newtons(30, 60, -1100), "T3": newtons(0, 20, -600)})
    write("IND-40", "strap ridge over three uprights on pads that give", model,
          {"N1": push("F1"), "N2": push("F2"), "N3": push("F3"), "U2": a("U2"), "uz_F2": d("F2", "uz"),
           "uz_T2": d("T2", "uz"), "uy_T2": d("T2", "uy"), "ridge_2": a("ridge 2"), "C2_port": a("C2 port")},
          {"all": (1e-6, SAME), "displacement": (1e-5, SAME)})


def lifted_foot():
    model = ridge_on_feet([0.0, 0.0, 0.0],
                          {"T1": newtons(-20, 30, -300), "T2": newtons(60, 90, 1500), "T3": newtons(0, 20, -100)})
    write("IND-41", "strap ridge over three uprights on pads, one foot lifted by wind", model,
          {"N1": push("F1"), "N2": push("F2"), "N3": push("F3"), "ridge_1": a("ridge 1"), "ridge_2": a("ridge 2"),
           "C2_port": a("C2 port"), "uz_T2": d("T2", "uz"), "uz_F1": d("F1", "uz"), "uy_T2": d("T2", "uy")},
          {"all": (1e-6, SAME), "displacement": (1e-5, SAME), "N2": (1e-6, OUT, "absolute")}, lifted=["F2"])


def closing_gap():
    """The middle foot stands 6 mm over its pad, that of the last upright 30 mm; both gaps close."""
    model = ridge_on_feet([0.0, 0.006, 0.03],
                          {"T1": newtons(0, 40, -500), "T2": newtons(30, 60, -1500), "T3": newtons(0, 20, -60)})
    write("IND-42", "strap ridge over three uprights, gaps under two feet that close", model,
          {"N1": push("F1"), "N2": push("F2"), "N3": push("F3"), "uz_F2": d("F2", "uz"), "uz_T2": d("T2", "uz"),
           "uz_T3": d("T3", "uz"), "ridge_2": a("ridge 2"), "C2_port": a("C2 port"), "C3_port": a("C3 port")},
          {"all": (1e-6, SAME), "displacement": (1e-5, SAME)})


def sagging_net():
    """A net of two by two inner nodes whose straps, hardly taut, hang under weight and wind."""
    nodes, held, members = {}, {}, []
    place = {}
    for i in range(4):
        for j in range(4):
            edge = i in (0, 3) or j in (0, 3)
            if i in (0, 3) and j in (0, 3):
                continue
            place[i, j] = f"n{i}{j}"
            nodes[f"n{i}{j}"] = m(0.9 * i, 0.7 * j, 0.05 * i - 0.08 * j)
            if edge:
                held[f"n{i}{j}"] = "ux uy uz"
    for k in (1, 2):
        for i in range(3):
            for b, e in (((i, k), (i + 1, k)), ((k, i), (k, i + 1))):
                drawn = math.dist(*[[number(t) for t in nodes[place[p]]] for p in (b, e)])
                name = f"s{len(members)}"
                share = 0.9995 if len(members) % 3 == 0 else 0.998
                members.append(hung(name, place[b], place[e], 40e3 + 5e3 * (len(members) % 4), (0, 6, -40),
                                    free_length=share * drawn))
    model = {"nodes": nodes, "held": held, "members": members, "forces": {"n11": newtons(0, 0, -20)}}
    write("IND-43", "net of straps that hang under their own load, some of them hardly taut", model,
          {"uz_n11": d("n11", "uz"), "uz_n22": d("n22", "uz"), "uy_n12": d("n12", "uy"), "T_s0": a("s0"),
           "T_s5": a("s5"), "T_s5_to": {"axial_to": "s5"}, "R_n01": {"reaction": ["n01", "uz"]},
           "Rx_n31": {"reaction": ["n31", "ux"]}},
          {"all": (2e-4, CHAIN), "T_s0": (5e-3, CHAIN + "; tension of the end piece, half a piece from the end"),
           "T_s5": (5e-3, CHAIN + "; tension of the end piece, half a piece from the end"),
           "T_s5_to": (5e-3, CHAIN + "; tension of the end piece, half a piece from the end")}, steps=40)


def sagging_ridge():
    """A strap ridge over two uprights with snow along it instead of at the tops; cross straps carry nothing."""
    nodes, held, members = support([1.8, 3.7], [1.3, 1.4], 0.6, 1.3, 250)
    nodes.update({"bow": m(0, 0, 0.7), "stern": m(5.4, 0, 0.7)})
    held.update({"bow": "ux uy uz", "stern": "ux uy uz"})
    line = ["bow", "T1", "T2", "stern"]
    members += [hung(f"ridge {i + 1}", line[i], line[i + 1], 120e3, (0, 10, -150), set_to=600) for i in range(3)]
    model = {"nodes": nodes, "held": held, "members": members, "forces": {"T2": newtons(10, 0, -100)}}
    write("IND-44", "strap ridge with snow along it, hanging between two uprights", model,
          {"U1": a("U1"), "U2": a("U2"), "C1_port": a("C1 port"), "C2_starboard": a("C2 starboard"),
           "ux_T1": d("T1", "ux"), "uz_T2": d("T2", "uz"), "R_bow": {"reaction": ["bow", "ux"]},
           "Rz_bow": {"reaction": ["bow", "uz"]}},
          {"all": (1e-4, CHAIN), "displacement": (1e-3, CHAIN)}, steps=40)


def sliding_feet():
    """A trestle of two legs and a tie. Friction is given to Kratos as level forces at the feet, of mu times the pushes
    that Kratos finds with them, round by round; its feet slip both, outwards."""
    mu = 0.2
    nodes = {"top": m(0, 0, 2), "left": m(-0.8, 0, 0), "right": m(0.7, 0, 0)}
    held = {"top": "ux uy", "left": "uy", "right": "uy"}
    members = [upright("leg left", "left", "top", 5e6), upright("leg right", "right", "top", 5e6),
               strap("tie", "left", "right", 60e3)]
    feet = [foot(n, 4e5, 0.0, mu, 2e6) for n in ("left", "right")]
    model = {"nodes": nodes, "held": held, "members": members, "forces": {"top": newtons(0, 0, -1800)}, "feet": feet}
    results = {"N_left": push("left"), "N_right": push("right"), "tie": a("tie"), "R_top": {"reaction": ["top", "ux"]},
               "leg_left": a("leg left"), "ux_left": d("left", "ux"), "ux_right": d("right", "ux"),
               "uz_top": d("top", "uz")}
    pushes = {"left": 900.0, "right": 900.0}
    for _ in range(60):
        other = copy.deepcopy(model)
        other.pop("feet")
        for name, way in (("left", 1.0), ("right", -1.0)):
            other["forces"][name] = newtons(way * mu * pushes[name], 0, 0)
            x = number(other["nodes"][name][0])
            other["nodes"]["under " + name] = m(x, 0, -1000.0)
            other["held"]["under " + name] = "ux uy uz"
            pad = upright("pad " + name, "under " + name, name, 4e5 * 1000.0)
            other["members"].append(pad)
        frame = solve(other, steps=20)
        now = {n: push_of(frame, n) for n in pushes}
        settled = max(abs(now[n] - pushes[n]) for n in pushes) < 1e-7
        pushes = now
        if settled:
            break
    found = {q: push_of(frame, w["push"]) if "push" in w else answer(frame, w) for q, w in results.items()}
    outwards = frame.displacement("left", "ux") < -0.0002 and frame.displacement("right", "ux") > 0.0002
    if not (settled and outwards):
        raise RuntimeError("the feet do not both slip outwards")
    model["results"] = results
    reason = "the other program has pads of a thousand metres length, which lean a little instead of sliding"
    expected = [{"quantity": q, "printed": None, "value": float(f"{found[q]:.10g}"), "unrounded": None,
                 "unit": "m" if q[0] == "u" else "N", "relative": 1e-4, "reason": reason} for q in results]
    note = (f"Kratos Multiphysics {VERSION}, StructuralMechanicsApplication (BSD licence), run by "
            f"validation/independent/{script()}. Pads are TrussElement3D2N of 1000 m length; friction is a level "
            f"force of {mu} times the push of the pad, put in again until it settles to 1e-7 N.")
    case = {"id": "IND-45", "title": "trestle whose feet slide outwards against friction, held by a tie",
            "kind": "independent", "source": {"key": "kratos", "place": "no print: solved with it"},
            "how_read": "independent program", "quality": "recomputed by another program", "note": note,
            "model": "frame", "input": model, "expected": expected, "status": "agrees"}
    (FOLDER / "IND-45.json").write_text(json.dumps(case, indent=1) + "\n")
    print("IND-45", found)


if __name__ == "__main__":
    quiet()
    for make in (pads, lifted_foot, closing_gap, sagging_net, sagging_ridge, sliding_feet):
        make()
