# SPDX-License-Identifier: BSD-3-Clause
# Written by bindings/tools/write_rules.py from the catalogue of rules; do not edit.
"""NF EN 1991-1-3/NA: one function for each rule.

Every argument may be a number, an array, text with a unit or a pint quantity; arrays broadcast, words of a choice too.
The first item a rule does not cover raises `coverframe.InputError` whose ``where`` is its index ("/3"). Loads of roofs
are per horizontal area. `coverframe.rules.workings` lists how a number comes about.
"""

from __future__ import annotations

from typing import Any, NamedTuple

from .rules import Result, call

__all__ = [
    "GroundLoad",
    "exceptional_load",
    "ground_load",
    "low_slope_addition",
]


def exceptional_load(*, region: Any) -> Result:
    """Exceptional ground snow load, France, accidental. NF EN 1991-1-3/NA, edition as read, 4.3(1).

    s_Ad = 1.00 A2 B1, 1.35 B2 C2, 1.80 D; A1, C1 and E refused.

    Parameters
    ----------
    region
        region: one of "A1", "A2", "B1", "B2", "C1", "C2", "D", "E": snow region of the map.

    How read: read in part. regions on a page (scribd document 627038731), 1.00 in A2 with an example, the rest in
    part.
    """
    value: Result = call("na_fr.exceptional_load", region=region)[0]
    return value


class GroundLoad(NamedTuple):
    """Results of `ground_load`."""

    #: base [kPa]: 0.45 A1 A2, 0.55 B1 B2, 0.65 C1 C2, 0.90 D, 1.40 E.
    base_load_kpa: Result
    #: addition [kPa]: a = A/1000; all but E: 0 to 200 m, a - 0.20 to 500 m, 1.5 a - 0.45 to 1000 m, 3.5 a - 2.45 to
    #: 2000 m; E: 0, 1.5 a - 0.30, 3.5 a - 1.30, 7 a - 4.80.
    addition_kpa: Result
    #: s_k [kPa]: base + addition.
    ground_snow_kpa: Result


def ground_load(*, region: Any, altitude_m: Any) -> GroundLoad:
    """Characteristic ground snow load, France. NF EN 1991-1-3/NA, edition as read, 4.1(1).

    base = 0.45 A1 A2, 0.55 B1 B2, 0.65 C1 C2, 0.90 D, 1.40 E; addition = a = A/1000; all but E: 0 to 200 m, a -
    0.20 to 500 m, 1.5 a - 0.45 to 1000 m, 3.5 a - 2.45 to 2000 m; E: 0, 1.5 a - 0.30, 3.5 a - 1.30, 7 a - 4.80; s_k
    = base + addition.

    Parameters
    ----------
    region
        region: one of "A1", "A2", "B1", "B2", "C1", "C2", "D", "E": snow region of the map.
    altitude_m
        A [m]: above sea level, 0 to 2000.

    How read: read in part. base loads in part on pages (scribd document 627038731), altitude formulas from memory,
    sure.
    """
    return GroundLoad(*call("na_fr.ground_load", region=region, altitude_m=altitude_m))


def low_slope_addition(*, slope_deg: Any) -> Result:
    """Addition to the snow load of a low slope or a valley, France. NF EN 1991-1-3/NA, edition as read, 5.2.

    addition = 0.2 under 3 %, 0.1 from 3 to 5 %, else 0.

    Parameters
    ----------
    slope_deg
        slope [deg]: of the cover or the valley, 0 to 90.

    How read: read in part. 0.2 under 3 % on a solution sheet (a school page has 0.2 under 5 %), 0.1 from memory,
    sure.
    """
    value: Result = call("na_fr.low_slope_addition", slope_deg=slope_deg)[0]
    return value
