# SPDX-License-Identifier: BSD-3-Clause
"""A refusal names the keyword that its caller wrote, also where the compiled part refuses. No source is needed."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import coverframe as cf
import pytest
from coverframe.film import modulus_after, stretch_left, tension_after, tension_warmed
from coverframe.frame import (
    StrapRun,
    TighteningStep,
    bowed,
    leaning,
    out_of_plumb,
    tension_straps,
    tighten_in_order,
)
from coverframe.surface import Cover, rig
from frames import braced_upright

NAN = float("nan")


def places(call: Callable[..., Any], **given: Any) -> list[str]:
    with pytest.raises(cf.InputError) as refused:
        call(**given)
    return [problem.where for problem in refused.value.problems]


@pytest.fixture(scope="module")
def plan(repository: Path) -> cf.Plan:
    return cf.read_plan(repository / "examples" / "plans" / "sloop.json")


@pytest.fixture(scope="module")
def cover(plan: cf.Plan) -> Cover:
    return rig(plan, film_tension_n_per_m="150 N/m", spacing_m="20 in", rows=4)


@pytest.mark.parametrize(
    ("given", "where"),
    [
        ({"film_tension_n_per_m": 0}, "/film_tension_n_per_m"),
        ({"film_tension_n_per_m": 1e5}, "/film_tension_n_per_m"),
        ({"film_tension_n_per_m": NAN}, "/film_tension_n_per_m"),
        ({"film_tension_n_per_m": None}, "/film_tension_n_per_m"),
        ({"film_tension_n_per_m": "150 kPa"}, "/film_tension_n_per_m"),
        ({"spacing_m": 0}, "/spacing_m"),
        ({"spacing_m": [0.2, 0.3]}, "/spacing_m"),
        ({"rows": 1}, "/rows"),
        ({"rows": 4.5}, "/rows"),
        ({"rows": True}, "/rows"),
        ({"rows": 2**40}, "/rows"),
        ({"strap_stiffness": "soft"}, "/strap_stiffness"),
    ],
)
def test_a_surface_that_cannot_be_rigged(plan: cf.Plan, given: dict[str, Any], where: str) -> None:
    assert places(rig, **{"plan": plan, "film_tension_n_per_m": 150} | given) == [where]


@pytest.mark.parametrize(
    ("given", "where"),
    [
        ({"snow_kpa": -1}, "/snow_kpa"),
        ({"snow_kpa": NAN}, "/snow_kpa"),
        ({"snow_kpa": [1, 2]}, "/snow_kpa"),
        ({"rain_m": -0.1}, "/rain_m"),
        ({"rain_m": "some"}, "/rain_m"),
        ({"permanent_factor": -1}, "/permanent_factor"),
        ({"permanent_factor": "1"}, "/permanent_factor"),
    ],
)
def test_a_surface_that_cannot_be_loaded(cover: Cover, given: dict[str, Any], where: str) -> None:
    assert places(cover.load, **{"snow_kpa": 0.1} | given) == [where]


def test_shares_and_strengths_of_a_surface(cover: Cover) -> None:
    assert places(cover.first_touches, snow_kpa=0.1, most=0) == ["/most"]
    assert places(cover.first_touches, snow_kpa=-0.1) == ["/snow_kpa"]
    assert places(cover.limit, snow_kpa=0.1, most=NAN) == ["/most"]
    assert places(cover.limit, snow_kpa=-0.1) == ["/snow_kpa"]
    assert places(cover.limit, snow_kpa=0.1, strength_n_per_m=0) == ["/strength_n_per_m"]
    assert places(cover.snow_by_station, x_m=[1, 0], port_kpa=[1, 1], starboard_kpa=[1, 1]) == ["/x_m"]


def test_a_survey(plan: cf.Plan) -> None:
    assessment = cf.assess(plan)
    assert places(cf.survey, assessment=assessment, spacing_m=0) == ["/spacing_m"]
    assert places(cf.survey, assessment=assessment, rows=1) == ["/rows"]
    assert places(cf.survey, assessment=assessment, rows=6.5) == ["/rows"]


def test_film_that_ages() -> None:
    times = {"exponent": 0.1, "known_after": 1, "after": 10}
    assert places(modulus_after, modulus_kpa=-1, **times) == ["/modulus_kpa"]
    assert places(tension_after, tension_n_per_m=-1, **times) == ["/tension_n_per_m"]
    assert places(stretch_left, tension_n_per_m=1, stiffness_n_per_m=0, **times) == ["/stiffness_n_per_m"]
    assert places(tension_warmed, tension_n_per_m=1, stiffness_n_per_m=[1e4, 0], expansion=1e-4, warmer=5) == ["/1"]


def test_a_frame_that_cannot_be_off() -> None:
    frame = braced_upright()
    assert places(out_of_plumb, frame=frame, level_m=0, angle_rad=1.5) == ["/angle_rad"]
    assert places(out_of_plumb, frame=frame, level_m=NAN, angle_rad=0.1) == ["/level_m"]
    assert places(leaning, frame=frame, member=0, angle_rad=-1.5) == ["/angle_rad"]
    assert places(bowed, frame=frame, members=[0], rise_m=NAN) == ["/rise_m"]


def test_straps_that_cannot_be_set() -> None:
    frame = braced_upright()
    pull = [StrapRun("C1", (1, 2), 500.0)]
    assert places(tension_straps, frame=frame, runs=[StrapRun("C1", (1, 2), -5.0)]) == ["/runs/0/tension_n"]
    steps = {"frame": frame, "runs": pull}
    assert places(tighten_in_order, **steps, steps=[TighteningStep(0, -5.0)]) == ["/steps/0/tension_n"]
    assert places(tighten_in_order, **steps, steps=[TighteningStep(0, 5.0, -1.0)]) == ["/steps/0/give_m"]
    held = {"steps": [TighteningStep(0, 5.0)], "held_by_hand": [1]}
    assert places(tighten_in_order, **steps, **held, hand_stiffness_n_per_m=0) == ["/hand_stiffness_n_per_m"]
