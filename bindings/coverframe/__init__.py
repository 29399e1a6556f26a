# SPDX-License-Identifier: BSD-3-Clause
"""Checks winter covers on boats under snow.

>>> import coverframe as cf
>>> a = cf.assess("plan.json")        # doctest: +SKIP
>>> a.outcome, a.governing            # doctest: +SKIP

The work can hurt people: a competent person judges the result, and local codes and licensed practice rule. See
`cautions`.
"""

from . import (
    asce7_10,
    asce7_16,
    asce7_22,
    asce7_commentary,
    depth_relation,
    en13782,
    en1990,
    en1991_1_3,
    en1991_1_6,
    errors,
    extremes,
    film,
    frame,
    iso4355,
    na_at,
    na_ch,
    na_cz,
    na_de,
    na_fr,
    na_it,
    na_nl,
    na_pl,
    na_se,
    na_uk,
    nbc2015,
    nbc2020,
    plot,
    plot_frame,
    plot_surface,
    rules,
    snowpack,
    surface,
    yearly_maxima,
)
from ._core import version as __version__
from .assessment import Arrangement, Assessment, Finding, ForceRange, Situation, Term, assess, cautions
from .compare import ComparedDocument, GroundSnow, SnowComparison, compare_snow, load_by_slope
from .errors import Error, InputError, Problem, StateError
from .film import StripState, strip
from .plan import Plan, read_plan, schema
from .surface_survey import Look, Survey, survey

__all__ = [
    "Arrangement",
    "Assessment",
    "ComparedDocument",
    "Error",
    "Finding",
    "ForceRange",
    "GroundSnow",
    "InputError",
    "Look",
    "Plan",
    "Problem",
    "Situation",
    "SnowComparison",
    "StateError",
    "StripState",
    "Survey",
    "Term",
    "__version__",
    "asce7_10",
    "asce7_16",
    "asce7_22",
    "asce7_commentary",
    "assess",
    "cautions",
    "compare_snow",
    "depth_relation",
    "en13782",
    "en1990",
    "en1991_1_3",
    "en1991_1_6",
    "errors",
    "extremes",
    "film",
    "frame",
    "iso4355",
    "load_by_slope",
    "na_at",
    "na_ch",
    "na_cz",
    "na_de",
    "na_fr",
    "na_it",
    "na_nl",
    "na_pl",
    "na_se",
    "na_uk",
    "nbc2015",
    "nbc2020",
    "plot",
    "plot_frame",
    "plot_surface",
    "read_plan",
    "rules",
    "schema",
    "snowpack",
    "strip",
    "surface",
    "survey",
    "yearly_maxima",
]
