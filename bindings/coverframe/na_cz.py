# SPDX-License-Identifier: BSD-3-Clause
# Written by bindings/tools/write_rules.py from the catalogue of rules; do not edit.
"""CSN EN 1991-1-3/Z1 (11/2006): one function for each rule.

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


def ground_load(*, zone: Any) -> Result:
    """Characteristic ground snow load, Czech Republic. CSN EN 1991-1-3/Z1 (11/2006), 4.1(1).

    s_k = 0.7, 1.0, 1.5, 2.0, 2.5, 3.0, 4.0 in zones I to VII; VIII refused.

    Parameters
    ----------
    zone
        zone: one of "I", "II", "III", "IV", "V", "VI", "VII", "VIII": snow zone of the map.

    How read: read on a page. snihnastrese.cz, Mapa snehovych oblasti.
    """
    value: Result = call("na_cz.ground_load", zone=zone)[0]
    return value
