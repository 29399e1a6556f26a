# SPDX-License-Identifier: BSD-3-Clause
# Written by bindings/tools/write_rules.py from the catalogue of rules; do not edit.
"""ISO 4355:2013: one function for each rule.

Every argument may be a number, an array, text with a unit or a pint quantity; arrays broadcast, words of a choice too.
The first item a rule does not cover raises `coverframe.InputError` whose ``where`` is its index ("/3"). Loads of roofs
are per horizontal area. `coverframe.rules.workings` lists how a number comes about.
"""

from __future__ import annotations

from typing import Any

from .rules import Result, call

__all__ = [
    "balanced_load",
    "characteristic_length",
    "exposure_coefficient",
    "slope_coefficient",
]


def balanced_load(
    *, ground_snow_kpa: Any, exposure_coefficient: Any, thermal_coefficient: Any, slope_coefficient: Any
) -> Result:
    """Balanced load; drift and sliding are to be added. ISO 4355:2013, Eq. (3).

    s_b = 0.8 s_0 C_e C_t mu_b.

    Parameters
    ----------
    ground_snow_kpa
        s_0 [kPa]: ground snow load, 0 to 100.
    exposure_coefficient
        C_e [-]: exposure coefficient, 0.5 to 1.25.
    thermal_coefficient
        C_t [-]: thermal coefficient, 0.5 to 1.4; not under 1.0 for a cover.
    slope_coefficient
        mu_b [-]: slope coefficient, 0 to 1.

    How read: read on a page. Pertermann and Puthli (KIT), Comments on ISO 4355:2013, Part I.
    """
    value: Result = call(
        "iso4355.balanced_load",
        ground_snow_kpa=ground_snow_kpa,
        exposure_coefficient=exposure_coefficient,
        thermal_coefficient=thermal_coefficient,
        slope_coefficient=slope_coefficient,
    )[0]
    return value


def characteristic_length(*, width_m: Any, length_m: Any) -> Result:
    """Characteristic length of a roof. ISO 4355:2013, exposure coefficient of large roofs.

    l_c = 2 W - W^2/L.

    Parameters
    ----------
    width_m
        W [m]: smaller plan size, over 0.
    length_m
        L [m]: larger plan size, not under W.

    How read: from memory, doubtful. from memory.
    """
    value: Result = call("iso4355.characteristic_length", width_m=width_m, length_m=length_m)[0]
    return value


def exposure_coefficient(*, small_roof_coefficient: Any, characteristic_length_m: Any) -> Result:
    """Exposure coefficient with the size of the roof in it. ISO 4355:2013, exposure coefficient of large roofs.

    C_e = C_e0 to l_c = 50 m, then 1.25 - (1.25 - C_e0) exp[-(l_c - 50)/200].

    Parameters
    ----------
    small_roof_coefficient
        C_e0 [-]: of a small roof, 0.5 to 1.25.
    characteristic_length_m
        l_c [m]: of the roof, from 0.

    How read: from memory, doubtful. the formula from memory; that it rises towards 1.25 was read (Pertermann and
    Puthli (KIT), Comments on ISO 4355:2013, Part I).
    """
    value: Result = call(
        "iso4355.exposure_coefficient",
        small_roof_coefficient=small_roof_coefficient,
        characteristic_length_m=characteristic_length_m,
    )[0]
    return value


def slope_coefficient(*, slope_deg: Any, surface: Any = "other") -> Result:
    """Slope coefficient. ISO 4355:2013, slope coefficient.

    mu_b = sqrt[cos(1.5 C_m slope)], 0 from 90/(1.5 C_m) deg; C_m = 1.333 slippery, else 1.

    Parameters
    ----------
    slope_deg
        slope [deg]: of the cover, 0 to 90.
    surface
        surface: one of "slippery", "other": slippery means unobstructed too.

    How read: read in part. C_m = 1.333 on a page (Pertermann and Puthli (KIT), Comments on ISO 4355:2013, Part I),
    the formula from memory.
    """
    value: Result = call("iso4355.slope_coefficient", slope_deg=slope_deg, surface=surface)[0]
    return value
