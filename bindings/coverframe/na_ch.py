# SPDX-License-Identifier: BSD-3-Clause
# Written by bindings/tools/write_rules.py from the catalogue of rules; do not edit.
"""SIA 261:2014: one function for each rule.

Every argument may be a number, an array, text with a unit or a pint quantity; arrays broadcast, words of a choice too.
The first item a rule does not cover raises `coverframe.InputError` whose ``where`` is its index ("/3"). Loads of roofs
are per horizontal area. `coverframe.rules.workings` lists how a number comes about.
"""

from __future__ import annotations

from typing import Any, NamedTuple

from .rules import Result, call

__all__ = [
    "GroundLoad",
    "ground_load",
]


class GroundLoad(NamedTuple):
    """Results of `ground_load`."""

    #: h_0 [m]: h + correction.
    reference_altitude_m: Result
    #: s_k [kPa]: max(0.4 [1 + (h_0/350)^2], 0.9).
    ground_snow_kpa: Result


def ground_load(*, altitude_m: Any, correction: Any) -> GroundLoad:
    """Characteristic ground snow load, Switzerland. SIA 261:2014, 5, Annex D.

    h_0 = h + correction; s_k = max(0.4 [1 + (h_0/350)^2], 0.9).

    Parameters
    ----------
    altitude_m
        h [m]: above sea level, 0 to 2000.
    correction
        correction: one of "-200 m", "0 m", "+200 m", "+400 m", "+500 m": of the altitude, from the map.

    How read: read in part. corrections and limit on a page (German Wikipedia), the formula from memory, sure.
    """
    return GroundLoad(*call("na_ch.ground_load", altitude_m=altitude_m, correction=correction))
