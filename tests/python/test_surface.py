# SPDX-License-Identifier: BSD-3-Clause
"""Covers with film as a surface: numbers, refusals, and pictures that show what was computed."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import coverframe as cf
import numpy as np
import pytest
from coverframe import plot_surface
from coverframe.surface import Cover, SurfaceState

matplotlib = pytest.importorskip("matplotlib")
matplotlib.use("Agg")
import matplotlib.pyplot as plt  # noqa: E402


@pytest.fixture(autouse=True)
def closed_figures() -> Iterator[None]:
    yield
    plt.close("all")


@pytest.fixture(scope="module")
def sloop(repository: Path) -> Cover:
    return cf.surface.rig(
        repository / "examples" / "plans" / "sloop.json", film_tension_n_per_m=150, spacing_m=0.3, rows=8
    )


@pytest.fixture(scope="module")
def loaded(sloop: Cover) -> SurfaceState:
    return sloop.load(snow_kpa=0.9, rain="to the brim")


def test_loads_are_carried(sloop: Cover, loaded: SurfaceState) -> None:
    assert loaded.usable
    assert loaded.vertical_reaction_n == pytest.approx(loaded.vertical_load_n, rel=1e-4)
    area = float(np.sum(sloop.state.plan_area_m2))
    added = loaded.vertical_load_n - sloop.state.vertical_load_n
    assert added == pytest.approx(900 * area + 9810 * loaded.water_m3, rel=1e-3)


def test_arrays_have_the_sizes_of_nodes_and_triangles(loaded: SurfaceState) -> None:
    nodes, triangles = len(loaded.places_m), len(loaded.triangles)
    assert loaded.drop_m.shape == loaded.water_depth_m.shape == (nodes,)
    assert loaded.first_n_per_m.shape == loaded.slope_deg.shape == (triangles,)
    assert len(loaded.stretch) == triangles
    assert set(loaded.stretch) <= {"taut", "wrinkled", "slack"}
    assert int(loaded.triangles.max()) == nodes - 1
    assert np.all(np.isfinite(loaded.places_m))
    assert len(loaded.members) == len(loaded.axial_n)


def test_film_lifts_off_a_ridge_with_a_low_upright(repository: Path, loaded: SurfaceState) -> None:
    assert loaded.ridge_lifts == ()
    assert loaded.snaps == ""
    plan = json.loads((repository / "examples" / "plans" / "motor_boat.json").read_text())
    plan["support"]["uprights"][1]["top"] = "1.3 m"
    low = cf.surface.rig(plan, film_tension_n_per_m=150, spacing_m=0.25, rows=9)
    lifts = low.load(snow_kpa=0.3).ridge_lifts
    assert lifts
    assert all(abs(x - 15 * 0.3048) < 0.6 and 0 < gap < 0.3 for x, gap in lifts)


def test_ponds_and_obstacles_are_named(loaded: SurfaceState) -> None:
    hatch = next(o for o in loaded.obstacles if o.name == "companionway hatch")
    assert hatch.force_n > 0
    assert hatch.least_gap_m < 0
    for pond in loaded.ponds:
        assert str(pond).startswith("hollow ")
        assert pond.volume_m3 >= 1e-4
        assert pond.outline_m[0].shape[1] == 2
    assert sum(p.volume_m3 for p in loaded.ponds) <= loaded.water_m3


def test_slope_shares_add_up(loaded: SurfaceState) -> None:
    shares = loaded.slope_shares(holds_deg=15, sheds_deg=40)
    assert sum(shares.values()) == pytest.approx(1)
    assert min(shares.values()) >= 0
    with pytest.raises(cf.InputError):
        loaded.slope_shares(holds_deg=40, sheds_deg=15)


def test_snow_by_station_and_rain_by_depth(sloop: Cover) -> None:
    snow = sloop.snow_by_station(x_m=[0, 10.6], port_kpa=[0.5, 0.5], starboard_kpa=[0.0, 0.0])
    middle = sloop.state.places_m[sloop.state.triangles].mean(axis=1)
    assert np.all(snow[middle[:, 1] < 0] == 0.5)
    assert np.all(snow[middle[:, 1] > 0] == 0)
    state = sloop.load(snow_kpa=snow, rain_m=1e-3)
    assert state.usable
    assert state.water_m3 <= 1e-3 * float(np.sum(sloop.state.plan_area_m2))


def test_first_touch_lies_where_the_film_comes_down(sloop: Cover) -> None:
    touches = {t.obstacle: t for t in sloop.first_touches(snow_kpa=0.9)}
    share = touches["companionway hatch"].share
    assert share is not None
    assert 0 < share < 1
    assert sloop.load(snow_kpa=0.9 * share).obstacles[0].force_n > 0


def test_what_cannot_be_asked_is_refused(sloop: Cover, repository: Path) -> None:
    plan = repository / "examples" / "plans" / "sloop.json"
    with pytest.raises(cf.InputError, match="film must pull"):
        cf.surface.rig(plan, film_tension_n_per_m=0)
    with pytest.raises(cf.InputError):
        cf.surface.rig(plan, film_tension_n_per_m=100, strap_stiffness="middling")  # type: ignore[arg-type]
    with pytest.raises(cf.InputError):
        sloop.load(snow_kpa=-1)
    with pytest.raises(cf.InputError):
        sloop.load(snow_kpa=[1.0, 2.0])
    with pytest.raises(cf.InputError):
        sloop.load(snow_kpa=0.1, rain="a little")  # type: ignore[arg-type]


@pytest.mark.parametrize("draw", [plot_surface.sag, plot_surface.slopes, plot_surface.tension, plot_surface.water])
def test_pictures_are_drawn_on_the_axes_given(draw: Any, sloop: Cover, loaded: SurfaceState) -> None:
    _, ax = plt.subplots()
    assert draw(sloop, loaded, ax=ax) is ax
    assert ax.get_aspect() == 1
    x = [float(v) for line in ax.get_lines() for v in np.asarray(line.get_xdata(), dtype=float)]
    assert max(x) == pytest.approx(10.6, abs=0.05)
    if loaded.ponds:
        assert len(ax.patches) >= len(loaded.ponds)


def test_water_says_what_the_film_rests_on(sloop: Cover, loaded: SurfaceState) -> None:
    assert "companionway hatch" in plot_surface.water(sloop, loaded).get_title()


def test_three_dimensions(sloop: Cover, loaded: SurfaceState) -> None:
    ax = plot_surface.in_space(sloop, loaded)
    assert ax.name == "3d"
    faces = ax.collections[0]
    assert faces.get_array().max() == pytest.approx(
        1e3 * loaded.drop_m[loaded.triangles].mean(axis=1).max(), rel=1e-9
    )


def test_how_much_a_cover_holds_and_what_ends_it(sloop: Cover) -> None:
    holds = sloop.limit(snow_kpa=0.2, strength_n_per_m=1e6)
    assert (holds.end, holds.share, holds.held) == ("none", None, 1.0)
    torn = sloop.limit(snow_kpa=0.9, strength_n_per_m=2000)
    assert torn.end == "torn"
    assert torn.share is not None
    assert 0 < torn.held < torn.share <= torn.held + 0.0101
    assert torn.place in str(torn)
    state = sloop.load(snow_kpa=0.9 * torn.share)
    assert np.max(state.first_n_per_m) > 2000
    assert state.place == ""
    with pytest.raises(cf.InputError) as caught:
        sloop.limit(snow_kpa=0.9, strength_n_per_m=0)
    assert caught.value.code == "film.survey.strength"
