# SPDX-License-Identifier: BSD-3-Clause
"""What comes out of a frame: its states, with forces, reactions and tables."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

import numpy as np

from ._frame_model import Frame, Passing, Spring
from ._frame_reader import Indices, Truths
from ._values import Floats
from .errors import StateError

if TYPE_CHECKING:
    import pandas as pd

_MEMBER_FORCES = (
    "axial_n",
    "moment_vertical_from_n_m",
    "moment_vertical_to_n_m",
    "moment_level_from_n_m",
    "moment_level_to_n_m",
    "shear_vertical_n",
    "shear_level_n",
    "twist_n_m",
    "load_1_n",
    "load_2_n",
    "load_3_n",
)


@dataclass(frozen=True, slots=True)
class Equilibrium:
    """What is left when everything that acts on a frame from outside is added up; nothing, in equilibrium.

    Loads, springs and reactions act at the displaced places of their nodes, loads of members in the middle between
    their displaced ends, though the middle of a strap that hangs under its load lies a little off it. Poles balance the
    moments of their shears in the drawn shape (their bending is linear), so what is left of the moments is of the size of those shears times
    how far the poles moved: a measure of what the small rotations neglect. Straps and uprights leave nothing.
    """

    #: Sum of loads, springs and reactions [N].
    force_n: tuple[float, float, float]
    #: Sum of their moments about the origin of the axes [N m].
    moment_n_m: tuple[float, float, float]
    #: Largest part of `force_n` over the sum of the forces' sizes [-]; 0 without forces.
    force_share: float
    #: Largest part of `moment_n_m` over the sum of the moments' sizes [-]; 0 without moments.
    moment_share: float


@dataclass(frozen=True, slots=True, eq=False, repr=False)
class Solution:
    """One state of a frame. Check `usable` before anything else: the numbers of another state are where the search
    ended, and no equilibrium. Moments and shears are in a member's own axes (frame/frame.hpp)."""

    frame: Frame
    #: Loads at the nodes, n by 3 [N].
    forces_n: Floats
    #: Couples at the nodes, n by 3 [N m].
    couples_n_m: Floats
    #: Even loads of the members in global axes, m by 3 [N/m].
    member_loads_n_per_m: Floats
    #: Rise of temperature, one a member [K].
    temperatures_k: Floats
    #: Given displacements of held directions, n by 6 [m, rad].
    settlements: Floats
    springs: tuple[Spring, ...]
    #: "converged", "mechanism", "unstable", "large rotation" or "iteration limit".
    status: str
    #: What moves, where and why; empty if converged.
    message: str
    #: n by 6: ux uy uz [m], rx ry rz [rad].
    displacement: Floats
    #: One a member, tension positive, mean of both ends [N].
    axial_n: Floats
    #: Bending up and down at `from`, sagging positive [N m].
    moment_vertical_from_n_m: Floats
    #: Likewise at `to`.
    moment_vertical_to_n_m: Floats
    #: Level bending at `from`, positive where the side of axis 2 is stretched (starboard, if it runs aft) [N m].
    moment_level_from_n_m: Floats
    #: Likewise at `to`.
    moment_level_to_n_m: Floats
    #: Slope of the moment from `from` to `to`, mean of both ends [N].
    shear_vertical_n: Floats
    #: Likewise.
    shear_level_n: Floats
    #: [N m]
    twist_n_m: Floats
    #: The whole load of a member along its axes 1, 2, 3 [N].
    load_1_n: Floats
    #: Likewise.
    load_2_n: Floats
    #: Likewise.
    load_3_n: Floats
    #: One a member; False for a slack strap or a lifted upright.
    active: Truths
    #: n by 6: force [N] and moment [N m] of the boat on directions that are held or on a spring of the frame, and through
    #: feet; 0 on the others.
    reaction: Floats
    #: One a foot: its push on the node, upwards [N]; 0 while it is lifted.
    foot_push_n: Floats
    #: f by 2: what each foot holds its node with, along x and y [N].
    foot_side_n: Floats
    #: How far each foot has slipped [m].
    foot_slip_m: Floats
    #: One a foot; False for a lifted one.
    foot_carries: Truths
    #: One a node: True where only slack straps, or a lifted upright on a lifted foot, end and nothing acts.
    loose: Truths
    #: Largest force left out of balance at a free direction [N].
    unbalanced_n: float
    #: Potential energy [N m].
    energy_n_m: float
    iterations: int

    @property
    def usable(self) -> bool:
        """Whether forces balance in a stable state."""
        return self.status == "converged"

    def axial_at(self, share: float) -> Floats:
        """Axial force at a share of each member from `from`, 0 to 1; it differs from `axial_n` under a load [N]."""
        return self.axial_n + (0.5 - share) * self.load_1_n

    def shear_vertical_at(self, share: float) -> Floats:
        """Shear at a share of each member [N]."""
        return self.shear_vertical_n - (0.5 - share) * self.load_3_n

    def shear_level_at(self, share: float) -> Floats:
        """Shear at a share of each member [N]."""
        return self.shear_level_n + (0.5 - share) * self.load_2_n

    def moment_vertical_at(self, share: float) -> Floats:
        """Moment at a share of each member, a parabola under a load [N m]."""
        ends = (1 - share) * self.moment_vertical_from_n_m + share * self.moment_vertical_to_n_m
        return ends - share * (1 - share) / 2 * self.load_3_n * self.frame.drawn_length_m

    def moment_level_at(self, share: float) -> Floats:
        """Moment at a share of each member, a parabola under a load [N m]."""
        ends = (1 - share) * self.moment_level_from_n_m + share * self.moment_level_to_n_m
        return ends + share * (1 - share) / 2 * self.load_2_n * self.frame.drawn_length_m

    @property
    def ends_m(self) -> Floats:
        """Present places of the two ends of each member, m by 2 by 3 [m]."""
        nodes = self.frame.members
        moved = self.frame.nodes_m[nodes] + self.displacement[nodes, :3]
        arms = np.stack([self.frame.arm_from_m, self.frame.arm_to_m], axis=1)
        return moved + _turned(arms, self.displacement[nodes, 3:])

    @property
    def spring_forces_n(self) -> Floats:
        """Forces of the springs on their nodes, one row a spring [N]."""
        rows = [s.force0_n - s.stiffness_n_per_m @ (self.displacement[s.node, :3] - s.u0_m) for s in self.springs]
        return np.array(rows, dtype=np.float64).reshape(-1, 3)

    @property
    def equilibrium(self) -> Equilibrium:
        """Sum of everything that acts from outside."""
        at = self.frame.nodes_m + self.displacement[:, :3]
        held = np.array([s.node for s in self.springs], dtype=np.int64)
        spread = self.frame.drawn_length_m[:, np.newaxis] * self.member_loads_n_per_m
        places = np.concatenate([at, at, at[held], self.ends_m.mean(axis=1)])
        forces = np.concatenate([self.forces_n, self.reaction[:, :3], self.spring_forces_n, spread])
        moments = np.concatenate([np.cross(places, forces), self.reaction[:, 3:], self.couples_n_m])
        force, moment = forces.sum(axis=0), moments.sum(axis=0)
        return Equilibrium(_triple(force), _triple(moment), _share(force, forces), _share(moment, moments))

    def members(self) -> pd.DataFrame:
        """One row a member: name, kind, nodes and forces. Needs pandas."""
        import pandas as pd

        f = self.frame
        names = np.array(f.node_names, dtype=object)
        ends = {"from": names[f.members[:, 0]], "to": names[f.members[:, 1]]}
        forces = {name: getattr(self, name) for name in _MEMBER_FORCES}
        return pd.DataFrame({"member": f.member_names, "kind": f.kind, **ends, **forces, "active": self.active})

    def nodes(self) -> pd.DataFrame:
        """One row a node: name, drawn place, load, displacement and reaction. Needs pandas."""
        import pandas as pd

        table: dict[str, Any] = {"node": self.frame.node_names}
        table |= _split(self.frame.nodes_m, "x_m", "y_m", "z_m")
        table |= _split(self.forces_n, "load_x_n", "load_y_n", "load_z_n")
        table |= _split(self.displacement, "ux_m", "uy_m", "uz_m", "rx_rad", "ry_rad", "rz_rad")
        reactions = [f"reaction_{axis}_n" for axis in "xyz"] + [f"reaction_m{axis}_n_m" for axis in "xyz"]
        return pd.DataFrame(table | _split(self.reaction, *reactions))

    def feet(self) -> pd.DataFrame:
        """One row a foot: its node, whether it carries, push, sideways force and slip. Needs pandas."""
        import pandas as pd

        names = [self.frame.node_names[foot.node] for foot in self.frame.feet]
        table: dict[str, Any] = {"node": names, "carries": self.foot_carries, "push_n": self.foot_push_n}
        table |= _split(self.foot_side_n, "side_x_n", "side_y_n")
        return pd.DataFrame(table | {"slip_m": self.foot_slip_m})

    def __repr__(self) -> str:
        return f"<coverframe.frame.Solution: {self.status}{': ' if self.message else ''}{self.message}>"


@dataclass(frozen=True, slots=True, eq=False, repr=False)
class Solutions:
    """The states of one frame under many sets of loads: a sequence of `Solution`, and the numbers of all as arrays."""

    frame: Frame
    #: k by n by 3 [N].
    forces_n: Floats
    #: k by n by 3 [N m].
    couples_n_m: Floats
    #: k by m by 3 [N/m].
    member_loads_n_per_m: Floats
    #: k by m [K].
    temperatures_k: Floats
    #: k by n by 6 [m, rad].
    settlements: Floats
    springs: tuple[Spring, ...]
    #: One a case.
    status: tuple[str, ...]
    #: One a case.
    message: tuple[str, ...]
    #: k by n by 6: ux uy uz [m], rx ry rz [rad].
    displacement: Floats
    #: k by m by 12: the forces of `Solution`, in its order, `active` as 0 or 1.
    member_forces: Floats
    #: k by n by 6 [N], [N m].
    reaction: Floats
    #: One a case [N].
    unbalanced_n: Floats
    #: One a case [N m].
    energy_n_m: Floats
    #: One a case.
    iterations: Indices
    #: k by f by 5: push, sideways along x and y [N], slip [m], whether it carries as 0 or 1.
    foot_forces: Floats
    #: k by n: nodes that hang loose.
    loose: Truths

    @property
    def usable(self) -> Truths:
        """One a case."""
        return np.array([status == "converged" for status in self.status], dtype=bool)

    @property
    def axial_n(self) -> Floats:
        """k by m, tension positive [N]."""
        return np.array(self.member_forces[:, :, 0])

    @property
    def active(self) -> Truths:
        """k by m; False for a slack strap or a lifted upright."""
        return np.not_equal(self.member_forces[:, :, -1], 0)

    def __len__(self) -> int:
        return len(self.status)

    def __getitem__(self, case: int) -> Solution:
        forces = self.member_forces[case]
        return Solution(
            frame=self.frame,
            forces_n=self.forces_n[case],
            couples_n_m=self.couples_n_m[case],
            member_loads_n_per_m=self.member_loads_n_per_m[case],
            temperatures_k=self.temperatures_k[case],
            settlements=self.settlements[case],
            springs=self.springs,
            status=self.status[case],
            message=self.message[case],
            displacement=self.displacement[case],
            **{name: forces[:, i] for i, name in enumerate(_MEMBER_FORCES)},
            active=forces[:, -1] != 0,
            reaction=self.reaction[case],
            unbalanced_n=float(self.unbalanced_n[case]),
            energy_n_m=float(self.energy_n_m[case]),
            iterations=int(self.iterations[case]),
            foot_push_n=self.foot_forces[case, :, 0],
            foot_side_n=self.foot_forces[case, :, 1:3],
            foot_slip_m=self.foot_forces[case, :, 3],
            foot_carries=self.foot_forces[case, :, 4] != 0,
            loose=self.loose[case],
        )

    def __iter__(self) -> Iterator[Solution]:
        return (self[case] for case in range(len(self)))

    def table(self) -> pd.DataFrame:
        """One row a case. Needs pandas."""
        import pandas as pd

        return pd.DataFrame(
            {
                "status": self.status,
                "message": self.message,
                "largest_move_m": np.linalg.norm(self.displacement[:, :, :3], axis=2).max(axis=1),
                "largest_tension_n": np.maximum(self.axial_n.max(axis=1), 0.0),
                "largest_push_n": np.maximum(-self.axial_n.min(axis=1), 0.0),
                "inactive_members": (~self.active).sum(axis=1),
                "lifted_feet": (self.foot_forces[:, :, 4] == 0).sum(axis=1),
                "unbalanced_n": self.unbalanced_n,
                "energy_n_m": self.energy_n_m,
                "iterations": self.iterations,
            }
        )

    def __repr__(self) -> str:
        return f"<coverframe.frame.Solutions of {len(self)} cases: {int(self.usable.sum())} converged>"


@dataclass(frozen=True, slots=True, eq=False)
class Tensioned:
    """A frame whose straps are set."""

    #: With the free lengths found.
    frame: Frame = field(repr=False)
    #: Its equilibrium; `usable` tells whether the tensions were reached.
    solution: Solution
    rounds: int


@dataclass(frozen=True, slots=True)
class FrictionBounds:
    """The two ends of what an unknown friction of the feet may do."""

    #: No foot has friction; may be a mechanism, and then says so.
    smooth: Solution
    #: Each has the friction written at it.
    rough: Solution


@dataclass(frozen=True, slots=True, eq=False)
class Tightened:
    """A frame whose straps were pulled one after the other."""

    #: With the free lengths found; a run nobody pulled hangs slack.
    frame: Frame = field(repr=False)
    #: Its equilibrium without the hands; `usable` tells whether it stands.
    solution: Solution
    #: Mean tension of every run after each step, hands on: one row a step that was done, one column a run [N].
    tensions_n: Floats
    #: Which step could not be done and why; empty if all were.
    message: str


@dataclass(frozen=True, slots=True, eq=False)
class Slipped:
    """A frame with straps that have slipped over the nodes they pass."""

    #: With the free lengths after slipping.
    frame: Frame = field(repr=False)
    #: `usable` tells whether the straps came to rest.
    solution: Solution
    passings: tuple[Passing, ...]
    #: Tension on either side, one a passing [N]; empty if the straps did not come to rest, like the next three.
    first_n: Floats
    second_n: Floats
    #: By how much each strap turns, from a straight line [rad].
    turn_rad: Floats
    #: Free length that moved from the second member to the first; negative the other way [m].
    slipped_m: Floats
    rounds: int

    def table(self) -> pd.DataFrame:
        """One row a passing. Needs pandas."""
        import pandas as pd

        names = [passing.name for passing in self.passings][: len(self.first_n)]
        numbers = {key: getattr(self, key) for key in ("first_n", "second_n", "turn_rad", "slipped_m")}
        return pd.DataFrame({"passing": names} | numbers)


@dataclass(frozen=True, slots=True)
class SlippedBounds:
    """The two ends of what an unknown friction over tops may do."""

    #: mu = 0
    smooth: Slipped
    #: mu = the greatest
    rough: Slipped


@dataclass(frozen=True, slots=True, eq=False)
class BucklingMode:
    """One way to buckle."""

    #: Of the load, over 0.
    factor: float
    #: n by 6; the largest displacement (or rotation) is 1.
    shape: Floats
    #: Where it moves most.
    place: str
    #: Amplitude at which the first taut strap goes slack or the first pressed upright lifts [m]; may be infinite.
    reach_m: float
    #: The members that limit it.
    lets_go: tuple[str, ...]
    #: Slack straps and lifted uprights the mode would load.
    takes_up: tuple[str, ...]


@dataclass(frozen=True, slots=True, eq=False)
class Buckling:
    """Buckling factors of a state, lowest first."""

    modes: tuple[BucklingMode, ...]
    #: Why there is none, or that their count does not agree; empty otherwise.
    message: str


@dataclass(frozen=True, slots=True)
class UprightStability:
    """An upright under its push, and what its straps can hold."""

    name: str
    push_n: float
    #: Stiffness of the straps at its top times its height [N].
    critical_n: float
    #: Push over critical; infinite if nothing holds the top.
    used: float


def require_usable(solution: Solution) -> None:
    """Raises StateError "frame.solution.unusable" for a state that is no equilibrium."""
    if not solution.usable:
        raise StateError(
            "frame.solution.unusable", f"the frame is not in equilibrium ({solution.status}): {solution.message}"
        )


def _turned(vectors: Floats, rotations: Floats) -> Floats:
    """Vectors turned by rotation vectors."""
    angle = np.linalg.norm(rotations, axis=-1, keepdims=True)
    sine = np.sinc(angle / np.pi)
    versine = 0.5 * np.sinc(angle / (2 * np.pi)) ** 2
    once = np.cross(rotations, vectors)
    return np.asarray(vectors + sine * once + versine * np.cross(rotations, once), dtype=np.float64)


def _triple(vector: Floats) -> tuple[float, float, float]:
    x, y, z = vector.tolist()
    return x, y, z


def _share(left: Floats, parts: Floats) -> float:
    total = float(np.linalg.norm(parts, axis=1).sum())
    return float(np.abs(left).max()) / total if total > 0 else 0.0


def _split(rows: Floats, *keywords: str) -> dict[str, Floats]:
    return {keyword: rows[:, i] for i, keyword in enumerate(keywords)}
