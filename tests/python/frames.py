# SPDX-License-Identifier: BSD-3-Clause
"""Frames that several tests build."""

from __future__ import annotations

from typing import Any

import numpy as np
from coverframe.frame import Frame

EI = 20e3
TURNS = "rx ry rz"
TWO = np.eye(2, 3)


def beam(length: float = 2.0, pieces: int = 8, **changes: Any) -> Frame:
    """A pole along x on two supports."""
    x = np.linspace(0.0, length, pieces + 1)
    given: dict[str, Any] = {
        "nodes_m": np.column_stack([x, 0 * x, 0 * x]),
        "held": ["ux uy uz rx", *[""] * (pieces - 1), "uy uz"],
        "members": [[i, i + 1] for i in range(pieces)],
        "axial_stiffness_n": 30e6,
        "ei_vertical_n_m2": EI,
        "ei_level_n_m2": EI / 5,
        "gj_n_m2": 1e3,
    }
    return Frame(**given | changes)


def at_node(frame: Frame, node: int, force: tuple[float, float, float]) -> np.ndarray:
    forces = np.zeros((len(frame.nodes_m), 3))
    forces[node] = force
    return forces


def braced_upright(**changes: Any) -> Frame:
    """An upright of 1.2 m and a strap to each of four sides, each pulled to about 500 N."""
    places = np.array([[0, 0, 0], [0, 0, 1.2], [0, -1.3, 0.6], [0, 1.3, 0.6], [-2, 0, 0.7], [2, 0, 0.7]])
    lengths = np.array([1.2, *np.linalg.norm(places[2:] - places[1], axis=1) / (1 + 500 / 100e3)])
    given: dict[str, Any] = {
        "nodes_m": places,
        "node_names": ["foot", "top", "port", "starboard", "bow", "stern"],
        "held": ["ux uy uz", "", "ux uy uz", "ux uy uz", "ux uy uz", "ux uy uz"],
        "members": [[0, 1], [1, 2], [1, 3], [1, 4], [1, 5]],
        "member_names": ["U1", "C1 port", "C1 starboard", "ridge fore", "ridge aft"],
        "kind": ["upright", "strap", "strap", "strap", "strap"],
        "axial_stiffness_n": [30e6, 100e3, 100e3, 100e3, 100e3],
        "free_length_m": lengths,
    }
    return Frame(**given | changes)
