# SPDX-License-Identifier: BSD-3-Clause
"""Diagrams of frames: where they are drawn, and that what is drawn is what was computed."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import coverframe as cf
import numpy as np
import pytest
from coverframe import plot_frame
from coverframe.frame import Frame, Solution, solve

matplotlib = pytest.importorskip("matplotlib")
matplotlib.use("Agg")
import matplotlib.pyplot as plt  # noqa: E402

EI = 20e3
ALL = [plot_frame.deflected, plot_frame.axial, plot_frame.shear, plot_frame.moment]


@pytest.fixture(autouse=True)
def closed_figures() -> Iterator[None]:
    yield
    plt.close("all")


def loaded_beam(down_n: float = 100.0, aside_n: float = 0.0, ei: float = EI) -> Solution:
    """A pole of 2 m over two supports in eight members, with a load at the middle."""
    frame = Frame(
        nodes_m=np.column_stack([np.linspace(0, 2, 9), np.zeros(9), np.zeros(9)]),
        held=["ux uy uz rx", *[""] * 7, "uy uz"],
        members=[[i, i + 1] for i in range(8)],
        axial_stiffness_n=30e6,
        ei_vertical_n_m2=ei,
        ei_level_n_m2=ei / 5,
        gj_n_m2=1e3,
    )
    forces = np.zeros((9, 3))
    forces[4] = [0, aside_n, -down_n]
    return solve(frame, forces_n=forces)


def slack_side() -> Solution:
    """An upright between two straps, pulled to starboard: the strap on that side goes slack."""
    frame = Frame(
        nodes_m=[[0, 0, 0], [0, 0, 1.2], [0, -1.3, 0.6], [0, 1.3, 0.6]],
        held=["ux uy uz", "ux", "ux uy uz", "ux uy uz"],
        members=[[0, 1], [1, 2], [1, 3]],
        kind=["upright", "strap", "strap"],
        axial_stiffness_n=[30e6, 100e3, 100e3],
    )
    return solve(frame, forces_n=[[0, 0, 0], [0, 300, -100], [0, 0, 0], [0, 0, 0]])


def labels(ax: Any) -> list[str]:
    return sorted(text.get_text() for text in ax.texts)


@pytest.mark.parametrize("draw", ALL)
@pytest.mark.parametrize("view", ["side", "plan", "section"])
def test_a_diagram_goes_where_it_is_told(draw: Any, view: str) -> None:
    for state in (loaded_beam(), slack_side(), loaded_beam(0.0)):
        _, (left, right) = plt.subplots(1, 2)
        assert draw(state, ax=right, view=view) is right
        assert right.has_data() and not left.has_data()
        own = draw(state, view=view)
        assert own is not right and own.has_data()
        own.figure.canvas.draw()


def test_the_deflected_shape_is_the_elastic_line() -> None:
    # w(x) = P x (3 L^2 - 4 x^2)/(48 EI) up to the middle: elementary beam theory. Between the nodes too.
    ax = plot_frame.deflected(loaded_beam(), scale=40.0)
    thick = [line for line in ax.get_lines() if line.get_linewidth() == 2.4 and len(line.get_xdata())]
    assert len(thick) == 8
    for line in thick[:4]:
        x, z = np.asarray(line.get_xdata()), np.asarray(line.get_ydata())
        np.testing.assert_allclose(z, -40 * 100 * x * (12 - 4 * x**2) / (48 * EI), rtol=1e-3, atol=1e-6)


def test_the_shape_is_bent_to_the_side_it_is_pushed() -> None:
    ax = plot_frame.deflected(loaded_beam(0.0, 50.0), view="plan", scale=10.0)
    bent = [line for line in ax.get_lines() if line.get_linewidth() == 2.4 and len(line.get_xdata())]
    x, y = np.asarray(bent[1].get_xdata()), np.asarray(bent[1].get_ydata())
    np.testing.assert_allclose(y, 10 * 50 * x * (12 - 4 * x**2) / (48 * EI / 5), rtol=1e-3, atol=1e-6)


def test_the_scale_is_said() -> None:
    given = plot_frame.deflected(loaded_beam(), scale=3.0)
    assert any("3 times" in text.get_text() for text in given.get_legend().get_texts())
    for load, move, times in ((90.0, "0.75 mm", 200), (50.0, "0.417 mm", 200), (30.0, "0.25 mm", 500)):
        own = plot_frame.deflected(loaded_beam(load))  # 2 m/12 over the move: 222, 400 and 667
        assert any(f"{times} times" in text.get_text() for text in own.get_legend().get_texts())
        assert move in own.get_title() and "N4" in own.get_title()


def test_moments_stand_on_the_stretched_side_with_the_extreme_named() -> None:
    ax = plot_frame.moment(loaded_beam())
    assert labels(ax) == ["50"]  # P L/4
    assert ax.texts[0].xy[1] < 0 and ax.texts[0].xy[0] == pytest.approx(1.0)  # below, at the middle
    level = plot_frame.moment(loaded_beam(0.0, 50.0), plane="level")
    assert labels(level) == ["25"]
    assert level.texts[0].xy[1] > 0  # pushed to starboard, stretched there
    assert "N m" in level.get_title()


def test_shear_and_axial_values_are_named_once_a_run() -> None:
    state = loaded_beam()
    assert labels(plot_frame.shear(state)) == ["-50", "50"]
    slack = slack_side()
    named = {float(text) for text in labels(plot_frame.axial(slack, view="section"))}
    assert named == {float(f"{n:.3g}") for n in slack.axial_n if n != 0}


def test_pull_and_push_have_the_colours_of_the_legend() -> None:
    ax = plot_frame.axial(slack_side(), view="section")
    key = {text.get_text(): handle for text, handle in zip(ax.get_legend().get_texts(), ax.get_legend().get_patches())}
    bands = [patch for patch in ax.patches if len(patch.get_xy()) > 1]
    upright, strap = bands[:2]
    assert upright.get_facecolor() == key["pushes (-)"].get_facecolor()
    assert strap.get_facecolor() == key["pulls (+)"].get_facecolor()
    assert np.ptp(upright.get_xy()[:, 0]) > 0  # as wide as its force


def test_great_forces_are_given_in_kilonewtons() -> None:
    ax = plot_frame.moment(loaded_beam(50e3, ei=1e3 * EI))
    assert "kN m" in ax.get_title() and float(labels(ax)[0]) == pytest.approx(25, rel=0.01)


@pytest.mark.parametrize("draw", ALL)
def test_what_carries_nothing_is_dashed_and_grey(draw: Any) -> None:
    state = slack_side()
    assert state.active.tolist() == [True, True, False]
    ax = draw(state, view="section")
    dashed = [line for line in ax.get_lines() if line.get_linestyle() == "--" and len(line.get_xdata())]
    assert len(dashed) == 1 and dashed[0].get_color() == "#a3a3a3"
    assert max(dashed[0].get_xdata()) == pytest.approx(1.3)  # the starboard strap
    assert any("slack" in text.get_text() for text in ax.get_legend().get_texts())


@pytest.mark.parametrize("draw", ALL)
def test_a_state_that_is_no_equilibrium_is_not_drawn(draw: Any) -> None:
    state = loaded_beam(1e6)
    assert not state.usable
    with pytest.raises(cf.StateError) as refused:
        draw(state)
    assert refused.value.code == "frame.solution.unusable"


def test_unknown_words_and_scales_are_refused() -> None:
    state = loaded_beam()
    for call in (
        lambda: plot_frame.axial(state, view="front"),
        lambda: plot_frame.moment(state, plane="side"),
        lambda: plot_frame.deflected(state, scale=0.0),
        lambda: plot_frame.deflected(state, scale=float("nan")),
    ):
        with pytest.raises(cf.InputError):
            call()
