# SPDX-License-Identifier: BSD-3-Clause
"""Feet, straps pulled in turn and straps that slip, from Python: values by hand, and what is refused."""

from __future__ import annotations

import math
import pickle
from typing import Any

import coverframe as cf
import numpy as np
import pytest
from coverframe.frame import (
    Foot,
    Frame,
    Passing,
    StrapRun,
    TighteningStep,
    slip_over_tops,
    slip_over_tops_bounds,
    solve,
    solve_friction_bounds,
    solve_many,
    tighten_in_order,
)

HELD = "ux uy uz"


def on_a_pad(**changes: Any) -> Frame:
    """An upright of 1.5 m on a pad that bears after 2 mm, hung from above by a strap; up and down only."""
    given: dict[str, Any] = {
        "nodes_m": [[0, 0, 0], [0, 0, 1.5], [0, 0, 2.5]],
        "node_names": ["foot", "top", "eye"],
        "held": ["ux uy", "ux uy", HELD],
        "members": [[0, 1], [2, 1]],
        "kind": ["upright", "strap"],
        "axial_stiffness_n": [30e6, 1e5],
        "feet": [Foot(node=0, stiffness_n_per_m=4e5, gap_m=0.002)],
    }
    return Frame(**given | changes)


def trestle(mu: float) -> Frame:
    """Two legs of tan a = 0.4 from a top to feet on the deck, with a tie between the feet."""
    side = 1e7 if mu else 0.0
    return Frame(
        nodes_m=[[0, 0, 2], [-0.8, 0, 0], [0.8, 0, 0]],
        held=["ux uy", "uy", "uy"],
        members=[[1, 0], [2, 0], [1, 2]],
        kind=["upright", "upright", "strap"],
        axial_stiffness_n=[1e8, 1e8, 1e7],
        feet=[Foot(node=n, stiffness_n_per_m=1e8, friction=mu, side_stiffness_n_per_m=side) for n in (1, 2)],
    )


def one_upright() -> Frame:
    """A ridge strap fore and aft over an upright, a cross strap athwart."""
    return Frame(
        nodes_m=[[2, 0, -0.7], [2, 0, 0.5], [0, 0, 0], [4, 0, 0], [2, -1.3, -0.1], [2, 1.3, -0.1]],
        held=[HELD, "", HELD, HELD, HELD, HELD],
        members=[[0, 1], [2, 1], [1, 3], [4, 1], [1, 5]],
        kind=["upright", "strap", "strap", "strap", "strap"],
        axial_stiffness_n=[30e6, 1e5, 1e5, 1e5, 1e5],
    )


RUNS = [StrapRun("ridge", (1, 2), 0.0), StrapRun("C1", (3, 4), 0.0)]


def test_a_pad_sinks_by_hand_and_a_lifted_foot_says_so() -> None:
    # By hand, as in tests/frame/feet_test.cpp: pad and upright one on the other, the hanger beside them.
    k = 1 / (1 / 4e5 + 1.5 / 30e6)
    sunk = (1000 + k * 0.002) / (1e5 + k)
    pressed, hangs = solve_many(on_a_pad(), forces_n=[[[0, 0, 0], [0, 0, -p], [0, 0, 0]] for p in (1000, 150)])
    assert pressed.usable and hangs.usable
    assert -pressed.displacement[1, 2] == pytest.approx(sunk, rel=1e-6)
    assert pressed.foot_push_n == pytest.approx([k * (sunk - 0.002)], rel=1e-6)
    assert pressed.foot_carries.tolist() == [True] and hangs.foot_carries.tolist() == [False]
    assert hangs.loose.tolist() == [True, False, False] and not pressed.loose.any()
    assert pressed.reaction[0, 2] == pytest.approx(pressed.foot_push_n[0], rel=1e-12)
    assert pressed.equilibrium.force_share < 1e-9


def test_friction_bounds_and_the_table_of_feet() -> None:
    # By hand: each foot is pressed by 1000 N and thrust outwards by 400 N; slipping it holds mu times 1000 N.
    forces = [[0, 0, -2000], [0, 0, 0], [0, 0, 0]]
    both = solve_friction_bounds(trestle(0.1), forces_n=forces)
    assert both.smooth.axial_n[2] == pytest.approx(400, rel=1e-3)
    assert both.rough.axial_n[2] == pytest.approx(300, rel=1e-3)
    assert (both.rough.foot_slip_m > 0).all() and (both.smooth.foot_slip_m == 0).all()
    assert both.rough.foot_side_n[:, 0] == pytest.approx([100, -100], rel=1e-3)
    pandas = pytest.importorskip("pandas")
    table = both.rough.feet()
    assert isinstance(table, pandas.DataFrame)
    assert list(table.columns) == ["node", "carries", "push_n", "side_x_n", "side_y_n", "slip_m"]
    assert table["node"].tolist() == ["N1", "N2"]


def test_a_frame_on_feet_survives_pickling() -> None:
    frame = pickle.loads(pickle.dumps(on_a_pad()))
    assert frame.feet == on_a_pad().feet
    assert solve(frame).status == solve(on_a_pad()).status


@pytest.mark.parametrize(
    ("changes", "code"),
    [
        ({"node": 7}, "frame.foot.node"),
        ({"node": 2}, "frame.foot.held"),
        ({"stiffness_n_per_m": 0.0}, "frame.foot.number"),
        ({"gap_m": -0.1}, "frame.foot.number"),
        ({"friction": 0.3}, "frame.foot.number"),
        ({"friction": math.nan}, "frame.foot.number"),
        ({"node": 0.5}, "argument.number"),
        ({"gap_m": [0.1, 0.2]}, "argument.shape"),
    ],
)
def test_bad_feet_are_refused(changes: dict[str, Any], code: str) -> None:
    with pytest.raises(cf.InputError) as caught:
        on_a_pad(feet=[Foot(**{"node": 0, "stiffness_n_per_m": 4e5} | changes)])
    assert caught.value.problems[0].code == code


def test_straps_pulled_in_turn_take_from_one_another() -> None:
    steps = [TighteningStep(0, 900.0), TighteningStep(1, 400.0)]
    t = tighten_in_order(one_upright(), runs=RUNS, steps=steps, held_by_hand=[1])
    assert t.solution.usable and t.message == ""
    assert t.tensions_n.shape == (2, 2)
    assert t.tensions_n[0] == pytest.approx([900, 0], rel=1e-8)
    assert t.tensions_n[1, 1] == pytest.approx(400, rel=1e-8) and 500 < t.tensions_n[1, 0] < 899.9
    assert t.frame.free_length_m[1] < one_upright().free_length_m[1]
    without = tighten_in_order(one_upright(), runs=RUNS, steps=steps)
    assert not without.solution.usable and "strap ridge cannot be pulled" in without.message
    assert without.tensions_n.shape == (0, 2)


def test_straps_slip_over_a_top_to_the_edge_of_eulers_cone() -> None:
    # tests/frame/tightening_test.cpp: 4 mm out of one side of a strap that turns by 90 degrees over a held top.
    frame = Frame(
        nodes_m=[[-1, 0, 0], [0, 0, 1], [1, 0, 0]],
        held=[HELD, HELD, HELD],
        members=[[0, 1], [1, 2]],
        kind="strap",
        axial_stiffness_n=1e5,
        free_length_m=[math.sqrt(2) - 0.004, math.sqrt(2)],
    )
    over = [Passing("S over the top", 0, 1)]
    both = slip_over_tops_bounds(frame, passings=over, greatest=0.4)
    shared = 1e5 * 0.004 / (2 * math.sqrt(2) - 0.004)
    assert both.smooth.first_n == pytest.approx([shared], rel=1e-6)
    assert both.rough.first_n / both.rough.second_n == pytest.approx([math.exp(0.2 * math.pi)], rel=1e-6)
    assert both.rough.turn_rad == pytest.approx([math.pi / 2])
    between = slip_over_tops(frame, passings=over, friction=0.2)
    assert both.smooth.first_n[0] < between.first_n[0] < both.rough.first_n[0]
    pytest.importorskip("pandas")
    assert between.table()["passing"].tolist() == ["S over the top"]
    for passing, friction, code in ((Passing("x", 0, 9), 0.2, "frame.passing"), (over[0], 3.0, "frame.friction")):
        with pytest.raises(cf.InputError) as caught:
            slip_over_tops(frame, passings=[passing], friction=friction)
        assert caught.value.problems[0].code == code
    with pytest.raises(cf.InputError) as caught:
        tighten_in_order(frame, runs=[StrapRun("S", (0, 1), 0.0)], steps=[TighteningStep(1, 100.0)])
    assert caught.value.problems[0].code == "frame.step"


def test_lifted_feet_are_drawn_hollow() -> None:
    matplotlib = pytest.importorskip("matplotlib")
    matplotlib.use("Agg")
    import matplotlib.pyplot as plt
    from coverframe import plot_frame

    for push, label in ((1000.0, "foot"), (150.0, "lifted foot")):
        state = solve(on_a_pad(), forces_n=[[0, 0, 0], [0, 0, -push], [0, 0, 0]])
        ax = plot_frame.deflected(state)
        marks = [line for line in ax.lines if line.get_label() in ("foot", "lifted foot")]
        assert [line.get_label() for line in marks] == [label]
        hollow = marks[0].get_markerfacecolor() == "white"
        assert hollow == (label == "lifted foot")
        np.testing.assert_allclose(np.column_stack(marks[0].get_data()), [[0, 0]])
        plt.close("all")
