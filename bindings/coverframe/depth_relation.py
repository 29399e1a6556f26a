# SPDX-License-Identifier: BSD-3-Clause
# Written by bindings/tools/write_rules.py from the catalogue of rules; do not edit.
"""Sack and Sheikh-Taheri 1986, Schmidlin et al. 1992, Tobiasson and Greatorex 1996: one function for each rule.

Every argument may be a number, an array, text with a unit or a pint quantity; arrays broadcast, words of a choice too.
The first item a rule does not cover raises `coverframe.InputError` whose ``where`` is its index ("/3"). Loads of roofs
are per horizontal area. `coverframe.rules.workings` lists how a number comes about.
"""

from __future__ import annotations

from typing import Any

from .rules import Result, call

__all__ = [
    "sack_sheikh_taheri_1986",
    "schmidlin_1992",
    "tobiasson_greatorex_1996",
]


def sack_sheikh_taheri_1986(*, depth_m: Any) -> Result:
    """50-year ground load from the 50-year depth. Sack and Sheikh-Taheri 1986, 50-year depth to 50-year load.

    p_g = 0.90 h to 22 in, 2.36 h - 31.9 above, psf and inches.

    Parameters
    ----------
    depth_m
        h [m]: 50-year ground depth, 0 to 10.

    How read: from memory. Rocky Mountain sites.
    """
    value: Result = call("depth_relation.sack_sheikh_taheri_1986", depth_m=depth_m)[0]
    return value


def schmidlin_1992(*, depth_m: Any) -> Result:
    """50-year ground load from the 50-year depth. Schmidlin et al. 1992, 50-year depth to 50-year load.

    p_g = 0.15 gamma_w h, gamma_w = 62.418 pcf.

    Parameters
    ----------
    depth_m
        h [m]: 50-year ground depth, 0 to 10.

    How read: read on a page. Ohio; J. Applied Meteorology 31 (1992), abstract.
    """
    value: Result = call("depth_relation.schmidlin_1992", depth_m=depth_m)[0]
    return value


def tobiasson_greatorex_1996(*, depth_m: Any) -> Result:
    """50-year ground load from the 50-year depth. Tobiasson and Greatorex 1996, 50-year depth to 50-year load.

    p_g = 0.279 h^1.36, psf and inches.

    Parameters
    ----------
    depth_m
        h [m]: 50-year ground depth, 0 to 10.

    How read: from memory, sure. stations of the United States.
    """
    value: Result = call("depth_relation.tobiasson_greatorex_1996", depth_m=depth_m)[0]
    return value
