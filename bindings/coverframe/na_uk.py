# SPDX-License-Identifier: BSD-3-Clause
# Written by bindings/tools/write_rules.py from the catalogue of rules; do not edit.
"""NA to BS EN 1991-1-3:2003: one function for each rule.

Every argument may be a number, an array, text with a unit or a pint quantity; arrays broadcast, words of a choice too.
The first item a rule does not cover raises `coverframe.InputError` whose ``where`` is its index ("/3"). Loads of roofs
are per horizontal area. `coverframe.rules.workings` lists how a number comes about.
"""

from __future__ import annotations

from typing import Any

from .rules import Result, call

__all__ = [
    "duopitch_drifted",
    "ground_load",
]


def duopitch_drifted(*, slope_deg: Any, sliding: Any = "prevented") -> Result:
    """Loaded slope of a duopitch roof, drifted; the other is empty. NA to BS EN 1991-1-3:2003, NA.2.18.

    mu_1 = 0.8 up to 15 deg, 0.8 + 0.4 (a - 15)/15 to 30, 1.2 (60 - a)/30 to 60, then 0; at least 0.8 if sliding is
    prevented.

    Parameters
    ----------
    slope_deg
        a [deg]: loaded slope, 0 to 90.
    sliding
        sliding: one of "free", "prevented": whether snow may leave.

    How read: read in part. one slope alone (New Steel Construction, AD 484) and 1.2 at 30 deg (a page that goes by
    BS 6399-3) on pages, the line from memory.
    """
    value: Result = call("na_uk.duopitch_drifted", slope_deg=slope_deg, sliding=sliding)[0]
    return value


def ground_load(*, zone: Any, altitude_m: Any) -> Result:
    """Characteristic ground snow load, United Kingdom. NA to BS EN 1991-1-3:2003, corrigendum 1, NA.2.8, Eq. NA.1.

    s_k = 0.15 + (0.1 Z + 0.05) + (A - 100)/525, Z the zone.

    Parameters
    ----------
    zone
        zone: one of "1", "2", "3", "4", "5": snow zone of the map.
    altitude_m
        A [m]: above sea level, 0 to 1500.

    How read: read on a page. a public copy; the first print of 2005 has A + 100, corrected in June 2007.
    """
    value: Result = call("na_uk.ground_load", zone=zone, altitude_m=altitude_m)[0]
    return value
