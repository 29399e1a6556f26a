# SPDX-License-Identifier: BSD-3-Clause
"""What comes out of setting straps, of friction and of buckling: states, with what was found on the way."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from ._frame_model import Frame, Passing
from ._frame_state import Solution
from ._values import Floats

if TYPE_CHECKING:
    import pandas as pd


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
