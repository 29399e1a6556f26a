# SPDX-License-Identifier: BSD-3-Clause
"""ASCE/SEI 7-22, chapter 7: snow on a gabled cover, one function a rule.

Every load is per horizontal area. A ground snow load of this edition is a strength-level load for the risk category of
the structure; a load of an earlier edition is a different thing and does not belong here.

Every argument may be a number, an array, text with a unit or a pint quantity; arrays broadcast. The first item a rule
does not cover raises `coverframe.InputError` whose ``where`` is its index ("/3"). How each rule was read and where it
stops stands in the C++ header actions/asce7_22.hpp.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from . import _core
from ._values import Numbers, choice, columns, result

__all__ = [
    "UnbalancedGable",
    "drift_height",
    "flat_load",
    "minimum_load",
    "slope_factor",
    "sloped_load",
    "unbalanced_gable",
    "unit_weight",
]


def flat_load(*, ground_snow_kpa: Any, exposure_factor: Any, thermal_factor: Any) -> Numbers:
    """Flat roof snow load p_f = 0.7 C_e C_t p_g [kPa]. 7.3.

    Parameters
    ----------
    ground_snow_kpa
        p_g [kPa], 0 to 100.
    exposure_factor
        C_e [-], 0.5 to 1.5.
    thermal_factor
        C_t [-], 0.8 to 1.4; 1.2 for an unheated cover.
    """
    shape, args = columns(
        ground_snow_kpa=ground_snow_kpa, exposure_factor=exposure_factor, thermal_factor=thermal_factor
    )
    return result(_core.asce7_22_flat_load(shape, *args))


def minimum_load(*, ground_snow_kpa: Any, risk_category: str) -> Numbers:
    """Minimum snow load of a low slope (under 15 degrees) p_m = min(p_g, p_m,max) [kPa]. 7.3.3.

    Parameters
    ----------
    ground_snow_kpa
        p_g [kPa], 0 to 100.
    risk_category
        "I", "II", "III" or "IV".
    """
    category = choice("risk_category", risk_category, ("I", "II", "III", "IV"))
    shape, args = columns(ground_snow_kpa=ground_snow_kpa)
    return result(_core.asce7_22_minimum_load(shape, category, *args))


def slope_factor(*, slope_deg: Any, thermal_factor: Any, surface: str = "other") -> Numbers:
    """Slope factor C_s [-], 0 to 1. 7.4.

    Parameters
    ----------
    slope_deg
        Slope of the cover [deg], 0 to 90.
    thermal_factor
        C_t [-], 0.8 to 1.4; 1.2 for an unheated cover.
    surface
        "other", or "slippery" for a smooth cover with nothing that holds snow back and room below for it to land.
    """
    slippery = choice("surface", surface, ("other", "slippery")) == 1
    shape, args = columns(slope_deg=slope_deg, thermal_factor=thermal_factor)
    return result(_core.asce7_22_slope_factor(shape, slippery, *args))


def sloped_load(*, flat_load_kpa: Any, slope_factor: Any) -> Numbers:
    """Balanced snow load of a slope p_s = C_s p_f [kPa]. 7.4.

    Parameters
    ----------
    flat_load_kpa
        p_f [kPa], 0 to 100.
    slope_factor
        C_s [-], 0 to 1.
    """
    shape, args = columns(flat_load_kpa=flat_load_kpa, slope_factor=slope_factor)
    return result(_core.asce7_22_sloped_load(shape, *args))


def unit_weight(*, ground_snow_kpa: Any) -> Numbers:
    """Unit weight of drifted snow [kN/m3]. 7.7.1.

    Parameters
    ----------
    ground_snow_kpa
        p_g [kPa], 0 to 100.
    """
    shape, args = columns(ground_snow_kpa=ground_snow_kpa)
    return result(_core.asce7_22_unit_weight(shape, *args))


def drift_height(*, ground_snow_kpa: Any, fetch_m: Any, winter_wind: Any) -> Numbers:
    """Drift height h_d [m]. 7.6.1.

    Parameters
    ----------
    ground_snow_kpa
        p_g [kPa], 0 to 100.
    fetch_m
        l_u, length of the upwind surface [m], up to 600 ft.
    winter_wind
        W_2, share of the winter with wind over 10 mph [-], 0 to 1.
    """
    shape, args = columns(ground_snow_kpa=ground_snow_kpa, fetch_m=fetch_m, winter_wind=winter_wind)
    return result(_core.asce7_22_drift_height(shape, *args))


@dataclass(frozen=True, slots=True)
class UnbalancedGable:
    """Unbalanced load of a gable. The lee slope carries p_s everywhere and the surcharge beside the ridge."""

    windward_kpa: Numbers
    #: On top of p_s.
    leeward_surcharge_kpa: Numbers
    #: From the ridge, level.
    surcharge_width_m: Numbers
    #: The drift height h_d behind the surcharge.
    drift_height_m: Numbers


def unbalanced_gable(
    *, sloped_load_kpa: Any, ground_snow_kpa: Any, slope_deg: Any, eave_to_ridge_m: Any, winter_wind: Any
) -> UnbalancedGable:
    """Unbalanced load of a gable, for any framing but simple rafters. 7.6.1.

    Parameters
    ----------
    sloped_load_kpa
        p_s of both slopes [kPa].
    ground_snow_kpa
        p_g [kPa], 0 to 100.
    slope_deg
        Of both slopes [deg], 2.38 to 30.26 (1/2 on 12 to 7 on 12).
    eave_to_ridge_m
        W, level [m]; on a boat, half the breadth at the rail.
    winter_wind
        W_2 [-], 0 to 1.
    """
    shape, args = columns(
        sloped_load_kpa=sloped_load_kpa,
        ground_snow_kpa=ground_snow_kpa,
        slope_deg=slope_deg,
        eave_to_ridge_m=eave_to_ridge_m,
        winter_wind=winter_wind,
    )
    return UnbalancedGable(*(result(values) for values in _core.asce7_22_unbalanced_gable(shape, *args)))
