# SPDX-License-Identifier: BSD-3-Clause
"""Rules over numbers, arrays, text and pint quantities."""

from __future__ import annotations

import threading
from typing import Any

import coverframe as cf
import numpy as np
import pytest
from coverframe import asce7_22, en1991_1_3

PSF = 0.45359237 * 9.80665 / 0.3048**2 / 1e3  # [kPa]
FT = 0.3048  # [m]


# Published values


def test_flat_load_of_an_unheated_gable() -> None:
    # O'Rourke, Snow Loads: Guide to ASCE 7-10 (2010), Example 4-3: p_g = 30 psf, C_e = 1.0, C_t = 1.2, printed
    # 25.2 psf. The equation is the same in 7-22 for an importance factor of 1.0.
    load = asce7_22.flat_load(ground_snow_kpa="30 psf", exposure_factor=1.0, thermal_factor=1.2)
    assert load == pytest.approx(25.2 * PSF, rel=1e-12)


def test_unit_weight_of_drifted_snow() -> None:
    # O'Rourke, as above, Example 6-2: p_g = 30 psf, printed 17.9 pcf.
    weight = asce7_22.unit_weight(ground_snow_kpa="30 psf")
    assert weight == pytest.approx(17.9 * PSF / FT, rel=1e-12)


def test_load_of_a_low_duopitch_roof() -> None:
    # Steel Buildings in Europe, Single-storey steel buildings, Part 3, Appendix A: s_k = 0.65 kN/m2, 8.5 degrees,
    # printed 0.52 kN/m2.
    mu = en1991_1_3.shape_coefficient(slope_deg=8.5)
    load = en1991_1_3.roof_load(
        ground_snow_kpa=0.65, shape_coefficient=mu, exposure_coefficient=1.0, thermal_coefficient=1.0
    )
    assert load == pytest.approx(0.52, abs=0.005)


def test_shape_coefficient_of_steep_slopes() -> None:
    # French technical-school exercise "Exo2-2", solution sheet: 0.27 at 50 and 0.53 at 40 degrees.
    mu = en1991_1_3.shape_coefficient(slope_deg=[50, 40], sliding="free")
    assert mu == pytest.approx([0.27, 0.53], abs=0.005)


# Own formulas over arrays


def test_slope_factor_over_an_array() -> None:
    slope = np.linspace(0, 90, 9001)
    for surface, full in (("other", 45.0), ("slippery", 15.0)):
        expected = np.clip((70 - slope) / (70 - full), 0, 1)
        factor = asce7_22.slope_factor(slope_deg=slope, thermal_factor=1.2, surface=surface)
        np.testing.assert_allclose(factor, expected, rtol=1e-12, atol=1e-14)


def test_the_steps_of_a_balanced_load_fit_together() -> None:
    ground = np.array([0.5, 1.0, 3.0])
    flat = asce7_22.flat_load(ground_snow_kpa=ground, exposure_factor=0.9, thermal_factor=1.2)
    factor = asce7_22.slope_factor(slope_deg=40, thermal_factor=1.2, surface="slippery")
    load = asce7_22.sloped_load(flat_load_kpa=flat, slope_factor=factor)
    np.testing.assert_allclose(load, 0.7 * 0.9 * 1.2 * ground * 30 / 55, rtol=1e-12)


def test_minimum_load_is_capped_by_risk_category() -> None:
    # ASCE 7-22, Table 7.3-4, from memory: 25, 30, 35, 40 psf.
    caps = [asce7_22.minimum_load(ground_snow_kpa=5.0, risk_category=c) for c in ("I", "II", "III", "IV")]
    assert caps == pytest.approx([25 * PSF, 30 * PSF, 35 * PSF, 40 * PSF], rel=1e-12)
    assert asce7_22.minimum_load(ground_snow_kpa=0.4, risk_category="I") == pytest.approx(0.4, rel=1e-15)


def test_an_unbalanced_gable_agrees_with_its_parts() -> None:
    ground, slope, wind = 1.5, 20.0, np.array([0.3, 0.6])
    gable = asce7_22.unbalanced_gable(
        sloped_load_kpa=1.0, ground_snow_kpa=ground, slope_deg=slope, eave_to_ridge_m=10.0, winter_wind=wind
    )
    height = asce7_22.drift_height(ground_snow_kpa=ground, fetch_m=10.0, winter_wind=wind)
    run = 1 / np.tan(np.radians(slope))
    np.testing.assert_allclose(gable.windward_kpa, 0.3, rtol=1e-12)
    np.testing.assert_allclose(gable.drift_height_m, height, rtol=1e-12)
    weight = asce7_22.unit_weight(ground_snow_kpa=ground)
    np.testing.assert_allclose(gable.leeward_surcharge_kpa, height * weight / np.sqrt(run), rtol=1e-12)
    np.testing.assert_allclose(gable.surcharge_width_m, 8 * height * np.sqrt(run) / 3, rtol=1e-12)


def test_exposure_of_the_three_landscapes() -> None:
    # EN 1991-1-3:2003, Table 5.1, from memory.
    names = ("windswept", "normal", "sheltered")
    assert [en1991_1_3.exposure_coefficient(topography=name) for name in names] == [0.8, 1.0, 1.2]


# Shapes


def test_single_values_give_a_float() -> None:
    for value in (30, 30.0, np.float64(30), np.float32(30), np.array(30), "30 deg"):
        assert type(en1991_1_3.shape_coefficient(slope_deg=value)) is float


def test_arguments_broadcast() -> None:
    slope = np.array([[10.0], [50.0], [75.0]])
    thermal = np.array([1.0, 1.2])
    factor = asce7_22.slope_factor(slope_deg=slope, thermal_factor=thermal)
    assert factor.shape == (3, 2)
    for i in range(3):
        for j in range(2):
            assert factor[i, j] == asce7_22.slope_factor(slope_deg=slope[i, 0], thermal_factor=thermal[j])


@pytest.mark.parametrize("shape", [(0,), (1,), (1, 1), (2, 0, 3)])
def test_odd_shapes_are_kept(shape: tuple[int, ...]) -> None:
    result = en1991_1_3.shape_coefficient(slope_deg=np.full(shape, 10.0))
    assert isinstance(result, np.ndarray) and result.shape == shape and result.dtype == np.float64


def test_strided_and_narrow_arrays_are_read_right() -> None:
    slope = np.arange(0, 90, dtype=np.float64)
    expected = en1991_1_3.shape_coefficient(slope_deg=slope, sliding="free")
    assert isinstance(expected, np.ndarray)
    for other in (slope[::-1], slope[::7], slope.reshape(9, 10).T, slope.astype(np.int16), slope.astype(np.float32)):
        result = en1991_1_3.shape_coefficient(slope_deg=other, sliding="free")
        np.testing.assert_array_equal(result, expected[np.asarray(other, dtype=int)])


def test_arguments_are_left_alone() -> None:
    slope = np.array([10.0, 20.0])
    slope.setflags(write=False)
    result = en1991_1_3.shape_coefficient(slope_deg=slope)
    assert isinstance(result, np.ndarray) and result.flags.writeable and not np.shares_memory(result, slope)


# Units


def test_text_is_converted() -> None:
    def load(ground: Any) -> Any:
        return asce7_22.flat_load(ground_snow_kpa=ground, exposure_factor=1, thermal_factor=1)

    assert load("1500 Pa") == pytest.approx(load(1.5), rel=1e-15)
    np.testing.assert_allclose(load(["30 psf", "1.5 kPa"]), load(np.array([30 * PSF, 1.5])), rtol=1e-15)


def test_pint_quantities_are_converted() -> None:
    pint = pytest.importorskip("pint")
    units = pint.UnitRegistry()
    ground = np.array([20.0, 30.0]) * units("lbf/ft**2")
    load = asce7_22.flat_load(ground_snow_kpa=ground, exposure_factor=1 * units("dimensionless"), thermal_factor=1)
    np.testing.assert_allclose(load, 0.7 * np.array([20, 30]) * PSF, rtol=1e-12)
    with pytest.raises(cf.InputError) as refused:
        asce7_22.flat_load(ground_snow_kpa=3 * units.m, exposure_factor=1, thermal_factor=1)
    assert (refused.value.code, refused.value.where) == ("argument.dimension", "/ground_snow_kpa")


# Refusals


@pytest.mark.parametrize(
    ("slope", "where"),
    [
        (np.array([10.0, 95.0, 20.0]), "/1"),
        (np.array([10.0, np.nan]), "/1"),
        (np.ma.array([10.0, 20.0, 30.0], mask=[False, False, True]), "/2"),
        (np.array([[0.0, 1.0, 2.0], [3.0, 4.0, -1.0]]), "/1/2"),
        (95.0, ""),
        (float("inf"), ""),
    ],
)
def test_an_item_outside_the_rule_is_named(slope: Any, where: str) -> None:
    with pytest.raises(cf.InputError) as refused:
        asce7_22.slope_factor(slope_deg=slope, thermal_factor=1.2)
    assert (refused.value.code, refused.value.where) == ("asce7.slope.range", where)
    if where:
        assert f"item {where[1:]}" in refused.value.problems[0].advice


@pytest.mark.parametrize(
    ("arguments", "code", "where"),
    [
        ({"slope_deg": "30"}, "quantity.unit.missing", "/slope_deg"),
        ({"slope_deg": "30 psf"}, "quantity.dimension", "/slope_deg"),
        ({"slope_deg": None}, "argument.number", "/slope_deg"),
        ({"slope_deg": True}, "argument.number", "/slope_deg"),
        ({"slope_deg": 1j}, "argument.number", "/slope_deg"),
        ({"thermal_factor": "1.2"}, "argument.number", "/thermal_factor"),
        ({"surface": "icy"}, "argument.choice", "/surface"),
        ({"surface": ["other", "icy"]}, "argument.choice", "/surface/1"),
        ({"surface": None}, "argument.choice", "/surface"),
        ({"slope_deg": [1, 2, 3], "thermal_factor": [1.0, 1.2]}, "argument.shape", ""),
    ],
)
def test_what_is_no_number_is_refused(arguments: dict[str, Any], code: str, where: str) -> None:
    with pytest.raises(cf.InputError) as refused:
        asce7_22.slope_factor(**({"slope_deg": 30.0, "thermal_factor": 1.2} | arguments))
    assert (refused.value.code, refused.value.where) == (code, where)


def test_arguments_are_keywords() -> None:
    with pytest.raises(TypeError):
        asce7_22.slope_factor(30.0, 1.2)  # type: ignore[misc]


def test_rules_run_in_threads() -> None:
    slope = np.linspace(0, 90, 200_001)
    expected = asce7_22.slope_factor(slope_deg=slope, thermal_factor=1.0)
    results: list[Any] = []

    def work() -> None:
        results.append(asce7_22.slope_factor(slope_deg=slope, thermal_factor=1.0))

    threads = [threading.Thread(target=work) for _ in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert len(results) == 4
    for result in results:
        np.testing.assert_array_equal(result, expected)
