# SPDX-License-Identifier: BSD-3-Clause
"""What a state of a frame tells of itself, frames out of plumb and bowed, and loads along straps that are tightened or
slip. Statics by hand, from memory; no source is needed."""

from __future__ import annotations

import pickle

import coverframe as cf
import numpy as np
import pytest
from coverframe.frame import (
    Foot,
    Frame,
    NodeSpring,
    Passing,
    StrapRun,
    TighteningStep,
    bowed,
    buckling,
    leaning,
    out_of_plumb,
    shaped,
    slip_over_tops,
    solve,
    solve_many,
    tension_straps,
    tighten_in_order,
)


def mast(**changes: object) -> Frame:
    """A pole of 2 m, 20 kN m2, foot fixed, in eight members."""
    given: dict[str, object] = {
        "nodes_m": [[0, 0, 0.25 * i] for i in range(9)],
        "held": ["ux uy uz rx ry rz"] + [""] * 8,
        "members": [[i, i + 1] for i in range(8)],
        "axial_stiffness_n": 30e6,
        "ei_vertical_n_m2": 20e3,
        "ei_level_n_m2": 20e3,
        "gj_n_m2": 1e3,
    }
    return Frame(**given | changes)  # type: ignore[arg-type]


def strap(length: float = 2.0, **changes: object) -> Frame:
    given: dict[str, object] = {
        "nodes_m": [[0, 0, 0], [length, 0, 0]],
        "held": ["ux uy uz", "ux uy uz"],
        "members": [[0, 1]],
        "kind": "strap",
        "axial_stiffness_n": 100e3,
    }
    return Frame(**given | changes)  # type: ignore[arg-type]


def at_the_top(force: tuple[float, float, float]) -> np.ndarray:
    forces = np.zeros((9, 3))
    forces[8] = force
    return forces


def test_energies_and_balance_of_a_mast() -> None:
    P, EI, L = 40.0, 20e3, 2.0
    state = solve(mast(), forces_n=at_the_top((P, 0, 0)))
    # The work of a load that grows is half of it times the way, to the second order.
    assert state.strain_energy_n_m == pytest.approx(P**2 * L**3 / (6 * EI), rel=1e-3)
    assert state.load_potential_n_m == pytest.approx(-(P**2) * L**3 / (3 * EI), rel=1e-3)
    assert state.energy_n_m == pytest.approx(state.strain_energy_n_m + state.load_potential_n_m)
    assert state.balance.load_force_n == pytest.approx((P, 0, 0))
    assert state.balance.reaction_force_n == pytest.approx((-P, 0, 0))
    assert state.balance.load_moment_n_m[1] == pytest.approx(P * L, rel=1e-3)
    pairs = zip(state.balance.load_moment_n_m, state.balance.reaction_moment_n_m, strict=True)
    assert all(abs(a + b) < 1e-6 for a, b in pairs)
    assert state.unbalanced_moment_n_m < 1e-6
    assert (state.load_share, state.load_steps, state.caution) == (1.0, 0, "")
    assert state.condition > 1


def test_a_mast_pressed_too_hard_says_how_much_it_holds() -> None:
    euler = np.pi**2 * 20e3 / (4 * 2.0**2)
    state = solve(mast(), forces_n=at_the_top((0, 0, -2 * euler)))
    assert state.status == "unstable"
    assert state.load_share == pytest.approx(0.5, abs=0.013)
    assert state.load_steps > 0


def test_many_states_tell_the_same_as_one() -> None:
    forces = np.array([at_the_top((10.0 * k, 0, -50.0 * k)) for k in range(4)])
    many = solve_many(mast(), forces_n=forces)
    for case, state in enumerate(many):
        one = solve(mast(), forces_n=forces[case])
        for name in ("load_share", "strain_energy_n_m", "energy_n_m", "unbalanced_n"):
            assert getattr(many, name)[case] == getattr(one, name) == getattr(state, name)
        assert state.balance == one.balance and state.load_steps == 0
        assert pickle.loads(pickle.dumps(state)).balance == one.balance
    pytest.importorskip("pandas")
    assert list(many.table()["load_share"]) == [1.0] * 4


def test_stiffnesses_far_apart_are_a_caution_and_then_a_status() -> None:
    def row(c: float) -> cf.frame.Solution:
        frame = Frame(
            nodes_m=[[i, 0, 0] for i in range(4)],
            held=["ux uy uz", "uy uz", "uy uz", "ux uy uz"],
            members=[[0, 1], [1, 2], [2, 3]],
            kind="bar",
            axial_stiffness_n=[1, c, 1],
            member_names=["a", "b", "c"],
        )
        return solve(frame, forces_n=[[0, 0, 0], [1e-3, 0, 0], [0, 0, 0], [0, 0, 0]])

    state = row(1e12)
    assert state.usable and state.condition == pytest.approx(2e12, rel=0.01)
    assert '"b" stiffest, "a" and "c" softest' in state.caution
    state = row(1e16)
    assert state.status == "ill-conditioned" and '"b" stiffest' in state.message


def test_supports_that_fight_and_straps_that_push_are_named() -> None:
    def problem(**changes: object) -> cf.Problem:
        with pytest.raises(cf.InputError) as refused:
            strap(**changes)
        return refused.value.problems[0]

    fights = problem(springs=[NodeSpring(node=1, along_n_per_m=(0, 0, 500))])
    assert (fights.code, fights.where) == ("frame.spring.held", "/frame/springs/0/stiffness/2")
    assert problem(feet=[Foot(node=1, stiffness_n_per_m=1e5)]).code == "frame.foot.held"
    pushes = problem(free_length_m=-0.5)
    assert (pushes.code, pushes.value) == ("frame.strap.push", "-0.5")
    with pytest.raises(cf.InputError, match="frame.strap.push"):
        tension_straps(strap(), runs=[StrapRun("S", (0,), -100.0)])


def test_least_tension_and_sag_of_a_loaded_strap() -> None:
    # A heavy strap nearly straight is a parabola: H = w L^2/(8 sag), and the least tension is H.
    state = solve(strap(free_length_m=2.02), member_loads_n_per_m=[[0, 0, -50.0]])
    assert state.least_tension_n[0] == pytest.approx(50.0 * 2.0**2 / (8 * state.sag_m[0]), rel=0.02)
    assert state.axial_at(0)[0] == pytest.approx(np.hypot(state.least_tension_n[0], 50.0), rel=0.01)
    assert solve(strap()).sag_m[0] == 0 and solve(mast()).least_tension_n[0] == 0
    if pytest.importorskip("pandas"):
        assert {"least_tension_n", "sag_m"} <= set(state.members().columns)


def test_loads_along_straps_that_are_pulled() -> None:
    # Level, 2 m, weight 40 N/m, pulled to a mean of 200 N: sag w L^2/(8 T) but for the small difference of T and H.
    frame = Frame(
        nodes_m=[[0, 0, 0], [2, 0, 0], [4, 0, 0]],
        held=["ux uy uz", "ux uy uz", "ux uy uz"],
        members=[[0, 1], [1, 2]],
        kind="strap",
        axial_stiffness_n=100e3,
    )
    weight = [[0, 0, -40.0], [0, 0, 0]]
    runs = [StrapRun("A", (0,), 0.0), StrapRun("B", (1,), 0.0)]
    pulled = tighten_in_order(
        frame, runs=runs, steps=[TighteningStep(0, 200.0), TighteningStep(1, 300.0)], member_loads_n_per_m=weight
    )
    assert pulled.solution.usable and pulled.message == ""
    assert pulled.tensions_n[-1] == pytest.approx([200, 300], rel=1e-6)
    assert pulled.solution.sag_m[0] == pytest.approx(40 * 2.0**2 / (8 * 200), rel=0.02)
    assert pulled.solution.sag_m[1] == 0


def test_loads_along_straps_that_slip() -> None:
    # Over a held top without friction, both sides end with the same mean tension, the loaded one hanging.
    frame = Frame(
        nodes_m=[[0, 0, 0], [2, 0, 2], [4, 0, 0]],
        held=["ux uy uz"] * 3,
        members=[[0, 1], [1, 2]],
        kind="strap",
        axial_stiffness_n=100e3,
        free_length_m=[2.82, 2.825],
    )
    over = [Passing("S", 0, 1)]
    bare = slip_over_tops(frame, passings=over, friction=0.0)
    laden = slip_over_tops(frame, passings=over, friction=0.0, member_loads_n_per_m=[[0, 0, -60.0], [0, 0, 0]])
    assert laden.solution.usable
    assert laden.first_n[0] == pytest.approx(laden.second_n[0], rel=1e-6)
    assert laden.first_n[0] > bare.first_n[0]
    assert laden.solution.sag_m[0] > 0 and laden.slipped_m[0] != bare.slipped_m[0]


def test_a_mast_out_of_plumb_carries_push_times_lean() -> None:
    P, lean = 500.0, 0.02
    for crooked in (
        out_of_plumb(mast(), level_m=0.0, angle_rad=lean, direction=(1, 0)),
        shaped(mast(), displacement=[[0.125 * i, 0, 0, 0, 0, 0] for i in range(9)], amplitude_m=2 * np.tan(lean)),
    ):
        assert crooked.nodes_m[8, 0] == pytest.approx(2 * np.tan(lean))
        assert np.allclose(crooked.free_length_m, crooked.drawn_length_m, rtol=1e-14)
        state = solve(crooked, forces_n=at_the_top((0, 0, -P)))
        u = np.sqrt(P / 20e3) * 2
        # A column that leans: moment at its foot P a tan(u)/u, u = L sqrt(P/EI) (Timoshenko, from memory).
        assert abs(state.reaction[0, 4]) == pytest.approx(P * 2 * np.tan(lean) * np.tan(u) / u, rel=2e-3)
    with pytest.raises(cf.InputError, match="frame.imperfection.angle"):
        out_of_plumb(mast(), level_m=0.0, angle_rad=1.3)
    with pytest.raises(cf.InputError, match="frame.imperfection.direction"):
        out_of_plumb(mast(), level_m=0.0, angle_rad=0.1, direction=(1, 0, 0))


def test_a_bowed_column_grows_by_one_over_one_less_the_share() -> None:
    # Sine bow of rise a, P of the Euler load P_E: moment at the middle P a/(1 - P/P_E) (from memory).
    column = mast(held=["ux uy uz rz"] + [""] * 7 + ["ux uy"])
    crooked = bowed(column, members=range(8), rise_m=0.01, direction=(1, 0, 0))
    assert crooked.nodes_m[4, 0] == pytest.approx(0.01)
    euler = np.pi**2 * 20e3 / 4
    state = solve(crooked, forces_n=at_the_top((0, 0, -0.4 * euler)))
    moments = np.hypot(state.moment_vertical_to_n_m, state.moment_level_to_n_m)
    assert moments[3] == pytest.approx(0.4 * euler * 0.01 / 0.6, rel=0.02)
    parabola = bowed(column, members=range(8), rise_m=0.01, direction=(1, 0, 0), shape="parabola")
    assert parabola.nodes_m[2, 0] == pytest.approx(0.0075)
    with pytest.raises(cf.InputError, match="frame.imperfection.chain"):
        bowed(column, members=[0, 99], rise_m=0.01)
    with pytest.raises(cf.InputError, match="argument.choice"):
        bowed(column, members=range(8), rise_m=0.01, shape="circle")


def test_one_member_leans_with_what_meets_at_its_top() -> None:
    crooked = leaning(mast(), member=0, angle_rad=0.1, direction=(0, 1))
    assert crooked.nodes_m[1, 1] == pytest.approx(0.25 * np.tan(0.1))
    assert np.allclose(crooked.nodes_m[2:, 1], 0)
    with pytest.raises(cf.InputError, match="frame.imperfection.member"):
        leaning(mast(), member=8, angle_rad=0.1)


def test_a_frame_off_in_the_shape_of_its_buckling_mode() -> None:
    straight = mast()
    push = at_the_top((0, 0, -1000.0))
    mode = buckling(solve(straight, forces_n=push)).modes[0]
    crooked = shaped(straight, displacement=mode.shape, amplitude_m=0.004)
    assert np.linalg.norm(crooked.nodes_m - straight.nodes_m, axis=1).max() == pytest.approx(0.004)
    with pytest.raises(cf.InputError, match="frame.imperfection.shape"):
        shaped(straight, displacement=np.zeros((9, 6)), amplitude_m=0.01)
    with pytest.raises(cf.InputError, match="frame.imperfection.shape"):
        shaped(straight, displacement=np.zeros((9, 3)), amplitude_m=0.01)
