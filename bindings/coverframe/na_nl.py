# SPDX-License-Identifier: BSD-3-Clause
# Written by bindings/tools/write_rules.py from the catalogue of rules; do not edit.
"""NEN-EN 1991-1-3/NB: one function for each rule.

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


def ground_load() -> Result:
    """Characteristic ground snow load, Netherlands. NEN-EN 1991-1-3/NB, edition as read, 4.1(1).

    s_k = 0.7.

    How read: read on a page. beratung.bauforumstahl.de, column 197.
    """
    value: Result = call("na_nl.ground_load")[0]
    return value
