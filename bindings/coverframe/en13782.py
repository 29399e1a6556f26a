# SPDX-License-Identifier: BSD-3-Clause
# Written by bindings/tools/write_rules.py from the catalogue of rules; do not edit.
"""EN 13782: one function for each rule.

Every argument may be a number, an array, text with a unit or a pint quantity; arrays broadcast, words of a choice too.
The first item a rule does not cover raises `coverframe.InputError` whose ``where`` is its index ("/3"). Loads of roofs
are per horizontal area. `coverframe.rules.workings` lists how a number comes about.
"""

from __future__ import annotations

from typing import Any, NamedTuple

from .rules import Result, call

__all__ = [
    "SimplifiedFactors",
    "reduced_snow_load",
    "simplified_factors",
]


def reduced_snow_load(*, clearing: Any = "none") -> Result:
    """Reduced snow load of a tent that somebody keeps cleared; never a default. EN 13782, edition as remembered,
    snow loads.

    s = 0.2 if the depth is kept to 8 cm; refused otherwise.

    Parameters
    ----------
    clearing
        clearing: one of "none", "depth to 8 cm": what somebody answers for.

    How read: from memory. the text could not be read.
    """
    value: Result = call("en13782.reduced_snow_load", clearing=clearing)[0]
    return value


class SimplifiedFactors(NamedTuple):
    """Results of `simplified_factors`."""

    #: gamma_G [-]: 1.35.
    permanent_factor: Result
    #: gamma_Q [-]: 1.5 on one variable action, 1.35 on each of several.
    variable_factor: Result


def simplified_factors(*, variable_actions: Any = "one") -> SimplifiedFactors:
    """Simplified partial factors of tents. EN 13782, edition as remembered, partial factors.

    gamma_G = 1.35; gamma_Q = 1.5 on one variable action, 1.35 on each of several.

    Parameters
    ----------
    variable_actions
        variable actions: one of "one", "several": how many act at once.

    How read: from memory. the text could not be read; the same set in the former ENV 1993.
    """
    return SimplifiedFactors(*call("en13782.simplified_factors", variable_actions=variable_actions))
