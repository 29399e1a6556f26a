# SPDX-License-Identifier: BSD-3-Clause
"""One strip of film between ridge and rail: a cable on an inclined chord. The model is explained in film/strip.hpp."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from . import _core
from ._values import Numbers, columns, result


@dataclass(frozen=True, slots=True)
class StripState:
    """A strip in equilibrium, per metre along the boat. Floats, or arrays of the shape of the arguments."""

    #: Level part of the tension, the same from end to end [N/m].
    level_force_n_per_m: Numbers
    #: Tension at the ridge [N/m].
    tension_upper_n_per_m: Numbers
    #: Tension at the rail [N/m].
    tension_lower_n_per_m: Numbers
    #: Vertical pull on the ridge, down positive [N/m]. More than half the load wherever the rail is the lower end.
    ridge_down_n_per_m: Numbers
    #: Vertical pull on the rail, down positive [N/m]; negative where the film lifts.
    rail_down_n_per_m: Numbers
    #: Under the chord at the middle [m].
    sag_m: Numbers
    #: Whether the strip hangs without tension.
    slack: bool | NDArray[np.bool_]
    #: Depth of the water the strip holds behind its lower edge, filled to the brim [m]; 0 if it drains.
    hollow_depth_m: Numbers
    #: Cross-section of that water [m2].
    hollow_area_m2: Numbers


def strip(*, span_m: Any, rise_m: Any, load_kpa: Any, tension_n_per_m: Any, stiffness_n_per_m: Any) -> StripState:
    """A strip shrunk between two fixed ends and then loaded.

    Parameters
    ----------
    span_m
        Level distance from ridge to rail [m].
    rise_m
        Height of the rail over the ridge [m], usually negative.
    load_kpa
        Load per horizontal area, down positive [kPa].
    tension_n_per_m
        Tension along the strip before the load [N/m].
    stiffness_n_per_m
        Stiffness E t/(1 - nu^2) of the film [N/m].

    Returns
    -------
    StripState

    Examples
    --------
    The level cable, against its cubic equation H^3 - T H^2 - EA (q L)^2/24 = 0:

    >>> state = strip(span_m=1.2, rise_m=0.0, load_kpa=0.5, tension_n_per_m=400.0, stiffness_n_per_m=45e3)
    >>> h = state.level_force_n_per_m
    >>> abs(h**3 - 400.0 * h**2 - 45e3 * 600.0**2 / 24) < 0.02 * h**3
    True
    """
    shape, args = columns(
        span_m=span_m,
        rise_m=rise_m,
        load_kpa=load_kpa,
        tension_n_per_m=tension_n_per_m,
        stiffness_n_per_m=stiffness_n_per_m,
    )
    level, upper, lower, ridge, rail, sag, slack, depth, area = _core.strip(shape, *args)
    loose = slack != 0.0
    return StripState(
        result(level),
        result(upper),
        result(lower),
        result(ridge),
        result(rail),
        result(sag),
        bool(loose) if slack.ndim == 0 else loose,
        result(depth),
        result(area),
    )
