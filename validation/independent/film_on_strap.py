# SPDX-License-Identifier: BSD-3-Clause
"""Film on a leg of a cross strap, cases FS-01 to FS-24 of validation/cases/film_on_strap. Needs NumPy and SciPy.

FS-01 to FS-08: the sheet of film_sheet.py, which shares no equation with the library but Hooke's law.
FS-11 to FS-15: the differential equation of the library's header in bays that end where they end, without its first
integral: for each bay  4/5 T_x f'' = 8 T(f) f/l2 - p - T_x c,  f(0) = f_s,  f'(a/2) = 0  by collocation, the pull T_x
by iteration on the length of the bay, the leg by a bracketed root.
FS-21 to FS-24: limits with closed forms.
"""
import json
import math
import pathlib

import numpy as np
from scipy.integrate import solve_bvp
from scipy.optimize import brentq
from scipy.special import zeta

from film_sheet import Sheet

CASES = pathlib.Path(__file__).resolve().parents[1] / "cases" / "film_on_strap"
LEG = {"chord": 1.6, "initial": 400.0, "EA": 60e3, "Et": 75e3, "nu": 0.42, "shrunk": 150.0}
BAY = {"bay": 1.8, "load": 500.0, "strain": 0.0, "falls": 0.0, "curves": 0.0}
UNITS = {"tension": "N", "load": "N/m", "sag": "m", "free_sag": "m", "along": "N/m"}


def bay_of(leg, side, sag):
    """What one side brings to a leg that has sunk by `sag`, the pull along the boat, and the sag in mid-bay."""
    l, D = leg["chord"], leg["Et"] / (1 - leg["nu"] ** 2)
    x = np.linspace(0, side["bay"] / 2, 201)
    shape = [np.vstack([np.full_like(x, 0.05 * l), np.zeros_like(x)])]
    grid = [x]

    def solve(along):
        flat = leg["shrunk"] + leg["nu"] * (along - leg["shrunk"]) + leg["Et"] * side["strain"]

        def slopes(_, y):
            across = flat + 8 / 3 * leg["Et"] * (y[0] / l) ** 2
            bends = 8 * across * y[0] / l ** 2 - side["load"] - along * side["curves"]
            return np.vstack([y[1], bends / (0.8 * along)])

        answer = solve_bvp(slopes, lambda a, b: np.array([a[0] - sag, b[1]]), grid[0], shape[0], tol=1e-8,
                           max_nodes=100000)
        if not answer.success:
            raise RuntimeError(answer.message)
        grid[0], shape[0] = answer.x, answer.y
        return answer

    def too_little(along):
        answer = solve(along)
        middle = answer.y[0][-1]
        climb = np.trapezoid(0.5 * answer.y[1] ** 2, answer.x) * 2 / side["bay"]
        across = side["strain"] + 8 / 3 * (middle / l) ** 2
        return leg["shrunk"] + D * (leg["nu"] * across + 16 / 21 * climb) - along

    along = brentq(too_little, 0.2 * leg["shrunk"] + 1, leg["shrunk"] + 0.05 * D, xtol=1e-9, rtol=1e-12)
    answer = solve(along)
    return 0.8 * along * answer.y[1][0] + along * side["falls"], along, float(answer.y[0][-1])


def leg_on(leg, sides):
    l = leg["chord"]

    def pull(sag):
        return leg["initial"] + 8 / 3 * leg["EA"] * (sag / l) ** 2

    def too_much(sag):
        return sum(bay_of(leg, side, sag)[0] for side in sides) - 8 * sag * pull(sag) / l ** 2

    lowest = l * math.sqrt(max(0.0, -0.375 * leg["initial"] / leg["EA"]))
    sag = brentq(too_much, lowest, 0.2 * l, xtol=1e-12, rtol=1e-10)
    found = [bay_of(leg, side, sag) for side in sides]
    return {"tension": pull(sag), "sag": sag, "load": sum(f[0] for f in found), "along": found[0][1],
            "free_sag": found[0][2]}


def write(name, title, leg, sides, expected, source, quality, kind, how, note):
    """`expected`: {quantity: (value, tolerance, reason[, why it disagrees])}."""
    dimensions = {"chord": "m", "initial": "N", "EA": "N", "Et": "N/m", "shrunk": "N/m", "bay": "m", "load": "Pa",
                  "curves": "1/m"}

    def given(values):
        return {k: f"{float(v)!r} {dimensions[k]}" if k in dimensions and k != "curves" else v
                for k, v in values.items()}

    numbers = []
    for quantity, (value, tolerance, reason, *why) in expected.items():
        numbers.append({"quantity": quantity, "printed": None, "value": float(f"{value:.9g}"),
                        "unrounded": float(f"{value:.9g}"), "unit": UNITS[quantity], "relative": tolerance,
                        "reason": reason} | ({"disagrees": why[0]} if why else {}))
    disagrees = any("disagrees" in n for n in numbers)
    case = {"id": name, "title": title, "kind": kind, "source": source, "how_read": how, "quality": quality,
            "note": note, "model": "film_on_strap", "input": given(leg) | {"beside": [given(s) for s in sides]},
            "expected": numbers, "status": "disagrees" if disagrees else "agrees"}
    CASES.mkdir(parents=True, exist_ok=True)
    (CASES / f"{name}.json").write_text(json.dumps(case, indent=1) + "\n", encoding="utf-8")
    print(name, {q: v[0] for q, v in expected.items()}, flush=True)


def sheet(name, title, leg, sides, near, why=None):
    """`near`: {quantity: tolerance}. A ridge that falls alone falls twice as much as its mean with the rail."""
    leg = LEG | leg
    sides = [BAY | s for s in sides]
    drawn = [s | {"ridge_falls": 2 * s["falls"], "rail_falls": 0.0} for s in sides]
    coarse, fine = (Sheet(leg, drawn, n, n).solve().answers() for n in (16, 32))
    moved = max(abs(coarse[k] / fine[k] - 1) for k in near)
    if fine["least_pull"] < 0:
        raise RuntimeError(f"{name}: film is pressed by {-fine['least_pull']} N/m")
    reason = "one shape of the sag, no shear, bays taken as long, a mean of the falls"
    write(name, title, leg, sides, {k: (fine[k], near[k], reason) + ((why,) if why else ()) for k in near},
          {"key": "film_sheet", "place": "elastic sheet over a cable, energy least, finite elements"},
          "F: numerical, not published", "independent", "independent program",
          "Our own example, run by validation/independent/film_on_strap.py. 32 x 32 quadrilaterals in half a bay; with "
          f"16 x 16 within {100 * moved:.1g} %. Least principal pull of the film {fine['least_pull']:.0f} N/m; it lies "
          f"on the leg at {fine['touches']} of {fine['of']} nodes. load: the even load with the same work on a parabola.")


def sheets():
    near = {"tension": 0.03, "sag": 0.03, "load": 0.05}
    sheet("FS-01", "film on a leg of a cross strap, soft strap", {}, [{}, {}], near)
    sheet("FS-02", "the same, stiff strap", {"EA": 600e3}, [{}, {}], near)
    sheet("FS-03", "the same, strap slack before", {"initial": -2000.0, "EA": 600e3}, [{}, {}], near)
    sheet("FS-04", "the same, strap tight before", {"initial": 3000.0}, [{}, {}], near)
    sheet("FS-05", "the same, stiff strap, bays of 6 m", {"EA": 600e3}, [{"bay": 6.0}] * 2, near)
    falls = {"falls": 0.1, "curves": -0.2 / 1.8}
    sheet("FS-06", "the same, stiff strap, ridge that hangs down in the bays", {"EA": 600e3}, [falls] * 2, near)
    sheet("FS-07", "the same, stiff strap, bays of 1 m and 2.5 m", {"EA": 600e3}, [{"bay": 1.0}, {"bay": 2.5}],
          {"tension": 0.06, "sag": 0.03, "load": 0.1})
    sheet("FS-08", "the same, stiff strap, bays of 0.5 m", {"EA": 600e3}, [{"bay": 0.5}] * 2,
          {"tension": 0.03, "load": 0.05},
          "on the safe side by a sixth: the bay is taken where it is long, and then limited to its whole load")


def equations():
    same = "the same equation; what the library leaves out is the end of the bay"
    source = {"key": "film_on_strap_bvp", "place": "collocation, quadrature and bracketed roots (SciPy)"}

    def case(name, title, leg, sides, near):
        leg, sides = LEG | leg, [BAY | s for s in sides]
        found = leg_on(leg, sides)
        write(name, title, leg, sides, {k: (v, near, same) for k, v in found.items()}, source,
              "F: numerical, not published", "independent", "independent program",
              "Our own example, run by validation/independent/film_on_strap.py. along, free_sag: of the first side.")

    case("FS-11", "equation of film on a leg, bays of 8 m", {}, [{"bay": 8.0}] * 2, 1e-6)
    case("FS-12", "the same, stiff strap, slack before", {"EA": 600e3, "initial": -2000.0}, [{"bay": 8.0}] * 2, 1e-6)
    uneven = [{"bay": 8.0, "load": 700.0, "strain": -0.001, "falls": 0.06, "curves": 0.02},
              {"bay": 6.0, "load": 300.0, "strain": 0.001, "falls": -0.02, "curves": -0.03}]
    case("FS-13", "the same, sides that differ, knee and curve", {"EA": 200e3}, uneven, 1e-6)
    case("FS-14", "the same, tight strap, light film", {"initial": 3000.0, "Et": 30e3, "shrunk": 20.0},
         [{"bay": 8.0}] * 2, 1e-6)
    case("FS-15", "the same, bays of 1.8 m", {}, [{}] * 2, 0.02)


def closed_forms():
    def case(name, title, leg, sides, expected, place, note, key="derived", how="closed form, derived"):
        write(name, title, LEG | leg, [BAY | s for s in sides], expected, {"key": key, "place": place},
              "E: closed form", "closed_form", how, note + " Run by validation/independent/film_on_strap.py.")

    # T3 - T_s0 T2 - EA (r l)2/24 = 0, r = p a
    r, T0, EA, l = 500.0 * 0.1, 400.0, 60e3, LEG["chord"]
    T = brentq(lambda t: t ** 3 - T0 * t ** 2 - EA * (r * l) ** 2 / 24, T0, 10 * T0 + 1e4, xtol=1e-12, rtol=1e-14)
    same = "the same cubic"
    case("FS-21", "legs close together carry the whole load, each as a parabolic cable", {}, [{"bay": 0.1}] * 2,
         {"tension": (T, 1e-8, same), "sag": (r * l * l / 8 / T, 1e-8, same), "load": (r, 1e-8, same)},
         "parabolic cable on an elastic chord, shallow", "T3 - T0 T2 - EA (r l)2/24 = 0 with r = p a.", "irvine",
         "from memory")

    # Film far from a leg that hangs lower: a strip that cannot contract.
    D, p, T0 = LEG["Et"] / (1 - LEG["nu"] ** 2), 500.0, LEG["shrunk"]
    T = brentq(lambda t: t ** 3 - T0 * t ** 2 - D * (p * l) ** 2 / 24, T0, 1e5, xtol=1e-12, rtol=1e-14)
    case("FS-22", "film far from a leg that carries nothing, a strip that cannot contract",
         {"initial": -5000.0, "EA": 60e3}, [{"bay": 2000.0}] * 2,
         {"free_sag": (p * l * l / 8 / T, 0.005, "bays of 2 km: the film is stretched a little where it climbs"),
          "along": (T0 + LEG["nu"] * (T - T0), 0.005, "bays of 2 km: the film is stretched a little where it climbs")},
         "parabolic cable on an elastic chord, shallow", "T3 - T0 T2 - E t/(1 - nu2) (p l)2/24 = 0; along the boat "
         "T0 + nu (T - T0).", "irvine", "from memory")

    # Taut film over a rigid line, w = 0 there and on the edges of a strip, T del2 w = -p: Fourier, odd n only,
    # presses sum of 8 p l/(pi n)2 sin(n pi s/l) tanh(n pi a/(2 l)); on a parabola it works as the even load below.
    n = np.arange(1, 2001, 2)
    p, bay = 1.0, 3.2
    load = 3 * 64 * p * l / math.pi ** 5 * np.sum(n ** -5.0 * np.tanh(n * math.pi * bay / 2 / l))
    assert abs(load / (186 * p * l * zeta(5) / math.pi ** 5) - 1) < 0.005
    case("FS-23", "taut film on a line that cannot give", {"shrunk": 5000.0, "initial": 1e9, "nu": 0.0},
         [{"bay": bay, "load": p}] * 2,
         {"load": (load, 0.01, "one shape of the sag, and bays of twice the chord taken as long")},
         "Poisson's equation in a rectangle, Fourier series",
         "load: the even load that works as much on a parabola: 192 p l/pi5 sum over odd n of tanh(n pi a/(2 l))/n5; "
         "186 zeta(5)/pi5 p l in long bays.")

    # A string of pull 4/5 T_0 on springs of 8 T_0/l2: 2 p sqrt(S/k).
    load = 2 * p * math.sqrt(0.8 * l * l / 8)
    case("FS-24", "string on springs over a support", {"shrunk": 5000.0, "initial": 1e9, "nu": 0.0},
         [{"bay": 80.0, "load": p}] * 2, {"load": (load, 1e-5, "the film hardly stretches under 1 Pa")},
         "S f'' = k f - p over a support: 2 p sqrt(S/k)",
         "S = 4/5 T_0, k = 8 T_0/l2; as a beam on an elastic foundation (Hetenyi), with a pull for its stiffness.")


if __name__ == "__main__":
    closed_forms()
    equations()
    sheets()
