# SPDX-License-Identifier: BSD-3-Clause
# Written by bindings/tools/write_rules.py from the catalogue of rules; do not edit.
"""EN 1990:2002, general statistics: one function for each rule.

Every argument may be a number, an array, text with a unit or a pint quantity; arrays broadcast, words of a choice too.
The first item a rule does not cover raises `coverframe.InputError` whose ``where`` is its index ("/3"). Loads of roofs
are per horizontal area. `coverframe.rules.workings` lists how a number comes about.
"""

from __future__ import annotations

from typing import Any, NamedTuple

from .rules import Result, call

__all__ = [
    "LoadOfReturnPeriod",
    "YearlyChance",
    "exceedance_in_winters",
    "gumbel_frequency_factor",
    "load_of_return_period",
    "load_over_50_year_load",
    "load_over_mean",
    "return_period_of_multiple",
    "return_period_of_reliability_index",
    "yearly_chance",
]


def exceedance_in_winters(*, return_period_years: Any, winters: Any) -> Result:
    """Chance that the load of a return period is exceeded at least once in some winters. general statistics,
    independent winters.

    P = 1 - (1 - 1/T)^N.

    Parameters
    ----------
    return_period_years
        T [-]: return period, 2 to 1e6.
    winters
        N [-]: whole number of winters, 1 to 1000.

    How read: read on a page. Colorado Water Conservation Board, weblink document 54318.
    """
    value: Result = call(
        "extremes.exceedance_in_winters",
        return_period_years=return_period_years,
        winters=winters,
    )[0]
    return value


def gumbel_frequency_factor(*, return_period_years: Any) -> Result:
    """Frequency factor of the Gumbel law. general statistics, Gumbel law of yearly maxima.

    k_T = -(sqrt(6)/pi)(0.5772 + ln(-ln(1 - 1/T))).

    Parameters
    ----------
    return_period_years
        T [-]: return period, 2 to 1e6.

    How read: read on a page. quantile and moments of the law (Ouranos, appendix A7).
    """
    value: Result = call("extremes.gumbel_frequency_factor", return_period_years=return_period_years)[0]
    return value


class LoadOfReturnPeriod(NamedTuple):
    """Results of `load_of_return_period`."""

    #: x_T/x_50 [-]: Gumbel (1 + V k_T)/(1 + V k_50), k_T = -(sqrt(6)/pi)(0.5772 + ln(-ln(1 - 1/T))); lognormal exp((u_T
    #: - u_50) s), s^2 = ln(1 + V^2), Phi(u_T) = 1 - 1/T.
    load_over_50_year_load: Result
    #: x_T [kPa]: x_50 (x_T/x_50).
    load_kpa: Result


def load_of_return_period(
    *, load_50_years_kpa: Any, family: Any, coefficient_of_variation: Any, return_period_years: Any
) -> LoadOfReturnPeriod:
    """Load of a return period from the 50-year load. general statistics, laws of yearly maxima.

    x_T/x_50 = Gumbel (1 + V k_T)/(1 + V k_50), k_T = -(sqrt(6)/pi)(0.5772 + ln(-ln(1 - 1/T))); lognormal exp((u_T -
    u_50) s), s^2 = ln(1 + V^2), Phi(u_T) = 1 - 1/T; x_T = x_50 (x_T/x_50).

    Parameters
    ----------
    load_50_years_kpa
        x_50 [kPa]: 50-year load, 0 to 100.
    family
        law: one of "gumbel", "lognormal": law of the yearly maxima.
    coefficient_of_variation
        V [-]: of the yearly maxima, 0 to 2.
    return_period_years
        T [-]: return period, 2 to 1e6.

    How read: read in part. Gumbel: quantile and moments on a page (Ouranos, appendix A7); lognormal derived.
    """
    return LoadOfReturnPeriod(*call(
        "extremes.load_of_return_period",
        load_50_years_kpa=load_50_years_kpa,
        family=family,
        coefficient_of_variation=coefficient_of_variation,
        return_period_years=return_period_years,
    ))


def load_over_50_year_load(*, family: Any, coefficient_of_variation: Any, return_period_years: Any) -> Result:
    """Load of a return period over the 50-year load. general statistics, laws of yearly maxima.

    x_T/x_50 = Gumbel (1 + V k_T)/(1 + V k_50), k_T = -(sqrt(6)/pi)(0.5772 + ln(-ln(1 - 1/T))); lognormal exp((u_T -
    u_50) s), s^2 = ln(1 + V^2), Phi(u_T) = 1 - 1/T.

    Parameters
    ----------
    family
        law: one of "gumbel", "lognormal": law of the yearly maxima.
    coefficient_of_variation
        V [-]: of the yearly maxima, 0 to 2.
    return_period_years
        T [-]: return period, 2 to 1e6.

    How read: read in part. Gumbel: quantile and moments on a page (Ouranos, appendix A7); lognormal derived.
    """
    value: Result = call(
        "extremes.load_over_50_year_load",
        family=family,
        coefficient_of_variation=coefficient_of_variation,
        return_period_years=return_period_years,
    )[0]
    return value


def load_over_mean(*, family: Any, coefficient_of_variation: Any, return_period_years: Any) -> Result:
    """Load of a return period over the mean yearly maximum. general statistics, laws of yearly maxima.

    x_T/mean = Gumbel 1 + V k_T; lognormal exp(u_T s - s^2/2), s^2 = ln(1 + V^2).

    Parameters
    ----------
    family
        law: one of "gumbel", "lognormal": law of the yearly maxima.
    coefficient_of_variation
        V [-]: of the yearly maxima, 0 to 2.
    return_period_years
        T [-]: return period, 2 to 1e6.

    How read: read in part. Gumbel: quantile and moments on a page (Ouranos, appendix A7); lognormal derived.
    """
    value: Result = call(
        "extremes.load_over_mean",
        family=family,
        coefficient_of_variation=coefficient_of_variation,
        return_period_years=return_period_years,
    )[0]
    return value


def return_period_of_multiple(*, family: Any, coefficient_of_variation: Any, multiple: Any) -> Result:
    """Return period of a multiple of the 50-year load. general statistics, laws of yearly maxima.

    T = 1/(1 - F(x)).

    Parameters
    ----------
    family
        law: one of "gumbel", "lognormal": law of the yearly maxima.
    coefficient_of_variation
        V [-]: of the yearly maxima, 0.05 to 2.
    multiple
        x/x_50 [-]: multiple of the 50-year load, from that of 2 to that of 1e6 years.

    How read: read in part. Gumbel: quantile and moments on a page (Ouranos, appendix A7); lognormal derived.
    """
    value: Result = call(
        "extremes.return_period_of_multiple",
        family=family,
        coefficient_of_variation=coefficient_of_variation,
        multiple=multiple,
    )[0]
    return value


def return_period_of_reliability_index(*, reliability_index: Any, sensitivity: Any) -> Result:
    """Return period of the load a reliability index asks for. EN 1990:2002, C7.

    T = 1/Phi(-alpha beta).

    Parameters
    ----------
    reliability_index
        beta [-]: for one year, 0 to 6.
    sensitivity
        alpha [-]: of the load, 0 to 1; 0.7 in EN 1990.

    How read: from memory, sure. EN 1990 C7, alpha 0.7.
    """
    value: Result = call(
        "extremes.return_period_of_reliability_index",
        reliability_index=reliability_index,
        sensitivity=sensitivity,
    )[0]
    return value


class YearlyChance(NamedTuple):
    """Results of `yearly_chance`."""

    #: p [-]: 1 - (1 - P)^(1/N).
    yearly_chance: Result
    #: T [-]: 1/p.
    return_period_years: Result


def yearly_chance(*, chance: Any, winters: Any) -> YearlyChance:
    """Yearly chance, and return period, that go with a chance over some winters. general statistics, independent
    winters.

    p = 1 - (1 - P)^(1/N); T = 1/p.

    Parameters
    ----------
    chance
        P [-]: over the winters, 1e-6 to 0.999.
    winters
        N [-]: whole number of winters, 1 to 1000.

    How read: derived here. inverse of exceedance_in_winters.
    """
    return YearlyChance(*call("extremes.yearly_chance", chance=chance, winters=winters))
