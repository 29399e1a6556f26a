# SPDX-License-Identifier: BSD-3-Clause
"""Laws fitted to the yearly maxima of the snow load of one place, and the load of a return period with an interval.

One maximum belongs to one winter. A winter without snow is 0 and stays in the series: it counts in the share of winters
without snow, and the law is fitted to the rest. How the laws are fitted, and what the interval holds and does not hold,
stands in the C++ header actions/extremes_fit.hpp.

>>> from coverframe import yearly_maxima
>>> fit = yearly_maxima.fit_gumbel(maxima_kpa=[1.1, 0.0, 0.4, 0.9, 2.0, 0.7, 1.3, 0.2, 0.0, 0.8])
>>> fit.winters, fit.winters_without_snow
(10, 2)
>>> load = yearly_maxima.load(fit=fit, return_period_years=50)
>>> interval = yearly_maxima.interval(fit=fit, return_period_years=50)
>>> bool(interval.low_kpa < load < interval.high_kpa)
True
>>> fit.caution.startswith("Only 8 winters with snow")
True
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from . import _core
from ._values import Floats, Numbers, choice, numbers, result
from .errors import refuse

__all__ = ["GumbelFit", "LoadInterval", "LognormalFit", "fit_gumbel", "fit_lognormal", "interval", "load"]

_METHODS = ("moments", "l_moments")


@dataclass(frozen=True, slots=True, kw_only=True)
class _Fit:
    #: "moments" or "l_moments".
    method: str
    #: All winters of the series.
    winters: int
    #: Winters whose maximum is 0.
    winters_without_snow: int
    #: Mean maximum of the winters with snow [kPa].
    mean_kpa: float
    #: Standard deviation over mean of the winters with snow [-].
    coefficient_of_variation: float
    #: A sentence for whoever uses the load; empty if there is none.
    caution: str = ""

    @property
    def share_without_snow(self) -> float:
        """Winters without snow over all winters [-]."""
        return self.winters_without_snow / self.winters


@dataclass(frozen=True, slots=True, kw_only=True)
class GumbelFit(_Fit):
    """Winters with snow: F(x) = exp(-exp(-(x - mode)/scale))."""

    mode_kpa: float
    scale_kpa: float


@dataclass(frozen=True, slots=True, kw_only=True)
class LognormalFit(_Fit):
    """Winters with snow: F(x) = Phi(ln(x/median)/log_deviation)."""

    median_kpa: float
    #: Standard deviation of ln x [-].
    log_deviation: float


@dataclass(frozen=True, slots=True)
class LoadInterval:
    """A two-sided confidence interval. Floats, or arrays of the shape of the return periods."""

    low_kpa: Numbers
    high_kpa: Numbers
    level: float


def _series(maxima_kpa: Any) -> Floats:
    series = numbers("maxima_kpa", maxima_kpa)
    if series.ndim != 1:
        advice = f"maxima_kpa is one row of numbers, one for each winter, not an array of shape {series.shape}"
        raise refuse("argument.shape", "/maxima_kpa", series.shape, advice)
    return series


def fit_gumbel(*, maxima_kpa: Any, method: str = "l_moments") -> GumbelFit:
    """Gumbel law of the yearly maxima.

    Parameters
    ----------
    maxima_kpa
        One for each winter [kPa]: 0, or 0.001 to 100. At least 5 winters must have snow; with fewer than 20 the fit
        carries a caution.
    method
        "l_moments", in which one great winter weighs less, or "moments".
    """
    row = _core.extremes_fit(0, choice("method", method, _METHODS), _series(maxima_kpa))
    mode, scale, winters, bare, mean, variation, caution = row
    return GumbelFit(
        mode_kpa=mode,
        scale_kpa=scale,
        method=method,
        winters=winters,
        winters_without_snow=bare,
        mean_kpa=mean,
        coefficient_of_variation=variation,
        caution=caution,
    )


def fit_lognormal(*, maxima_kpa: Any, method: str = "l_moments") -> LognormalFit:
    """Lognormal law of the yearly maxima.

    Both methods work on the logarithms, so a trace of snow weighs as much as a great winter: a trace that does not
    matter for the cover is better given as 0.

    Parameters
    ----------
    maxima_kpa
        One for each winter [kPa]: 0, or 0.001 to 100. At least 5 winters must have snow; with fewer than 20 the fit
        carries a caution.
    method
        "l_moments" or "moments", of the logarithms.
    """
    row = _core.extremes_fit(1, choice("method", method, _METHODS), _series(maxima_kpa))
    median, log_deviation, winters, bare, mean, variation, caution = row
    return LognormalFit(
        median_kpa=median,
        log_deviation=log_deviation,
        method=method,
        winters=winters,
        winters_without_snow=bare,
        mean_kpa=mean,
        coefficient_of_variation=variation,
        caution=caution,
    )


def _crossing(fit: GumbelFit | LognormalFit) -> tuple[int, int, float, float, int, int]:
    method = choice("method", fit.method, _METHODS)
    if isinstance(fit, GumbelFit):
        return 0, method, fit.mode_kpa, fit.scale_kpa, fit.winters, fit.winters_without_snow
    return 1, method, fit.median_kpa, fit.log_deviation, fit.winters, fit.winters_without_snow


def load(*, fit: GumbelFit | LognormalFit, return_period_years: Any) -> Numbers:
    """Load that is exceeded once in the return period, on average [kPa].

    It is 0 if the return period lies in the share of winters without snow. A return period for which a Gumbel law
    gives a negative load is refused: only its upper tail is of use.

    Parameters
    ----------
    fit
        From `fit_gumbel` or `fit_lognormal`.
    return_period_years
        2 to 1e6. Far beyond the years observed the load tells about the law, not about the place.
    """
    years = numbers("return_period_years", return_period_years)
    found = _core.extremes_load(*_crossing(fit), years.reshape(-1))
    return result(found.reshape(years.shape))


def interval(
    *,
    fit: GumbelFit | LognormalFit,
    return_period_years: Any,
    level: float = 0.9,
    draws: int = 10_000,
    seed: int = 1,
) -> LoadInterval:
    """Two-sided confidence interval of the load of a return period, by a parametric bootstrap.

    The same seed gives the same interval. The law itself is taken to be right; that it may not be is not in the
    interval, so fit the other one, too.

    Parameters
    ----------
    fit
        From `fit_gumbel` or `fit_lognormal`.
    return_period_years
        2 to 1e6. Refused if it lies in, or too near, the share of winters without snow.
    level
        Confidence [-], 0.5 to 0.99. Each end is missed with half of the rest.
    draws
        How many series are drawn, 1000 to 1 000 000.
    seed
        Of the random numbers, 0 to 2**64 - 1.
    """
    for keyword, value, largest in (("draws", draws, 2**31 - 1), ("seed", seed, 2**64 - 1)):
        if not isinstance(value, int) or isinstance(value, bool) or not 0 <= value <= largest:
            advice = f"{keyword} must be a whole number from 0 to {largest}"
            raise refuse("argument.number", "/" + keyword, repr(value), advice)
    years = numbers("return_period_years", return_period_years)
    sure = result(numbers("level", level))
    if not isinstance(sure, float):
        raise refuse("argument.shape", "/level", level, "level is a single number")
    low, high = _core.extremes_interval(*_crossing(fit), years.reshape(-1), sure, draws, seed)
    return LoadInterval(result(low.reshape(years.shape)), result(high.reshape(years.shape)), sure)
