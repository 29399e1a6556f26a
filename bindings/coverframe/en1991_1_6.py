# SPDX-License-Identifier: BSD-3-Clause
# Written by bindings/tools/write_rules.py from the catalogue of rules; do not edit.
"""EN 1991-1-6:2005: one function for each rule.

Every argument may be a number, an array, text with a unit or a pint quantity; arrays broadcast, words of a choice too.
The first item a rule does not cover raises `coverframe.InputError` whose ``where`` is its index ("/3"). Loads of roofs
are per horizontal area. `coverframe.rules.workings` lists how a number comes about.
"""

from __future__ import annotations

from typing import Any

from .rules import Result, call

__all__ = [
    "return_period",
]


def return_period(*, duration: Any = "longer", erection: Any = "again") -> Result:
    """Return period of snow for a structure that stands once. EN 1991-1-6:2005, 3.1, Table 3.1.

    n = 2 up to 3 days, 5 up to 3 months, 10 up to 1 year, 50 longer.

    Parameters
    ----------
    duration
        duration: one of "up to 3 days", "up to 3 months", "up to 1 year", "longer": how long it stands.
    erection
        erection: one of "once", "again": whether it is set up again.

    How read: from memory, sure. Table 3.1; that what is set up again is refused a short duration: EN 1990, Table
    2.1.
    """
    value: Result = call("en1991_1_6.return_period", duration=duration, erection=erection)[0]
    return value
