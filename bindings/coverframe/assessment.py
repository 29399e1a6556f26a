# SPDX-License-Identifier: BSD-3-Clause
"""The whole job in one call: plan in, findings out."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray

from . import _core
from ._values import Floats, numbers
from .errors import StateError, refuse
from .plan import Plan, PlanLike, plan_of, table_html

if TYPE_CHECKING:
    import pandas as pd

#: A column of a table: numbers as an array, words as a list.
Column = NDArray[Any] | list[str]

_PICKLE_FORMAT = 1


@dataclass(frozen=True, slots=True)
class Term:
    """One line of a working: enough to redo the number with a pocket calculator."""

    #: As the document writes it: "p_f".
    symbol: str
    #: In `unit`.
    value: float
    unit: str
    #: "0.7 C_e C_t p_g", or where the value was taken from.
    formula: str
    #: Empty for plain arithmetic.
    clause: str


@dataclass(frozen=True, slots=True)
class Finding:
    """The outcome of one check of one part in the situation that is worst for it."""

    #: Stable name of the check: "ridge.bending", "film.drainage".
    check: str
    #: "ridge between U1 and U2".
    part: str
    #: The rule that gives the capacity.
    clause: str
    #: Name of the governing situation.
    situation: str
    #: In `unit`.
    demand: float
    #: In `unit`.
    capacity: float
    #: SI unit of demand and capacity.
    unit: str
    #: Demand over capacity, or the interaction sum of the document; None if there is no capacity to divide by.
    utilisation: float | None
    #: "satisfied", "exceeded" or "not applicable".
    verdict: str
    #: One sentence a crew member can act on.
    sentence: str
    #: Where along the boat [m]; None if it is at no place.
    x_m: float | None
    #: Lines to redo the numbers by hand; empty unless asked for.
    workings: tuple[Term, ...] = field(repr=False)

    def __repr__(self) -> str:
        share = "none" if self.utilisation is None else f"{self.utilisation:.3g}"
        return f"<coverframe.Finding {self.check} of {self.part}: {self.verdict}, utilisation {share}>"


@dataclass(frozen=True, slots=True)
class Situation:
    """One situation the cover was judged in, and what came out of it."""

    name: str
    #: Name of the snow arrangement; "" without snow.
    arrangement: str
    #: "strength" (factored loads) or "service".
    limit: str
    permanent_factor: float
    snow_factor: float
    #: "low" or "high".
    film_tension: str
    #: "low" or "high".
    strap_stiffness: str
    #: "converged", or why there is no equilibrium.
    status: str
    #: What cannot stand, where and why; empty if converged.
    message: str
    vertical_load_n: float
    vertical_reaction_n: float
    #: Largest drop of the ridge line from its drawn place.
    ridge_sag_m: float
    #: Largest sag of a strip under its chord.
    film_sag_m: float


@dataclass(frozen=True, slots=True)
class ForceRange:
    """Smallest and largest value of a force in a part over all situations."""

    #: "U2", "C1 port", "ridge, bow to U1".
    part: str
    #: "push", "tension", "bending moment".
    quantity: str
    #: "N" or "N m".
    unit: str
    least: float
    least_in: str
    greatest: float
    greatest_in: str


@dataclass(frozen=True, slots=True, eq=False)
class Arrangement:
    """One arrangement of snow, before any load factor."""

    name: str
    clause: str
    #: What was read into the document for a boat cover; may be empty.
    note: str
    #: One a station [kPa]: the greatest load of the side, which its strips carry all over.
    port_kpa: Floats
    #: Likewise.
    starboard_kpa: Floats
    #: One a station: the load across the side, straight from row to row; share of the half breadth from the ridge (0)
    #: to the rail (1), and load [kPa]. Two rows at one share are a step.
    port_field: tuple[Floats, ...] = field(repr=False)
    #: Likewise.
    starboard_field: tuple[Floats, ...] = field(repr=False)
    #: For the station with the heaviest load.
    workings: tuple[Term, ...] = field(repr=False)


class Assessment:
    """What `assess` found. Unchangeable; every list, dictionary and array handed out is the caller's own.

    An assessment can be pickled: the plan and the options travel, and the cover is assessed again on arrival, which
    takes as long as it did the first time and gives the same numbers. Another version of coverframe refuses to do so.
    To send many results from one process to another, send ``columns()`` or ``json()``.
    """

    __slots__ = ("_handle", "_options", "_plan")
    _handle: _core.Assessment
    _plan: Plan
    _options: tuple[bool, float]

    def __init__(self) -> None:
        raise TypeError("an Assessment is made by coverframe.assess")

    @classmethod
    def _of(cls, plan: Plan, workings: bool, station_spacing_m: float) -> Assessment:
        made = cls.__new__(cls)
        made._plan = plan
        made._options = (workings, station_spacing_m)
        made._handle = _core.assess(plan._handle, workings, station_spacing_m)
        return made

    @property
    def plan(self) -> Plan:
        """What was judged."""
        return self._plan

    @property
    def outcome(self) -> str:
        """ "satisfied", "exceeded" or "no equilibrium"."""
        return self._handle.outcome

    @property
    def exit_code(self) -> int:
        """0 satisfied, 1 exceeded, 3 no equilibrium."""
        return self._handle.exit_code

    @property
    def verdict(self) -> str:
        """One line: outcome, governing finding and situation."""
        return self._handle.verdict_line()

    @property
    def findings(self) -> list[Finding]:
        """Worst first, one for each check and part."""
        return findings_of(self._handle)

    @property
    def governing(self) -> Finding | None:
        """The worst finding; None if there is none."""
        index = self._handle.governing_index()
        return None if index < 0 else self.findings[index]

    def columns(self) -> dict[str, Column]:
        """The findings as columns: arrays of numbers, lists of words.

        In ``utilisation`` and ``x_m``, NaN stands for "none", as NumPy and pandas have it.
        """
        return dict(self._handle.findings())

    def to_frame(self) -> pd.DataFrame:
        """The findings as a DataFrame, worst first. Needs pandas."""
        import pandas as pd

        return pd.DataFrame(self.columns())

    @property
    def situations(self) -> list[Situation]:
        """Every situation the cover was judged in."""
        return [Situation(**row) for row in _rows(self._handle.situations())]

    @property
    def forces(self) -> list[ForceRange]:
        """Smallest and largest force of every part."""
        return [ForceRange(**row) for row in _rows(self._handle.forces())]

    @property
    def arrangements(self) -> list[Arrangement]:
        """The arrangements of snow, one load a station."""
        return [
            Arrangement(*row[:5], tuple(row[5]), tuple(row[6]), workings=_terms(row[7]))
            for row in self._handle.arrangements()
        ]

    @property
    def stations(self) -> dict[str, Floats]:
        """Where the arrangements are given: ``x_m``, ``slope_deg`` and ``half_breadth_m``, as drawn."""
        return dict(self._handle.stations())

    @property
    def shape(self) -> dict[str, NDArray[Any]]:
        """The cover from bow to stern, drawn and in the situation `shape_of`.

        ``x_m``, ``half_breadth_m``, ``rail_z_m``, ``ridge_drawn_m``, ``ridge_loaded_m``, ``ridge_aside_m`` (to
        starboard), and for ``port`` and ``starboard`` each ``_span_m`` (0 where there is no strip), ``_rise_m``,
        ``_sag_m``, ``_level_force_n``, ``_tension_upper_n``, ``_tension_lower_n`` and ``_slack``. Forces are those of a
        whole strip.
        """
        return dict(self._handle.shape())

    @property
    def shape_of(self) -> str:
        """The service situation in which the film comes down furthest."""
        return self._handle.shape_of

    @property
    def failures(self) -> list[str]:
        """A sentence for each situation without equilibrium."""
        return self._handle.failures()

    @property
    def assumptions(self) -> list[str]:
        """What was simplified or read into a document, a sentence each."""
        return self._handle.assumptions()

    def text(self) -> str:
        """The report as plain text."""
        return self._handle.text()

    def json(self) -> str:
        """The whole assessment as JSON."""
        return self._handle.json()

    def job_sheet(self) -> str:
        """A self-contained HTML page to print."""
        return self._handle.job_sheet()

    def side_view(self, *, width_px: float = 720.0) -> str:
        """Boat and support from port, bow to the left, as SVG at most `width_px` wide."""
        return self._handle.side_view(_width(width_px))

    def plan_view(self, *, width_px: float = 720.0) -> str:
        """From above, bow to the left, as SVG at most `width_px` wide."""
        return self._handle.plan_view(_width(width_px))

    def section_view(self, *, width_px: float = 720.0) -> str:
        """Across the boat where the film comes closest to an obstacle, or sags most, as SVG at most `width_px` wide."""
        return self._handle.section_view(_width(width_px))

    def __reduce__(self) -> tuple[Any, ...]:
        return _unpickle, (_PICKLE_FORMAT, _core.version, self._plan, *self._options)

    def __repr__(self) -> str:
        return f"<coverframe.Assessment of {self._plan.title!r}: {self.verdict}>"

    def _repr_html_(self) -> str:
        head = ("check", "part", "clause", "demand", "capacity", "unit", "utilisation", "verdict")
        rows = [
            (
                f.check,
                f.part,
                f.clause,
                f"{f.demand:.4g}",
                f"{f.capacity:.4g}",
                f.unit,
                "" if f.utilisation is None else f"{f.utilisation:.3f}",
                f.verdict,
            )
            for f in self.findings
        ]
        return table_html(head, rows)


def assess(
    plan: PlanLike,
    *,
    workings: bool = True,
    station_spacing_m: Any = 0.25,
) -> Assessment:
    """Judges a cover: every situation of its documents, every check, every part.

    Other threads go on while it computes.

    Parameters
    ----------
    plan
        A `Plan`, a dictionary laid out like a plan file, or the path of a plan file.
    workings
        Whether findings carry the lines to redo them by hand.
    station_spacing_m
        Distance of the stations at which the film is looked at [m].

    Raises
    ------
    InputError
        With every problem of a plan that cannot be laid out.
    """
    spacing = numbers("station_spacing_m", station_spacing_m)
    if spacing.ndim != 0:
        raise refuse("argument.number", "/station_spacing_m", station_spacing_m, "station_spacing_m must be one number")
    return Assessment._of(plan_of(plan), bool(workings), float(spacing))


def cautions() -> list[str]:
    """The cautions that stand on top of every report, a sentence each."""
    return _core.cautions()


def _unpickle(format_number: int, version: str, plan: Plan, workings: bool, station_spacing_m: float) -> Assessment:
    if format_number != _PICKLE_FORMAT or version != _core.version:
        raise StateError(
            "assessment.pickle",
            f"pickled by coverframe {version} (format {format_number}), but this is {_core.version} (format"
            f" {_PICKLE_FORMAT}): assess the plan again",
        )
    return Assessment._of(plan, workings, station_spacing_m)


def findings_of(handle: _core.Assessment) -> list[Finding]:
    """Findings from what the compiled part tells of them."""
    rows = _rows(handle.findings())
    return [
        Finding(**_without_nan(row), workings=_terms(lines))
        for row, lines in zip(rows, handle.workings(), strict=True)
    ]


def _rows(columns: Mapping[str, Column]) -> list[dict[str, Any]]:
    lists = [column.tolist() if isinstance(column, np.ndarray) else column for column in columns.values()]
    return [dict(zip(columns, values, strict=True)) for values in zip(*lists, strict=True)]


def _without_nan(row: dict[str, Any]) -> dict[str, Any]:
    """None where a column has NaN for "none"."""
    return {key: None if value != value else value for key, value in row.items()}


def _terms(lines: list[tuple[str, float, str, str, str]]) -> tuple[Term, ...]:
    return tuple(Term(*line) for line in lines)


def _width(width_px: float) -> float:
    if not (isinstance(width_px, (int, float)) and 100 <= width_px <= 10000):
        raise refuse("argument.width", "/width_px", repr(width_px), "width_px must be a number from 100 to 10000")
    return float(width_px)
