# SPDX-License-Identifier: BSD-3-Clause
"""Laws fitted to yearly maxima, against SciPy, lmoments3 and a weather service."""

from __future__ import annotations

import pickle
import threading
from typing import Any

import coverframe as cf
import lmoments3
import numpy as np
import pytest
import scipy.stats as st
from coverframe import yearly_maxima as ym
from lmoments3 import distr

# Yearly greatest rain of 24 hours at Charlottetown [mm], 32 years from 1967 to 2016: Environment and Climate Change
# Canada, short-duration rainfall data, station 8300301, 2021-03-26, table 1. Rain, but the same question, and table 2a
# prints the Gumbel law by moments.
RAIN = np.array(
    "100.8 72.6 46.7 58.7 61.2 61.0 40.4 40.1 27.9 43.4 59.9 52.0 66.2 35.8 60.0 41.9 65.0 57.5 61.0 63.0 80.3 65.2 "
    "34.4 87.8 46.4 89.0 106.8 94.9 78.4 92.6 82.9 70.9".split(),
    dtype=float,
)
MM = 0.00980665  # a millimetre of water [kPa]
YEARS = np.array([2.0, 5.0, 10.0, 25.0, 50.0, 100.0, 1000.0])

Fit = ym.GumbelFit | ym.LognormalFit


def winters(seed: int, count: int, bare: int = 0) -> np.ndarray[Any, np.dtype[np.float64]]:
    """A synthetic series, bare winters among the rest."""
    random = np.random.default_rng(seed)
    series = np.concatenate([random.lognormal(-0.2, 0.6, count), np.zeros(bare)])
    random.shuffle(series)
    return series


# Against others


def test_a_weather_services_gumbel_law() -> None:
    fit = ym.fit_gumbel(maxima_kpa=RAIN * MM, method="moments")
    printed = [60.5, 78.6, 90.6, 105.8, 117.0, 128.1]
    loads = ym.load(fit=fit, return_period_years=YEARS[:6])
    np.testing.assert_allclose(np.asarray(loads) / MM, printed, atol=0.0501)
    assert fit.mean_kpa / MM == pytest.approx(63.9, abs=0.05)
    assert fit.coefficient_of_variation * fit.mean_kpa / MM == pytest.approx(20.5, abs=0.05)


def test_its_confidence_limits_are_about_as_wide() -> None:
    # Table 2b, 95 % limits of the rate over 24 hours: +- 0.3 0.5 0.6 0.8 1.0 1.2 mm/h. They are symmetric and from the
    # asymptotic variance: for 32 years a little too short.
    fit = ym.fit_gumbel(maxima_kpa=RAIN * MM, method="moments")
    interval = ym.interval(fit=fit, return_period_years=YEARS[:6], level=0.95)
    half = (np.asarray(interval.high_kpa) - interval.low_kpa) / 2 / MM / 24
    printed = np.array([0.3, 0.5, 0.6, 0.8, 1.0, 1.2])
    assert np.all(half > printed - 0.05) and np.all(half < 1.2 * (printed + 0.05))


@pytest.mark.parametrize("series", [RAIN * MM, winters(1, 60), winters(2, 5)], ids=["rain", "sixty", "five"])
def test_l_moments_are_those_of_lmoments3(series: Any) -> None:
    gumbel = ym.fit_gumbel(maxima_kpa=series)
    expected = distr.gum.lmom_fit(series)
    assert (gumbel.mode_kpa, gumbel.scale_kpa) == pytest.approx((expected["loc"], expected["scale"]), rel=1e-12)
    lognormal = ym.fit_lognormal(maxima_kpa=series)
    expected = distr.nor.lmom_fit(np.log(series))
    assert np.log(lognormal.median_kpa) == pytest.approx(expected["loc"], abs=1e-12)
    assert lognormal.log_deviation == pytest.approx(expected["scale"], rel=1e-12)
    assert lmoments3.lmom_ratios(series, nmom=2)[1] == pytest.approx(gumbel.scale_kpa * np.log(2), rel=1e-12)


@pytest.mark.parametrize("series", [RAIN * MM, winters(3, 40)], ids=["rain", "forty"])
def test_moments_are_those_of_the_law_of_scipy(series: Any) -> None:
    gumbel = ym.fit_gumbel(maxima_kpa=series, method="moments")
    law = st.gumbel_r(gumbel.mode_kpa, gumbel.scale_kpa)
    assert (law.mean(), law.std()) == pytest.approx((series.mean(), series.std(ddof=1)), rel=1e-9)
    lognormal = ym.fit_lognormal(maxima_kpa=series, method="moments")
    assert np.log(lognormal.median_kpa) == pytest.approx(np.log(series).mean(), abs=1e-12)
    assert lognormal.log_deviation == pytest.approx(np.log(series).std(ddof=1), rel=1e-12)


@pytest.mark.parametrize("bare", [0, 12])
@pytest.mark.parametrize("method", ["moments", "l_moments"])
def test_loads_are_the_quantiles_of_scipy(bare: int, method: str) -> None:
    series = winters(4, 30, bare)
    above = (30 + bare) / 30 / YEARS  # chance of exceeding the load in a winter with snow
    gumbel = ym.fit_gumbel(maxima_kpa=series, method=method)
    assert gumbel.share_without_snow == bare / (30 + bare)
    loads = ym.load(fit=gumbel, return_period_years=YEARS[1:])
    np.testing.assert_allclose(loads, st.gumbel_r.isf(above[1:], gumbel.mode_kpa, gumbel.scale_kpa), rtol=1e-12)
    lognormal = ym.fit_lognormal(maxima_kpa=series, method=method)
    loads = ym.load(fit=lognormal, return_period_years=YEARS)
    expected = st.lognorm.isf(above, lognormal.log_deviation, scale=lognormal.median_kpa)
    np.testing.assert_allclose(loads, expected, rtol=1e-12)


@pytest.mark.parametrize("count", [5, 12, 40])
def test_the_interval_of_normal_logarithms_is_a_tolerance_limit(count: int) -> None:
    # Without bare winters and by moments: ln x_T lies between mean - k s with k from the noncentral t law.
    series = winters(5, count)
    fit = ym.fit_lognormal(maxima_kpa=series, method="moments")
    found = ym.interval(fit=fit, return_period_years=50, level=0.9, draws=100_000)
    k = st.nct.ppf([0.05, 0.95], count - 1, np.sqrt(count) * st.norm.ppf(0.98)) / np.sqrt(count)
    expected = np.log(series).mean() + k * np.log(series).std(ddof=1)
    np.testing.assert_allclose((np.log([found.low_kpa, found.high_kpa]) - expected) / fit.log_deviation, 0, atol=0.06)


def test_the_interval_of_a_gumbel_law_is_that_of_an_own_bootstrap() -> None:
    # The same distance (estimate - truth)/scale, drawn by NumPy and fitted by lmoments3's formulas.
    series = winters(6, 15)
    fit = ym.fit_gumbel(maxima_kpa=series)
    found = ym.interval(fit=fit, return_period_years=50, level=0.8, draws=100_000)
    drawn = np.sort(np.random.default_rng(9).gumbel(size=(40_000, 15)), axis=1)
    scale = drawn @ (2 * np.arange(15) - 14) / (15 * 14 * np.log(2))
    truth = -np.log(-np.log(0.98))
    distance = (drawn.mean(axis=1) - np.euler_gamma * scale + scale * truth - truth) / scale
    low, high = np.quantile(distance, [0.1, 0.9])
    estimate = ym.load(fit=fit, return_period_years=50)
    assert (estimate - found.high_kpa) / fit.scale_kpa == pytest.approx(low, rel=0.03)
    assert (estimate - found.low_kpa) / fit.scale_kpa == pytest.approx(high, rel=0.03)


@pytest.mark.parametrize(("snow", "bare"), [(12, 8), (5, 45)])
def test_the_interval_with_bare_winters_is_that_of_an_own_bootstrap(snow: int, bare: int) -> None:
    # As above; the number of winters with snow is drawn too, again if it is under 5.
    fit = ym.fit_gumbel(maxima_kpa=winters(8, snow, bare))
    found = ym.interval(fit=fit, return_period_years=50, level=0.8, draws=100_000)
    random = np.random.default_rng(10)
    count = random.binomial(snow + bare, snow / (snow + bare), size=400_000)
    count = count[count >= 5][:40_000]
    distance = np.empty(count.size)
    truth = -np.log(-np.log1p(-(snow + bare) / snow / 50))
    for n in np.unique(count):
        here = count == n
        drawn = np.sort(random.gumbel(size=(np.count_nonzero(here), n)), axis=1)
        scale = drawn @ (2 * np.arange(n) - n + 1) / (n * (n - 1) * np.log(2))
        quantile = -np.log(-np.log1p(-(snow + bare) / n / 50))
        distance[here] = (drawn.mean(axis=1) - np.euler_gamma * scale + scale * quantile - truth) / scale
    low, high = np.quantile(distance, [0.1, 0.9])
    estimate = ym.load(fit=fit, return_period_years=50)
    assert (estimate - found.high_kpa) / fit.scale_kpa == pytest.approx(low, rel=0.03)
    assert (estimate - found.low_kpa) / fit.scale_kpa == pytest.approx(high, rel=0.03)


# Winters without snow


def test_bare_winters_keep_the_law_and_thin_it_out() -> None:
    for fit_law in (ym.fit_gumbel, ym.fit_lognormal):
        all_snow = fit_law(maxima_kpa=RAIN * MM)
        half = fit_law(maxima_kpa=np.concatenate([np.zeros(32), RAIN * MM]))
        assert half.share_without_snow == 0.5 and half.winters == 64
        assert ym.load(fit=half, return_period_years=100) == ym.load(fit=all_snow, return_period_years=50)
        assert ym.load(fit=half, return_period_years=2) == 0.0
        with pytest.raises(cf.InputError) as refused:
            ym.interval(fit=half, return_period_years=2)
        assert refused.value.code == "extremes.return_period.dry"


def test_the_low_tail_of_a_gumbel_law_is_refused() -> None:
    fit = ym.fit_gumbel(maxima_kpa=[0.1, 0.2, 0.3, 0.5, 2.0, 6.0, 0, 0, 0, 0, 0])
    with pytest.raises(cf.InputError) as refused:
        ym.load(fit=fit, return_period_years=[50, 2])
    assert (refused.value.code, refused.value.where) == ("extremes.return_period.low_tail", "/1")


# Shapes, units, refusals


def test_shapes_of_return_periods_are_kept() -> None:
    fit = ym.fit_gumbel(maxima_kpa=RAIN * MM)
    assert type(ym.load(fit=fit, return_period_years=50)) is float
    years = np.array([[10.0, 20.0, 50.0], [100.0, 200.0, 500.0]])
    loads = ym.load(fit=fit, return_period_years=years)
    interval = ym.interval(fit=fit, return_period_years=years, draws=1000)
    assert isinstance(loads, np.ndarray) and isinstance(interval.low_kpa, np.ndarray)
    assert loads.shape == interval.low_kpa.shape == years.shape
    assert loads[1, 0] == ym.load(fit=fit, return_period_years=100)
    single = ym.interval(fit=fit, return_period_years=100, draws=1000)
    assert type(single.high_kpa) is float and single.low_kpa == interval.low_kpa[1, 0]
    assert np.all(interval.low_kpa < loads) and np.all(loads < np.asarray(interval.high_kpa))


def test_maxima_may_be_texts_lists_or_quantities() -> None:
    texts = ym.fit_gumbel(maxima_kpa=["10 psf", "1.0 kPa", "30 psf", "500 Pa", "0 kPa", "20 psf"])
    psf = 0.45359237 * 9.80665 / 0.3048**2 / 1e3
    numbers = ym.fit_gumbel(maxima_kpa=[10 * psf, 1.0, 30 * psf, 0.5, 0, 20 * psf])
    assert texts.mode_kpa == pytest.approx(numbers.mode_kpa, rel=1e-12)
    pint = pytest.importorskip("pint")
    units = pint.UnitRegistry()
    quantity = np.array([10.0, 20.0, 30.0, 15.0, 40.0]) * units("lbf/ft**2")
    assert ym.fit_lognormal(maxima_kpa=quantity).mean_kpa == pytest.approx(23 * psf, rel=1e-12)


def test_a_fit_is_a_value() -> None:
    fit = ym.fit_lognormal(maxima_kpa=RAIN * MM)
    assert pickle.loads(pickle.dumps(fit)) == fit
    assert eval(repr(fit), vars(ym)) == fit
    assert fit.caution == "" and ym.fit_lognormal(maxima_kpa=RAIN[:19] * MM).caution.startswith("Only 19 winters")
    by_hand = ym.GumbelFit(
        mode_kpa=1.0,
        scale_kpa=0.4,
        method="moments",
        winters=40,
        winters_without_snow=0,
        mean_kpa=1.2,
        coefficient_of_variation=0.4,
    )
    assert ym.load(fit=by_hand, return_period_years=50) == pytest.approx(st.gumbel_r.isf(0.02, 1.0, 0.4), rel=1e-12)


@pytest.mark.parametrize(
    ("maxima", "code", "where"),
    [
        ([1.0, 2.0, -0.5, 1.0, 2.0, 3.0], "extremes.maxima.range", "/2"),
        ([1.0, np.nan, 0.5, 1.0, 2.0, 3.0], "extremes.maxima.range", "/1"),
        ([1.0, np.inf, 0.5, 1.0, 2.0, 3.0], "extremes.maxima.range", "/1"),
        (np.ma.array([1.0, 2.0, 3.0, 4.0, 5.0], mask=[0, 0, 0, 1, 0]), "extremes.maxima.range", "/3"),
        ([1000.0, 2000.0, 1500.0, 900.0, 800.0], "extremes.maxima.range", "/0"),  # in pascals
        ([0.0] * 30, "extremes.maxima.no_snow", ""),
        ([1.0, 2.0, 3.0, 4.0] + [0.0] * 30, "extremes.maxima.few", ""),
        ([], "extremes.maxima.few", ""),
        ([0.7] * 30, "extremes.maxima.equal", ""),
        (1.0, "argument.shape", "/maxima_kpa"),
        ([[1.0, 2.0], [3.0, 4.0]], "argument.shape", "/maxima_kpa"),
        (["1.0 m"] * 6, "quantity.dimension", "/maxima_kpa"),
        ([None] * 6, "argument.number", "/maxima_kpa"),
    ],
)
def test_what_is_no_series_is_refused(maxima: Any, code: str, where: str) -> None:
    for fit_law in (ym.fit_gumbel, ym.fit_lognormal):
        with pytest.raises(cf.InputError) as refused:
            fit_law(maxima_kpa=maxima)
        assert (refused.value.code, refused.value.where) == (code, where)


@pytest.mark.parametrize(
    ("arguments", "code"),
    [
        ({"return_period_years": 1}, "extremes.return_period.range"),
        ({"return_period_years": np.nan}, "extremes.return_period.range"),
        ({"level": 1.0}, "extremes.level.range"),
        ({"level": [0.9, 0.8]}, "argument.shape"),
        ({"draws": 10}, "extremes.draws.range"),
        ({"draws": 1e4}, "argument.number"),
        ({"draws": 2**40}, "argument.number"),
        ({"seed": -1}, "argument.number"),
        ({"seed": True}, "argument.number"),
    ],
)
def test_what_an_interval_cannot_be_asked_is_refused(arguments: dict[str, Any], code: str) -> None:
    fit = ym.fit_gumbel(maxima_kpa=RAIN * MM)
    with pytest.raises(cf.InputError) as refused:
        ym.interval(**({"fit": fit, "return_period_years": 50} | arguments))
    assert refused.value.code == code


def test_words_and_keywords() -> None:
    with pytest.raises(cf.InputError) as refused:
        ym.fit_gumbel(maxima_kpa=RAIN * MM, method="least squares")
    assert refused.value.code == "argument.choice"
    with pytest.raises(TypeError):
        ym.fit_gumbel(RAIN * MM)  # type: ignore[misc]


def test_the_interval_depends_on_the_seed_alone() -> None:
    fit = ym.fit_gumbel(maxima_kpa=winters(7, 20, 5))
    expected = ym.interval(fit=fit, return_period_years=50)
    found: list[ym.LoadInterval] = []
    threads = [
        threading.Thread(target=lambda: found.append(ym.interval(fit=fit, return_period_years=50))) for _ in range(4)
    ]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert found == [expected] * 4
    other = ym.interval(fit=fit, return_period_years=50, seed=2**64 - 1)
    assert other != expected and other.high_kpa == pytest.approx(expected.high_kpa, rel=0.1)
