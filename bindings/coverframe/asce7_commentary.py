# SPDX-License-Identifier: BSD-3-Clause
# Written by bindings/tools/write_rules.py from the catalogue of rules; do not edit.
"""ASCE 7-10: one function for each rule.

Every argument may be a number, an array, text with a unit or a pint quantity; arrays broadcast, words of a choice too.
The first item a rule does not cover raises `coverframe.InputError` whose ``where`` is its index ("/3"). Loads of roofs
are per horizontal area. `coverframe.rules.workings` lists how a number comes about.
"""

from __future__ import annotations

from typing import Any

from .rules import Result, call

__all__ = [
    "to_50_years",
]


def to_50_years(*, return_period_years: Any) -> Result:
    """Multiplier from a ground load of another return period to one of 50 years. ASCE 7-10, commentary C7, other
    return periods.

    k = 1.82, 1.20, 1.15, 1.00, 0.82; p_50 = k p_T.

    Parameters
    ----------
    return_period_years
        T [-]: return period, one of 10, 25, 30, 50 or 100.

    How read: from memory, sure. 7-05 and 7-10; averages over the United States.
    """
    value: Result = call("asce7_commentary.to_50_years", return_period_years=return_period_years)[0]
    return value
