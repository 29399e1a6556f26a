# SPDX-License-Identifier: BSD-3-Clause
"""The snow of several documents on one cover, side by side."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

import numpy as np

from . import _core
from ._values import Floats, choice, numbers
from .errors import refuse
from .plan import PlanLike, plan_of

if TYPE_CHECKING:
    import pandas as pd
    from matplotlib.axes import Axes

__all__ = ["DOCUMENTS", "ComparedDocument", "GroundSnow", "SnowComparison", "compare_snow", "load_by_slope"]

#: Factors on snow, leading action, for the strength of members: least and greatest, by document.
_FACTORS = _core.snow_factors()

#: Documents a ground load may belong to.
DOCUMENTS = tuple(_FACTORS)


@dataclass(frozen=True, slots=True)
class GroundSnow:
    """A ground snow load with what it means. It may stand for `ground_snow_kpa` in any rule of its own document, and is
    refused by the rules of every other.

    >>> import coverframe as cf
    >>> site = cf.GroundSnow("30 psf", "ASCE 7-16", source="invented", risk_category="II")
    >>> load = cf.asce7_16.flat_load(
    ...     ground_snow_kpa=site, exposure_factor=1.0, thermal_factor=1.2, importance_factor=1.0
    ... )
    >>> round(site.factored(load, 1.6), 3)
    1.931
    >>> cf.asce7_22.flat_load(ground_snow_kpa=site, exposure_factor=1.0, thermal_factor=1.2)
    Traceback (most recent call last):
        ...
    coverframe.errors.InputError: ground.document.mixed: ...
    """

    #: [kPa], or text with a unit.
    load: Any
    #: One of `DOCUMENTS`.
    document: str
    #: Who gave the value: authority, map, data set, yard record.
    source: str
    #: ASCE 7: "I" to "IV".
    risk_category: str = ""
    #: NBC: S_r, rain that goes with the snow [kPa], or text with a unit.
    rain: Any = None
    #: EN 1991-1-3: 5 to 1000; None is 50. ASCE 7-22 has none.
    return_period_years: int | None = None

    def __post_init__(self) -> None:
        choice("document", self.document, DOCUMENTS)
        object.__setattr__(self, "load", float(numbers("load_kpa", self.load)))
        if self.rain is not None:
            object.__setattr__(self, "rain", float(numbers("rain_kpa", self.rain)))

    @property
    def level(self) -> str:
        """ "strength" (factored already, for the risk category) or "characteristic" (a value of a return period)."""
        return "strength" if self.document == "ASCE 7-22" else "characteristic"

    def factored(self, load_kpa: Any, factor: float) -> Any:
        """A snow load that came from this ground load times a factor, refused unless the factor belongs to it."""
        low, high = _FACTORS[self.document]
        if not low <= factor <= high:
            wanted = f"{low:g}" if low == high else f"{low:g} to {high:g}"
            advice = (
                f"a ground load of {self.document} is at {self.level} level: its factor on snow for strength is "
                f"{wanted}, not {factor:g}"
            )
            raise refuse("ground.factor.mixed", "/factor", factor, advice)
        loads = numbers("load_kpa", load_kpa) * factor
        return float(loads) if loads.ndim == 0 else loads

    def _row(self) -> tuple[float, str, str, str, float | None, int | None]:
        return (self.load, self.document, self.risk_category, self.source, self.rain, self.return_period_years)


@dataclass(frozen=True, slots=True)
class ComparedDocument:
    """One document's snow on the cover."""

    document: str
    ground_snow_kpa: float
    ground_source: str
    exposure_factor: float
    thermal_factor: float
    #: Factor on snow for the strength of members.
    snow_factor: float
    #: Greatest balanced load on the cover.
    balanced_kpa: float
    #: Greatest load of any arrangement.
    greatest_kpa: float
    #: The arrangement it belongs to.
    greatest_in: str
    #: `greatest_kpa` times `snow_factor`.
    factored_kpa: float
    #: Slope from which the document counts on snow leaving.
    shedding_deg: float
    #: What was read into the document for a boat cover.
    notes: list[str]
    arrangement: list[str]
    clause: list[str]
    port_kpa: Floats
    starboard_kpa: Floats


@dataclass(frozen=True, slots=True)
class SnowComparison:
    """Every document, the plan's own first."""

    documents: tuple[ComparedDocument, ...]

    def table(self) -> pd.DataFrame:
        """One row a document."""
        import pandas as pd

        columns = (
            "document", "ground_snow_kpa", "exposure_factor", "thermal_factor", "balanced_kpa", "greatest_kpa",
            "greatest_in", "snow_factor", "factored_kpa", "shedding_deg",
        )  # fmt: skip
        return pd.DataFrame([[getattr(d, column) for column in columns] for d in self.documents], columns=list(columns))

    def arrangements(self) -> pd.DataFrame:
        """One row an arrangement, with its clause and the greatest load on each side."""
        import pandas as pd

        rows = [
            (d.document, *row)
            for d in self.documents
            for row in zip(d.arrangement, d.clause, d.port_kpa, d.starboard_kpa, strict=True)
        ]
        return pd.DataFrame(rows, columns=["document", "arrangement", "clause", "port_kpa", "starboard_kpa"])


def compare_snow(plan: PlanLike, others: Sequence[GroundSnow], *, station_spacing_m: float = 0.25) -> SnowComparison:
    """The loads of the plan's own document and of each other ground load's document on the same cover.

    What another document needs and the plan does not say is the safe choice for a cover: C_e (C_w) = 1.0; C_t = 1.2 by
    ASCE 7 and 1.0 by the others; W_2 = 0.65; importance category normal; the document's factor on snow, 1.5 in EN.
    """
    rows = _core.compare_snow(plan_of(plan)._handle, [ground._row() for ground in others], station_spacing_m)
    return SnowComparison(tuple(ComparedDocument(**row) for row in rows))


def load_by_slope(
    plan: PlanLike, *, slope_deg: Any, half_breadth_m: float, ground: GroundSnow | None = None
) -> dict[str, Floats]:
    """Greatest load of each arrangement over a range of slopes [kPa], by name of the arrangement.

    Parameters
    ----------
    plan
        Its snow document and choices, or those of `ground` if one is given.
    slope_deg
        Slopes of the cover [deg], 0 to 90.
    half_breadth_m
        Of the cover [m].
    """
    slopes = np.atleast_1d(numbers("slope_deg", slope_deg)).ravel()
    row = None if ground is None else ground._row()
    return dict(_core.load_by_slope(plan_of(plan)._handle, row, slopes, half_breadth_m))


def plot_load_by_slope(
    plan: PlanLike,
    grounds: Sequence[GroundSnow | None],
    *,
    half_breadth_m: float,
    factored: bool = False,
    ax: Axes | None = None,
) -> Axes:
    """Load against slope, one colour a document: balanced snow (thin) and the greatest of all arrangements (thick).

    A ground of None stands for the plan's own. With `factored` each load carries its document's factor on snow.
    """
    from .plot import _axes

    ax = _axes(ax)
    slopes = np.linspace(0.0, 90.0, 361)
    base = compare_snow(plan, [g for g in grounds if g is not None]).documents
    own, rest = base[0], iter(base[1:])
    for ground in grounds:
        document = own if ground is None else next(rest)
        factor = document.snow_factor if factored else 1.0
        loads = load_by_slope(plan, slope_deg=slopes, half_breadth_m=half_breadth_m, ground=ground)
        greatest = np.max(list(loads.values()), axis=0)
        (line,) = ax.plot(slopes, factor * greatest, linewidth=2.0, label=document.document)
        ax.plot(slopes, factor * loads["balanced"], linewidth=0.9, linestyle="--", color=line.get_color())
    ax.set_xlabel("slope of the cover [deg]")
    ax.set_ylabel("load times the factor on snow [kPa]" if factored else "load on the plan of the cover [kPa]")
    ax.set_xlim(0.0, 90.0)
    ax.set_ylim(bottom=0.0)
    ax.set_xticks(range(0, 91, 15))
    ax.legend(frameon=False, title="thick: heaviest arrangement\ndashed: balanced")
    return ax


