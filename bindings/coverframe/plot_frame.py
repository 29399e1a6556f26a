# SPDX-License-Identifier: BSD-3-Clause
"""Diagrams of a solved frame. Every function draws on the Axes it is given, or on new ones, and returns them. Needs
matplotlib, which is imported when a function is called.

Views: "side", from port, bow to the left; "plan", from above, bow to the left; "section", from astern, starboard to the
right. Both axes have the same scale. A state that is no equilibrium is refused with StateError
"frame.solution.unusable".
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray

from ._frame_model import Frame
from ._frame_state import Solution, require_usable
from ._values import Floats
from .errors import refuse
from .plot import _axes

if TYPE_CHECKING:
    from matplotlib.axes import Axes

_VIEWS = {
    "side": (0, 2, "x, aft [m]", "z, up [m]"),
    "plan": (0, 1, "x, aft [m]", "y, to starboard [m]"),
    "section": (1, 2, "y, to starboard [m]", "z, up [m]"),
}
_LOADED, _DRAWN, _TENSION, _PUSH, _IDLE = "#1f3b4d", "#e0a458", "#4d7f8c", "#8a5a2b", "#a3a3a3"
_WIDTHS = {"pole": 2.4, "upright": 2.0, "strap": 1.3, "bar": 1.6}
_LABEL: dict[str, Any] = {"fontsize": "small", "zorder": 6, "ha": "center", "va": "center"}
_BACKING: dict[str, Any] = {"facecolor": "white", "edgecolor": "none", "pad": 0.8, "alpha": 0.85}
#: Values under this share of the greatest one get no label, and labels keep this share of the picture apart.
_LEAST, _APART = 0.05, 0.07
#: The picture is at least this share of its size wide and high.
_LEAST_SIDE = 0.4


def deflected(
    solution: Solution, *, ax: Axes | None = None, view: str = "side", scale: float | None = None
) -> Axes:
    """The frame drawn (thin) and loaded (thick), with poles bent as their moments bend them.

    Displacements are drawn `scale` times as large as they are; None takes a round number that makes the largest one
    about a twelfth of the picture, and never less than 1. The legend says which. Slack straps and lifted uprights are
    dashed and grey. Triangles are nodes that the boat holds, squares
    feet, hollow and grey where they are lifted.
    """
    require_usable(solution)
    frame, sheet = solution.frame, _Sheet.of(solution.frame, view)
    if scale is not None and not (np.isfinite(scale) and scale > 0):
        raise refuse("argument.number", "/scale", repr(scale), "scale must be a number over 0")
    largest, where = _largest_move(solution)
    times = scale or _round_scale(sheet.size / 12, largest)
    ax = _axes(ax)
    for m, ends in enumerate(frame.ends_m):
        ax.plot(*sheet.on(ends).T, color=_DRAWN, linewidth=0.9, zorder=2)
        curve = sheet.on(_bent(solution, m, times))
        if solution.active[m]:
            ax.plot(*curve.T, color=_LOADED, linewidth=_WIDTHS[frame.kind[m]], zorder=3, solid_capstyle="round")
        else:
            ax.plot(*curve.T, color=_IDLE, linewidth=1.3, linestyle=(0, (4, 3)), zorder=3)
    _supports(ax, frame, sheet)
    _feet(ax, solution, sheet)
    ax.plot([], [], color=_DRAWN, linewidth=0.9, label="drawn")
    ax.plot([], [], color=_LOADED, linewidth=2.2, label=f"loaded, moves drawn {times:g} times")
    title = f"largest move {1e3 * largest:.3g} mm, of {where}"
    return _finished(ax, solution, sheet, title)


def axial(solution: Solution, *, ax: Axes | None = None, view: str = "side") -> Axes:
    """Axial forces as bands along the members, as wide as the force is large; values at the middle.

    Under a load along the member the force changes from end to end; the band is as wide as it is in the middle.
    """
    require_usable(solution)
    frame, sheet = solution.frame, _Sheet.of(solution.frame, view)
    ax = _axes(ax)
    greatest = float(np.abs(solution.axial_n).max())
    for m, ends in enumerate(frame.ends_m):
        flat = sheet.on(ends)
        force = float(solution.axial_n[m])
        _base(ax, flat, frame.kind[m] == "pole", bool(solution.active[m]))
        along = flat[1] - flat[0]
        length = float(np.hypot(*along))
        if greatest == 0 or abs(force) < 1e-9 * greatest or length < 1e-9 * sheet.size:
            continue
        half = 0.025 * sheet.size * abs(force) / greatest * np.array([-along[1], along[0]]) / length
        band = np.array([flat[0] + half, flat[1] + half, flat[1] - half, flat[0] - half])
        ax.fill(*band.T, color=_TENSION if force > 0 else _PUSH, alpha=0.75, linewidth=0, zorder=3)
    unit, factor = _unit("N", greatest)
    labels = []
    for run in _runs(frame, solution.axial_n, np.array(solution.active)):
        labels.append((float(solution.axial_n[run[0]]), sheet.middle(frame, run), np.zeros(2)))
    _label(ax, labels, sheet, greatest, factor)
    ax.fill([], [], color=_TENSION, alpha=0.75, label="pulls (+)")
    ax.fill([], [], color=_PUSH, alpha=0.75, label="pushes (-)")
    _supports(ax, frame, sheet)
    _feet(ax, solution, sheet)
    return _finished(ax, solution, sheet, f"axial force [{unit}]")


def shear(
    solution: Solution, *, ax: Axes | None = None, plane: str = "vertical", view: str | None = None
) -> Axes:
    """Shear force of the poles, up and down (`plane` "vertical") or "level"; positive where the moment grows from
    `from` to `to`, drawn upwards or to the side of the member's axis 2."""
    vertical = _is_vertical(plane)
    along = solution.shear_vertical_at if vertical else solution.shear_level_at
    name = "shear force, up and down" if vertical else "shear force, level"
    values = _Along(along(0.0), along(1.0), np.zeros(len(solution.axial_n)))
    return _diagram(solution, ax, vertical, view, values, 1.0, "N", name)


def moment(
    solution: Solution, *, ax: Axes | None = None, plane: str = "vertical", view: str | None = None
) -> Axes:
    """Bending moment of the poles, up and down (`plane` "vertical", sagging positive) or "level".

    It is drawn on the side of the pole that is stretched, with values at the extremes; a parabola under a load of the
    member. The view is "side" for the
    vertical plane and "plan" for the level one unless another is given.
    """
    vertical = _is_vertical(plane)
    if vertical:
        values = _Along.of(solution.moment_vertical_at)
    else:
        values = _Along.of(solution.moment_level_at)
    # A sagging moment stretches the lower side, a positive level one the side of axis 2.
    name = "bending moment, up and down" if vertical else "bending moment, level"
    return _diagram(solution, ax, vertical, view, values, -1.0 if vertical else 1.0, "N m", name)


@dataclass(frozen=True)
class _Along:
    """Values along every member: straight from `start` to `end`, and a parabola that is `bow` over it in the middle."""

    start: Floats
    end: Floats
    bow: Floats

    @staticmethod
    def of(at: Callable[[float], Floats]) -> _Along:
        start, end = at(0.0), at(1.0)
        return _Along(start, end, at(0.5) - (start + end) / 2)

    def at(self, m: int, share: Floats) -> Floats:
        line = (1 - share) * self.start[m] + share * self.end[m]
        return np.asarray(line + 4 * share * (1 - share) * self.bow[m], dtype=np.float64)

    def shares(self, m: int) -> Floats:
        """Where the diagram is drawn."""
        return np.linspace(0.0, 1.0, 17 if self.bow[m] != 0 else 2)

    def summit(self, m: int) -> float | None:
        """Share of the member at which the value is greatest or least, if that is between its ends."""
        bow = float(self.bow[m])
        if abs(bow) <= 1e-9 * max(abs(float(self.start[m])), abs(float(self.end[m]))) or bow == 0:
            return None
        share = 0.5 + float(self.end[m] - self.start[m]) / (8 * bow)
        return share if 0 < share < 1 else None


def _diagram(
    solution: Solution,
    ax: Axes | None,
    vertical: bool,
    view: str | None,
    values: _Along,
    side: float,
    unit: str,
    name: str,
) -> Axes:
    """Values along the poles, drawn across them towards `side` times their axis."""
    require_usable(solution)
    frame = solution.frame
    sheet = _Sheet.of(frame, view or ("side" if vertical else "plan"))
    ax = _axes(ax)
    poles = np.array([kind == "pole" for kind in frame.kind])
    summits = [(int(m), share) for m in np.flatnonzero(poles) if (share := values.summit(int(m))) is not None]
    tops = [float(values.at(m, np.array(share))) for m, share in summits]
    greatest = float(np.abs(np.concatenate([values.start[poles], values.end[poles], tops, [0.0]])).max())
    unit, factor = _unit(unit, greatest)
    towards = side * _member_axes(frame)[:, 2 if vertical else 1]
    per = 0.12 * sheet.size / greatest if greatest > 0 else 0.0

    def tip(m: int, share: Floats) -> Floats:
        flat = sheet.on(frame.ends_m[m])
        line = np.outer(1 - share, flat[0]) + np.outer(share, flat[1])
        return np.asarray(line + per * np.outer(values.at(m, share), sheet.on(towards[m])), dtype=np.float64)

    for m, ends in enumerate(frame.ends_m):
        flat = sheet.on(ends)
        _base(ax, flat, frame.kind[m] == "pole", bool(solution.active[m]))
        shares = values.shares(m)
        if poles[m] and float(np.abs(values.at(m, shares)).max()) > 1e-9 * greatest:
            area = np.concatenate([flat[:1], tip(m, shares), flat[1:]])
            ax.fill(*area.T, color=_TENSION, alpha=0.3, linewidth=0, zorder=2)
            ax.plot(*area.T, color=_TENSION, linewidth=0.9, zorder=3, solid_joinstyle="round")
    labels = []
    if np.array_equal(values.start, values.end) and not summits:
        for run in _largest_of_their_sign(frame, values.start, _runs(frame, values.start, poles)):
            push = sheet.on(towards[run[0]]) * np.sign(values.start[run[0]])
            places = np.concatenate([tip(m, np.array([0.0, 1.0])) for m in run])
            labels.append((float(values.start[run[0]]), np.asarray(places.mean(axis=0), dtype=np.float64), push))
    else:
        for m, share in [*_extremes(frame, values.start, values.end, poles), *summits]:
            value = float(values.at(m, np.array(float(share))))
            labels.append((value, tip(m, np.array([float(share)]))[0], sheet.on(towards[m]) * np.sign(value)))
    _label(ax, labels, sheet, greatest, factor)
    _supports(ax, frame, sheet)
    _feet(ax, solution, sheet)
    where = ", on the stretched side" if unit.endswith("m") else ""
    return _finished(ax, solution, sheet, f"{name} [{unit}]{where}")


@dataclass(frozen=True)
class _Sheet:
    """Which two of the three axes are seen, and how large the picture is [m]."""

    across: int
    up: int
    labels: tuple[str, str]
    size: float

    @staticmethod
    def of(frame: Frame, view: str) -> _Sheet:
        if view not in _VIEWS:
            names = ", ".join(repr(name) for name in _VIEWS)
            raise refuse("argument.choice", "/view", repr(view), f"view must be one of {names}, not {view!r}")
        across, up, below, beside = _VIEWS[view]
        extent = np.ptp(frame.nodes_m[:, [across, up]], axis=0)
        return _Sheet(across, up, (below, beside), float(np.hypot(*extent)) or 1.0)

    def on(self, places: Floats) -> Floats:
        """Places or directions in space as they are seen."""
        seen: Floats = np.take(places, [self.across, self.up], axis=-1)
        return seen

    def middle(self, frame: Frame, run: list[int]) -> Floats:
        """Middle of some members."""
        return np.asarray(self.on(frame.ends_m[run].reshape(-1, 3)).mean(axis=0), dtype=np.float64)


def _bent(solution: Solution, m: int, times: float) -> Floats:
    """Places along a member with its displacements `times` as large.

    Between the displaced ends a pole bends by w'' = M/EI, with M straight from end to end but for the parabola of its
    load, and w = 0 at both ends: the slopes at hinges and those of shear need not be known.
    """
    frame = solution.frame
    s = np.linspace(0.0, 1.0, 13 if frame.kind[m] == "pole" else 2)[:, np.newaxis]
    drawn = frame.ends_m[m]
    ends = drawn + times * (solution.ends_m[m] - drawn)
    places: Floats = (1 - s) * ends[0] + s * ends[1]
    if frame.kind[m] != "pole":
        return places
    _, across, up = _member_axes(frame)[m]
    at_from, at_to = (s**2 / 2 - s**3 / 6 - s / 3), (s**3 - s) / 6
    of_bow = (2 * s**3 - s**4 - s) / 3
    square = frame.drawn_length_m[m] ** 2
    up_down, level = _Along.of(solution.moment_vertical_at), _Along.of(solution.moment_level_at)
    sag = at_from * up_down.start[m] + at_to * up_down.end[m] + of_bow * up_down.bow[m]
    aside = at_from * level.start[m] + at_to * level.end[m] + of_bow * level.bow[m]
    places = places + times * square * sag / frame.ei_vertical_n_m2[m] * up
    places = places - times * square * aside / frame.ei_level_n_m2[m] * across
    return places


def _largest_move(solution: Solution) -> tuple[float, str]:
    """Of the nodes, and of poles that carry a load between theirs [m]; whose it is."""
    moves = np.linalg.norm(solution.displacement[:, :3], axis=1)
    node = int(np.argmax(moves))
    largest, where = float(moves[node]), solution.frame.node_names[node]
    for m in np.flatnonzero((solution.load_2_n != 0) | (solution.load_3_n != 0)):
        move = float(np.linalg.norm(_bent(solution, int(m), 1.0) - _bent(solution, int(m), 0.0), axis=1).max())
        if move > largest * (1 + 1e-9):
            largest, where = move, solution.frame.member_names[int(m)]
    return largest, where


def _member_axes(frame: Frame) -> Floats:
    """Axes 1, 2, 3 of each member, m by 3 by 3 (frame/frame.hpp)."""
    along = np.diff(frame.ends_m, axis=1)[:, 0]
    along = along / np.linalg.norm(along, axis=1)[:, np.newaxis]
    across = np.cross([0.0, 0.0, 1.0], along)
    size = np.linalg.norm(across, axis=1)[:, np.newaxis]
    across = np.where(size > 1e-6, across / np.maximum(size, 1e-6), [0.0, 1.0, 0.0])
    return np.stack([along, across, np.cross(along, across)], axis=1)


def _runs(frame: Frame, values: Floats, wanted: NDArray[np.bool_]) -> list[list[int]]:
    """Members in one line, end to end, that carry the same value to 2 % of the greatest: one label serves them all."""
    room = 0.02 * float(np.abs(values).max())
    axes = _member_axes(frame)[:, 0]
    run_of: dict[int, list[int]] = {}
    at_node: dict[int, list[int]] = {}
    for m in np.flatnonzero(wanted):
        run = [int(m)]
        for other in {o for node in frame.members[m] for o in at_node.get(int(node), [])}:
            like = frame.kind[other] == frame.kind[m] and abs(values[other] - values[m]) <= room
            if like and abs(axes[other] @ axes[m]) > 0.999 and run_of[other] is not run:
                run = run_of[other] + run
        for member in run:
            run_of[member] = run
        for node in frame.members[m]:
            at_node.setdefault(int(node), []).append(int(m))
    return list({id(run): run for run in run_of.values()}.values())


def _largest_of_their_sign(frame: Frame, values: Floats, runs: list[list[int]]) -> list[list[int]]:
    """Runs that no run of the same sign and a greater value touches."""
    greatest: dict[tuple[int, bool], float] = {}
    for run in runs:
        value = float(values[run[0]])
        for node in frame.members[run].ravel():
            key = (int(node), value > 0)
            greatest[key] = max(greatest.get(key, 0.0), abs(value))
    return [
        run
        for run in runs
        if all(
            abs(values[run[0]]) >= greatest[int(node), bool(values[run[0]] > 0)]
            for node in frame.members[run].ravel()
        )
    ]


def _extremes(frame: Frame, start: Floats, end: Floats, poles: NDArray[np.bool_]) -> list[tuple[int, int]]:
    """Ends of poles (member, 0 or 1) whose value is no smaller than at the far end of every pole that meets there."""
    far: dict[int, float] = {}
    for m in np.flatnonzero(poles):
        for node, value in zip(frame.members[m], (end[m], start[m]), strict=True):
            far[int(node)] = max(far.get(int(node), 0.0), abs(float(value)))
    return [
        (int(m), which)
        for m in np.flatnonzero(poles)
        for which, value in enumerate((start[m], end[m]))
        if abs(float(value)) >= far[int(frame.members[m][which])] * (1 - 1e-9)
    ]


def _label(
    ax: Axes, labels: list[tuple[float, Floats, Floats]], sheet: _Sheet, greatest: float, factor: float
) -> None:
    """Writes values (value, place, direction to stand off to), greatest first, where there is room."""
    taken: list[Floats] = []
    for value, place, push in sorted(labels, key=lambda label: -abs(label[0])):
        near = any(np.hypot(*(place - other)) < _APART * sheet.size for other in taken)
        if near or greatest == 0 or abs(value) < _LEAST * greatest:
            continue
        taken.append(place)
        size = float(np.hypot(*push))
        offset = 9.0 * push / size if size > 0 else np.zeros(2)
        text = f"{float(f'{value / factor:.3g}'):g}"
        ax.annotate(text, tuple(place), tuple(offset), textcoords="offset points", bbox=_BACKING, **_LABEL)


def _base(ax: Axes, flat: Floats, pole: bool, active: bool) -> None:
    if active:
        ax.plot(*flat.T, color=_LOADED, linewidth=1.6 if pole else 0.8, zorder=4)
    else:
        ax.plot(*flat.T, color=_IDLE, linewidth=1.3, linestyle=(0, (4, 3)), zorder=4)


def _supports(ax: Axes, frame: Frame, sheet: _Sheet) -> None:
    held = frame.held[:, [sheet.across, sheet.up]].any(axis=1)
    places = sheet.on(frame.nodes_m[held])
    ax.plot(*places.T, linestyle="none", marker=6, markersize=7, color=_LOADED, markeredgewidth=0, zorder=5)


def _feet(ax: Axes, solution: Solution, sheet: _Sheet) -> None:
    """Feet that carry as full squares, lifted ones hollow and grey."""
    at = np.array([foot.node for foot in solution.frame.feet], dtype=np.int64)
    look: dict[str, Any] = {"linestyle": "none", "marker": "s", "markersize": 7, "zorder": 5}
    for carries, color, face, label in ((True, _PUSH, _PUSH, "foot"), (False, _IDLE, "white", "lifted foot")):
        places = sheet.on(solution.frame.nodes_m[at[solution.foot_carries == carries]])
        if len(places):
            ax.plot(*places.T, color=color, markerfacecolor=face, label=label, **look)


def _finished(ax: Axes, solution: Solution, sheet: _Sheet, title: str) -> Axes:
    from matplotlib.transforms import ScaledTranslation

    if not solution.active.all():
        ax.plot([], [], color=_IDLE, linewidth=1.3, linestyle=(0, (4, 3)), label="slack strap or lifted upright")
    ax.set_aspect("equal")
    ax.margins(0.09)
    for low, high, limit in ((*ax.get_xlim(), ax.set_xlim), (*ax.get_ylim(), ax.set_ylim)):
        room = max(0.0, _LEAST_SIDE * sheet.size - (high - low)) / 2
        limit(low - room, high + room)
    ax.set_xlabel(sheet.labels[0])
    ax.set_ylabel(sheet.labels[1])
    ax.set_title(title, fontsize="medium")
    if ax.get_legend_handles_labels()[0]:
        under = ax.transAxes + ScaledTranslation(0.0, -32 / 72, ax.figure.dpi_scale_trans)
        place: dict[str, Any] = {"loc": "upper left", "bbox_to_anchor": (0.0, 0.0), "bbox_transform": under}
        ax.legend(frameon=False, fontsize="small", ncols=3, borderaxespad=0.0, **place)
    return ax


def _round_scale(wanted: float, move: float) -> float:
    """1, 2 or 5 times a power of ten, at most wanted/move and at least 1."""
    if not 1e-12 * wanted < move < wanted:
        return 1.0
    power = 10.0 ** np.floor(np.log10(wanted / move))
    return float(max(step * power for step in (1, 2, 5) if step * power <= wanted / move))


def _unit(unit: str, greatest: float) -> tuple[str, float]:
    return ("k" + unit, 1e3) if greatest >= 1e4 else (unit, 1.0)


def _is_vertical(plane: str) -> bool:
    if plane not in ("vertical", "level"):
        raise refuse("argument.choice", "/plane", repr(plane), f"plane must be 'vertical' or 'level', not {plane!r}")
    return plane == "vertical"
