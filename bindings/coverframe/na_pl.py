# SPDX-License-Identifier: BSD-3-Clause
# Written by bindings/tools/write_rules.py from the catalogue of rules; do not edit.
"""PN-EN 1991-1-3:2005: one function for each rule.

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
    """Characteristic ground snow load, Poland. PN-EN 1991-1-3:2005, National Annex, 4.1(1).

    s_k = zone 1 max(0.007 A - 1.4, 0.70), 2 0.9, 3 max(0.006 A - 0.6, 1.2), 4 1.6, 5 max(0.93 exp(0.00134 A), 2.0).

    Parameters
    ----------
    zone
        zone: one of "1", "2", "3", "4", "5": snow zone of the map.
    altitude_m
        A [m]: above sea level, 0 to 1500.

    How read: read on a page. Silesian province office, Odsniezanie budynkow.
    """
    value: Result = call("na_pl.ground_load", zone=zone, altitude_m=altitude_m)[0]
    return value
