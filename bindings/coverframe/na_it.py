# SPDX-License-Identifier: BSD-3-Clause
# Written by bindings/tools/write_rules.py from the catalogue of rules; do not edit.
"""DM 17.01.2018: one function for each rule.

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
    """Characteristic ground snow load, Italy. DM 17.01.2018, 3.4.2.

    q_sk = to 200 m 1.50 I, 1.00 II, 0.60 III; above: I alpine 1.39 [1 + (A/728)^2], I mediterranean 1.35 [1 +
    (A/602)^2], II 0.85 [1 + (A/481)^2], III 0.51 [1 + (A/481)^2].

    Parameters
    ----------
    zone
        zone: one of "I alpine", "I mediterranean", "II", "III": snow zone of the map.
    altitude_m
        A [m]: above sea level, 0 to 1500.

    How read: read in part. on pages quoting the decree of 2008; that 2018 kept loads and formulas from memory,
    sure.
    """
    value: Result = call("na_it.ground_load", zone=zone, altitude_m=altitude_m)[0]
    return value
