# SPDX-License-Identifier: BSD-3-Clause
"""Frames as they are built: out of plumb, bowed, or off in a given shape. frame/imperfection.hpp has the equations."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import fields
from typing import Any

import numpy as np

from . import _core
from ._frame_model import Frame, arrays_of
from ._frame_reader import is_whole
from ._values import Floats, named, number, numbers
from .errors import refuse


def out_of_plumb(frame: Frame, *, level_m: float, angle_rad: float, direction: Sequence[float] = (0.0, 1.0)) -> Frame:
    """The frame with every node above a level off plumb, by tan(angle) of its height over that level.

    Free lengths follow the drawn ones, so straps keep their tension. Nodes that are held against the move stay.

    Parameters
    ----------
    frame
        As drawn.
    level_m
        Height of what is plumb [m].
    angle_rad
        From plumb, between -1.2 and 1.2 [rad].
    direction
        x and y of the way it leans; athwart, to starboard, if left out.

    Raises
    ------
    InputError
        "frame.imperfection.level", "frame.imperfection.angle", "frame.imperfection.direction"
    """
    level, angle = number("level_m", level_m), number("angle_rad", angle_rad)
    way = _two(direction)
    with named("level_m", "angle_rad"):
        return _drawn_anew(frame, _core.frame_out_of_plumb(arrays_of(frame), level, angle, way))


def leaning(frame: Frame, *, member: int, angle_rad: float, direction: Sequence[float] = (0.0, 1.0)) -> Frame:
    """The frame with one member off plumb over its lower end, and all that meets at its upper end with it.

    Parameters
    ----------
    frame
        As drawn.
    member
        Index of a member whose ends are not level.
    angle_rad, direction
        As in `out_of_plumb`.

    Raises
    ------
    InputError
        "frame.imperfection.member", and as `out_of_plumb`
    """
    chosen = _member("frame.imperfection.member", "/member", frame, member)
    angle = number("angle_rad", angle_rad)
    way = _two(direction)
    with named("angle_rad"):
        return _drawn_anew(frame, _core.frame_leaning(arrays_of(frame), chosen, angle, way))


def bowed(
    frame: Frame,
    *,
    members: Sequence[int],
    rise_m: float,
    direction: Sequence[float] = (0.0, 1.0, 0.0),
    shape: str = "sine",
) -> Frame:
    """The frame with members end to end bowed between the ends of their chain.

    Parameters
    ----------
    frame
        As drawn.
    members
        Their indices, in order; two make a kink, four or more a bow.
    rise_m
        At mid-length, across the line between the ends of the chain [m].
    direction
        Any that is not along that line; the part across it counts.
    shape
        "sine" or "parabola".

    Raises
    ------
    InputError
        "frame.imperfection.chain", "frame.imperfection.rise", "frame.imperfection.direction"
    """
    if shape not in ("sine", "parabola"):
        raise refuse("argument.choice", "/shape", repr(shape), 'shape must be "sine" or "parabola"')
    chain = [_member("frame.imperfection.chain", f"/members/{i}", frame, m) for i, m in enumerate(members)]
    x, y, z = _vector(direction, 3).tolist()
    rise = number("rise_m", rise_m)
    return _drawn_anew(frame, _core.frame_bowed(arrays_of(frame), chain, rise, (x, y, z), shape == "parabola"))


def shaped(frame: Frame, *, displacement: Any, amplitude_m: float) -> Frame:
    """The frame off in the shape of displacements, such as those of a state or of a buckling mode.

    Parameters
    ----------
    frame
        As drawn.
    displacement
        n by 6; turns are left out.
    amplitude_m
        Largest move of a node, either way [m].

    Raises
    ------
    InputError
        "frame.imperfection.shape", "frame.imperfection.amplitude"
    """
    shape = numbers("displacement", displacement)
    if shape.shape != (len(frame.nodes_m), 6):
        advice = "displacement must be 6 numbers a node, n by 6"
        raise refuse("frame.imperfection.shape", "/displacement", shape.shape, advice)
    amplitude = number("amplitude_m", amplitude_m)
    return _drawn_anew(frame, _core.frame_shaped(arrays_of(frame), shape.ravel(), amplitude))


def _drawn_anew(frame: Frame, moved: tuple[Floats, Floats]) -> Frame:
    kept = {f.name: getattr(frame, f.name) for f in fields(frame)}
    nodes, lengths = moved
    return Frame(**kept | {"nodes_m": nodes, "free_length_m": lengths})


def _member(code: str, where: str, frame: Frame, member: int) -> int:
    if not (is_whole(member) and 0 <= member < len(frame.members)):
        raise refuse(code, where, repr(member), "there is no member of that index")
    return int(member)


def _two(direction: Sequence[float]) -> tuple[float, float]:
    x, y = _vector(direction, 2).tolist()
    return x, y


def _vector(direction: Sequence[float], size: int) -> Floats:
    vector = numbers("direction", direction)
    if vector.shape != (size,):
        raise refuse("frame.imperfection.direction", "/direction", vector.shape, f"direction must be {size} numbers")
    return vector
