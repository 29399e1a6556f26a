# SPDX-License-Identifier: BSD-3-Clause
"""Checks winter covers on boats under snow.

>>> import coverframe as cf
>>> a = cf.assess("plan.json")        # doctest: +SKIP
>>> a.outcome, a.governing            # doctest: +SKIP

The work can hurt people: a competent person judges the result, and local codes and licensed practice rule. See
`cautions`.
"""

from . import asce7_22, en1991_1_3, errors, film, plot, yearly_maxima
from ._core import version as __version__
from .assessment import Arrangement, Assessment, Finding, ForceRange, Situation, Term, assess, cautions
from .errors import Error, InputError, Problem, StateError
from .film import StripState, strip
from .plan import Plan, read_plan, schema

__all__ = [
    "Arrangement",
    "Assessment",
    "Error",
    "Finding",
    "ForceRange",
    "InputError",
    "Plan",
    "Problem",
    "Situation",
    "StateError",
    "StripState",
    "Term",
    "__version__",
    "asce7_22",
    "assess",
    "cautions",
    "en1991_1_3",
    "errors",
    "film",
    "plot",
    "read_plan",
    "schema",
    "strip",
    "yearly_maxima",
]
