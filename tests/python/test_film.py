# SPDX-License-Identifier: BSD-3-Clause
"""Film by the strip: rail, ponding, ageing, span at the limit."""

from __future__ import annotations

import coverframe as cf
import numpy as np
import pytest


def test_the_capstan_of_euler_and_eytelwein() -> None:
    turn = cf.film.turn_over_rail(tension_n_per_m=300, arrives_deg=20, leaves_deg=110, friction=0.3)
    cone = np.exp(0.3 * np.pi / 2)
    assert turn.turn_deg == pytest.approx(90)
    assert turn.band_pull_n_per_m == pytest.approx((300 / cone, 300 * cone))
    assert turn.band_lift_n_per_m[0] == pytest.approx(300 / cone * np.sin(np.radians(110)))
    assert turn.relief_n_per_m[1] == pytest.approx(300 - 300 / cone)
    # Without friction the rail holds what changes direction.
    down, inwards = turn.rail_down_n_per_m, turn.rail_inwards_n_per_m
    assert np.hypot(down, inwards) == pytest.approx(2 * 300 * np.sin(np.radians(45)))


def test_everything_broadcasts() -> None:
    turn = cf.film.turn_over_rail(tension_n_per_m=[[100.0], [200.0]], arrives_deg=30, friction=[0, 0.2, 0.4])
    assert np.shape(turn.band_pull_n_per_m[0]) == (2, 3)
    pond = cf.film.ponding(
        span_m=[1.2, 1.4], fall_m=0.2, load_kpa=0.6, tension_n_per_m=150, stiffness_n_per_m=36e3
    )
    assert np.shape(pond.sag_m) == (2,)
    assert not np.any(pond.drains)


def test_both_criteria_of_ponding() -> None:
    # Validation case PN-01: g L^2/pi^2 at 1.5 m.
    flat = cf.film.ponding(span_m=1.5, fall_m=0, load_kpa=0.5, tension_n_per_m=300, stiffness_n_per_m=45e3)
    assert flat.critical_tension_n_per_m == pytest.approx(2236.41183, rel=1e-8)
    assert flat.settling_tension_n_per_m == pytest.approx(flat.critical_tension_n_per_m)
    assert flat.drains is False
    assert flat.tension_needed_n_per_m == np.inf
    assert flat.span_needed_m == 0
    steep = cf.film.ponding(span_m=1.2, fall_m=0.8, load_kpa=0.5, tension_n_per_m=100, stiffness_n_per_m=36e3)
    assert steep.drains is True
    assert steep.fall_needed_m == 0.8


def test_what_is_needed_drains_and_agrees_with_the_strip() -> None:
    given = {"span_m": 1.4, "load_kpa": 0.6, "stiffness_n_per_m": 36e3}
    pond = cf.film.ponding(fall_m=0.2, tension_n_per_m=150, **given)
    for share, drains in ((1.001, True), (0.999, False)):
        assert cf.film.ponding(fall_m=pond.fall_needed_m * share, tension_n_per_m=150, **given).drains is drains
    strip = cf.strip(rise_m=-0.2, tension_n_per_m=150, **given)
    assert strip.sag_m == pytest.approx(pond.sag_m, rel=1e-12)
    assert strip.hollow_area_m2 > 0


def test_the_least_tension_with_which_water_settles_is_that_of_differences() -> None:
    # By finite differences with SciPy, 2000 pieces.
    pond = cf.film.ponding(
        span_m=[1.7, 1.5], fall_m=[0.65, 0.4], load_kpa=[0.3, 0.5], tension_n_per_m=100, stiffness_n_per_m=36e3
    )
    np.testing.assert_allclose(pond.settling_tension_n_per_m, [549.6988758, 997.8950053], rtol=1e-5)


def test_ageing() -> None:
    assert cf.film.modulus_after(
        modulus_kpa="250 MPa", exponent=0.1, known_after=1, after=1440
    ) == pytest.approx(250e3 * 1440**-0.1)
    assert cf.film.tension_after(
        tension_n_per_m=300, exponent=0.1, known_after=1, after=1440
    ) == pytest.approx(300 * 1440**-0.1)
    warmed = cf.film.tension_warmed(
        tension_n_per_m=100, stiffness_n_per_m=36e3, expansion=1e-4, warmer=[-40, 0, 40]
    )
    np.testing.assert_allclose(warmed, [100 + 36e3 * 0.004, 100, 0])
    assert cf.film.stretch_left(
        tension_n_per_m=500, stiffness_n_per_m=36e3, exponent=0.1, known_after=1, after=1e4
    ) == pytest.approx(500 / 36e3 * (1e4**0.1 - 1))


def test_a_load_per_area_says_nothing_without_the_span() -> None:
    # Common practice, no source: "256 lb per square foot". Film of 0.15 mm: at its limit exactly over this span.
    limit = 9e6 * 0.15e-3
    span = cf.film.span_at_limit(
        stiffness_n_per_m=250e6 * 0.15e-3 / (1 - 0.42**2), tension_n_per_m=150, limit_n_per_m=limit, load_kpa="256 psf"
    )
    at_span = cf.strip(
        span_m=span, rise_m=0, load_kpa="256 psf", tension_n_per_m=150,
        stiffness_n_per_m=250e6 * 0.15e-3 / (1 - 0.42**2),
    )
    assert at_span.tension_upper_n_per_m == pytest.approx(limit, rel=1e-6)


@pytest.mark.parametrize(
    ("rule", "given", "code"),
    [
        (cf.film.turn_over_rail, {"tension_n_per_m": -1, "arrives_deg": 0, "friction": 0}, "film.rail.range"),
        (
            cf.film.ponding,
            {"span_m": 0, "fall_m": 0, "load_kpa": 1, "tension_n_per_m": 1, "stiffness_n_per_m": 1},
            "film.ponding.range",
        ),
        (cf.film.modulus_after, {"modulus_kpa": 1, "exponent": 1, "known_after": 1, "after": 1}, "film.ageing.range"),
        (
            cf.film.tension_warmed,
            {"tension_n_per_m": 1, "stiffness_n_per_m": 1, "expansion": 1, "warmer": 1},
            "film.ageing.range",
        ),
        (
            cf.film.span_at_limit,
            {"stiffness_n_per_m": 1, "tension_n_per_m": 2, "limit_n_per_m": 1, "load_kpa": 1},
            "film.strip",
        ),
    ],
)
def test_numbers_outside_are_refused(rule: object, given: dict[str, float], code: str) -> None:
    assert callable(rule)
    with pytest.raises(cf.InputError) as caught:
        rule(**given)
    assert caught.value.code == code
