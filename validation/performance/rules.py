# SPDX-License-Identifier: BSD-3-Clause
"""Rules over arrays against the same formulas in NumPy, as ratios of one run.

    PYTHONPATH=build/run/python python validation/performance/rules.py [--write]

Three times are compared for each rule: ours; the formula in NumPy as it stands; and the formula in NumPy with what ours
does besides, the refusal of items outside the limits by index. The floor is the copy of as many bytes as the rule reads
and writes. With --write the table goes to validation/performance/rules.md.
"""

from __future__ import annotations

import argparse
import os
import platform
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import coverframe as cf
import numpy as np

SIZES = (1_000, 100_000, 1_000_000)
Array = Any


def best(work: Callable[[], Any], least_seconds: float = 0.05) -> float:
    """Shortest time of many runs [s]."""
    fastest, spent, runs = np.inf, 0.0, 0
    while spent < least_seconds or runs < 7:
        start = time.perf_counter()
        work()
        took = time.perf_counter() - start
        fastest, spent, runs = min(fastest, took), spent + took, runs + 1
    return float(fastest)


def guard(values: Array, low: float, high: float) -> None:
    bad = ~((values >= low) & (values <= high))
    if bad.any():
        raise ValueError(f"item {int(np.argmax(bad))} is outside {low} to {high}")


class Case:
    """A rule, the same in NumPy, and the limits of its arrays."""

    def __init__(self, rule: str, formula: Callable[..., Array], fixed: dict[str, Any], **limits: tuple[float, float]):
        self.rule, self.formula, self.fixed, self.limits = rule, formula, fixed, limits

    def arrays(self, size: int) -> dict[str, Array]:
        source = np.random.default_rng(1)
        return {keyword: source.uniform(low + 0.01 * (high - low), high, size) for keyword, (low, high) in self.limits.items()}

    def times(self, size: int) -> tuple[float, float, float, float]:
        arrays = self.arrays(size)
        columns = list(arrays.values())
        function = cf.rules.rule(self.rule)

        def guarded() -> Array:
            for values, (low, high) in zip(columns, self.limits.values(), strict=True):
                guard(values, low, high)
            return self.formula(*columns)

        ours = cf.rules.call(function, **self.fixed, **arrays)
        np.testing.assert_allclose(ours[-1], self.formula(*columns), rtol=1e-9, atol=1e-12)
        from_, to = np.zeros(size * (len(columns) + 1) // 2 + 1), np.zeros(size * (len(columns) + 1) // 2 + 1)
        return (
            best(lambda: cf.rules.call(function, **self.fixed, **arrays)),
            best(lambda: self.formula(*columns)),
            best(guarded),
            best(lambda: np.copyto(to, from_)),
        )


FT, PSF = 0.3048, 0.45359237 * 9.80665 / 0.3048**2 / 1e3


def sloped(slope: Array) -> Array:
    return np.clip((70.0 - slope) / 25.0, 0.0, 1.0)


CASES = (
    Case("en1991_1_3.roof_load", lambda s, mu: mu * s * 1.2, {"exposure_coefficient": 1.2, "thermal_coefficient": 1.0},
         ground_snow_kpa=(0.0, 5.0), shape_coefficient=(0.0, 4.0)),
    Case("en1991_1_3.shape_coefficient", lambda a: np.clip(0.8 * (60.0 - a) / 30.0, 0.0, 0.8), {"sliding": "free"},
         slope_deg=(0.0, 90.0)),
    Case("asce7_16.flat_load", lambda p, e, t: 0.7 * e * t * p, {"importance_factor": 1.0},
         ground_snow_kpa=(0.0, 5.0), exposure_factor=(0.7, 1.2), thermal_factor=(0.85, 1.3)),
    Case("asce7_16.slope_factor", sloped, {"thermal_factor": 1.2, "surface": "other"}, slope_deg=(0.0, 90.0)),
    Case("asce7_16.unit_weight", lambda p: np.minimum(0.13 * p / PSF + 14.0, 30.0) * PSF / FT, {},
         ground_snow_kpa=(0.0, 10.0)),
    Case("nbc2020.slope_factor", lambda a: np.clip((70.0 - a) / 40.0, 0.0, 1.0),
         {"surface": "other", "accumulation": "none"}, slope_deg=(0.0, 90.0)),
    Case("na_de.ground_load", lambda z: np.maximum(0.25 + 1.91 * ((z + 140.0) / 760.0) ** 2, 0.85), {"zone": "2"},
         altitude_m=(0.0, 1400.0)),
    Case("depth_relation.tobiasson_greatorex_1996", lambda d: 0.279 * (d / 0.0254) ** 1.36 * PSF, {}, depth_m=(0.0, 3.0)),
    Case("asce7_22.drift_height",
         lambda p, w: FT * 1.5 * np.sqrt((p / PSF) ** 0.74 * 30.0**0.70 * w**1.7 / np.minimum(0.13 * p / PSF + 14.0, 30.0)),
         {"fetch_m": 30.0 * FT}, ground_snow_kpa=(0.5, 5.0), winter_wind=(0.2, 0.7)),
)  # fmt: skip


def table() -> str:
    lines = [
        "| rule | items | ours [ns an item] | ours / NumPy | ours / NumPy that refuses | ours / copy of its bytes |",
        "|---|---:|---:|---:|---:|---:|",
    ]
    for case in CASES:
        for size in SIZES:
            ours, bare, refusing, floor = case.times(size)
            lines.append(
                f"| `{case.rule}` | {size:,} | {1e9 * ours / size:.2f} | {ours / bare:.2f} | {ours / refusing:.2f} | "
                f"{ours / floor:.2f} |"
            )
    return "\n".join(lines)


def page(rows: str) -> str:
    machine = f"{platform.machine()}, {os.cpu_count()} processors, Python {platform.python_version()}, NumPy {np.__version__}"
    return f"""# Rules over arrays

Written by `validation/performance/rules.py --write`; do not edit. {machine}.
Shortest of many runs, all in one process; the ratios travel better than the nanoseconds.

*NumPy* is the bare formula; *NumPy that refuses* also looks for items outside the limits and names the first one, as ours
does for every call; the *copy* moves as many bytes as the rule reads and writes. Under 1 is faster. Small arrays show the
cost of a call, some ten microseconds for keywords, units and broadcasting. A product of two or three arrays is the case
in which the bare formula is faster: it does not look at its arguments.

{rows}
"""


def main() -> None:
    parser = argparse.ArgumentParser(description="Rules over arrays against the same formulas in NumPy.")
    parser.add_argument("--write", action="store_true", help="write validation/performance/rules.md")
    write = parser.parse_args().write
    text = page(table())
    print(text)
    if write:
        Path(__file__).with_suffix(".md").write_text(text, encoding="utf-8")


if __name__ == "__main__":
    main()
