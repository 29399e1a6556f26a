# SPDX-License-Identifier: BSD-3-Clause
"""How much film a cover takes: girth along the boat, the sheet needed, and a sheet that does not reach."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import coverframe as cf
import numpy as np
import pytest

DEMOS = ("motor_boat", "sloop", "open_boat", "as_found")


def demo(repository: Path, name: str) -> dict[str, Any]:
    text = (repository / "examples" / "plans" / f"{name}.json").read_text(encoding="utf-8")
    loaded: dict[str, Any] = json.loads(text)
    return loaded


def metres(text: str) -> float:
    return float(text.removesuffix(" m"))


def test_girth_of_the_found_cover_by_interpolation(repository: Path) -> None:
    # Between bow and stern of the ridge: Pythagoras on lines NumPy draws, 0.2 m to the band, 0.15 m under it, a pole.
    plan = demo(repository, "as_found")
    rail = plan["boat"]["rail"]
    nodes = {node["name"]: node for node in plan["support"]["nodes"]}
    ridge = [nodes[name] for name in plan["support"]["ridge_line"]]
    x = np.linspace(metres(ridge[0]["x"]), metres(ridge[-1]["x"]), 500)
    stations = [metres(s["x"]) for s in rail]
    breadth = np.interp(x, stations, [metres(s["half_breadth"]) for s in rail])
    low = np.interp(x, stations, [metres(s["z"]) for s in rail])
    high = np.interp(x, [metres(n["x"]) for n in ridge], [metres(n["z"]) for n in ridge])
    expected = 2 * (np.hypot(breadth, high - low) + 0.2 + 0.15) + 0.045
    assert cf.film.girth(plan, x_m=x) == pytest.approx(expected, rel=1e-13)


@pytest.mark.parametrize("name", DEMOS)
def test_the_sheet_is_as_wide_as_the_greatest_girth(repository: Path, name: str) -> None:
    plan = cf.Plan.from_dict(demo(repository, name))
    sheet = cf.film.sheet_needed(plan)
    assert cf.film.girth(plan, x_m=sheet.widest_at_m) == sheet.width_m
    assert isinstance(cf.film.girth(plan, x_m=1.0), float)
    x = np.linspace(0, sheet.widest_at_m, 300).reshape(3, 100)
    girth = cf.film.girth(plan, x_m=x)
    assert np.shape(girth) == (3, 100)
    assert np.max(girth) <= sheet.width_m * (1 + 1e-14)
    assert sheet.length_m > sheet.widest_at_m
    facts = json.loads(cf.assess(plan, workings=False).json())["film_sheet"]
    assert facts["needed_width_m"] == sheet.width_m
    assert facts["needed_length_m"] == sheet.length_m
    assert facts["widest_place"] == sheet.place


def test_beyond_the_boat_there_is_no_girth(motor_boat_file: Path) -> None:
    with pytest.raises(cf.InputError) as refused:
        cf.film.girth(motor_boat_file, x_m=[1.0, -0.1])
    assert refused.value.problems[0].code == "film.girth.range"
    assert refused.value.problems[0].where == "/1"
    with pytest.raises(cf.InputError):
        cf.film.girth(motor_boat_file, x_m=float("nan"))


def test_a_sheet_that_does_not_reach_is_refused_with_everything_else(repository: Path) -> None:
    plan = demo(repository, "open_boat")
    needed = cf.film.sheet_needed(plan)
    plan["film"]["sheet_width"] = {"value": f"{needed.width_m + 0.3} m", "source": "on the roll"}
    plan["film"]["sheet_length"] = {"value": f"{needed.length_m + 0.3} m", "source": "on the roll"}
    assert cf.Plan.from_dict(plan).to_dict()["film"]["sheet_width"]["source"] == "on the roll"
    plan["film"]["tuck"] = {"value": "0.4 m", "source": "the crew wants more"}
    plan["support"]["band"]["strap"] = "no such strap"
    with pytest.raises(cf.InputError) as refused:
        cf.Plan.from_dict(plan)
    assert [(p.code, p.where) for p in refused.value.problems] == [
        ("strap.unknown", "/support/band/strap"),
        ("film.sheet.narrow", "/film/sheet_width"),
        ("film.sheet.short", "/film/sheet_length"),
    ]
    assert "20 cm more" in refused.value.problems[1].advice
