# SPDX-License-Identifier: BSD-3-Clause
"""Exact answers of a bent and a pressed pole, and the cases CV-01 to CV-04 that ask how fast the library's frame gets
there with the number of its members. Needs SciPy; no test runs it.

Cantilever with a force P across its free end, which keeps its direction (Bisshopp and Drucker, Quart. Appl. Math. 3
(1945) 272-275, equations from memory). With a2 = P L2/EI, k the modulus and the tip turned by theta:
    k2 = (1 + sin theta)/2,  sin phi1 = 1/(k sqrt 2),  a = K(k) - F(k, phi1)
    down/L = 1 - 2 (E(k) - E(k, phi1))/a,   along/L = sqrt(2 sin theta)/a

Beam on two supports, pressed by P, u = L/2 sqrt(P/EI) (Timoshenko and Gere, Theory of Elastic Stability, chapter 1,
from memory):
    Q at the middle        deflection Q L3/(48 EI) 3 (tan u - u)/u3,   moment Q L/4 tan u/u
    P eccentric by e       deflection e (sec u - 1),                   moment P e sec u
"""
import json
import math
import pathlib

from scipy.optimize import brentq
from scipy.special import ellipe, ellipeinc, ellipk, ellipkinc

FOLDER = pathlib.Path(__file__).resolve().parents[1] / "cases" / "frames_rates"
MEASURED = {"pure": True}


def elastica(load):
    """Tip down, tip back and turn for P L2/EI, lengths over L."""
    def modulus(theta):
        m = (1 + math.sin(theta)) / 2
        return m, math.asin(1 / math.sqrt(2 * m))

    def a(theta):
        m, phi = modulus(theta)
        return ellipk(m) - ellipkinc(phi, m)

    theta = brentq(lambda t: a(t) - math.sqrt(load), 1e-9, math.pi / 2 - 1e-12, xtol=1e-15, rtol=1e-15)
    m, phi = modulus(theta)
    down = 1 - 2 * (ellipe(m) - ellipeinc(phi, m)) / a(theta)
    return down, 1 - math.sqrt(2 * math.sin(theta)) / a(theta), theta


def strut(share, e=None, Q=None):
    """Deflection and moment at the middle with `share` of the Euler load; L and EI are 1."""
    P = share * math.pi**2
    u = math.sqrt(P) / 2
    if Q is not None:
        return Q / 48 * 3 * (math.tan(u) - u) / u**3, Q / 4 * math.tan(u) / u
    return e * (1 / math.cos(u) - 1), P * e / math.cos(u)


def pole(a, b, name, EA):
    return {"name": name, "kind": "pole", "from": a, "to": b, "EA": EA, "E": "1 GPa", "G": "1 GPa",
            "I_vertical": "1e-9 m4", "J": "1e-9 m4"}


def cantilever(load):
    return {"nodes": {"A": ["0 m", "0 m", "0 m"], "B": ["1 m", "0 m", "0 m"]}, "held_everywhere": "uy rx rz",
            "held": {"A": "ux uz ry"}, "members": [pole("A", "B", "beam", "1e7 N")],
            "forces": {"B": ["0 N", "0 N", f"{-load!r} N"]}, "force_tolerance": 1e-9, "rotation_limit": 1.5,
            "soften": [1e-4, 1e-2],
            "results": {"down": {"displacement": ["B", "uz"], "turned": True} | MEASURED,
                        "back": {"displacement": ["B", "ux"], "turned": True} | MEASURED,
                        "turn": {"displacement": ["B", "ry"]} | MEASURED}}


def pressed(share, e=None, Q=None):
    P = share * math.pi**2
    model = {"nodes": {"A": ["0 m", "0 m", "0 m"], "M": ["0.5 m", "0 m", "0 m"], "B": ["1 m", "0 m", "0 m"]},
             "held_everywhere": "uy rx rz", "held": {"A": "ux uz", "B": "uz"},
             "members": [pole("A", "M", "left", "1e8 N"), pole("M", "B", "right", "1e8 N")],
             "forces": {"B": [f"{-P!r} N", "0 N", "0 N"]}, "force_tolerance": 1e-10,
             "results": {"down": {"displacement": ["M", "uz"], "turned": True} | MEASURED,
                         "moment": {"moment": ["left", "to"]} | MEASURED}}
    if Q is not None:
        model["forces"]["M"] = ["0 N", "0 N", f"{-Q!r} N"]
    else:
        model["couples"] = {"A": ["0 N m", f"{P * e!r} N m", "0 N m"], "B": ["0 N m", f"{-P * e!r} N m", "0 N m"]}
    return model


def write(name, title, source, note, model, exact, pieces, bounds):
    """`bounds`: how far the order of each pair of numbers of pieces may lie from 2; the last error of each quantity."""
    model["results"] = {q: model["results"][q] for q in exact}
    model["rates"] = {"pieces": pieces, "exact": exact}
    expected = []
    for quantity in exact:
        for coarse, fine, bound in zip(pieces, pieces[1:], bounds[quantity]):
            expected.append({"quantity": f"{quantity}: order, {coarse} to {fine} pieces", "printed": None, "value": 2.0,
                             "unrounded": None, "unit": "-", "absolute": bound,
                             "reason": "the bow within a member is left out: second order as members get short"})
        for n, bound in zip(pieces, bounds[quantity + " error"]):
            expected.append({"quantity": f"{quantity}: error, {n} pieces", "printed": None, "value": 0.0,
                             "unrounded": None, "unit": "-", "absolute": bound,
                             "reason": "relative to the exact answer; a bound over what is measured for the worst quantity"})
    case = {"id": name, "title": title, "kind": "convergence", "source": source, "how_read": "closed form, derived",
            "quality": "E: exact answer computed with SciPy", "note": note, "model": "frame_rates", "input": model,
            "expected": expected, "status": "agrees"}
    FOLDER.mkdir(parents=True, exist_ok=True)
    (FOLDER / (name + ".json")).write_text(json.dumps(case, indent=1) + "\n")


if __name__ == "__main__":
    for load in (1, 2, 5, 10):
        print(load, *(f"{x:.15g}" for x in elastica(load)))
    for share in (0.25, 0.5, 0.8):
        print(share, *(f"{x:.15g}" for x in strut(share, Q=1)), *(f"{x:.15g}" for x in strut(share, e=1)))
    dead = {"key": "bisshopp_drucker", "place": "equations; recomputed with SciPy's elliptic integrals"}
    timoshenko = {"key": "timoshenko_gere", "place": "chapter 1, beam-columns, equations from memory"}
    how = "L = 1 m, EI = 1 N m2. Run by validation/independent/rates.py."
    many = [1, 2, 4, 8, 16, 32]
    for name, load in (("CV-01", 1.0), ("CV-02", 10.0)):
        exact = dict(zip(("down", "back", "turn"), elastica(load)))
        if load > 2:
            del exact["back"]  # its error changes its sign between 16 and 32 pieces: no order to be seen
        pieces = many if load < 2 else many[2:]
        orders = [0.45, 0.2, 0.1, 0.05, 0.02] if load < 2 else [0.2, 0.1, 0.05]
        errors = [0.12, 0.04, 0.011, 2.7e-3, 7e-4, 1.7e-4] if load < 2 else [0.011, 2.4e-3, 6e-4, 1.5e-4]
        bounds = {q: orders for q in exact} | {q + " error": errors for q in exact}
        write(name, f"rate: cantilever, force across its tip, P L2/EI = {load:g}", dead,
              how + " Pole 1e7 times as stiff along as across.", cantilever(load), exact, pieces, bounds)
    bounds = {q: [0.45, 0.15, 0.05, 0.02] for q in ("down", "moment")}
    bounds |= {q + " error": [0.18, 0.05, 0.013, 3.3e-3, 8.5e-4] for q in ("down", "moment")}
    for name, share, kind in (("CV-03", 0.5, {"Q": 1e-4}), ("CV-04", 0.5, {"e": 1e-4})):
        down, moment = strut(share, **kind)
        title = "force at the middle" if "Q" in kind else "eccentric push (secant formula)"
        write(name, f"rate: beam-column at half its Euler load, {title}", timoshenko,
              how + " Pieces are those of half its length. Loads so small that turns do not count.",
              pressed(share, **kind), {"down": down, "moment": moment}, many[:5], bounds)
