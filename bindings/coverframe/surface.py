# SPDX-License-Identifier: BSD-3-Clause
"""The whole cover in one equilibrium: film as a surface, the frame under it, what it touches, the water on it.

The model is explained in film/surface.hpp. A second instead of a millisecond, so it is asked for by itself:

>>> import coverframe as cf
>>> cover = cf.surface.rig("plan.json", film_tension_n_per_m=150)     # doctest: +SKIP
>>> state = cover.load(snow_kpa=0.9, rain="to the brim")              # doctest: +SKIP
>>> for pond in state.ponds: print(pond)                              # doctest: +SKIP
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, Literal

import numpy as np
from numpy.typing import NDArray

from . import _core
from ._values import named, number, numbers, whole
from .errors import StateError, refuse
from .plan import Plan, PlanLike, plan_of

__all__ = ["Cover", "FilmLimit", "FirstTouch", "Obstacle", "Pond", "SurfaceState", "rig"]

Floats = NDArray[np.float64]

#: Kinds of water a cover can be asked about.
Rain = Literal["none", "to the brim"]

_STRETCH = ("taut", "wrinkled", "slack")


@dataclass(frozen=True, slots=True, eq=False, repr=False)
class Pond:
    """Water that stands on the film."""

    #: "between U2 and U3, port, 0.4 m aft of the windshield".
    place: str
    #: Of its deepest point [m].
    x_m: float
    y_m: float
    volume_m3: float
    weight_n: float
    depth_m: float
    #: Seen from above.
    area_m2: float
    #: Where it runs over.
    spills: str
    #: Obstacles under the water.
    reaches: tuple[str, ...]
    #: Its edge seen from above: lines of x, y [m].
    outline_m: tuple[Floats, ...]
    #: All of it in a sentence.
    sentence: str

    def __str__(self) -> str:
        return self.sentence

    def __repr__(self) -> str:
        return f"<coverframe.surface.Pond: {self.sentence}>"


def pond_told(*told: Any) -> Pond:
    """A pond from what the compiled part tells of it."""
    place, x, y, volume, weight, depth, area, spills, reaches, outline, sentence = told
    return Pond(place, x, y, volume, weight, depth, area, spills, tuple(reaches), tuple(outline), sentence)


@dataclass(frozen=True, slots=True, eq=False, repr=False)
class Obstacle:
    """An edge that the film must stay off, by its points under the film."""

    name: str
    #: Points by x, y, z [m].
    places_m: Floats
    #: Edge that each point stands for [m].
    length_m: Floats
    #: Height of the film over each [m].
    gap_m: Floats
    #: Of the film on each, per length of edge [N/m].
    force_n_per_m: Floats

    @property
    def force_n(self) -> float:
        """In all [N]."""
        return float(np.sum(self.force_n_per_m * self.length_m))

    @property
    def least_gap_m(self) -> float:
        """Infinite if no point lies under the film."""
        return float(np.min(self.gap_m, initial=np.inf))

    def __repr__(self) -> str:
        return f"<coverframe.surface.Obstacle {self.name}: gap {self.least_gap_m:.3g} m, force {self.force_n:.3g} N>"


@dataclass(frozen=True, slots=True)
class FirstTouch:
    """With how much of a snow load the film first touches an obstacle.

    A share at which no equilibrium is found counts as touched.
    """

    obstacle: str
    #: Share of the load; None if it does not touch.
    share: float | None
    #: "between U2 and U3, port"; "" if it does not touch.
    place: str


@dataclass(frozen=True, slots=True)
class FilmLimit:
    """How much of a snow load film and frame hold, and what ends it.

    The pull is that of single triangles: where film meets an obstacle or the end of a fan it grows as the mesh gets
    finer, so a torn place there is a warning to look at, not a strength.
    """

    #: "none" if they hold, "torn", or "no shape" if there is no equilibrium.
    end: str
    #: "converged", or why there is no equilibrium at `share`.
    status: str
    #: Greatest share of the load seen to hold.
    held: float
    #: Least one seen not to; None if they hold.
    share: float | None
    #: Where it gives out; "" if that is not known.
    place: str
    #: All of it in a sentence.
    sentence: str

    def __str__(self) -> str:
        return self.sentence


@dataclass(frozen=True, slots=True, eq=False, repr=False)
class SurfaceState:
    """One equilibrium of a cover. `n` nodes of the film, `t` triangles, `m` members of the frame."""

    #: "converged", or why there is no equilibrium to check against: "loose", "growing", "folded", "frame fails", ...
    status: str
    message: str
    #: Where there is none, where it gives out: "between U2 and U3, port"; "" otherwise.
    place: str
    #: Corners of the triangles, t by 3.
    triangles: NDArray[np.int32]
    #: Where the nodes are, n by 3 [m].
    places_m: Floats
    #: How far each node lies under its place on the shrunk cover without snow, n [m].
    drop_m: Floats
    #: Greatest pull of each triangle per width, and the pull across it, t [N/m].
    first_n_per_m: Floats
    second_n_per_m: Floats
    #: "taut", "wrinkled" or "slack", t.
    stretch: tuple[str, ...]
    #: Of each triangle against the level, t [deg].
    slope_deg: Floats
    #: Of water over each node, n [m].
    water_depth_m: Floats
    water_m3: float
    ponds: tuple[Pond, ...]
    obstacles: tuple[Obstacle, ...]
    #: Places where the ridge dips between two supports: bay, x [m], depth [m].
    ridge_dips: tuple[tuple[str, float, float], ...]
    #: Places where the film has lifted off the ridge: x, how far [m].
    ridge_lifts: tuple[tuple[float, float], ...]
    #: Where something buckled or snapped over before this balance was reached; "" if nothing did.
    snaps: str
    #: Name and axial force (tension positive) of each member, m [N].
    members: tuple[str, ...]
    axial_n: Floats
    #: Of the film on cross straps [N].
    on_straps_n: float
    #: Everything that presses down, and everything the boat holds up [N].
    vertical_load_n: float
    vertical_reaction_n: float
    #: Newton steps, and rounds of filling.
    iterations: int
    rounds: int

    @property
    def usable(self) -> bool:
        """Whether it is an equilibrium; other states are kept to be looked at, not to check against."""
        return self.status == "converged"

    @property
    def plan_area_m2(self) -> Floats:
        """Of each triangle, seen from above, t [m2]."""
        a, b, c = (self.places_m[self.triangles[:, k], :2] for k in range(3))
        u, v = b - a, c - a
        return np.asarray(np.abs(u[:, 0] * v[:, 1] - u[:, 1] * v[:, 0]) / 2)

    def slope_shares(self, *, holds_deg: float, sheds_deg: float) -> dict[str, float]:
        """Shares of the plan area: "sheds" from `sheds_deg` on, "holds" under `holds_deg`, "partly" between."""
        if not 0 <= holds_deg <= sheds_deg <= 90:
            raise refuse("film.survey.slope", "/holds_deg", holds_deg, "give 0 <= holds_deg <= sheds_deg <= 90")
        area = self.plan_area_m2
        whole = float(np.sum(area))
        sheds = float(np.sum(area[self.slope_deg >= sheds_deg])) / whole
        holds = float(np.sum(area[self.slope_deg < holds_deg])) / whole
        return {"sheds": sheds, "partly": 1 - sheds - holds, "holds": holds}

    def __repr__(self) -> str:
        said = self.message or f"{1000 * self.water_m3:.2g} L of water in {len(self.ponds)} hollows"
        return f"<coverframe.surface.SurfaceState of {len(self.triangles)} triangles: {self.status}, {said}>"


def state_told(told: dict[str, Any], triangles: NDArray[np.int32], shrunk: SurfaceState | None) -> SurfaceState:
    """A state from what the compiled part tells of it."""
    places = told["places"]
    still = shrunk is None or len(places) != len(shrunk.places_m)
    drop = np.zeros(len(places)) if still or shrunk is None else shrunk.places_m[:, 2] - places[:, 2]
    return SurfaceState(
        status=told["status"],
        message=told["message"],
        place=told["place"],
        triangles=triangles,
        places_m=places,
        drop_m=drop,
        first_n_per_m=told["first"],
        second_n_per_m=told["second"],
        stretch=tuple(_STRETCH[int(k)] for k in told["stretch"]),
        slope_deg=np.degrees(told["slope"]),
        water_depth_m=told["depth"] if len(told["depth"]) else np.zeros(len(places)),
        water_m3=told["water"],
        ponds=tuple(pond_told(*row) for row in told["ponds"]),
        obstacles=tuple(Obstacle(*row) for row in told["obstacles"]),
        ridge_dips=tuple(told["dips"]),
        ridge_lifts=tuple(told["lifts"]),
        snaps=told["snaps"],
        members=tuple(told["members"]),
        axial_n=told["axial"],
        on_straps_n=told["on_straps"],
        vertical_load_n=told["load"],
        vertical_reaction_n=told["reaction"],
        iterations=told["iterations"],
        rounds=told["rounds"],
    )


class Cover:
    """A plan with its film shrunk on. Made by `rig`."""

    def __init__(self, plan: Plan, handle: _core.Surface) -> None:
        self.plan = plan
        self._handle = handle
        self._triangles = handle.triangles
        self.ridge_nodes = np.asarray(handle.ridge)
        #: Shrunk, no snow.
        self.state = state_told(handle.state, self._triangles, None)

    def __repr__(self) -> str:
        triangles = len(self._triangles)
        return f"<coverframe.surface.Cover of {self.plan.title!r}: {triangles} triangles, {self.state.status}>"

    def load(
        self,
        *,
        snow_kpa: Any,
        rain: Rain = "none",
        rain_m: Any = None,
        permanent_factor: float = 1.0,
    ) -> SurfaceState:
        """Equilibrium under snow, and water if asked for.

        Parameters
        ----------
        snow_kpa
            Plan load, one for all or one a triangle [kPa], already multiplied by its factor. `snow_by_station` makes
            the second from loads by station.
        rain
            "to the brim" fills every hollow to where it runs over.
        rain_m
            Instead: depth of rain or melted snow over the plan, not negative [m].
        permanent_factor
            On the weight of film and frame, not negative.

        Raises
        ------
        InputError
            film.surface.loads (snow of 0 to 1000 kPa), argument.word, film.surface.stretch
        StateError
            film.surface.unusable, if the cover does not stand without snow
        """
        if not self.state.usable:
            raise StateError("film.surface.unusable", f"the cover does not stand without snow: {self.state.message}")
        kind = 2 if rain_m is not None else {"none": 0, "to the brim": 1}.get(rain, -1)
        if kind < 0:
            raise refuse("argument.word", "/rain", repr(rain), 'rain is "none" or "to the brim", or give rain_m')
        snow = self._loads(snow_kpa)
        rained = 0.0 if rain_m is None else number("rain_m", rain_m)
        factor = number("permanent_factor", permanent_factor)
        with named("snow_kpa", "rain_m"):
            told = self._handle.load(snow, kind, rained, factor)
        return state_told(told, self._triangles, self.state)

    def snow_by_station(self, *, x_m: Any, port_kpa: Any, starboard_kpa: Any) -> Floats:
        """Loads by station and side as loads over triangles, t [kPa]: straight between stations, the end values beyond.

        Parameters
        ----------
        x_m
            Of the stations, one or more, from bow to stern [m].
        port_kpa, starboard_kpa
            One a station [kPa].

        Raises
        ------
        InputError
            film.surface.loads
        """
        x, port, starboard = (np.atleast_1d(numbers(n, v)) for n, v in
                              (("x_m", x_m), ("port_kpa", port_kpa), ("starboard_kpa", starboard_kpa)))
        with named("x_m", "port_kpa", "starboard_kpa"):
            return np.asarray(self._handle.snow_by_station(x, port, starboard))

    def first_touches(self, *, snow_kpa: Any, most: float = 1.0) -> tuple[FirstTouch, ...]:
        """With how much of a load the film first touches each obstacle; without water, some ten equilibria each.

        Parameters
        ----------
        snow_kpa
            Plan load, one for all or one a triangle [kPa].
        most
            Greatest share of it looked at, over 0; shares are found to 1 % of this.

        Raises
        ------
        InputError
            film.survey.share, film.surface.loads
        """
        snow = self._loads(snow_kpa)
        share = number("most", most)
        with named("snow_kpa"):
            return tuple(FirstTouch(*row) for row in self._handle.first_touches(snow, share))

    def limit(self, *, snow_kpa: Any, strength_n_per_m: Any = None, most: float = 1.0) -> FilmLimit:
        """How much of a load film and frame hold without water, to 1 % of `most` times the load. Some ten equilibria.

        Parameters
        ----------
        snow_kpa
            Plan load, one for all or one a triangle [kPa].
        strength_n_per_m
            Pull per width at which the film is torn, over 0; without, strength times thickness of the plan [N/m].
        most
            Greatest share looked at, over 0.

        Raises
        ------
        InputError
            film.survey.share, film.survey.strength, film.surface.loads
        """
        snow = self._loads(snow_kpa)
        strength = None if strength_n_per_m is None else number("strength_n_per_m", strength_n_per_m)
        share = number("most", most)
        with named("snow_kpa", "strength_n_per_m"):
            return FilmLimit(*self._handle.limit(snow, strength, share))

    def _loads(self, snow_kpa: Any) -> Floats:
        snow = 1000 * numbers("snow_kpa", snow_kpa).ravel()
        if snow.size not in (1, len(self._triangles)):
            raise refuse("film.surface.loads", "/snow_kpa", snow.size, f"give 1 load or {len(self._triangles)}")
        return np.asarray(snow)


def rig(
    plan: PlanLike,
    *,
    film_tension_n_per_m: Any,
    spacing_m: Any = 0.2,
    rows: int = 12,
    strap_stiffness: Literal["low", "high"] = "low",
) -> Cover:
    """Tensions the straps and shrinks the film until it pulls with the given tension in all directions.

    Parameters
    ----------
    plan
        A plan, a dictionary laid out like a plan file, or the path of one.
    film_tension_n_per_m
        After shrinking, over 0 [N/m].
    spacing_m
        Of the columns of nodes along the ridge, 0.02 to 1 [m].
    rows
        Of triangles from ridge to rail, 2 to 200.
    strap_stiffness
        Which bound of the plan.

    Raises
    ------
    InputError
        Of the plan; film.surface.range, film.surface.obstacle, film.surface.stretch, film.mesh.rail, argument.word

    Returns
    -------
    Cover
        Look at ``cover.state.usable`` first.
    """
    if strap_stiffness not in ("low", "high"):
        raise refuse("argument.word", "/strap_stiffness", repr(strap_stiffness), 'give "low" or "high"')
    made = plan_of(plan)
    tension, spacing = number("film_tension_n_per_m", film_tension_n_per_m), number("spacing_m", spacing_m)
    count = whole("rows", rows)
    with named("film_tension_n_per_m", "spacing_m"):
        return Cover(made, _core.Surface(made._handle, tension, spacing, count, strap_stiffness == "high"))
