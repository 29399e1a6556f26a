# SPDX-License-Identifier: BSD-3-Clause
"""How the loads of a frame are read."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np

from . import _core
from ._frame_model import Frame
from ._values import Floats, numbers
from .errors import refuse


@dataclass(frozen=True)
class Loads:
    """One set of loads a case, read-only: k by n by 3, k by n by 3, k by m by 3, k by m, k by n by 6."""

    forces_n: Floats
    couples_n_m: Floats
    member_loads_n_per_m: Floats
    temperatures_k: Floats
    settlements: Floats

    def arrays(self) -> _core._LoadArrays:
        """As the compiled module takes them: nothing where all is 0, so that it costs nothing."""
        rest = (self.couples_n_m, self.member_loads_n_per_m, self.temperatures_k, self.settlements)
        couples, along, warmth, settled = (a if a.any() else np.empty(0) for a in rest)
        return self.forces_n, couples, along, warmth, settled


def count_cases(frame: Frame, forces_n: Any) -> int:
    """Number of cases, k of forces k by n by 3."""
    forces = numbers("forces_n", forces_n)
    n = len(frame.nodes_m)
    if forces.ndim != 3 or forces.shape[1:] != (n, 3):
        advice = f"forces_n must be k by n by 3 with n = {n} nodes, not of shape {forces.shape}; solve takes n by 3"
        raise refuse("frame.loads.size", "/forces_n", forces.shape, advice)
    return len(forces)


def read_loads(
    frame: Frame,
    cases: int | None,
    forces_n: Any,
    couples_n_m: Any = None,
    member_loads_n_per_m: Any = None,
    temperatures_k: Any = None,
    settlements: Any = None,
) -> Loads:
    """Loads of `cases` cases; None: of one, whose arrays have no axis for it."""
    n, m = len(frame.nodes_m), len(frame.members)
    if temperatures_k is not None and numbers("temperatures_k", temperatures_k).ndim == 0:
        temperatures_k = np.full(m, numbers("temperatures_k", temperatures_k))
    return Loads(
        forces_n=_read("forces_n", forces_n, cases, (n, 3), f"n by 3 with n = {n} nodes"),
        couples_n_m=_read("couples_n_m", couples_n_m, cases, (n, 3), f"n by 3 with n = {n} nodes"),
        member_loads_n_per_m=_read(
            "member_loads_n_per_m", member_loads_n_per_m, cases, (m, 3), f"m by 3 with m = {m} members"
        ),
        temperatures_k=_read("temperatures_k", temperatures_k, cases, (m,), f"one a member, m = {m}"),
        settlements=_read("settlements", settlements, cases, (n, 6), f"n by 6 with n = {n} nodes"),
    )


def _read(keyword: str, value: Any, cases: int | None, shape: tuple[int, ...], wanted: str) -> Floats:
    whole = (1 if cases is None else cases, *shape)
    if value is None:
        return _kept(np.zeros(whole))
    array = np.array(numbers(keyword, value))
    fits = array.shape == shape or (cases is not None and array.shape == whole)
    if not fits:
        many = "" if cases is None else ", or k of them"
        advice = f"{keyword} must be {wanted}{many}, not of shape {array.shape}"
        raise refuse("frame.loads.size", "/" + keyword, array.shape, advice)
    bad = np.argwhere(~np.isfinite(array))
    if len(bad):
        where = "/" + keyword + "/" + "/".join(str(i) for i in bad[0])
        advice = f"{keyword} must be finite numbers; {len(bad)} are not, the first at {tuple(bad[0].tolist())}"
        raise refuse("frame.loads.finite", where, array[tuple(bad[0])], advice)
    return _kept(np.array(np.broadcast_to(array, whole)))


def _kept(array: Floats) -> Floats:
    array.setflags(write=False)
    return array
