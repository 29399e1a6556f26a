# SPDX-License-Identifier: BSD-3-Clause
"""Loads along members, couples, warmth, settlements, springs, arms and bars of frames. Values are those of elementary
beam theory (from memory)."""

from __future__ import annotations

import dataclasses
import pickle
from typing import Any

import coverframe as cf
import numpy as np
import pytest
from coverframe.frame import Frame, NodeSpring, solve, solve_many

EA, EI, L = 30e6, 20e3, 2.0
FIXED = "ux uy uz rx ry rz"


def span(left: str = FIXED, right: str = FIXED, **changes: Any) -> Frame:
    """One pole member along x."""
    given: dict[str, Any] = {
        "nodes_m": [[0, 0, 0], [L, 0, 0]],
        "held": [left, right],
        "members": [[0, 1]],
        "axial_stiffness_n": EA,
        "ei_vertical_n_m2": EI,
        "ei_level_n_m2": EI / 5,
        "gj_n_m2": 1e3,
    }
    return Frame(**given | changes)


def test_a_fixed_span_under_an_even_load() -> None:
    state = solve(span(), member_loads_n_per_m=[[5, 3, -4]])
    assert state.moment_vertical_from_n_m[0] == pytest.approx(-4 * L**2 / 12)
    assert state.moment_vertical_at(0.5)[0] == pytest.approx(4 * L**2 / 24)
    assert state.moment_level_at(0.5)[0] == pytest.approx(3 * L**2 / 24)
    assert state.shear_vertical_at(0)[0] == pytest.approx(4 * L / 2)
    assert state.shear_vertical_at(1)[0] == pytest.approx(-4 * L / 2)
    assert state.shear_level_at(0)[0] == pytest.approx(3 * L / 2)
    assert state.axial_at(0)[0] == pytest.approx(5 * L / 2)
    assert state.equilibrium.force_share < 1e-12 and state.equilibrium.moment_share < 1e-12


def test_a_splice_that_gives() -> None:
    # M = w L^2/12 / (1 + 2 EI/(k L))
    k = 7e3
    frame = span(spring_from_n_m_per_rad=k, spring_to_n_m_per_rad=k)
    state = solve(frame, member_loads_n_per_m=[[0, 0, -3]])
    assert state.moment_vertical_from_n_m[0] == pytest.approx(-3 * L**2 / 12 / (1 + 2 * EI / (k * L)))


def test_shear_flexibility_is_reachable() -> None:
    # Propped: w L^4/(8 EI) + w L^2/(2 GA) = R (L^3/(3 EI) + L/GA)
    GA, w = 1e5, 0.01
    state = solve(span(right="uy uz", ga_vertical_n=GA), member_loads_n_per_m=[[0, 0, -w]])
    R = (w * L**4 / (8 * EI) + w * L**2 / (2 * GA)) / (L**3 / (3 * EI) + L / GA)
    assert state.reaction[1, 2] == pytest.approx(R, rel=1e-8)


def test_couples_settlements_and_warmth() -> None:
    simple = span("ux uy uz rx", "uy uz")
    state = solve(simple, couples_n_m=[[0, 0, 0], [0, 0.02, 0]])
    assert state.displacement[1, 4] == pytest.approx(0.02 * L / (3 * EI), rel=1e-6)
    assert state.equilibrium.moment_share < 1e-9
    sunk = np.zeros((2, 6))
    sunk[1, 2] = -1e-6
    state = solve(span(), settlements=sunk)
    assert state.reaction[0, 2] == pytest.approx(12 * EI * 1e-6 / L**3, rel=1e-5)
    warm = solve(span(expansion_per_k=2e-5), temperatures_k=40.0)
    assert warm.axial_n[0] == pytest.approx(-EA * 2e-5 * 40)
    free = solve(span(right="uy uz ry", expansion_per_k=2e-5), temperatures_k=[40.0])
    assert free.displacement[1, 0] == pytest.approx(2e-5 * 40 * L)


def test_springs_of_nodes_are_reactions() -> None:
    frame = span("ux uy rx rz", "uy rz", springs=[NodeSpring(node=n, along_n_per_m=[0, 0, 500.0]) for n in (0, 1)])
    state = solve(frame, member_loads_n_per_m=[[0, 0, -0.01]])
    assert state.reaction[:, 2] == pytest.approx([0.01, 0.01], rel=1e-6)
    assert state.displacement[:, 2] == pytest.approx([-0.01 / 500] * 2, rel=1e-6)
    assert state.equilibrium.force_share < 1e-9
    with pytest.raises(cf.InputError):
        NodeSpring(node=0, about_n_m_per_rad=[1, 2])


def test_arms_and_bars() -> None:
    # A bar on an arm of 0.3 m pulls down at the tip of a cantilever: couple and force.
    frame = Frame(
        nodes_m=[[0, 0, 0], [L, 0, 0], [L + 0.3, 0, -1]],
        held=[FIXED, "", FIXED],
        members=[[0, 1], [1, 2]],
        kind=["pole", "bar"],
        axial_stiffness_n=[EA, 1e3],
        free_length_m=[L, 1 - 1e-5],
        ei_vertical_n_m2=EI,
        ei_level_n_m2=EI,
        gj_n_m2=EI,
        arm_from_m=[[0, 0, 0], [0.3, 0, 0]],
    )
    assert frame.drawn_length_m == pytest.approx([L, 1.0])
    state = solve(frame)
    pull = state.axial_n[1]
    gives = L**3 / (3 * EI) + 0.3 * L**2 / EI + 0.3**2 * L / EI  # end of the arm, for a unit force
    assert pull == pytest.approx(1e-5 / (1 / 1e3 + gives), rel=1e-4)
    assert state.moment_vertical_to_n_m[0] == pytest.approx(-pull * 0.3, rel=1e-4)
    assert state.moment_vertical_from_n_m[0] == pytest.approx(-pull * (L + 0.3), rel=1e-4)
    assert state.equilibrium.moment_share < 1e-6
    again = pickle.loads(pickle.dumps(frame))
    assert np.array_equal(again.arm_from_m, frame.arm_from_m) and again.kind == frame.kind
    changed = dataclasses.replace(frame, springs=[NodeSpring(node=1, along_n_per_m=[0, 0, 1e9])])
    assert abs(solve(changed).displacement[1, 2]) < 1e-9
    assert pickle.loads(pickle.dumps(changed)).springs[0].along_n_per_m[2] == 1e9


def test_many_cases_have_their_own_loads_or_the_same() -> None:
    loads = np.array([[[0, 0, -1.0]], [[0, 0, -2.0]], [[0, 1.0, 0]]])
    states = solve_many(span(), forces_n=np.zeros((3, 2, 3)), member_loads_n_per_m=loads, threads=2)
    assert states[1].moment_vertical_from_n_m[0] == pytest.approx(2 * states[0].moment_vertical_from_n_m[0])
    assert states[2].member_loads_n_per_m.tolist() == [[0, 1, 0]]
    same = solve_many(span(), forces_n=np.zeros((2, 2, 3)), member_loads_n_per_m=loads[0])
    assert same[0].load_3_n[0] == same[1].load_3_n[0] == pytest.approx(-L)


@pytest.mark.parametrize(
    ("loads", "code", "where"),
    [
        ({"member_loads_n_per_m": [[0, 0]]}, "frame.loads.size", "/member_loads_n_per_m"),
        ({"couples_n_m": [0, 0, 1]}, "frame.loads.size", "/couples_n_m"),
        ({"couples_n_m": [["1 N m", "0", "0"]] * 2}, "argument.number", "/couples_n_m"),
        ({"temperatures_k": [1, 2]}, "frame.loads.size", "/temperatures_k"),
        ({"settlements": np.full((2, 6), np.nan)}, "frame.loads.finite", "/settlements/0/0"),
        ({"settlements": [[0] * 6, [1, 0, 0, 0, 0, 0]]}, "frame.loads.settlement", "/loads/settlement/6"),
    ],
)
def test_loads_that_do_not_fit_are_refused(loads: dict[str, Any], code: str, where: str) -> None:
    with pytest.raises(cf.InputError) as refused:
        solve(span(right="uy uz"), **loads)
    assert [(problem.code, problem.where) for problem in refused.value.problems] == [(code, where)]


def test_diagrams_of_a_loaded_pole_are_parabolas() -> None:
    matplotlib = pytest.importorskip("matplotlib")
    matplotlib.use("Agg")
    plt = pytest.importorskip("matplotlib.pyplot")
    state = solve(span("ux uy uz rx", "uy uz"), member_loads_n_per_m=[[0, 0, -8.0]])
    ax = cf.plot_frame.moment(state)
    texts = [text.get_text() for text in ax.texts]
    assert texts == ["4"]  # w L^2/8 in the middle, nothing at the ends
    outline = max((line.get_xydata() for line in ax.lines), key=len)
    x, z = outline[1:-1, 0], outline[1:-1, 1]
    assert len(x) > 10 and x[np.argmin(z)] == pytest.approx(L / 2)
    assert z == pytest.approx(z.min() * 4 * (x / L) * (1 - x / L), abs=1e-9)
    shear = cf.plot_frame.shear(state)
    assert sorted(text.get_text() for text in shear.texts) == ["-8", "8"]
    sag = cf.plot_frame.deflected(state, scale=1e3)
    curve = max((line.get_xydata() for line in sag.lines), key=len)
    assert -curve[:, 1].min() == pytest.approx(1e3 * 5 * 8 * L**4 / (384 * EI), rel=1e-3)
    assert sag.get_title() == "largest move 0.0833 mm, of M0"
    plt.close("all")
