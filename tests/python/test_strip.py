# SPDX-License-Identifier: BSD-3-Clause
"""The solved strip, against an independent solution of its compatibility equation."""

from __future__ import annotations

import coverframe as cf
import numpy as np
import pytest

FILM = {"span_m": 1.2, "rise_m": -0.9, "load_kpa": 1.0, "tension_n_per_m": 400.0, "stiffness_n_per_m": 45e3}


def level_force(span: float, rise: float, load: float, tension: float, stiffness: float) -> float:
    """Level force of a cable with the parabola of its load [N/m], by bisection over a fine midpoint sum.

    The parabola of the load and the stretch at every point; free length from the straight, unloaded strip.
    """
    free = np.hypot(span, rise) / (1 + tension / stiffness)
    s = (np.arange(20_000) + 0.5) / 20_000

    def excess(h: float) -> float:
        rho = np.hypot(span, rise + load * span**2 / h * (s - 0.5))
        return float(np.mean(rho / (1 + h * rho / span / stiffness)) - free)

    low, high = 1e-3, 1e7
    for _ in range(200):
        middle = np.sqrt(low * high)
        low, high = (middle, high) if excess(middle) > 0 else (low, middle)
    return float(low)


@pytest.mark.parametrize("rise", [0.0, -0.3, -0.9, -2.4, 0.4])
@pytest.mark.parametrize("load", [0.05, 1.0, 8.0])
def test_the_level_force_solves_the_compatibility_equation(rise: float, load: float) -> None:
    state = cf.strip(**(FILM | {"rise_m": rise, "load_kpa": load}))
    expected = level_force(1.2, rise, 1e3 * load, 400.0, 45e3)
    assert state.level_force_n_per_m == pytest.approx(expected, rel=1e-7)
    assert state.sag_m == pytest.approx(1e3 * load * 1.2**2 / 8 / expected, rel=1e-7)


def test_a_level_strip_is_near_the_cubic_of_the_shallow_cable() -> None:
    # H^3 - T H^2 - EA (q L)^2/24 = 0 (Irvine, Cable Structures, from memory); span 2.5 m, EA 400 kN, T 500 N,
    # q 200 N/m: H = 1794.3 N by the cubic.
    state = cf.strip(span_m=2.5, rise_m=0, load_kpa=0.2, tension_n_per_m=500, stiffness_n_per_m=4e5)
    roots = np.roots([1, -500, 0, -4e5 * 500**2 / 24])
    assert state.level_force_n_per_m == pytest.approx(float(roots[roots.imag == 0][0].real), rel=0.005)


def test_a_strip_is_in_equilibrium() -> None:
    load = np.linspace(0.1, 5, 8)
    state = cf.strip(**(FILM | {"load_kpa": load}))
    np.testing.assert_allclose(state.ridge_down_n_per_m + state.rail_down_n_per_m, 1e3 * load * 1.2, rtol=1e-9)
    np.testing.assert_allclose(
        state.tension_upper_n_per_m, np.hypot(state.level_force_n_per_m, state.ridge_down_n_per_m), rtol=1e-9
    )
    np.testing.assert_allclose(
        state.tension_lower_n_per_m, np.hypot(state.level_force_n_per_m, state.rail_down_n_per_m), rtol=1e-9
    )


def test_the_ridge_gets_more_than_half_of_the_load() -> None:
    state = cf.strip(**FILM)
    assert isinstance(state.ridge_down_n_per_m, float) and isinstance(state.slack, bool)
    assert state.ridge_down_n_per_m == pytest.approx(600 + state.level_force_n_per_m * 0.9 / 1.2, rel=1e-9)
    assert state.rail_down_n_per_m < 0


def test_water_stays_behind_a_flat_rail_only() -> None:
    state = cf.strip(**(FILM | {"rise_m": np.array([-0.02, -0.9]), "load_kpa": 0.5}))
    assert state.hollow_depth_m[0] > 0.0 and state.hollow_area_m2[0] > 0.0
    assert state.hollow_depth_m[1] == 0.0 and state.hollow_area_m2[1] == 0.0


def test_a_strip_without_span_is_refused_by_index() -> None:
    with pytest.raises(cf.InputError) as refused:
        cf.strip(**(FILM | {"span_m": [1.2, 0.0]}))
    assert refused.value.where == "/1"


def test_text_with_units_is_read() -> None:
    spoken = cf.strip(
        span_m="4 ft", rise_m="-3 ft", load_kpa="20 psf", tension_n_per_m="400 N/m", stiffness_n_per_m="45 kN/m"
    )
    psf = 0.45359237 * 9.80665 / 0.3048**2 / 1e3
    number = cf.strip(span_m=1.2192, rise_m=-0.9144, load_kpa=20 * psf, tension_n_per_m=400.0, stiffness_n_per_m=45e3)
    assert spoken.level_force_n_per_m == pytest.approx(number.level_force_n_per_m, rel=1e-12)
