# SPDX-License-Identifier: BSD-3-Clause
"""Rules over arrays against the same formulas in NumPy, as ratios of one run.

    PYTHONPATH=build/run/python python validation/performance/rules.py [--write]

Three times are compared for each rule: ours; the formula in NumPy as it stands; and the formula in NumPy with what ours
does besides, the refusal of items outside the limits by index. The floor is the copy of as many bytes as the rule reads
and writes. With --write the table goes to validation/performance/rules.md.
"""

from __future__ import annotations

import argparse
import importlib
import os
import platform
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any, NamedTuple

import coverframe as cf
import numpy as np

#: Within so much two times are the same.
MARGIN = 1.05
SIZES = (100, 1_000, 10_000, 100_000, 1_000_000)
Array = Any
Work = Callable[[], Any]


def shortest(works: list[Work], rounds: int, least_seconds: float = 2e-5) -> list[float]:
    """Shortest time of each [s], by turns so that a busy moment meets all of them."""
    repeats, times = [], [np.inf] * len(works)
    for work in works:
        start = time.perf_counter()
        work()
        repeats.append(max(1, int(least_seconds / max(time.perf_counter() - start, 1e-9))))
    for _ in range(rounds):
        for k, work in enumerate(works):
            for _ in range(3):
                start = time.perf_counter()
                for _ in range(repeats[k]):
                    work()
                times[k] = min(times[k], (time.perf_counter() - start) / repeats[k])
    return [float(seconds) for seconds in times]


def guard(values: Array, low: float, high: float) -> None:
    bad = ~((values >= low) & (values <= high))
    if bad.any():
        raise ValueError(f"item {int(np.argmax(bad))} is outside {low} to {high}")


class Ratios(NamedTuple):
    case: Case
    size: int
    ours: float
    bare: float
    refusing: float
    floor: float


class Case:
    """A rule, the same in NumPy, its single values, and the limits of its arrays."""

    def __init__(self, rule: str, formula: Callable[..., Any], fixed: dict[str, Any], **limits: tuple[float, float]):
        self.rule, self.formula, self.fixed, self.limits = rule, formula, fixed, limits

    def arrays(self, size: int) -> dict[str, Array]:
        source = np.random.default_rng(1)
        return {key: source.uniform(low + 0.01 * (high - low), high, size) for key, (low, high) in self.limits.items()}

    def ratios(self, size: int, rounds: int) -> Ratios:
        arrays = self.arrays(size)
        columns = list(arrays.values())
        space, _, name = self.rule.partition(".")
        function = getattr(importlib.import_module(f"coverframe.{space}"), name)
        formula, keywords = self.formula, self.fixed | arrays

        def guarded() -> Array:
            for values, (low, high) in zip(columns, self.limits.values(), strict=True):
                guard(values, low, high)
            return formula(*columns)

        ours, theirs = function(**keywords), formula(*columns)
        results = ours if isinstance(ours, tuple) else (ours,)
        for one, other in zip(results, theirs if isinstance(theirs, tuple) else (theirs,), strict=True):
            np.testing.assert_allclose(one, np.broadcast_to(other, size), rtol=1e-9, atol=1e-12)
        moved = size * (len(columns) + len(results)) // 2 + 1
        from_, to = np.zeros(moved), np.zeros(moved)
        bare, copy = (lambda: formula(*columns)), (lambda: np.copyto(to, from_))
        return Ratios(self, size, *shortest([lambda: function(**keywords), bare, guarded, copy], rounds))


FT, PSF = 0.3048, 0.45359237 * 9.80665 / 0.3048**2 / 1e3
INCH, PCF = FT / 12.0, PSF / FT
SETTLED = cf.snowpack.layer_load(kind="settled", depth_m=1.0)


def gamma(p: Array) -> Array:
    return np.minimum(0.13 / PSF * p + 14.0, 30.0) * PCF


def height(p: Array, wind: Array, fetch_ft: float = 30.0) -> Array:
    weight = np.minimum(0.13 / PSF * p + 14.0, 30.0)
    return np.minimum(1.5 * np.sqrt((p / PSF) ** 0.74 * fetch_ft**0.70 * wind**1.7 / weight),
                      np.sqrt(p / PSF * fetch_ft / (4.0 * weight))) * FT  # fmt: skip


def gable(load: Array, p: Array, slope: Array) -> tuple[Array, ...]:
    drift, weight, run = height(p, 0.5), gamma(p), 1.0 / np.tan(np.radians(slope))
    root = np.sqrt(run)
    width = np.minimum(8.0 / 3.0 * root * drift, 30.0 * FT)
    return np.full_like(load, 30.0 * FT), weight, drift, run, 0.3 * load, drift * weight / root, width


def specified(s: Array, r: Array, c_w: Array, c_s: Array, c_a: Array) -> tuple[Array, ...]:
    snow = s * 0.8 * c_w * c_s * c_a
    rain = np.minimum(r, snow)
    return snow, rain, 1.15 * (snow + rain)


def overhang(s: Array, d: Array) -> tuple[Array, ...]:
    k = np.minimum(3.0 / d, 3.0 * d)
    return k, k * s**2 / 3.0


def reduced(period: Array) -> Array:
    return -np.log(-np.log1p(-1.0 / period))


def over_fifty(v: Array, period: Array) -> Array:
    a, b = np.sqrt(6.0) / np.pi, np.euler_gamma
    return (1.0 + v * a * (reduced(period) - b)) / (1.0 + v * a * (reduced(50.0) - b))


def sack(d: Array) -> Array:
    inches = d / INCH
    return np.where(inches <= 22.0, 0.90 * inches, 2.36 * inches - 31.9) * PSF


def drift_at(mu: Array, length: Array, x: Array) -> Array:
    return np.where(x < length, mu + (0.8 - mu) * x / length, 0.8)


EVEN = {"exposure_coefficient": 1.2, "thermal_coefficient": 1.0}
CASES = (
    Case("en1991_1_3.exceptional_drift_load", lambda s, mu: mu * s, {},
         ground_snow_kpa=(0.0, 5.0), shape_coefficient=(0.0, 4.0)),
    Case("en1991_1_3.roof_load", lambda s: 0.96 * s, EVEN | {"shape_coefficient": 0.8}, ground_snow_kpa=(0.0, 5.0)),
    Case("en1991_1_3.roof_load", lambda s, mu: mu * s * 1.2, EVEN,
         ground_snow_kpa=(0.0, 5.0), shape_coefficient=(0.0, 4.0)),
    Case("en1991_1_3.roof_load", lambda s, mu, e, t: mu * e * t * s, {}, ground_snow_kpa=(0.0, 5.0),
         shape_coefficient=(0.0, 4.0), exposure_coefficient=(0.5, 1.5), thermal_coefficient=(0.8, 1.4)),
    Case("en1991_1_3.shape_coefficient", lambda a: np.clip(0.8 * (60.0 - a) / 30.0, 0.0, 0.8), {"sliding": "free"},
         slope_deg=(0.0, 90.0)),
    Case("en1991_1_3.drift_coefficient_at", drift_at, {}, wall_coefficient=(0.8, 4.0), drift_length_m=(5.0, 15.0),
         distance_m=(0.0, 20.0)),
    Case("en1991_1_3.overhang", overhang, {}, roof_load_kpa=(0.0, 5.0), depth_m=(0.1, 2.0)),
    Case("asce7_16.flat_load", lambda p, e, t: 0.7 * e * t * p, {"importance_factor": 1.0},
         ground_snow_kpa=(0.0, 5.0), exposure_factor=(0.7, 1.2), thermal_factor=(0.85, 1.3)),
    Case("asce7_16.sloped_load", lambda p, c: p * c, {}, flat_load_kpa=(0.0, 5.0), slope_factor=(0.0, 1.0)),
    Case("asce7_16.slope_factor", lambda a: np.clip((70.0 - a) / 25.0, 0.0, 1.0),
         {"thermal_factor": 1.2, "surface": "other"}, slope_deg=(0.0, 90.0)),
    Case("asce7_16.unit_weight", gamma, {}, ground_snow_kpa=(0.0, 10.0)),
    Case("asce7_22.minimum_load", lambda p: np.minimum(p, 30.0 * PSF), {"risk_category": "II"},
         ground_snow_kpa=(0.0, 5.0)),
    Case("asce7_22.unbalanced_applies", lambda a: (a >= 2.38) & (a <= np.degrees(np.arctan(7.0 / 12.0))), {},
         slope_deg=(0.0, 90.0)),
    Case("asce7_22.drift_height", height, {"fetch_m": 30.0 * FT}, ground_snow_kpa=(0.5, 5.0), winter_wind=(0.25, 0.65)),
    Case("asce7_22.unbalanced_gable", gable, {"eave_to_ridge_m": 30.0 * FT, "winter_wind": 0.5},
         sloped_load_kpa=(0.0, 5.0), ground_snow_kpa=(0.5, 5.0), slope_deg=(2.4, 30.2)),
    Case("nbc2020.slope_factor", lambda a: np.clip((70.0 - a) / 40.0, 0.0, 1.0),
         {"surface": "other", "accumulation": "none"}, slope_deg=(0.0, 90.0)),
    Case("nbc2020.specified_load", specified, {"importance_factor": 1.15, "basic_factor": 0.8},
         ground_snow_kpa=(0.1, 5.0), rain_kpa=(0.0, 0.8), wind_factor=(0.5, 1.0), slope_factor=(0.0, 1.0),
         accumulation_factor=(1.0, 3.0)),
    Case("na_de.ground_load", lambda z: np.maximum(0.25 + 1.91 * ((z + 140.0) / 760.0) ** 2, 0.85), {"zone": "2"},
         altitude_m=(0.0, 1400.0)),
    Case("na_uk.ground_load", lambda z: 0.15 + 0.35 + (z - 100.0) / 525.0, {"zone": "3"}, altitude_m=(100.0, 500.0)),
    Case("iso4355.slope_coefficient", lambda a: np.sqrt(np.cos(np.radians(np.minimum(1.5 * a, 90.0)))),
         {"surface": "other"}, slope_deg=(0.0, 59.0)),
    Case("extremes.load_over_50_year_load", over_fifty, {"family": "gumbel"}, coefficient_of_variation=(0.1, 0.6),
         return_period_years=(5.0, 500.0)),
    Case("depth_relation.sack_sheikh_taheri_1986", sack, {}, depth_m=(0.0, 3.0)),
    Case("depth_relation.tobiasson_greatorex_1996", lambda d: 0.279 * (d / INCH) ** 1.36 * PSF, {}, depth_m=(0.0, 3.0)),
    Case("snowpack.layer_load", lambda d: tuple(one * d for one in SETTLED), {"kind": "settled"}, depth_m=(0.0, 3.0)),
)  # fmt: skip


def worst(rows: list[Ratios], size: int, other: Callable[[Ratios], float]) -> tuple[float, Ratios]:
    return max(((row.ours / other(row), row) for row in rows if row.size == size), key=lambda pair: pair[0])


def name_of(row: Ratios) -> str:
    return f"`{row.case.rule}`, {len(row.case.limits)} array{'s' if len(row.case.limits) > 1 else ''}"


def summary(rows: list[Ratios]) -> str:
    lines = [
        "| items | worst ours / NumPy that refuses | worst ours / NumPy | slower than bare NumPy |",
        "|---:|---|---|---:|",
    ]
    for size in SIZES:
        refusing, refusing_row = worst(rows, size, lambda row: row.refusing)
        bare, bare_row = worst(rows, size, lambda row: row.bare)
        here = [row for row in rows if row.size == size]
        slower = sum(row.ours > MARGIN * row.bare for row in here)
        lines.append(
            f"| {size:,} | {refusing:.2f}: {name_of(refusing_row)} | {bare:.2f}: {name_of(bare_row)} | "
            f"{slower} of {len(here)} |"
        )
    return "\n".join(lines)


def met(rows: list[Ratios]) -> str:
    """What the numbers say, in words."""
    refusing = [row for row in rows if row.ours > row.refusing]
    if refusing:
        first = "**Not met**: slower than NumPy that refuses are " + "; ".join(
            f"{name_of(row)} ({row.ours / row.refusing:.2f} at {row.size:,})" for row in refusing
        )
    else:
        first = "**Met**: no rule is slower than the same formula in NumPy with the same refusals, at any size"
    slower: dict[str, list[Ratios]] = {}
    for row in rows:
        if row.ours > MARGIN * row.bare:
            slower.setdefault(name_of(row), []).append(row)
    if not slower:
        return f"{first}. **Met**: none is slower than the bare formula, which looks at nothing."

    def ratios(found: list[Ratios]) -> str:
        return ", ".join(f"{row.ours / row.bare:.2f} at {row.size:,}" for row in found)

    listed = "; ".join(f"{name} ({ratios(found)})" for name, found in slower.items())
    return (
        f"{first}. **Not met**: by more than {round(100 * (MARGIN - 1))} % slower than the bare formula, which looks "
        f"at nothing and gives nonsense outside the rule, are {listed}."
    )


def table(rows: list[Ratios]) -> str:
    lines = [
        "| rule | arrays | items | ours [ns an item] | ours / NumPy | ours / NumPy that refuses | ours / copy |",
        "|---|---:|---:|---:|---:|---:|---:|",
    ]
    for row in rows:
        lines.append(
            f"| `{row.case.rule}` | {len(row.case.limits)} | {row.size:,} | {1e9 * row.ours / row.size:.2f} | "
            f"{row.ours / row.bare:.2f} | {row.ours / row.refusing:.2f} | {row.ours / row.floor:.2f} |"
        )
    return "\n".join(lines)


def measured(rounds: int, passes: int) -> list[Ratios]:
    """The shortest times of several passes over everything, so that no passing load on the machine counts."""
    best: dict[tuple[int, int], Ratios] = {}
    for _ in range(passes):
        for k, case in enumerate(CASES):
            for size in SIZES:
                new = case.ratios(size, rounds)
                old = best.get((k, size), new)
                times = [min(a, b) for a, b in zip(new[2:], old[2:], strict=True)]
                best[k, size] = Ratios(case, size, *times)
    return list(best.values())


def page(rows: list[Ratios]) -> str:
    least = 1e6 * min(row.ours for row in rows)
    python = f"Python {platform.python_version()}, NumPy {np.__version__}"
    machine = f"{platform.machine()}, {os.cpu_count()} processors, {python}"
    return f"""# Rules over arrays

Written by `validation/performance/rules.py --write`; do not edit. {machine}.
Shortest of many runs by turns in one process; the ratios travel better than the nanoseconds.

*NumPy* is the bare formula; *NumPy that refuses* also looks for items outside the limits of the arrays and names the
first one, as ours does in every call and for every argument; the *copy* moves as many bytes as the rule reads and
writes. Under 1 is faster. The cheapest call takes {least:.2f} microseconds, as much as one operation of NumPy: what NumPy
does in one or two operations it can do faster where arrays are small or lie in the cache, because it does not look at its
arguments. Arrays of other types, or that lie otherwise in memory, or that broadcast, are turned into numbers a block at
a time and cost little more; lists and text with units are converted item by item in Python first.

{met(rows)}

{summary(rows)}

{table(rows)}
"""


def main() -> None:
    parser = argparse.ArgumentParser(description="Rules over arrays against the same formulas in NumPy.")
    parser.add_argument("--write", action="store_true", help="write validation/performance/rules.md")
    parser.add_argument("--passes", type=int, default=5, help="how often everything is measured")
    options = parser.parse_args()
    text = page(measured(10, options.passes))
    print(text)
    if options.write:
        Path(__file__).with_suffix(".md").write_text(text, encoding="utf-8")


if __name__ == "__main__":
    main()
