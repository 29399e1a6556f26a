# SPDX-License-Identifier: BSD-3-Clause
# Written by bindings/tools/write_rules.py from the catalogue of rules; do not edit.
"""EKS: one function for each rule.

Every argument may be a number, an array, text with a unit or a pint quantity; arrays broadcast, words of a choice too.
The first item a rule does not cover raises `coverframe.InputError` whose ``where`` is its index ("/3"). Loads of roofs
are per horizontal area. `coverframe.rules.workings` lists how a number comes about.
"""

from __future__ import annotations

from typing import Any

from .rules import Result, call

__all__ = [
    "mean_of_zones",
]


def mean_of_zones(*, site_zone_kpa: Any, neighbour_zone_kpa: Any) -> Result:
    """Ground snow load near the border of a higher zone, Sweden, by choice. EKS, edition as read, to EN 1991-1-3,
    4.1(1).

    s_k = (s_site + s_beyond)/2.

    Parameters
    ----------
    site_zone_kpa
        s_site [kPa]: load of the zone of the site, to 100.
    neighbour_zone_kpa
        s_beyond [kPa]: load of the zone beyond the border, not lower.

    How read: read on a page. boverket.se, Snolast pa mark.
    """
    value: Result = call(
        "na_se.mean_of_zones",
        site_zone_kpa=site_zone_kpa,
        neighbour_zone_kpa=neighbour_zone_kpa,
    )[0]
    return value
