# SPDX-License-Identifier: BSD-3-Clause
"""Film by the strip: sag and pull, water on it, the turn over the rail, what time and temperature make of it; and how
much of it a cover takes.

The models are explained in film/strip.hpp, film/ponding.hpp, film/rail.hpp, film/ageing.hpp and plan/girth.hpp.
Everything broadcasts.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from . import _core
from ._values import Floats, Numbers, columns, named, result
from .plan import PlanLike, plan_of

__all__ = [
    "FilmSheet",
    "Ponding",
    "RailTurn",
    "StripState",
    "girth",
    "modulus_after",
    "ponding",
    "sheet_needed",
    "span_at_limit",
    "stretch_left",
    "strip",
    "tension_after",
    "tension_warmed",
    "turn_over_rail",
]


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

    Raises
    ------
    InputError
        film.strip

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
    level, upper, lower, ridge, rail, sag, slack, depth, area = _core.strip(shape, args)
    return StripState(
        result(level),
        result(upper),
        result(lower),
        result(ridge),
        result(rail),
        result(sag),
        _truth(slack),
        result(depth),
        result(area),
    )


@dataclass(frozen=True, slots=True)
class RailTurn:
    """Film that turns over the rail and runs down to the band, per metre along the boat."""

    #: Angle by which it turns [deg].
    turn_deg: Numbers
    #: Pull on the band, least and greatest [N/m].
    band_pull_n_per_m: tuple[Numbers, Numbers]
    #: What lifts the band, least and greatest [N/m].
    band_lift_n_per_m: tuple[Numbers, Numbers]
    #: What the rail takes off the pull, least and greatest [N/m]; negative where the band keeps more than the film
    #: above.
    relief_n_per_m: tuple[Numbers, Numbers]
    #: On the rail without friction, down positive [N/m].
    rail_down_n_per_m: Numbers
    #: And inwards [N/m].
    rail_inwards_n_per_m: Numbers


def turn_over_rail(*, tension_n_per_m: Any, arrives_deg: Any, leaves_deg: Any = 90.0, friction: Any) -> RailTurn:
    """What of the film's pull reaches the band: T e^(-mu theta) to T e^(mu theta).

    Parameters
    ----------
    tension_n_per_m
        Of the film above the rail [N/m].
    arrives_deg
        Angle under the level at which it comes to the rail, -90 to 90 [deg].
    leaves_deg
        Angle under the level, outwards, at which it goes down the hull, to 180 [deg]. 90 is straight down.
    friction
        mu, 0 to 2. With mu unknown look at 0, and at 0.4 for a rough rail (from memory).

    Raises
    ------
    InputError
        film.rail.range

    Examples
    --------
    >>> turn = turn_over_rail(tension_n_per_m=300, arrives_deg=20, friction=[0.0, 0.4])
    >>> turn.band_pull_n_per_m[0].round(1).tolist()
    [300.0, 184.0]
    """
    shape, args = columns(
        tension_n_per_m=tension_n_per_m, arrives_deg=arrives_deg, leaves_deg=leaves_deg, friction=friction
    )
    turn, pull, most_pull, lift, most_lift, relief, most_relief, down, inwards = map(
        result, _core.over_rail(shape, args)
    )
    return RailTurn(turn, (pull, most_pull), (lift, most_lift), (relief, most_relief), down, inwards)


@dataclass(frozen=True, slots=True)
class Ponding:
    """Whether a strip drains, whether water on it would grow, and what would help. Floats, or arrays."""

    #: Under the chord at the middle [m].
    sag_m: Numbers
    #: Level part of the tension, loaded [N/m].
    tension_n_per_m: Numbers
    #: Level tension under which water over the whole span would sink it without end [N/m].
    critical_tension_n_per_m: Numbers
    #: Level tension with which water behind the lower edge settles, or does not gather [N/m].
    settling_tension_n_per_m: Numbers
    #: Longest span that its tension holds under water [m].
    longest_span_m: Numbers
    #: First criterion: the sag takes less slope at the rail than the chord has.
    drains: bool | NDArray[np.bool_]
    #: Second criterion: the tension is over the critical one.
    holds_water: bool | NDArray[np.bool_]
    #: Fall over the span with which it would drain [m]; its own if it does, infinite if none up to twice the span does.
    fall_needed_m: Numbers
    #: Tension before the load with which it would drain [N/m]; infinite if none up to twenty times as much does.
    tension_needed_n_per_m: Numbers
    #: Span of the same slope that would drain [m]; 0 if none does.
    span_needed_m: Numbers


def ponding(*, span_m: Any, fall_m: Any, load_kpa: Any, tension_n_per_m: Any, stiffness_n_per_m: Any) -> Ponding:
    """Both criteria of ponding for a strip between two fixed ends.

    Parameters
    ----------
    span_m
        Level distance of the ends [m].
    fall_m
        Of the lower end under the upper one, not negative [m].
    load_kpa
        Load per horizontal area, over 0 [kPa].
    tension_n_per_m
        Before the load [N/m]; negative where there is slack to take up first.
    stiffness_n_per_m
        E t/(1 - nu^2) of the film [N/m].

    Raises
    ------
    InputError
        film.ponding.range

    Examples
    --------
    >>> flat = ponding(span_m=1.4, fall_m=0.2, load_kpa=0.6, tension_n_per_m=150, stiffness_n_per_m=36e3)
    >>> flat.drains, round(float(flat.fall_needed_m), 2)
    (False, 0.47)
    """
    shape, args = columns(
        span_m=span_m,
        fall_m=fall_m,
        load_kpa=load_kpa,
        tension_n_per_m=tension_n_per_m,
        stiffness_n_per_m=stiffness_n_per_m,
    )
    sag, tension, critical, settling, longest, drains, holds, fall, needed, span = _core.ponding(shape, args)
    return Ponding(
        result(sag),
        result(tension),
        result(critical),
        result(settling),
        result(longest),
        _truth(drains),
        _truth(holds),
        result(fall),
        result(needed),
        result(span),
    )


def span_at_limit(*, stiffness_n_per_m: Any, tension_n_per_m: Any, limit_n_per_m: Any, load_kpa: Any) -> Numbers:
    """Level span at which a strip is pulled to `limit_n_per_m` by a load [m]: a load per area says nothing without it.

    Parameters
    ----------
    stiffness_n_per_m
        E t/(1 - nu^2) of the film [N/m].
    tension_n_per_m
        Before the load, under the limit [N/m].
    limit_n_per_m
        Tension it may have, strength times thickness [N/m].
    load_kpa
        Per horizontal area [kPa].

    Raises
    ------
    InputError
        film.strip
    """
    return _single(
        _core.span_at_limit,
        stiffness_n_per_m=stiffness_n_per_m,
        tension_n_per_m=tension_n_per_m,
        limit_n_per_m=limit_n_per_m,
        load_kpa=load_kpa,
    )


def modulus_after(*, modulus_kpa: Any, exponent: Any, known_after: Any, after: Any) -> Numbers:
    """Creep modulus E_1 (t/t_1)^-n [kPa].

    Parameters
    ----------
    modulus_kpa
        E_1, known `known_after` under load [kPa].
    exponent
        n of the film, 0 to 0.5. About 0.1 is where one may start (from memory, uncertain).
    known_after, after
        Times under load, over 0, in the same unit.

    Raises
    ------
    InputError
        film.ageing.range

    Examples
    --------
    A modulus known after a minute, after thirty days:

    >>> round(modulus_after(modulus_kpa="250 MPa", exponent=0.1, known_after=1, after=30 * 1440), -2)
    86000.0
    """
    return _single(
        _core.modulus_after,
        modulus_kpa=modulus_kpa,
        exponent=exponent,
        known_after=known_after,
        after=after,
    )


def tension_after(*, tension_n_per_m: Any, exponent: Any, known_after: Any, after: Any) -> Numbers:
    """What relaxation leaves of a tension, T_1 (t/t_1)^-n [N/m]. Arguments as `modulus_after`."""
    return _single(
        _core.tension_after,
        tension_n_per_m=tension_n_per_m,
        exponent=exponent,
        known_after=known_after,
        after=after,
    )


def tension_warmed(*, tension_n_per_m: Any, stiffness_n_per_m: Any, expansion: Any, warmer: Any) -> Numbers:
    """Tension of film held at its ends after its temperature has changed, not under 0 [N/m].

    Parameters
    ----------
    tension_n_per_m
        Before, not negative [N/m].
    stiffness_n_per_m
        E t at the new temperature [N/m].
    expansion
        alpha [1/K], 0 to 1e-3; 1e-4 to 2.2e-4 for low-density polyethylene (read on material pages).
    warmer
        Change of temperature, -100 to 100, negative when it gets colder [K].

    Raises
    ------
    InputError
        film.ageing.range
    """
    return _single(
        _core.tension_warmed,
        tension_n_per_m=tension_n_per_m,
        stiffness_n_per_m=stiffness_n_per_m,
        expansion=expansion,
        warmer=warmer,
    )


def stretch_left(
    *, tension_n_per_m: Any, stiffness_n_per_m: Any, exponent: Any, known_after: Any, after: Any
) -> Numbers:
    """Share by which film stays longer after carrying a tension for a time.

    `stiffness_n_per_m` is E t after `known_after` [N/m]; the rest as in `modulus_after`.
    """
    return _single(
        _core.stretch_left,
        tension_n_per_m=tension_n_per_m,
        stiffness_n_per_m=stiffness_n_per_m,
        exponent=exponent,
        known_after=known_after,
        after=after,
    )


def _single(rule: Callable[[tuple[int, ...], list[Floats]], tuple[Floats]], **keywords: Any) -> Numbers:
    """What a compiled rule of one result gives for keyword arguments."""
    shape, args = columns(**keywords)
    with named(*keywords):
        return result(rule(shape, args)[0])


def girth(plan: PlanLike, *, x_m: Any) -> Numbers:
    """Girth of a plan's cover, from edge to edge of the film with what is tucked under the band [m].

    Parameters
    ----------
    plan
        A plan, a dictionary laid out like a plan file, or a path.
    x_m
        Places along the boat, aft from the stem head, within the rail line [m].

    Raises
    ------
    InputError
        film.girth.range; with every problem of the plan

    Examples
    --------
    >>> girth("examples/plans/motor_boat.json", x_m=["0 ft", "12 ft"]).round(2).tolist()   # doctest: +SKIP
    [0.74, 4.04]
    """
    shape, (x,) = columns(x_m=x_m)
    return result(_core.girth(plan_of(plan)._handle, shape, x))


@dataclass(frozen=True, slots=True)
class FilmSheet:
    """The least sheet of film that covers a boat. Nothing is in it for pleats, seams and a sheet laid askew."""

    #: Across the boat, from edge to edge [m].
    width_m: float
    #: From bow to stern [m].
    length_m: float
    #: x of the widest place [m].
    widest_at_m: float
    #: That place in words: "at U2", "between U1 and U2".
    place: str


def sheet_needed(plan: PlanLike) -> FilmSheet:
    """The least sheet of film that reaches under the band all round.

    Raises
    ------
    InputError
        With every problem of the plan, a sheet it gives that is too small among them.
    """
    return FilmSheet(*_core.sheet_needed(plan_of(plan)._handle))


def _truth(flags: NDArray[np.float64]) -> bool | NDArray[np.bool_]:
    true = flags != 0.0
    return bool(true) if flags.ndim == 0 else true
