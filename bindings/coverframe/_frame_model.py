# SPDX-License-Identifier: BSD-3-Clause
"""Nodes, members, springs and straps of a frame."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, fields
from typing import Any, NoReturn

import numpy as np
from numpy.typing import NDArray

from . import _core
from ._frame_reader import KINDS, Indices, Reader, Truths, is_whole
from ._values import Floats
from .errors import refuse

#: Numbers of a member, in the order of the compiled module.
_STIFFNESSES = (
    "axial_stiffness_n",
    "free_length_m",
    "weight_n_per_m",
    "ei_vertical_n_m2",
    "ei_level_n_m2",
    "ga_vertical_n",
    "ga_level_n",
    "gj_n_m2",
)
_POLES_ONLY = _STIFFNESSES[3:]
_SPRINGS = ("spring_from_n_m_per_rad", "spring_to_n_m_per_rad")


@dataclass(init=False, frozen=True, slots=True, eq=False)
class NodeSpring:
    """What ties a node to the boat and gives. Its force on the node is minus stiffness times displacement.

    Parameters
    ----------
    node
        Index of the node.
    along_n_per_m
        Three stiffnesses along x, y, z [N/m].
    about_n_m_per_rad
        Three about x, y, z [N m/rad].
    """

    node: int
    along_n_per_m: Floats
    about_n_m_per_rad: Floats

    def __init__(
        self, *, node: int, along_n_per_m: Any = (0.0, 0.0, 0.0), about_n_m_per_rad: Any = (0.0, 0.0, 0.0)
    ) -> None:
        read = Reader()
        both = {
            "along_n_per_m": read.numbers("along_n_per_m", along_n_per_m),
            "about_n_m_per_rad": read.numbers("about_n_m_per_rad", about_n_m_per_rad),
        }
        for keyword, vector in both.items():
            read.shape(keyword, vector, (3,))
        if not is_whole(node):
            read.add("argument.number", "/node", repr(node), "node must be the index of a node")
        read.stop()
        object.__setattr__(self, "node", int(node))
        for keyword, vector in both.items():
            object.__setattr__(self, keyword, _kept(vector))

    def __reduce__(self) -> tuple[Any, ...]:
        return _remake, (NodeSpring, {f.name: getattr(self, f.name) for f in fields(self)})


@dataclass(init=False, frozen=True, slots=True, eq=False, repr=False)
class Frame:
    """Nodes and members. Unchangeable: its arrays are read-only copies, and `dataclasses.replace` gives a changed one.

    Parameters
    ----------
    nodes_m
        Places of the nodes before any force acts, n by 3 [m].
    members
        Indices of the two nodes of each member, m by 2; from, to.
    kind
        "pole" (pushes, pulls, bends, twists), "upright" (pinned, pushes only), "strap" (pulls only) or "bar" (pinned,
        pushes and pulls); one word for all or one a member.
    axial_stiffness_n
        EA [N].
    free_length_m
        Unstressed length [m]; None: as drawn.
    ei_vertical_n_m2, ei_level_n_m2
        Bending stiffness of poles, up and down and level [N m2].
    ga_vertical_n, ga_level_n
        Shear stiffness of poles [N]; 0: rigid in shear.
    gj_n_m2
        Twist stiffness of poles [N m2].
    weight_n_per_m
        Self-weight along a member [N/m]. It acts only where `self_weight` is added to the loads.
    spring_from_n_m_per_rad, spring_to_n_m_per_rad
        Turning stiffness between the node and that end of a pole, in both planes [N m/rad]; infinite: rigid, 0: a
        hinge, which carries no bending moment.
    expansion_per_k
        Strain for a rise of temperature [1/K].
    arm_from_m, arm_to_m
        Rigid arm from the node to that end of the member in the drawn place, which turns with the node; three numbers
        for all members or m by 3 [m].
    springs
        What ties nodes to the boat and gives.
    held
        What the boat holds: n by 6 of True and False, or one text a node such as "ux uy uz". None: nothing.
    feet
        Where nodes stand on the boat without being tied to it; see `Foot`.
    node_names, member_names
        None: "N0", "N1", ... and "M0", "M1", ....

    Numbers of members are one for all or one a member. What only a pole has is 0 (an end spring infinite) in the other
    members.

    Raises
    ------
    InputError
        With everything wrong with the frame: "frame.empty", "frame.node.*", "frame.member.*", "frame.spring.*",
        "frame.foot.*", "frame.strap.push" and "argument.*".
    """

    nodes_m: Floats
    members: Indices
    kind: tuple[str, ...]
    axial_stiffness_n: Floats
    free_length_m: Floats
    ei_vertical_n_m2: Floats
    ei_level_n_m2: Floats
    ga_vertical_n: Floats
    ga_level_n: Floats
    gj_n_m2: Floats
    weight_n_per_m: Floats
    spring_from_n_m_per_rad: Floats
    spring_to_n_m_per_rad: Floats
    expansion_per_k: Floats
    arm_from_m: Floats
    arm_to_m: Floats
    springs: tuple[NodeSpring, ...]
    held: Truths
    node_names: tuple[str, ...]
    member_names: tuple[str, ...]
    feet: tuple[Foot, ...]

    def __init__(
        self,
        *,
        nodes_m: Any,
        members: Any,
        kind: Any = "pole",
        axial_stiffness_n: Any,
        free_length_m: Any = None,
        ei_vertical_n_m2: Any = 0.0,
        ei_level_n_m2: Any = 0.0,
        ga_vertical_n: Any = 0.0,
        ga_level_n: Any = 0.0,
        gj_n_m2: Any = 0.0,
        weight_n_per_m: Any = 0.0,
        spring_from_n_m_per_rad: Any = np.inf,
        spring_to_n_m_per_rad: Any = np.inf,
        expansion_per_k: Any = 0.0,
        arm_from_m: Any = (0.0, 0.0, 0.0),
        arm_to_m: Any = (0.0, 0.0, 0.0),
        springs: Sequence[NodeSpring] = (),
        held: Any = None,
        node_names: Sequence[str] | None = None,
        member_names: Sequence[str] | None = None,
        feet: Sequence[Foot] = (),
    ) -> None:
        read = Reader()
        nodes = read.table("nodes_m", nodes_m, 3)
        ends = read.ends(members)
        read.stop()
        n, m = len(nodes), len(ends)
        kinds = read.kinds(kind, m)
        arms = [read.vectors("arm_from_m", arm_from_m, m), read.vectors("arm_to_m", arm_to_m, m)]
        given = {
            "axial_stiffness_n": axial_stiffness_n,
            "free_length_m": _drawn_lengths(nodes, ends, arms) if free_length_m is None else free_length_m,
            "weight_n_per_m": weight_n_per_m,
            "ei_vertical_n_m2": ei_vertical_n_m2,
            "ei_level_n_m2": ei_level_n_m2,
            "ga_vertical_n": ga_vertical_n,
            "ga_level_n": ga_level_n,
            "gj_n_m2": gj_n_m2,
            "spring_from_n_m_per_rad": spring_from_n_m_per_rad,
            "spring_to_n_m_per_rad": spring_to_n_m_per_rad,
            "expansion_per_k": expansion_per_k,
        }
        columns: dict[str, Any] = {keyword: read.column(keyword, value, m) for keyword, value in given.items()}
        columns["arm_from_m"], columns["arm_to_m"] = arms
        columns["springs"] = tuple(springs)
        if not all(isinstance(spring, NodeSpring) for spring in columns["springs"]):
            read.add("argument.choice", "/springs", "", "the springs of a frame must be NodeSpring")
        columns["held"] = read.held(held, n)
        columns["node_names"] = read.names("node_names", node_names, "N", n)
        columns["member_names"] = read.names("member_names", member_names, "M", m)
        read.stop()
        is_pole = np.array([k == "pole" for k in kinds], dtype=bool)
        for keyword in _POLES_ONLY:
            columns[keyword] = np.where(is_pole, columns[keyword], 0.0)
        for keyword in _SPRINGS:
            columns[keyword] = np.where(is_pole, columns[keyword], np.inf)
        for keyword, value in {"nodes_m": nodes, "members": ends, "kind": kinds, **columns}.items():
            object.__setattr__(self, keyword, _kept(value) if isinstance(value, np.ndarray) else value)
        object.__setattr__(self, "feet", tuple(feet))
        _core.require_sound_frame(arrays_of(self))

    @property
    def drawn_length_m(self) -> Floats:
        """Distance between the ends of each member as drawn [m]."""
        return _drawn_lengths(self.nodes_m, self.members, [self.arm_from_m, self.arm_to_m])

    @property
    def ends_m(self) -> Floats:
        """Drawn places of the two ends of each member, at the ends of its arms, m by 2 by 3 [m]."""
        return self.nodes_m[self.members] + np.stack([self.arm_from_m, self.arm_to_m], axis=1)

    def node(self, name: str) -> int:
        """Index of the node of that name; the first if several have it."""
        return _index_of("node", name, self.node_names)

    def member(self, name: str) -> int:
        """Index of the member of that name; the first if several have it."""
        return _index_of("member", name, self.member_names)

    def __reduce__(self) -> tuple[Any, ...]:
        return _remake, (Frame, {f.name: getattr(self, f.name) for f in fields(self)})

    def __repr__(self) -> str:
        counts = ", ".join(f"{self.kind.count(kind)} {kind}s" for kind in KINDS if kind in self.kind)
        return f"<coverframe.frame.Frame of {len(self.node_names)} nodes: {counts}>"


@dataclass(init=False, frozen=True, slots=True)
class Foot:
    """Where a node stands on the boat without being tied to it: it pushes upwards only, on a pad or sole that gives,
    and is held level by friction alone (frame/feet.hpp).

    Parameters
    ----------
    node
        Index of a node that is free to move up and down.
    stiffness_n_per_m
        Of the pad or sole, upwards [N/m].
    gap_m
        How far the node sinks before it bears [m].
    friction
        mu, 0 to 2 [-]. 0: the foot slides freely, and something else has to hold its node level.
    side_stiffness_n_per_m
        Of the pad or sole, level, until the foot slips [N/m]; over 0 with friction.
    """

    node: int
    stiffness_n_per_m: float
    gap_m: float
    friction: float
    side_stiffness_n_per_m: float

    def __init__(
        self,
        *,
        node: int,
        stiffness_n_per_m: float,
        gap_m: float = 0.0,
        friction: float = 0.0,
        side_stiffness_n_per_m: float = 0.0,
    ) -> None:
        read = Reader()
        given = {
            "stiffness_n_per_m": stiffness_n_per_m,
            "gap_m": gap_m,
            "friction": friction,
            "side_stiffness_n_per_m": side_stiffness_n_per_m,
        }
        if not is_whole(node):
            read.add("argument.number", "/node", repr(node), "node must be the index of a node")
        numbers = {keyword: read.numbers(keyword, value) for keyword, value in given.items()}
        for keyword, number in numbers.items():
            read.shape(keyword, number, ())
        read.stop()
        object.__setattr__(self, "node", int(node))
        for keyword, number in numbers.items():
            object.__setattr__(self, keyword, float(number))

    def __reduce__(self) -> tuple[Any, ...]:
        return _remake, (Foot, {f.name: getattr(self, f.name) for f in fields(self)})


@dataclass(init=False, frozen=True, slots=True, eq=False)
class Spring:
    """An elastic support of a node against a place in space. Force on the node: force0 - stiffness (u - u0).

    Parameters
    ----------
    node
        Index of the node.
    stiffness_n_per_m
        3 by 3, symmetric, not negative [N/m]; three numbers are its diagonal.
    u0_m
        Displacement at which it pulls with `force0_n` [m].
    force0_n
        Force on the node there [N].
    """

    node: int
    stiffness_n_per_m: Floats
    u0_m: Floats
    force0_n: Floats

    def __init__(
        self, *, node: int, stiffness_n_per_m: Any, u0_m: Any = (0.0, 0.0, 0.0), force0_n: Any = (0.0, 0.0, 0.0)
    ) -> None:
        read = Reader()
        stiffness = read.numbers("stiffness_n_per_m", stiffness_n_per_m)
        stiffness = np.diag(stiffness) if stiffness.shape == (3,) else stiffness
        read.shape("stiffness_n_per_m", stiffness, (3, 3))
        vectors = {"u0_m": read.numbers("u0_m", u0_m), "force0_n": read.numbers("force0_n", force0_n)}
        for keyword, vector in vectors.items():
            read.shape(keyword, vector, (3,))
        if not is_whole(node):
            read.add("argument.number", "/node", repr(node), "node must be the index of a node")
        read.stop()
        largest = float(np.abs(stiffness).max())
        if not (np.isfinite(largest) and _is_stiffness(stiffness, 1e-12 * largest)):
            raise refuse(
                "frame.spring.stiffness",
                "/stiffness_n_per_m",
                stiffness.tolist(),
                "the stiffness of a spring must be finite, symmetric and must not push a node away",
            )
        object.__setattr__(self, "node", int(node))
        for keyword, value in {"stiffness_n_per_m": stiffness, **vectors}.items():
            object.__setattr__(self, keyword, _kept(value))

    def __reduce__(self) -> tuple[Any, ...]:
        return _remake, (Spring, {f.name: getattr(self, f.name) for f in fields(self)})


@dataclass(frozen=True, slots=True)
class StrapRun:
    """One strap as it is pulled on: the members it is made of, end to end."""

    name: str
    #: Indices of members of kind "strap".
    members: tuple[int, ...]
    #: Mean along the run [N]; 0 for a strap that is only laid on.
    tension_n: float


@dataclass(frozen=True, slots=True)
class TighteningStep:
    """One pull of the tensioner."""

    #: Index of the run.
    run: int
    #: Mean tension of the run when the tensioner stops, over 0 [N].
    tension_n: float
    #: Free length the buckle gives back when it is let go, not negative [m].
    give_m: float = 0.0


@dataclass(frozen=True, slots=True)
class Passing:
    """A strap that passes over a node, as the two members on either side of it."""

    name: str
    #: Indices of two members of kind "strap" with one node in common.
    first: int
    second: int


def arrays_of(frame: Frame) -> _core._FrameArrays:
    """The frame as the compiled module takes it."""
    return (
        list(frame.node_names),
        frame.nodes_m,
        frame.held,
        list(frame.member_names),
        frame.members,
        np.array([KINDS.index(kind) for kind in frame.kind], dtype=np.int64),
        np.column_stack(
            [
                *(getattr(frame, keyword) for keyword in (*_STIFFNESSES, *_SPRINGS, "expansion_per_k")),
                frame.arm_from_m,
                frame.arm_to_m,
            ]
        ),
        np.array([np.clip(foot.node, -1, 2**31 - 1) for foot in frame.feet], dtype=np.int64),
        np.array([_numbers_of(foot) for foot in frame.feet], dtype=np.float64).reshape(-1, 4),
        np.clip(np.array([s.node for s in frame.springs], dtype=np.int64), -1, 2**31 - 1),
        np.array([[*s.along_n_per_m, *s.about_n_m_per_rad] for s in frame.springs], dtype=np.float64).reshape(-1, 6),
    )


def _numbers_of(foot: Foot) -> tuple[float, float, float, float]:
    return foot.stiffness_n_per_m, foot.gap_m, foot.friction, foot.side_stiffness_n_per_m


def _drawn_lengths(nodes: Floats, ends: Indices, arms: Sequence[Floats]) -> Floats:
    """Distance of a member's ends [m]; 1 where it has none, for the frame is refused for that anyway."""
    lengths = np.ones(len(ends))
    for m, (i, j) in enumerate(ends):
        if 0 <= i < len(nodes) and 0 <= j < len(nodes):
            length = float(np.linalg.norm(nodes[j] + arms[1][m] - nodes[i] - arms[0][m]))
            lengths[m] = length if np.isfinite(length) and length > 0 else 1.0
    return lengths


def _kept(array: NDArray[Any]) -> NDArray[Any]:
    """A read-only copy."""
    copy = np.array(array, order="C")
    copy.setflags(write=False)
    return copy


def _is_stiffness(matrix: Floats, room: float) -> bool:
    return bool(np.abs(matrix - matrix.T).max() <= room and np.linalg.eigvalsh(matrix).min() >= -room)


def _index_of(what: str, name: str, names: tuple[str, ...]) -> int:
    if name in names:
        return names.index(name)
    _no_such(what, name, names)


def _no_such(what: str, name: str, names: tuple[str, ...]) -> NoReturn:
    shown = ", ".join(names[:12]) + (", ..." if len(names) > 12 else "")
    raise refuse("argument.choice", f"/{what}", name, f"there is no {what} {name!r}; there are {shown}")


def _remake(kind: type[Any], arguments: dict[str, Any]) -> Any:
    return kind(**arguments)
