# SPDX-License-Identifier: BSD-3-Clause
"""An assessed cover once more with film as a surface, under every arrangement of its snow.

The models are explained in assess/surface.hpp and film/surface.hpp. Some seconds, so it is asked for by itself:

>>> import coverframe as cf
>>> seen = cf.survey(cf.assess("plan.json"))     # doctest: +SKIP
>>> seen.outcome, seen.worst.ponds               # doctest: +SKIP
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from . import _core
from ._values import named, number, whole
from .assessment import Assessment, Finding, findings_of
from .surface import Pond, SurfaceState, pond_told, state_told

if TYPE_CHECKING:
    import pandas as pd

__all__ = ["Look", "PartForce", "SupportOverStrap", "Survey", "Touch", "TouchLoad", "survey"]


@dataclass(frozen=True, slots=True)
class Touch:
    """How near the film comes to an obstacle, or how hard it rests on it."""

    obstacle: str
    #: Infinite if no part of it lies under the film [m].
    least_gap_m: float
    #: Clearance the plan asks for [m].
    needed_m: float
    #: In all [N].
    force_n: float
    #: Per length of edge [N/m].
    greatest_force_n_per_m: float


@dataclass(frozen=True, slots=True)
class Look:
    """The cover under one arrangement of snow, every hollow filled to the brim."""

    #: "no snow" or the name of the arrangement.
    arrangement: str
    #: "converged", or why there is no equilibrium.
    status: str
    message: str
    water_m3: float
    #: Most water first.
    ponds: tuple[Pond, ...]
    #: One an obstacle.
    touches: tuple[Touch, ...]
    #: Shares of the plan area: all snow leaves, some does, all stays.
    sheds: float
    partly: float
    holds: float
    #: Slope of the flattest film, and where: x, y.
    least_slope_deg: float
    least_slope_at_m: tuple[float, float]
    #: Places where the ridge dips between two supports: bay, x [m], depth [m].
    ridge_dips: tuple[tuple[str, float, float], ...]
    #: Places where the film has lifted off the ridge: x, how far [m].
    ridge_lifts: tuple[tuple[float, float], ...]
    #: Where something buckled or snapped over before this balance was reached; "" if nothing did.
    snaps: str

    @property
    def usable(self) -> bool:
        """Whether an equilibrium was found."""
        return self.status == "converged"


@dataclass(frozen=True, slots=True)
class SupportOverStrap:
    """How far a support behind an obstacle stands over where a tight strap over the obstacle would lie [m].

    Behind a windshield some 0.25 m (10 in) is usual (common practice, no source).
    """

    obstacle: str
    upright: str
    height_m: float


@dataclass(frozen=True, slots=True)
class PartForce:
    """What a part carries with film as strips and as a surface, without factors.

    Under the arrangement in which the surface exceeds the strips most. Band and belly straps: with factors, in such a
    situation, for rub rail and pretension do not grow with the snow.
    """

    #: "U2", "ridge, U1 to U2", "C1 port", "film, U1 to U2", "belly strap 1", "band".
    part: str
    #: "push", "tension" [N], "bending moment" [N m] or "pull" of the film [N/m]; "leg tension" of a belly strap,
    #: "band tension" [N], "lift" of a band that the rub rail alone holds [N/m].
    carried: str
    #: Of a cross strap, with the film lying on it.
    strips: float
    #: Water with it.
    surface: float
    #: Or the situation.
    arrangement: str
    #: Of band and belly straps, what is left of `surface` without the film that closes bow and stern; 0 of others.
    without_ends: float

    @property
    def excess(self) -> float:
        """What the surface brings more than the strips; 0 if it brings less [N], [N m] or [N/m]."""
        return max(0.0, self.surface - self.strips)


@dataclass(frozen=True, slots=True)
class TouchLoad:
    """With how much snow the film first touches an obstacle, under the arrangement in which it rests hardest."""

    obstacle: str
    #: Of the arrangement's snow.
    share: float
    #: "between U2 and U3, port".
    place: str
    arrangement: str
    #: Greatest on the cover when it touches [kPa].
    load_kpa: float


class Survey:
    """What `survey` found. The assessment it was made from is left as it was."""

    def __init__(self, assessment: Assessment, handle: _core.Surveyed) -> None:
        self.assessment = assessment
        self._handle = handle
        #: Slope from which the document or the plan counts on snow to leave [deg].
        self.shedding_deg = math.degrees(handle.shedding)
        #: First without snow, then in the order of the arrangements.
        self.looks: tuple[Look, ...] = tuple(_look(*row) for row in handle.looks)
        #: The look with most water, or the nearest to an obstacle.
        self.worst: Look = self.looks[handle.worst]
        self.supports = tuple(SupportOverStrap(*row) for row in handle.supports)
        #: One an obstacle the film comes to rest on.
        self.touched = tuple(TouchLoad(*row) for row in handle.touched)
        #: Of uprights, ridge bays and legs of cross straps, film bay by bay, belly straps and band.
        self.forces = tuple(PartForce(*row) for row in handle.forces)

    @property
    def findings(self) -> list[Finding]:
        """Of assessment and survey together, worst first."""
        return findings_of(self._handle.assessment)

    def to_frame(self) -> pd.DataFrame:
        """The findings as a DataFrame, worst first. Needs pandas."""
        import pandas as pd

        return pd.DataFrame(dict(self._handle.assessment.findings()))

    @property
    def outcome(self) -> str:
        """Of assessment and survey together: "satisfied", "exceeded" or "no equilibrium"."""
        return self._handle.assessment.outcome

    @property
    def exit_code(self) -> int:
        """0 satisfied, 1 exceeded, 3 no equilibrium."""
        return self._handle.assessment.exit_code

    @property
    def verdict(self) -> str:
        """One line: outcome, governing finding and situation."""
        return self._handle.assessment.verdict_line()

    @property
    def state(self) -> SurfaceState:
        """The surface in the worst look."""
        triangles = self._handle.triangles
        shrunk = state_told(self._handle.shrunk, triangles, None)
        return state_told(self._handle.pictured, triangles, shrunk)

    def text(self) -> str:
        """The report as plain text, the survey's findings among the others."""
        return self._handle.assessment.text()

    def json(self) -> str:
        """The whole assessment as JSON, the survey's findings among the others."""
        return self._handle.assessment.json()

    def job_sheet(self) -> str:
        """A self-contained HTML page to print, with a part on film as a surface."""
        return self._handle.job_sheet()

    def __repr__(self) -> str:
        return f"<coverframe.Survey of {self.assessment.plan.title!r}: {self.verdict}>"


def survey(assessment: Assessment, *, spacing_m: Any = 0.2, rows: int = 12) -> Survey:
    """Looks at every arrangement of an assessment with film as a surface, and judges the cover by that as well.

    Other threads go on while it computes.

    Parameters
    ----------
    assessment
        Of `assess`.
    spacing_m
        Of the columns of nodes along the ridge, 0.02 to 1 [m].
    rows
        Of triangles from ridge to rail, 2 to 200.

    Raises
    ------
    InputError
        film.surface.range, film.surface.obstacle, film.surface.stretch, film.mesh.rail
    """
    spacing, count = number("spacing_m", spacing_m), whole("rows", rows)
    with named("spacing_m"):
        return Survey(assessment, _core.Surveyed(assessment._handle, spacing, count))


def _look(*told: Any) -> Look:
    arrangement, status, message, water, ponds, touches, sheds, partly, holds, least, at, *rest = told
    dips, lifts, snaps = rest
    return Look(
        arrangement,
        status,
        message,
        water,
        tuple(pond_told(*row) for row in ponds),
        tuple(Touch(*row) for row in touches),
        sheds,
        partly,
        holds,
        math.degrees(least),
        (at[0], at[1]),
        tuple(dips),
        tuple(lifts),
        snaps,
    )
