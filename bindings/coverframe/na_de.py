# SPDX-License-Identifier: BSD-3-Clause
# Written by bindings/tools/write_rules.py from the catalogue of rules; do not edit.
"""DIN EN 1991-1-3/NA:2010: one function for each rule.

Every argument may be a number, an array, text with a unit or a pint quantity; arrays broadcast, words of a choice too.
The first item a rule does not cover raises `coverframe.InputError` whose ``where`` is its index ("/3"). Loads of roofs
are per horizontal area. `coverframe.rules.workings` lists how a number comes about.
"""

from __future__ import annotations

from typing import Any, NamedTuple

from .rules import Result, call

__all__ = [
    "DriftLimits",
    "ExceptionalLoadLowland",
    "WallCoefficient",
    "capped_valley",
    "drift_limits",
    "exceptional_load_lowland",
    "ground_load",
    "wall_coefficient",
]


def capped_valley(*, valley_coefficient: Any, shape_coefficient: Any, height_m: Any, ground_snow_kpa: Any) -> Result:
    """Coefficient of a valley that is full. DIN EN 1991-1-3/NA:2010, NDP to 5.3.4.

    mu_cap = min(mu_v, gamma h/s_k + mu), gamma = 2 kN/m3.

    Parameters
    ----------
    valley_coefficient
        mu_v [-]: of EN 1991-1-3, 5.3.4, 0.8 to 1.6.
    shape_coefficient
        mu [-]: of the slopes, the larger, 0 to 0.8.
    height_m
        h [m]: from the valley up to the ridge, up to 200.
    ground_snow_kpa
        s_k [kPa]: ground snow load, more than 0, to 100.

    How read: read on a page. for its predecessor (University of Siegen lecture script on DIN 1055-5:2005, p. 53).
    """
    value: Result = call(
        "na_de.capped_valley",
        valley_coefficient=valley_coefficient,
        shape_coefficient=shape_coefficient,
        height_m=height_m,
        ground_snow_kpa=ground_snow_kpa,
    )[0]
    return value


class DriftLimits(NamedTuple):
    """Results of `drift_limits`."""

    #: least [-]: 0.8; 1.2 alpine.
    least: Result
    #: most [-]: 2.4; 2.0 canopy; 6.45/s_k^0.9 alpine.
    most: Result


def drift_limits(*, lower_roof: Any, ground_snow_kpa: Any) -> DriftLimits:
    """Limits of the drift against taller works. DIN EN 1991-1-3/NA:2010, NDP to 5.3.6(1).

    least = 0.8; 1.2 alpine; most = 2.4; 2.0 canopy; 6.45/s_k^0.9 alpine.

    Parameters
    ----------
    lower_roof
        lower roof: one of "general", "canopy", "alpine": what the sum is limited by.
    ground_snow_kpa
        s_k [kPa]: ground snow load, more than 0, to 100.

    How read: read in part. NA.5: 0.8 to 2.4 on a page (baunormenlexikon.de), canopy and Alpine region from memory.
    """
    return DriftLimits(*call("na_de.drift_limits", lower_roof=lower_roof, ground_snow_kpa=ground_snow_kpa))


class ExceptionalLoadLowland(NamedTuple):
    """Results of `exceptional_load_lowland`."""

    #: s_k [kPa]: q = ((A + 140)/760)^2; zone 1 max(0.19 + 0.91 q, 0.65), zone 2 max(0.25 + 1.91 q, 0.85), zone 3
    #: max(0.31 + 2.91 q, 1.10), zones 1a and 2a 1.25 times 1 and 2.
    ground_snow_kpa: Result
    #: s_Ad [kPa]: 2.3 s_k.
    exceptional_snow_kpa: Result


def exceptional_load_lowland(*, zone: Any, altitude_m: Any) -> ExceptionalLoadLowland:
    """Exceptional ground snow load in the North German lowland, accidental. DIN EN 1991-1-3/NA:2010, NDP to 4.3(1).

    s_k = q = ((A + 140)/760)^2; zone 1 max(0.19 + 0.91 q, 0.65), zone 2 max(0.25 + 1.91 q, 0.85), zone 3 max(0.31 +
    2.91 q, 1.10), zones 1a and 2a 1.25 times 1 and 2; s_Ad = 2.3 s_k.

    Parameters
    ----------
    zone
        zone: one of "1", "1a", "2", "2a", "3": 1 or 2.
    altitude_m
        A [m]: above sea level, 0 to 1500.

    How read: read on a page. din1055.de, Norddeutsches Tiefland; zones and clause number from memory.
    """
    return ExceptionalLoadLowland(*call("na_de.exceptional_load_lowland", zone=zone, altitude_m=altitude_m))


def ground_load(*, zone: Any, altitude_m: Any) -> Result:
    """Characteristic ground snow load, Germany. DIN EN 1991-1-3/NA:2010, NDP to 4.1(1).

    s_k = q = ((A + 140)/760)^2; zone 1 max(0.19 + 0.91 q, 0.65), zone 2 max(0.25 + 1.91 q, 0.85), zone 3 max(0.31 +
    2.91 q, 1.10), zones 1a and 2a 1.25 times 1 and 2.

    Parameters
    ----------
    zone
        zone: one of "1", "1a", "2", "2a", "3": snow zone of the map.
    altitude_m
        A [m]: above sea level, 0 to 1500.

    How read: read on a page. 36 loads printed by two county offices; a teaching site prints 0.91 instead of 1.91.
    """
    value: Result = call("na_de.ground_load", zone=zone, altitude_m=altitude_m)[0]
    return value


class WallCoefficient(NamedTuple):
    """Results of `wall_coefficient`."""

    #: l_s [m]: 2 h, from 5 to 15 m.
    drift_length_m: Result
    #: mu_s [-]: 0 up to 15 deg, 0.8 b_1s/l_s above.
    sliding_coefficient: Result
    #: mu_2 [-]: mu_s + min((b_1 + b_2)/(2 h), gamma h/s_k - mu_s) within the limits of NA.5; mu_w only for h over 0.5
    #: m.
    wall_coefficient: Result


def wall_coefficient(
    *,
    ground_snow_kpa: Any,
    upper_width_m: Any,
    lower_width_m: Any,
    height_m: Any,
    upper_slope_deg: Any,
    upper_slope_width_m: Any,
    lower_roof: Any,
) -> WallCoefficient:
    """Coefficient at the wall of a lower roof against taller works. DIN EN 1991-1-3/NA:2010, NDP to 5.3.6(1).

    l_s = 2 h, from 5 to 15 m; mu_s = 0 up to 15 deg, 0.8 b_1s/l_s above; mu_2 = mu_s + min((b_1 + b_2)/(2 h), gamma
    h/s_k - mu_s) within the limits of NA.5; mu_w only for h over 0.5 m.

    Parameters
    ----------
    ground_snow_kpa
        s_k [kPa]: ground snow load, more than 0, to 100.
    upper_width_m
        b_1 [m]: plan width of the upper roof, up to 1000.
    lower_width_m
        b_2 [m]: plan width of the lower roof, up to 1000.
    height_m
        h [m]: step down to the lower roof, up to 200.
    upper_slope_deg
        a [deg]: upper slope that falls towards the lower roof, 0 to 90.
    upper_slope_width_m
        b_1s [m]: plan width of that slope, 0 to 100.
    lower_roof
        lower roof: one of "general", "canopy", "alpine": what the sum is limited by.

    How read: read in part. NA.4 and NA.5 on a page (baunormenlexikon.de), canopy, Alpine region and the 0.8 from
    memory.
    """
    return WallCoefficient(*call(
        "na_de.wall_coefficient",
        ground_snow_kpa=ground_snow_kpa,
        upper_width_m=upper_width_m,
        lower_width_m=lower_width_m,
        height_m=height_m,
        upper_slope_deg=upper_slope_deg,
        upper_slope_width_m=upper_slope_width_m,
        lower_roof=lower_roof,
    ))
