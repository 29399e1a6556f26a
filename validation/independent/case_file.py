# SPDX-License-Identifier: BSD-3-Clause
"""Writes a case: the model, what Kratos answers to it, and how close the library has to come."""
import json
import pathlib
import sys

import KratosMultiphysics as KM

from other_program import answer, solve

FOLDER = pathlib.Path(__file__).resolve().parents[1] / "cases" / "frames_independent"
VERSION = "10.4.4"
UNITS = {"displacement": "m", "reaction": "N", "axial": "N", "axial_to": "N", "moment": "N m", "moment_level": "N m",
         "moment_along": "N m", "twist": "N m"}


def m(*numbers):
    return [repr(float(n)) + " m" for n in numbers]


def newtons(*numbers):
    return [repr(float(n)) + " N" for n in numbers]


def pole(name, a, b, pieces=1, EI=20e3, EI_level=None, hinged=None, load=None, soft_in_shear=False, **more):
    """A spruce spar of 48 mm by 48 mm or so: E 10 GPa, G 0.6 GPa."""
    E, G = 10e9, 0.6e9
    member = {"name": name, "kind": "pole", "from": a, "to": b, "pieces": pieces, "E": f"{E!r} Pa", "G": f"{G!r} Pa",
              "A": "0.0025 m2", "I_vertical": f"{EI / E!r} m4", "I_level": f"{(EI_level or EI) / E!r} m4",
              "J": f"{0.8 * EI / E!r} m4"}
    if soft_in_shear:
        member["shear_area"] = "0.002 m2"
    if hinged:
        member["hinged"] = hinged
    if load:
        member["load"] = [repr(float(w)) + " N/m" for w in load]
    return member | more


def per_metre(*numbers):
    return [repr(float(n)) + " N/m" for n in numbers]


def couple(*numbers):
    return [repr(float(n)) + " N m" for n in numbers]


def bar(name, a, b, EA=2e6, **more):
    return {"name": name, "kind": "bar", "from": a, "to": b, "EA": f"{EA!r} N"} | more


def strap(name, a, b, EA=100e3, set_to=None, free_length=None, pieces=1, load=None):
    member = {"name": name, "kind": "strap", "from": a, "to": b, "EA": f"{EA!r} N"}
    if pieces > 1:
        member["pieces"] = pieces
    if set_to is not None:
        member["set_to"] = f"{float(set_to)!r} N"
    if free_length is not None:
        member["free_length"] = f"{float(free_length)!r} m"
    if load:
        member["load"] = [repr(float(w)) + " N/m" for w in load]
    return member


def upright(name, a, b, EA=10e6):
    return {"name": name, "kind": "upright", "from": a, "to": b, "EA": f"{EA!r} N"}


def write(name, title, model, results, tolerances, note="", steps=20, fine=4):
    """`tolerances`: {kind of result: (relative, reason)}, or {name of result: (number, reason, "absolute")}."""
    if all(member["kind"] != "pole" for member in model["members"]):
        fine = 1
    frame = solve(model, refine=fine, steps=steps)
    model["results"] = results
    mesh = "the pieces of the case, each strap and upright piece one element"
    if fine > 1:
        coarse = solve(model, refine=fine // 2, steps=steps)
        moved = max(abs(answer(coarse, w) / answer(frame, w) - 1) for w in results.values() if answer(frame, w) != 0)
        mesh += (f"; poles in {fine} elements a piece (with half as many the numbers below are within {moved:.0e} of "
                 f"these); largest turn {frame.largest_turn():.3f} rad")
    state = [k for k in frame.runs if frame.kinds[k] != "pole" and frame.axial(k) == 0]
    text = (f"Kratos Multiphysics {VERSION}, StructuralMechanicsApplication (BSD licence), run by "
            f"validation/independent/{script()}. Elements: poles CrBeamElement3D2N (co-rotational), straps "
            "CableElement3D2N, bars and uprights TrussElement3D2N, uprights left out while they are pulled; Hooke's law "
            f"in the change of length. Mesh: {mesh}. {steps} load steps, growing as cubes, Newton to a residual of 1e-8 "
            "of the first of each step or 1e-6 N.")
    if state:
        text += " Slack or lifted there: " + ", ".join(state) + "."
    expected = []
    for quantity, what in results.items():
        kind = next(k for k in UNITS if k in what)
        unit = UNITS[kind]
        if kind == "displacement" and what["displacement"][1][0] == "r":
            unit = "rad"
        if kind == "reaction" and what["reaction"][1][0] == "r":
            unit = "N m"
        tolerance = tolerances.get(quantity) or tolerances.get(kind) or tolerances["all"]
        entry = {"quantity": quantity, "printed": None, "value": float(f"{answer(frame, what):.10g}"),
                 "unrounded": None, "unit": unit}
        entry["absolute" if len(tolerance) == 3 else "relative"] = tolerance[0]
        entry["reason"] = tolerance[1]
        expected.append(entry)
    case = {"id": name, "title": title, "kind": "independent",
            "source": {"key": "kratos", "place": "no print: solved with it"}, "how_read": "independent program",
            "quality": "recomputed by another program", "note": (text + " " + note).strip(), "model": "frame",
            "input": model, "expected": expected, "status": "agrees"}
    FOLDER.mkdir(parents=True, exist_ok=True)
    (FOLDER / (name + ".json")).write_text(json.dumps(case, indent=1) + "\n")
    print(name, "largest turn", round(frame.largest_turn(), 4), "slack or lifted:", state)


def script():
    return pathlib.Path(sys.argv[0]).name


def quiet():
    KM.Logger.GetDefaultOutput().SetSeverity(KM.Logger.Severity.WARNING)
