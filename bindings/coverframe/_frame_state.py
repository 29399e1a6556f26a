# SPDX-License-Identifier: BSD-3-Clause
"""What comes out of a frame: its states, with forces, reactions and tables."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

import numpy as np

from ._frame_model import Frame, Spring
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
    "least_tension_n",
    "sag_m",
)
#: Numbers of a state, one row a case.
_STATE = (
    "load_share",
    "condition",
    "unbalanced_n",
    "unbalanced_moment_n_m",
    "strain_energy_n_m",
    "load_potential_n_m",
    "energy_n_m",
)


@dataclass(frozen=True, slots=True)
class Equilibrium:
    """What is left when everything that acts on a frame from outside is added up; nothing, in equilibrium.

    Loads, springs and reactions act at the displaced places of their nodes, loads of members in the middle between
    their displaced ends, though the middle of a strap that hangs under its load lies a little off it. Poles balance the
    moments of their shears in the drawn shape (their bending is linear), so what is left of the moments is of the size
    of those shears times how far the poles moved: a measure of what the small rotations neglect. Straps and uprights
    leave nothing.
    """

    #: Sum of loads, springs and reactions [N].
    force_n: tuple[float, float, float]
    #: Sum of their moments about the origin of the axes [N m].
    moment_n_m: tuple[float, float, float]
    #: Largest part of `force_n` over the sum of the forces' sizes [-]; 0 without forces.
    force_share: float
    #: Largest part of `moment_n_m` over the sum of the moments' sizes [-]; 0 without moments.
    moment_share: float


@dataclass(frozen=True, slots=True)
class Balance:
    """Both sides of the balance of a whole frame; moments about the origin of the axes. In equilibrium each pair adds
    up to nothing."""

    #: Of all loads, elastic supports among them [N].
    load_force_n: tuple[float, float, float]
    load_moment_n_m: tuple[float, float, float]
    #: Of the boat, with its springs and feet [N].
    reaction_force_n: tuple[float, float, float]
    reaction_moment_n_m: tuple[float, float, float]


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
    #: "converged", "mechanism", "unstable", "ill-conditioned", "large rotation", "iteration limit", "cycling" or
    #: "not run".
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
    #: Least tension along a strap that carries a load along its length [N]; 0 for every other member.
    least_tension_n: Floats
    #: How far such a strap hangs off the line between its ends, square to it [m]; 0 for every other member.
    sag_m: Floats
    #: One a member; False for a slack strap or a lifted upright.
    active: Truths
    #: n by 6: force [N] and moment [N m] of the boat on directions that are held or on a spring of the frame, and
    #: through feet; 0 on the others.
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
    #: Likewise, of moments [N m].
    unbalanced_moment_n_m: float
    #: Loads and reactions, each added up.
    balance: Balance
    #: Potential energy, the sum of the next two [N m].
    energy_n_m: float
    #: Of members, springs of the frame and feet [N m].
    strain_energy_n_m: float
    #: Of the loads, zero in the drawn place [N m].
    load_potential_n_m: float
    #: The largest share of the loads for which a usable state was found, to a hundredth; 1 if converged [-].
    load_share: float
    #: States solved on the way to the loads; 0: they were taken at once.
    load_steps: int
    #: Condition of the tangent, estimated from below [-]; its logarithm is the number of digits lost, at most. 0: not
    #: looked at.
    condition: float
    #: What to know about a usable state, such as how many digits are left; empty if there is nothing.
    caution: str
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
    #: k by m by 14: the forces of `Solution`, in its order, `active` as 0 or 1.
    member_forces: Floats
    #: k by n by 6 [N], [N m].
    reaction: Floats
    #: One a case.
    caution: tuple[str, ...]
    #: k by 20: share of the loads and condition [-], unbalanced force [N] and moment [N m], strain energy, potential of
    #: the loads and energy [N m], the four sums of `Balance` [N, N m], steps to the loads.
    state: Floats
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
    def load_share(self) -> Floats:
        """One a case: the largest share of its loads with a usable state; 1 if converged [-]."""
        return self._number("load_share")

    @property
    def condition(self) -> Floats:
        """One a case: condition of the tangent [-]; 0, as many cases at once are not looked at for it."""
        return self._number("condition")

    @property
    def unbalanced_n(self) -> Floats:
        """One a case: largest force left out of balance [N]."""
        return self._number("unbalanced_n")

    @property
    def energy_n_m(self) -> Floats:
        """One a case: potential energy [N m]."""
        return self._number("energy_n_m")

    @property
    def strain_energy_n_m(self) -> Floats:
        """One a case: of members, springs of the frame and feet [N m]."""
        return self._number("strain_energy_n_m")

    def _number(self, keyword: str) -> Floats:
        return np.array(self.state[:, _STATE.index(keyword)])

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
        of_members: dict[str, Any] = {name: forces[:, i] for i, name in enumerate(_MEMBER_FORCES)}
        of_state: dict[str, Any] = {name: float(self.state[case, i]) for i, name in enumerate(_STATE)}
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
            **of_members,
            active=forces[:, -1] != 0,
            reaction=self.reaction[case],
            caution=self.caution[case],
            **of_state,
            balance=Balance(*(_triple(self.state[case, i : i + 3]) for i in (7, 10, 13, 16))),
            load_steps=int(self.state[case, 19]),
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
                "load_share": self.load_share,
                "condition": self.condition,
                "unbalanced_n": self.unbalanced_n,
                "energy_n_m": self.energy_n_m,
                "iterations": self.iterations,
            }
        )

    def __repr__(self) -> str:
        return f"<coverframe.frame.Solutions of {len(self)} cases: {int(self.usable.sum())} converged>"


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
