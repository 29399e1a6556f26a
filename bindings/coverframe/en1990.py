# SPDX-License-Identifier: BSD-3-Clause
# Written by bindings/tools/write_rules.py from the catalogue of rules; do not edit.
"""EN 1990:2002: one function for each rule.

Every argument may be a number, an array, text with a unit or a pint quantity; arrays broadcast, words of a choice too.
The first item a rule does not cover raises `coverframe.InputError` whose ``where`` is its index ("/3"). Loads of roofs
are per horizontal area. `coverframe.rules.workings` lists how a number comes about.
"""

from __future__ import annotations

from typing import Any, NamedTuple

from .rules import Result, call

__all__ = [
    "Characteristic",
    "Equilibrium",
    "ExceptionalSnow",
    "Frequent",
    "QuasiPermanent",
    "SnowPsi",
    "Strength",
    "StrengthA",
    "StrengthB",
    "characteristic",
    "equilibrium",
    "exceptional_snow",
    "frequent",
    "quasi_permanent",
    "snow_psi",
    "strength",
    "strength_a",
    "strength_b",
]


class Characteristic(NamedTuple):
    """Results of `characteristic`."""

    #: on G [-]: 1.
    permanent_factor: Result
    #: on S [-]: 1 leading, else psi_0,S.
    snow_factor: Result
    #: on W [-]: 1 leading, else psi_0,W.
    wind_factor: Result


def characteristic(*, leading: Any = "snow", snow_psi_0: Any, wind_psi_0: Any) -> Characteristic:
    """Serviceability, what must not happen once. EN 1990:2002, 6.5.3.

    on G = 1; on S = 1 leading, else psi_0,S; on W = 1 leading, else psi_0,W.

    Parameters
    ----------
    leading
        leading: one of "snow", "wind": the variable action that counts in full.
    snow_psi_0
        psi_0,S [-]: combination factor of snow, 0 to 1.
    wind_psi_0
        psi_0,W [-]: combination factor of wind, 0 to 1; 0.6 recommended.

    How read: from memory, sure. Eq. 6.14b.
    """
    return Characteristic(*call(
        "en1990.characteristic",
        leading=leading,
        snow_psi_0=snow_psi_0,
        wind_psi_0=wind_psi_0,
    ))


class Equilibrium(NamedTuple):
    """Results of `equilibrium`."""

    #: on G [-]: 1.1 if it worsens, 0.9 if it helps.
    permanent_factor: Result
    #: on S [-]: 1.5 leading, else 1.5 psi_0,S.
    snow_factor: Result
    #: on W [-]: 1.5 leading, else 1.5 psi_0,W.
    wind_factor: Result


def equilibrium(
    *, leading: Any = "snow", self_weight: Any = "worsens", snow_psi_0: Any, wind_psi_0: Any
) -> Equilibrium:
    """Balance of the whole, Eq. 6.10 with the factors of Table A1.2(A). EN 1990:2002, 6.4.3.2.

    on G = 1.1 if it worsens, 0.9 if it helps; on S = 1.5 leading, else 1.5 psi_0,S; on W = 1.5 leading, else 1.5
    psi_0,W.

    Parameters
    ----------
    leading
        leading: one of "snow", "wind": the variable action that counts in full.
    self_weight
        self-weight: one of "worsens", "helps": what it does to the effect looked at.
    snow_psi_0
        psi_0,S [-]: combination factor of snow, 0 to 1.
    wind_psi_0
        psi_0,W [-]: combination factor of wind, 0 to 1; 0.6 recommended.

    How read: from memory, sure. Table A1.2(A).
    """
    return Equilibrium(*call(
        "en1990.equilibrium",
        leading=leading,
        self_weight=self_weight,
        snow_psi_0=snow_psi_0,
        wind_psi_0=wind_psi_0,
    ))


class ExceptionalSnow(NamedTuple):
    """Results of `exceptional_snow`."""

    #: on G [-]: 1.0.
    permanent_factor: Result
    #: on S [-]: 1.0 on s_Ad.
    snow_factor: Result
    #: on W [-]: psi_1,W frequent, psi_2,W quasi permanent.
    wind_factor: Result


def exceptional_snow(*, accompanying: Any = "frequent", wind_psi_1: Any, wind_psi_2: Any) -> ExceptionalSnow:
    """Exceptional snow as an accidental action, Eq. 6.11b. EN 1990:2002, 6.4.3.3.

    on G = 1.0; on S = 1.0 on s_Ad; on W = psi_1,W frequent, psi_2,W quasi permanent.

    Parameters
    ----------
    accompanying
        accompanying: one of "frequent", "quasi permanent": which value of wind accompanies, by the National
        Annex.
    wind_psi_1
        psi_1,W [-]: frequent share of wind, 0 to 1; 0.2 recommended.
    wind_psi_2
        psi_2,W [-]: quasi-permanent share of wind, 0 to 1; 0 recommended.

    How read: from memory, sure. Table A1.3.
    """
    return ExceptionalSnow(*call(
        "en1990.exceptional_snow",
        accompanying=accompanying,
        wind_psi_1=wind_psi_1,
        wind_psi_2=wind_psi_2,
    ))


class Frequent(NamedTuple):
    """Results of `frequent`."""

    #: on G [-]: 1.
    permanent_factor: Result
    #: on S [-]: psi_1,S leading, else psi_2,S.
    snow_factor: Result
    #: on W [-]: psi_1,W leading, else psi_2,W.
    wind_factor: Result


def frequent(*, leading: Any = "snow", snow_psi_1: Any, snow_psi_2: Any, wind_psi_1: Any, wind_psi_2: Any) -> Frequent:
    """Serviceability, what must not happen often. EN 1990:2002, 6.5.3.

    on G = 1; on S = psi_1,S leading, else psi_2,S; on W = psi_1,W leading, else psi_2,W.

    Parameters
    ----------
    leading
        leading: one of "snow", "wind": the variable action that counts in full.
    snow_psi_1
        psi_1,S [-]: frequent share of snow, 0 to 1.
    snow_psi_2
        psi_2,S [-]: quasi-permanent share of snow, 0 to 1.
    wind_psi_1
        psi_1,W [-]: frequent share of wind, 0 to 1; 0.2 recommended.
    wind_psi_2
        psi_2,W [-]: quasi-permanent share of wind, 0 to 1; 0 recommended.

    How read: from memory, sure. Eq. 6.15b.
    """
    return Frequent(*call(
        "en1990.frequent",
        leading=leading,
        snow_psi_1=snow_psi_1,
        snow_psi_2=snow_psi_2,
        wind_psi_1=wind_psi_1,
        wind_psi_2=wind_psi_2,
    ))


class QuasiPermanent(NamedTuple):
    """Results of `quasi_permanent`."""

    #: on G [-]: 1.
    permanent_factor: Result
    #: on S [-]: psi_2,S.
    snow_factor: Result
    #: on W [-]: psi_2,W.
    wind_factor: Result


def quasi_permanent(*, snow_psi_2: Any, wind_psi_2: Any) -> QuasiPermanent:
    """Serviceability, what lasts. EN 1990:2002, 6.5.3.

    on G = 1; on S = psi_2,S; on W = psi_2,W.

    Parameters
    ----------
    snow_psi_2
        psi_2,S [-]: quasi-permanent share of snow, 0 to 1.
    wind_psi_2
        psi_2,W [-]: quasi-permanent share of wind, 0 to 1; 0 recommended.

    How read: from memory, sure. Eq. 6.16b.
    """
    return QuasiPermanent(*call("en1990.quasi_permanent", snow_psi_2=snow_psi_2, wind_psi_2=wind_psi_2))


class SnowPsi(NamedTuple):
    """Results of `snow_psi`."""

    #: psi_0 [-]: 0.7 nordic or above 1000 m, else 0.5.
    psi_0: Result
    #: psi_1 [-]: 0.5 nordic or above 1000 m, else 0.2.
    psi_1: Result
    #: psi_2 [-]: 0.2 nordic or above 1000 m, else 0.
    psi_2: Result


def snow_psi(*, country: Any = "nordic", altitude_m: Any) -> SnowPsi:
    """Combination factors of snow on buildings. EN 1990:2002, A1.2.2.

    psi_0 = 0.7 nordic or above 1000 m, else 0.5; psi_1 = 0.5 nordic or above 1000 m, else 0.2; psi_2 = 0.2 nordic
    or above 1000 m, else 0.

    Parameters
    ----------
    country
        country: one of "nordic", "other": nordic: Finland, Iceland, Norway, Sweden.
    altitude_m
        A [m]: above sea level, -500 to 1500.

    How read: read on a page. Table A1.1 (scribd document 627038731).
    """
    return SnowPsi(*call("en1990.snow_psi", country=country, altitude_m=altitude_m))


class Strength(NamedTuple):
    """Results of `strength`."""

    #: on G [-]: 1.35 if it worsens, 1.0 if it helps.
    permanent_factor: Result
    #: on S [-]: 1.5 leading, else 1.5 psi_0,S.
    snow_factor: Result
    #: on W [-]: 1.5 leading, else 1.5 psi_0,W.
    wind_factor: Result


def strength(*, leading: Any = "snow", self_weight: Any = "worsens", snow_psi_0: Any, wind_psi_0: Any) -> Strength:
    """Strength of members, Eq. 6.10. EN 1990:2002, 6.4.3.2.

    on G = 1.35 if it worsens, 1.0 if it helps; on S = 1.5 leading, else 1.5 psi_0,S; on W = 1.5 leading, else 1.5
    psi_0,W.

    Parameters
    ----------
    leading
        leading: one of "snow", "wind": the variable action that counts in full.
    self_weight
        self-weight: one of "worsens", "helps": what it does to the effect looked at.
    snow_psi_0
        psi_0,S [-]: combination factor of snow, 0 to 1.
    wind_psi_0
        psi_0,W [-]: combination factor of wind, 0 to 1; 0.6 recommended.

    How read: read in part. Table A1.2(B): 1.5 (University of Siegen lecture script) and 1.35 (eurocode.us) on
    pages, the rest from memory, sure.
    """
    return Strength(*call(
        "en1990.strength",
        leading=leading,
        self_weight=self_weight,
        snow_psi_0=snow_psi_0,
        wind_psi_0=wind_psi_0,
    ))


class StrengthA(NamedTuple):
    """Results of `strength_a`."""

    #: on G [-]: 1.35 if it worsens, 1.0 if it helps.
    permanent_factor: Result
    #: on S [-]: 1.5 psi_0,S.
    snow_factor: Result
    #: on W [-]: 1.5 psi_0,W.
    wind_factor: Result


def strength_a(*, self_weight: Any = "worsens", snow_psi_0: Any, wind_psi_0: Any) -> StrengthA:
    """Strength of members, Eq. 6.10a; the worse of 6.10a and 6.10b counts. EN 1990:2002, 6.4.3.2.

    on G = 1.35 if it worsens, 1.0 if it helps; on S = 1.5 psi_0,S; on W = 1.5 psi_0,W.

    Parameters
    ----------
    self_weight
        self-weight: one of "worsens", "helps": what it does to the effect looked at.
    snow_psi_0
        psi_0,S [-]: combination factor of snow, 0 to 1.
    wind_psi_0
        psi_0,W [-]: combination factor of wind, 0 to 1; 0.6 recommended.

    How read: read in part. Table A1.2(B): 1.5 (University of Siegen lecture script) and 1.35 (eurocode.us) on
    pages, the rest from memory, sure.
    """
    return StrengthA(*call(
        "en1990.strength_a",
        self_weight=self_weight,
        snow_psi_0=snow_psi_0,
        wind_psi_0=wind_psi_0,
    ))


class StrengthB(NamedTuple):
    """Results of `strength_b`."""

    #: on G [-]: 0.85 x 1.35 if it worsens, 1.0 if it helps.
    permanent_factor: Result
    #: on S [-]: 1.5 leading, else 1.5 psi_0,S.
    snow_factor: Result
    #: on W [-]: 1.5 leading, else 1.5 psi_0,W.
    wind_factor: Result


def strength_b(*, leading: Any = "snow", self_weight: Any = "worsens", snow_psi_0: Any, wind_psi_0: Any) -> StrengthB:
    """Strength of members, Eq. 6.10b; the worse of 6.10a and 6.10b counts. EN 1990:2002, 6.4.3.2.

    on G = 0.85 x 1.35 if it worsens, 1.0 if it helps; on S = 1.5 leading, else 1.5 psi_0,S; on W = 1.5 leading,
    else 1.5 psi_0,W.

    Parameters
    ----------
    leading
        leading: one of "snow", "wind": the variable action that counts in full.
    self_weight
        self-weight: one of "worsens", "helps": what it does to the effect looked at.
    snow_psi_0
        psi_0,S [-]: combination factor of snow, 0 to 1.
    wind_psi_0
        psi_0,W [-]: combination factor of wind, 0 to 1; 0.6 recommended.

    How read: read in part. Table A1.2(B): 1.5 (University of Siegen lecture script) and 1.35 (eurocode.us) on
    pages, the rest from memory, sure.
    """
    return StrengthB(*call(
        "en1990.strength_b",
        leading=leading,
        self_weight=self_weight,
        snow_psi_0=snow_psi_0,
        wind_psi_0=wind_psi_0,
    ))
