# SPDX-License-Identifier: BSD-3-Clause
"""Pictures of a cover with film as a surface. Every function draws on the Axes it is given, or on new ones, and returns
them. Needs matplotlib, which is imported when a function is called.

Seen from above: bow to the left, starboard at the top, both axes to the same scale. Water is blue and hatched,
obstacles are brown. A state that is no equilibrium is refused with StateError "film.surface.unusable".
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray

from .errors import StateError
from .plot import _axes
from .surface import Cover, SurfaceState

if TYPE_CHECKING:
    from matplotlib.axes import Axes

_OBSTACLE, _WATER, _RIDGE = "#8a5a2b", "#1f4e9c", "#1f3b4d"


def sag(cover: Cover, state: SurfaceState, *, ax: Axes | None = None) -> Axes:
    """How far the film lies under its place without snow, in steps [mm], with ponds and obstacles."""
    return _by_node(cover, state, 1e3 * state.drop_m, "film under its place without snow [mm]", "YlGnBu", ax)


def slopes(cover: Cover, state: SurfaceState, *, ax: Axes | None = None) -> Axes:
    """Slope of the loaded film against the level [deg]: pale is flat."""
    return _by_triangle(cover, state, state.slope_deg, "slope [deg]", "YlOrBr", ax)


def tension(cover: Cover, state: SurfaceState, *, ax: Axes | None = None) -> Axes:
    """Greatest pull of the film per width [N/m]. Dots: wrinkled, it pulls in one direction only; crosses: slack."""
    ax = _by_triangle(cover, state, state.first_n_per_m, "greatest pull [N/m]", "PuBuGn", ax)
    middle = state.places_m[state.triangles].mean(axis=1)
    words = np.array(state.stretch)
    for word, marker, size in (("wrinkled", ".", 2.0), ("slack", "x", 9.0)):
        at = words == word
        if np.any(at):
            ax.scatter(middle[at, 0], middle[at, 1], s=size, marker=marker, color="#333333", linewidths=0.7, label=word)
    if len(set(state.stretch)) > 1:
        ax.legend(frameon=False, fontsize="small", loc="upper left", borderaxespad=0.1)
    return ax


def water(cover: Cover, state: SurfaceState, *, ax: Axes | None = None) -> Axes:
    """Ponds with litres, on contours of height every 50 mm; the title names the obstacles the film rests on."""
    from matplotlib.tri import Triangulation

    _require(state)
    ax = _axes(ax)
    x, y, z = state.places_m.T
    low, high = float(z.min()), float(z.max())
    levels = np.arange(np.floor(low / 0.05), np.ceil(high / 0.05) + 1) * 0.05
    ax.tricontour(Triangulation(x, y, state.triangles), z, levels=levels, colors="#9a9a9a", linewidths=0.6)
    _boat(cover, state, ax)
    edge = float(np.abs(y).max())
    for pond in state.ponds:
        ax.annotate(
            f"{1e3 * pond.volume_m3:.2g} l",
            (pond.x_m, pond.y_m),
            xytext=(pond.x_m, (1.18 if pond.y_m >= 0 else -1.18) * edge),
            ha="center",
            va="center",
            fontsize="small",
            color=_WATER,
            arrowprops={"arrowstyle": "-", "color": _WATER, "linewidth": 0.8, "shrinkA": 1, "shrinkB": 2},
        )
    ax.set_ylim(-1.35 * edge, 1.35 * edge)
    touched = [f"{o.name} with {o.force_n:.0f} N" for o in state.obstacles if o.force_n > 0]
    title = f"{cover.plan.title}: {1e3 * state.water_m3:.2g} l of water on the film"
    if touched:
        title += "\nrests on " + ", ".join(touched)
    ax.set_title(title, fontsize="medium")
    return ax


def in_space(cover: Cover, state: SurfaceState, *, ax: Any = None) -> Any:
    """The film in three dimensions, coloured by how far it lies under its place without snow; obstacles as lines.
    Heights are drawn twice as large as lengths.

    `ax` has to be one of `projection="3d"`.
    """
    _require(state)
    if ax is None:
        import matplotlib.pyplot as plt

        ax = plt.figure(figsize=(9, 5), layout="constrained").add_subplot(projection="3d")
    x, y, z = state.places_m.T
    drop = 1e3 * state.drop_m[state.triangles].mean(axis=1)
    faces = ax.plot_trisurf(x, y, z, triangles=state.triangles, cmap="YlGnBu", linewidth=0.2, edgecolor="#5a6a70")
    faces.set_array(drop)
    faces.autoscale()
    ax.figure.colorbar(faces, ax=ax, shrink=0.6, label="under its place without snow [mm]")
    for obstacle in state.obstacles:
        if len(obstacle.places_m):
            ax.plot(*obstacle.places_m.T, color=_OBSTACLE, linewidth=2.0, label=obstacle.name)
    ax.set_box_aspect((np.ptp(x), np.ptp(y), 2 * np.ptp(z)), zoom=1.25)
    ax.set_yticks(np.unique(np.round([y.min(), 0.0, y.max()], 1)))
    ax.set_zticks(np.unique(np.round([z.min(), z.max()], 1)))
    ax.set_xlabel("x, aft [m]", labelpad=16)
    ax.set_ylabel("y [m]", labelpad=6)
    ax.set_zlabel("z, up [m]")
    ax.view_init(elev=32, azim=-125)
    ax.set_title(cover.plan.title, fontsize="medium")
    return ax


def _require(state: SurfaceState) -> None:
    if not state.usable:
        raise StateError("film.surface.unusable", f"the cover is in no equilibrium: {state.message}")


def _by_node(
    cover: Cover, state: SurfaceState, values: NDArray[np.float64], label: str, colours: str, ax: Axes | None
) -> Axes:
    from matplotlib.tri import Triangulation

    _require(state)
    ax = _axes(ax)
    x, y, _ = state.places_m.T
    filled = ax.tricontourf(Triangulation(x, y, state.triangles), values, levels=10, cmap=colours)
    ax.figure.colorbar(filled, ax=ax, label=label, shrink=0.7, format="%.3g")
    _boat(cover, state, ax)
    at = int(np.argmax(values))
    ax.plot(x[at], y[at], "o", color="#b0413e", markersize=4, label=f"most: {values[at]:.0f}")
    ax.legend(frameon=False, fontsize="small", loc="upper left", borderaxespad=0.1)
    ax.set_title(cover.plan.title, fontsize="medium")
    return ax


def _by_triangle(
    cover: Cover, state: SurfaceState, values: NDArray[np.float64], label: str, colours: str, ax: Axes | None
) -> Axes:
    _require(state)
    ax = _axes(ax)
    x, y, _ = state.places_m.T
    faces = ax.tripcolor(x, y, state.triangles, facecolors=values, cmap=colours)
    ax.figure.colorbar(faces, ax=ax, label=label, shrink=0.7)
    _boat(cover, state, ax)
    ax.set_title(cover.plan.title, fontsize="medium")
    return ax


def _boat(cover: Cover, state: SurfaceState, ax: Axes) -> None:
    """Ridge, obstacles and ponds over whatever is drawn."""
    sides = np.sort(state.triangles[:, [0, 1, 1, 2, 2, 0]].reshape(-1, 2), axis=1)
    sides, times = np.unique(sides, axis=0, return_counts=True)
    for a, b in sides[times == 1]:
        ax.plot(state.places_m[[a, b], 0], state.places_m[[a, b], 1], color="#333333", linewidth=1.0)
    ridge = state.places_m[cover.ridge_nodes]
    ax.plot(ridge[:, 0], ridge[:, 1], color=_RIDGE, linewidth=1.2)
    for obstacle in state.obstacles:
        if len(obstacle.places_m):
            ax.plot(obstacle.places_m[:, 0], obstacle.places_m[:, 1], color=_OBSTACLE, linewidth=1.8)
    for pond in state.ponds:
        for line in pond.outline_m:
            ax.fill(line[:, 0], line[:, 1], facecolor="#9db8de", edgecolor=_WATER, hatch="///", linewidth=1.0, zorder=4)
    ax.set_aspect("equal")
    ax.set_xlabel("x, aft from the stem head [m]")
    ax.set_ylabel("y, to starboard [m]")
