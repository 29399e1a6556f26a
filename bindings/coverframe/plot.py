# SPDX-License-Identifier: BSD-3-Clause
"""Pictures of an assessment. Every function draws on the Axes it is given, or on new ones, and returns them. Needs
matplotlib, which is imported when a function is called."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from .assessment import Assessment

if TYPE_CHECKING:
    from matplotlib.axes import Axes

_BACKING = {"facecolor": "white", "edgecolor": "none", "pad": 0.6}
_COLOURS = {"satisfied": "#4d7f8c", "exceeded": "#b0413e"}


def _axes(ax: Axes | None) -> Axes:
    if ax is not None:
        return ax
    import matplotlib.pyplot as plt

    _, new = plt.subplots(layout="constrained")
    return new


def utilisation(assessment: Assessment, *, ax: Axes | None = None, limit: float = 1.0) -> Axes:
    """Utilisation of the worst part of every check, worst on top, with a line at `limit`.

    A check that has no utilisation is left out; an exceeded check whose capacity is nothing says so beside its name.
    """
    ax = _axes(ax)
    worst: dict[str, tuple[float | None, str]] = {}
    for finding in assessment.findings:  # worst first
        if finding.verdict in _COLOURS:
            worst.setdefault(finding.check, (finding.utilisation, finding.verdict))
    checks = list(worst)
    values = [worst[check][0] for check in checks]
    labels = [c if v is not None else f"{c} (no capacity)" for c, v in zip(checks, values, strict=True)]
    bars = ax.barh(labels, [v or 0.0 for v in values], color=[_COLOURS[worst[check][1]] for check in checks])
    ax.bar_label(bars, ["" if v is None else f"{v:.2f}" for v in values], padding=3, bbox=_BACKING)
    ax.axvline(limit, color="black", linewidth=1.0)
    ax.invert_yaxis()
    ax.margins(x=0.12)
    ax.set_xlabel("utilisation [-]")
    ax.set_title(f"{assessment.plan.title}: {assessment.outcome}", fontsize="medium")
    return ax


def ridge_line(assessment: Assessment, *, ax: Axes | None = None) -> Axes:
    """Ridge line drawn and loaded, and the rail, along the boat; true heights [m]."""
    ax = _axes(ax)
    shape = assessment.shape
    x, drawn, loaded = shape["x_m"], shape["ridge_drawn_m"], shape["ridge_loaded_m"]
    ax.plot(x, drawn, color="#e0a458", linewidth=1.0, zorder=3, label="ridge, drawn")
    ax.plot(x, loaded, color="#1f3b4d", linewidth=2.2, label="ridge, loaded")
    ax.plot(x, shape["rail_z_m"], color="#8a5a2b", linewidth=1.4, linestyle="--", label="rail")
    if x.size:
        at = int(np.argmax(drawn - loaded))
        drop = f"largest drop, {1e3 * (drawn[at] - loaded[at]):.0f} mm"
        ax.plot(x[at], loaded[at], "o", color="#b0413e", markersize=6, label=drop)
    ax.set_xlabel("x, aft from the stem head [m]")
    ax.set_ylabel("z [m]")
    ax.set_title(assessment.shape_of, fontsize="medium")
    ax.legend(frameon=False)
    return ax
