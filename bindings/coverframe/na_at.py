# SPDX-License-Identifier: BSD-3-Clause
# Written by bindings/tools/write_rules.py from the catalogue of rules; do not edit.
"""OENORM B 1991-1-3: one function for each rule.

Every argument may be a number, an array, text with a unit or a pint quantity; arrays broadcast, words of a choice too.
The first item a rule does not cover raises `coverframe.InputError` whose ``where`` is its index ("/3"). Loads of roofs
are per horizontal area. `coverframe.rules.workings` lists how a number comes about.
"""

from __future__ import annotations

from typing import Any

from .rules import Result, call

__all__ = [
    "ground_load",
]


def ground_load(*, zone: Any, altitude_m: Any) -> Result:
    """Characteristic ground snow load, Austria before 2022. OENORM B 1991-1-3, before 2022, 4.1(1).

    s_k = (0.642 Z + 0.009)[1 + (A/728)^2], Z = 1.6 in zone 2*, 2 in 2, 3 in 3, 4.5 in 4.

    Parameters
    ----------
    zone
        zone: one of "2*", "2", "3", "4": snow zone of the map.
    altitude_m
        A [m]: above sea level, 0 to 1500.

    How read: read in part. inferred from eight altitudes on a page (wissenwiki.de, Schneelastzonen).
    """
    value: Result = call("na_at.ground_load", zone=zone, altitude_m=altitude_m)[0]
    return value
