# SPDX-License-Identifier: BSD-3-Clause
"""Any frame from arrays, against closed forms and published numbers."""

from __future__ import annotations

import dataclasses
import math
import pickle
from typing import Any

import coverframe as cf
import numpy as np
import pytest
from coverframe.frame import (
    Frame,
    Solution,
    Spring,
    StrapRun,
    self_weight,
    solve,
    solve_many,
    tension_straps,
)
from frames import EI, TURNS, at_node, beam, braced_upright


def cables(top_x: float = 2.0, upward_n: float = 0.0, **changes: Any) -> Solution:
    """Cases CB-05 to CB-08: cables of 8 mm, E = 70 GPa, from (top_x, 1), (0, 0) and (4, 0) to the free node (2, 0)."""
    area = math.pi * 0.004**2
    given: dict[str, Any] = {
        "nodes_m": [[top_x, 0, 1], [0, 0, 0], [4, 0, 0], [2, 0, 0]],
        "held": ["ux uy uz", "ux uy uz", "ux uy uz", "uy"],
        "members": [[0, 3], [1, 3], [3, 2]],
        "kind": "strap",
        "axial_stiffness_n": 70e9 * area,
    }
    frame = Frame(**given | changes)
    return solve(frame, forces_n=at_node(frame, 3, (0, 0, upward_n)))


# Values


def test_a_load_at_the_middle_bends_a_pole_as_a_simple_beam() -> None:
    # M = P L/4, w = P L^3/(48 EI): elementary beam theory, printed in any handbook. P-delta is 1e-5 of it here.
    state = solve(beam(), forces_n=at_node(beam(), 4, (0, 0, -100)))
    assert state.usable and state.message == ""
    assert state.moment_vertical_to_n_m[3] == pytest.approx(100 * 2 / 4, rel=1e-4)
    assert -state.displacement[4, 2] == pytest.approx(100 * 2**3 / (48 * EI), rel=1e-4)
    assert state.shear_vertical_n[0] == pytest.approx(50, rel=1e-4)
    assert state.reaction[[0, 8], 2] == pytest.approx([50, 50], rel=1e-9)


def test_shear_flexibility_adds_its_part() -> None:
    # w = P L^3/(48 EI) + P L/(4 GA): elementary theory of a beam with shear.
    state = solve(beam(ga_vertical_n=5e5), forces_n=at_node(beam(), 4, (0, 0, -100)))
    assert -state.displacement[4, 2] == pytest.approx(100 * 8 / (48 * EI) + 100 * 2 / (4 * 5e5), rel=1e-4)


def test_level_bending_uses_the_level_stiffness() -> None:
    state = solve(beam(), forces_n=at_node(beam(), 4, (0, 50, 0)))
    assert state.displacement[4, 1] == pytest.approx(50 * 8 / (48 * EI / 5), rel=1e-4)
    assert state.moment_level_to_n_m[3] == pytest.approx(50 * 2 / 4, rel=1e-4)


def test_three_equal_spans_have_the_printed_moments_and_reactions() -> None:
    # T. Hicks, Civil Engineering Formulas, table 2.1 (case BM-05, read on the page): support moment w l^2/10, reactions
    # 4/10 and 11/10 w l, largest moment of the first span 0.08 w l^2, at 0.4 l.
    # Loads at the ends of 20 pieces a span take 1/400 off the support moment: 0.00025 w l^2, and as much off or on a
    # reaction.
    spans, pieces, w = 3, 20, 1.0
    n = spans * pieces
    held = np.zeros((n + 1, 6), dtype=bool)
    held[:, [1, 3, 5]] = True
    held[::pieces, 2] = True
    held[0, 0] = True
    ridge = beam(spans, n, held=held, weight_n_per_m=w)
    state = solve(ridge, forces_n=self_weight(ridge))
    assert -state.moment_vertical_to_n_m[pieces - 1] == pytest.approx(0.1, rel=3e-3)
    assert state.moment_vertical_to_n_m[pieces * 4 // 10 - 1] == pytest.approx(0.08, rel=3e-3)
    half_piece = w / pieces / 2  # goes straight into the end support
    assert state.reaction[0, 2] == pytest.approx(0.4, rel=1e-3)
    assert state.reaction[pieces, 2] == pytest.approx(1.1, rel=1e-3)
    assert state.shear_vertical_n[0] == pytest.approx(0.4 - half_piece, rel=1e-3)


def test_two_rafters_carry_a_load_at_the_ridge_by_hand() -> None:
    # 3-4-5: each rafter pushes P/2 * 5/3. Poles hinged at both ends, that may not turn as a whole.
    rafters = Frame(
        nodes_m=[[-4, 0, 0], [0, 0, 3], [4, 0, 0]],
        held=[f"ux uy uz {TURNS}", f"uy {TURNS}", f"ux uy uz {TURNS}"],
        members=[[0, 1], [1, 2]],
        axial_stiffness_n=1e9,
        ei_vertical_n_m2=1.0,
        ei_level_n_m2=1.0,
        gj_n_m2=1.0,
        spring_from_n_m_per_rad=0.0,
        spring_to_n_m_per_rad=0.0,
    )
    state = solve(rafters, forces_n=at_node(rafters, 1, (0, 0, -600)))
    assert state.axial_n == pytest.approx([-500, -500], rel=1e-5)
    assert state.reaction[0, :3] == pytest.approx([400, 0, 300], rel=1e-5)


def test_a_space_truss_has_the_printed_forces() -> None:
    # Bedford and Fowler, Statics, 4th ed., problem 6.64 (case FR-12, value as quoted elsewhere): BC 32.7 kN and BD
    # 45.2 kN in tension, BE 112.1 kN in compression. First-order theory: a hundredth of the load.
    truss = Frame(
        nodes_m=[[1.1, -0.4, 0], [1, 0, 0], [0, 0, 0.6], [0, 0, -0.4], [0, 0.8, 0]],
        node_names="A B C D E".split(),
        held=[TURNS, TURNS, *[f"ux uy uz {TURNS}"] * 3],
        members=[[0, 1], [0, 2], [0, 3], [1, 2], [1, 3], [1, 4]],
        member_names="AB AC AD BC BD BE".split(),
        axial_stiffness_n=1e9,
        ei_vertical_n_m2=1.0,
        ei_level_n_m2=1.0,
        gj_n_m2=1.0,
        spring_from_n_m_per_rad=0.0,
        spring_to_n_m_per_rad=0.0,
    )
    state = solve(truss, forces_n=at_node(truss, 0, (100, 600, 200)), force_tolerance=1e-8)
    assert state.usable, state.message
    forces = {name: 0.1 * state.axial_n[truss.member(name)] for name in ("BC", "BD", "BE")}
    assert forces == pytest.approx({"BC": 32.7, "BD": 45.2, "BE": -112.1}, rel=2e-3)


def test_two_cables_hang_as_printed() -> None:
    # J. Feron, master thesis (UCLouvain), case CB-05 (value as quoted elsewhere): 0.126554 m and 7037.17 N.
    state = cables(upward_n=-888.808, members=[[0, 3], [1, 3], [3, 2]], free_length_m=[5.0, 2.0, 2.0])
    assert -state.displacement[3, 2] == pytest.approx(0.126554, abs=5.1e-7)
    assert state.axial_n[1:] == pytest.approx([7037.17, 7037.17], abs=0.0129)


def test_a_cable_goes_slack_as_printed() -> None:
    # Case CB-06, the same source: pulled up towards the top cable, that one carries nothing.
    state = cables(upward_n=888.808)
    assert state.displacement[3, 2] == pytest.approx(0.126554, abs=5.1e-7)
    assert state.axial_n == pytest.approx([0.0, 7037.17, 7037.17], abs=0.0129)
    assert state.active.tolist() == [False, True, True]


def test_a_shortened_cable_pulls_as_printed() -> None:
    # Case CB-08, the same source: the top cable, from (0, 1), is shortened by 52.11 mm.
    state = cables(top_x=0.0, free_length_m=[math.sqrt(5) - 0.05211, 2.0, 2.0])
    assert 2 + state.displacement[3, 0] == pytest.approx(2.0 - 0.000476, abs=5e-7)
    assert state.displacement[3, 2] == pytest.approx(0.118795, abs=7.5e-7)
    assert state.axial_n == pytest.approx([1823.48, 5365.62, 7037.17], rel=5e-5)


def test_a_hinge_carries_no_moment() -> None:
    springs = np.full(8, np.inf)
    springs[4] = 0
    held = np.zeros((9, 6), dtype=bool)
    held[0, :4] = True
    held[[4, 8], 1:3] = True
    pole = beam(held=held, spring_from_n_m_per_rad=springs)
    state = solve(pole, forces_n=at_node(pole, 2, (0, 0, -100)))
    assert state.moment_vertical_from_n_m[4] == 0.0
    assert state.moment_vertical_to_n_m[1] == pytest.approx(100 * 1 / 4, rel=1e-4)


def test_a_spring_gives_by_its_force() -> None:
    # Two supports of 4 kN/m under 100 N at the middle of a pole: each gives 12.5 mm.
    pole = beam(held=["ux uy rx rz", *[""] * 7, "uy"])
    springs = [Spring(node=n, stiffness_n_per_m=[0, 0, 4e3]) for n in (0, 8)]
    state = solve(pole, forces_n=at_node(pole, 4, (0, 0, -100)), springs=springs)
    assert state.displacement[[0, 8], 2] == pytest.approx([-0.0125, -0.0125], rel=1e-4)
    assert state.spring_forces_n[:, 2] == pytest.approx([50, 50], rel=1e-6)
    assert state.equilibrium.force_share < 1e-8


def test_a_spring_pulls_from_where_it_is_at_rest() -> None:
    # A strap of 100 kN over 1 m against 50 kN/m that would pull 200 N after 1 mm: 100e3 u = 200 - 50e3 (u - 0.001).
    strap = Frame(
        nodes_m=[[0, 0, 0], [1, 0, 0]],
        held=["ux uy uz", "uy uz"],
        members=[[0, 1]],
        kind="strap",
        axial_stiffness_n=100e3,
    )
    spring = Spring(node=1, stiffness_n_per_m=[50e3, 0, 0], u0_m=[0.001, 0, 0], force0_n=[200, 0, 0])
    state = solve(strap, springs=[spring])
    u = 250 / 150e3
    assert state.displacement[1, 0] == pytest.approx(u, rel=1e-9)
    assert state.spring_forces_n[0] == pytest.approx([100e3 * u, 0, 0], rel=1e-9)
    assert state.equilibrium.force_share < 1e-9


def test_self_weight_is_half_to_each_end() -> None:
    weights = self_weight(beam(weight_n_per_m=40.0), factor=1.35)
    assert weights[:, 2].sum() == pytest.approx(-1.35 * 40 * 2, rel=1e-12)
    assert weights[0, 2] == pytest.approx(weights[1, 2] / 2, rel=1e-12)
    assert not weights[:, :2].any()


# States


def test_an_upright_lifts_off_and_its_straps_carry_on() -> None:
    frame = braced_upright()
    pressed, lifted = (solve(frame, forces_n=at_node(frame, 1, (0, 0, f))) for f in (-200.0, 2000.0))
    assert pressed.usable and pressed.active.all() and pressed.axial_n[0] < 0
    assert lifted.usable and not lifted.active[0] and lifted.axial_n[0] == 0
    assert lifted.equilibrium.force_share < 1e-9


def test_a_mechanism_is_a_status_that_names_node_and_direction() -> None:
    frame = Frame(
        nodes_m=[[0, 0, 0], [0, 0, 1.2], [-2, 0, 1.2], [2, 0, 1.2]],
        node_names=["foot", "top", "bow", "stern"],
        held=["ux uy uz", "", "ux uy uz", "ux uy uz"],
        members=[[0, 1], [2, 1], [1, 3]],
        kind=["upright", "strap", "strap"],
        axial_stiffness_n=100e3,
    )
    state = solve(frame, forces_n=at_node(frame, 1, (0, 0, -100)))
    assert state.status in ("mechanism", "unstable") and not state.usable
    assert '"top"' in state.message and "athwart" in state.message


def test_a_pole_over_its_euler_load_is_unstable() -> None:
    euler = math.pi**2 * (EI / 5) / 2**2
    under, over = (solve(beam(), forces_n=at_node(beam(), 8, (-share * euler, 0, 0))) for share in (0.98, 1.02))
    assert under.usable
    assert over.status == "unstable" and '"N4"' in over.message


def test_a_pole_buckles_at_its_euler_load() -> None:
    # Pinned at both ends, pi^2 EI/L^2, in the weaker plane first: exact for the continuous pole.
    pole = beam()
    state = solve(pole, forces_n=at_node(pole, 8, (-1000.0, 0, 0)))
    found = cf.frame.buckling(state, count=2)
    assert found.message == ""
    assert found.modes[0].factor == pytest.approx(math.pi**2 * (EI / 5) / 2**2 / 1000, rel=1e-3)
    assert found.modes[1].factor > found.modes[0].factor
    assert np.abs(found.modes[0].shape[:, :3]).max() == pytest.approx(1)
    pulled = solve(pole, forces_n=at_node(pole, 8, (1000.0, 0, 0)))
    assert cf.frame.buckling(pulled).modes == ()
    assert cf.frame.buckling(pulled).message
    with pytest.raises(cf.InputError):
        cf.frame.buckling(state, count=0)


def test_an_upright_goes_over_at_stiffness_times_height() -> None:
    frame = braced_upright()
    state = solve(frame, forces_n=at_node(frame, 1, (0, 0, -500.0)))
    (upright,) = cf.frame.upright_stability(state)
    assert upright.push_n > 0
    assert upright.used == pytest.approx(upright.push_n / upright.critical_n)
    fallen = solve(frame, forces_n=at_node(frame, 1, (0, 0, -500.0)), max_iterations=0)
    with pytest.raises(cf.StateError):
        cf.frame.upright_stability(fallen)


def test_too_few_steps_are_a_status() -> None:
    state = solve(braced_upright(), forces_n=at_node(braced_upright(), 1, (0, 0, 2000)), max_iterations=1)
    assert state.status == "iteration limit" and "1 steps" in state.message


def test_the_start_shortens_the_way() -> None:
    frame = braced_upright()
    forces = at_node(frame, 1, (10, 30, 2000))
    first = solve(frame, forces_n=forces)
    again = solve(frame, forces_n=forces, start=first.displacement)
    assert first.iterations > 1 and again.iterations == 0
    np.testing.assert_allclose(again.displacement, first.displacement, rtol=0, atol=1e-12)


def test_straps_are_set_to_their_tensions_together() -> None:
    runs = [
        StrapRun("cross", (1, 2), 500.0),
        StrapRun("ridge", (3, 4), 700.0),
    ]
    tensioned = tension_straps(braced_upright(free_length_m=None), runs=runs)
    assert tensioned.solution.usable and tensioned.rounds >= 1
    assert tensioned.solution.axial_n[1:] == pytest.approx([500, 500, 700, 700], rel=1e-8)
    again = solve(tensioned.frame)
    assert again.axial_n == pytest.approx(tensioned.solution.axial_n, rel=1e-6)
    assert tensioned.frame.free_length_m[1] < tensioned.frame.drawn_length_m[1]


def test_everything_that_acts_adds_up_to_nothing() -> None:
    frame = braced_upright()
    sums = solve(frame, forces_n=at_node(frame, 1, (40, 60, -300))).equilibrium
    assert sums.force_share < 1e-10 and sums.moment_share < 1e-10
    pole = solve(beam(), forces_n=at_node(beam(), 3, (0, 0, -100))).equilibrium
    assert pole.force_share < 1e-8 and pole.moment_share < 1e-6
    aslant = solve(beam(), forces_n=at_node(beam(), 3, (0, 20, -100)))
    assert aslant.equilibrium.force_share < 1e-8
    # A node held about one axis alone: its moment counts along the rotation vector, so a little of the sum is left.
    move = np.linalg.norm(aslant.displacement[:, :3], axis=1).max()
    assert 0 < np.abs(aslant.equilibrium.moment_n_m).max() < np.hypot(20, 100) * move
    # A state that is none is seen: without its reactions nothing holds the load.
    fallen = dataclasses.replace(aslant, reaction=np.zeros_like(aslant.reaction)).equilibrium
    assert fallen.force_n == pytest.approx((0, 20, -100)) and fallen.force_share > 0.5
    assert fallen.moment_n_m == pytest.approx((0, 0.75 * 100, 0.75 * 20), abs=0.1)


# Many at once


def test_many_cases_are_those_cases_one_by_one() -> None:
    frame = braced_upright()
    forces = np.zeros((23, 6, 3))
    forces[:, 1, 1] = np.linspace(-300, 300, 23)
    forces[:, 1, 2] = np.linspace(-800, 2500, 23)
    many = solve_many(frame, forces_n=forces)
    assert len(many) == 23 and many.usable.all()
    assert not many.active.all()
    for load, one in zip(forces, many, strict=True):
        single = solve(frame, forces_n=load)
        assert (single.status, single.iterations, single.energy_n_m) == (one.status, one.iterations, one.energy_n_m)
        for name in ("displacement", "axial_n", "active", "reaction", "forces_n"):
            np.testing.assert_array_equal(getattr(single, name), getattr(one, name))


@pytest.mark.parametrize("threads", [2, 5, 64])
def test_threads_change_no_bit(threads: int) -> None:
    forces = np.zeros((40, 9, 3))
    forces[:, 4, 2] = np.linspace(-1000, 1000, 40)
    forces[:, 6, 1] = 30
    one, several = (solve_many(beam(), forces_n=forces, threads=t) for t in (1, threads))
    assert one.status == several.status
    for name in ("displacement", "member_forces", "reaction", "energy_n_m", "iterations"):
        np.testing.assert_array_equal(getattr(one, name), getattr(several, name))


def test_a_case_that_cannot_stand_does_not_disturb_the_others() -> None:
    euler = math.pi**2 * (EI / 5) / 2**2
    forces = np.zeros((3, 9, 3))
    forces[:, 8, 0] = [-0.5 * euler, -1.5 * euler, 0.0]
    many = solve_many(beam(), forces_n=forces, threads=2)
    assert many.usable.tolist() == [True, False, True]
    assert many.message[1] and not many.message[0]


def test_the_table_of_many_cases_counts_and_measures() -> None:
    pytest.importorskip("pandas")
    frame = braced_upright()
    many = solve_many(frame, forces_n=np.array([at_node(frame, 1, (0, 0, f)) for f in (-200.0, 2000.0)]))
    table = many.table()
    assert table["status"].tolist() == list(many.status)
    assert table["inactive_members"].tolist() == [0, 1]
    assert table["largest_push_n"].tolist() == [-many.axial_n[0, 0], 0.0]
    assert table["largest_tension_n"].tolist() == many.axial_n.max(axis=1).tolist()
    assert table["largest_move_m"][1] == pytest.approx(many.displacement[1, 1, 2], rel=1e-9)


def test_no_case_is_no_mistake() -> None:
    many = solve_many(beam(), forces_n=np.zeros((0, 9, 3)))
    assert len(many) == 0 and list(many) == [] and many.axial_n.shape == (0, 8)


# Tables, pickles, texts


def test_tables_say_what_the_arrays_say() -> None:
    pytest.importorskip("pandas")
    frame = braced_upright()
    state = solve(frame, forces_n=at_node(frame, 1, (0, 0, 2000)))
    members, nodes = state.members(), state.nodes()
    assert members["member"].tolist() == list(frame.member_names)
    assert members["from"].tolist() == ["foot", "top", "top", "top", "top"]
    np.testing.assert_array_equal(members["axial_n"], state.axial_n)
    np.testing.assert_array_equal(nodes["uz_m"], state.displacement[:, 2])
    np.testing.assert_array_equal(nodes["reaction_mz_n_m"], state.reaction[:, 5])
    assert nodes["load_z_n"].sum() == 2000


def test_pickles_give_the_same() -> None:
    frame = braced_upright()
    springs = (Spring(node=1, stiffness_n_per_m=np.eye(3), u0_m=[0, 0, 0.1], force0_n=[1, 2, 3]),)
    state = solve(frame, forces_n=at_node(frame, 1, (0, 10, -200)), springs=springs)
    back: Solution = pickle.loads(pickle.dumps(state))
    assert (back.status, back.energy_n_m, back.frame.kind) == (state.status, state.energy_n_m, frame.kind)
    np.testing.assert_array_equal(back.axial_n, state.axial_n)
    np.testing.assert_array_equal(back.spring_forces_n, state.spring_forces_n)
    for f in dataclasses.fields(frame):
        assert np.array_equal(getattr(back.frame, f.name), getattr(frame, f.name))
    with pytest.raises(ValueError):
        back.frame.nodes_m[0, 0] = 1.0
    many = solve_many(frame, forces_n=np.zeros((2, 6, 3)))
    assert pickle.loads(pickle.dumps(many)).status == many.status
    assert pickle.loads(pickle.dumps(StrapRun("a", (1,), 5.0))) == StrapRun("a", (1,), 5.0)


def test_a_frame_cannot_be_changed_but_replaced() -> None:
    frame = beam()
    with pytest.raises(dataclasses.FrozenInstanceError):
        frame.kind = ()  # type: ignore[misc]
    with pytest.raises(ValueError):
        frame.axial_stiffness_n[0] = 1.0
    for array in (solve(frame).displacement, solve(frame).axial_n, solve_many(frame, forces_n=[np.eye(9, 3)]).reaction):
        with pytest.raises(ValueError):
            array[0] = 1.0
    softer = dataclasses.replace(frame, ei_vertical_n_m2=EI / 2)
    load = at_node(frame, 4, (0, 0, -10))
    assert solve(softer, forces_n=load).displacement[4, 2] == pytest.approx(
        2 * solve(frame, forces_n=load).displacement[4, 2], rel=1e-4
    )


def test_text_with_units_is_read() -> None:
    frame = beam(axial_stiffness_n="30000 kN", free_length_m="25 cm", weight_n_per_m="0.04 kN/m")
    assert frame.axial_stiffness_n[0] == pytest.approx(30e6) and frame.free_length_m[7] == pytest.approx(0.25)
    assert frame.weight_n_per_m[0] == pytest.approx(40.0)


def test_what_only_poles_have_is_nothing_elsewhere() -> None:
    frame = braced_upright(ei_vertical_n_m2=1.0, spring_to_n_m_per_rad=0.0)
    assert not frame.ei_vertical_n_m2.any() and np.isinf(frame.spring_to_n_m_per_rad).all()
    assert "1 uprights, 4 straps" in repr(frame)
