# SPDX-License-Identifier: BSD-3-Clause
"""EN 1991-1-3:2003, snow loads on a cover of one ridge, recommended values, one function a rule.

A National Annex may change every one of them. Every load is per horizontal area; altitude up to 1500 m.

Every argument may be a number, an array, text with a unit or a pint quantity; arrays broadcast. The first item a rule
does not cover raises `coverframe.InputError` whose ``where`` is its index ("/3"). How each rule was read and where it
stops stands in the C++ header actions/en1991_1_3.hpp.
"""

from __future__ import annotations

from typing import Any

from . import _core
from ._values import Numbers, choice, columns, result

__all__ = ["exposure_coefficient", "roof_load", "shape_coefficient"]


def exposure_coefficient(*, topography: str) -> float:
    """Exposure coefficient C_e [-]. 5.2(7).

    Parameters
    ----------
    topography
        "windswept", "normal" or "sheltered".
    """
    return _core.en1991_1_3_exposure_coefficient(choice("topography", topography, ("windswept", "normal", "sheltered")))


def shape_coefficient(*, slope_deg: Any, sliding: str = "prevented") -> Numbers:
    """Shape coefficient mu_1 of a slope [-], 0 to 0.8. 5.3.3(2).

    Parameters
    ----------
    slope_deg
        Slope of the cover [deg], 0 to 90.
    sliding
        "prevented", or "free" where nothing holds the snow and there is room for what slides.
    """
    free = choice("sliding", sliding, ("prevented", "free")) == 1
    shape, args = columns(slope_deg=slope_deg)
    return result(_core.en1991_1_3_shape_coefficient(shape, free, *args))


def roof_load(
    *, ground_snow_kpa: Any, shape_coefficient: Any, exposure_coefficient: Any, thermal_coefficient: Any
) -> Numbers:
    """Snow load on a slope s = mu C_e C_t s_k [kPa]. 5.2(3).

    Parameters
    ----------
    ground_snow_kpa
        s_k [kPa], 0 to 100.
    shape_coefficient
        mu [-], 0 to 4.
    exposure_coefficient
        C_e [-], 0.5 to 1.5.
    thermal_coefficient
        C_t [-], 0.8 to 1.4; 1.0 is recommended.
    """
    shape, args = columns(
        ground_snow_kpa=ground_snow_kpa,
        shape_coefficient=shape_coefficient,
        exposure_coefficient=exposure_coefficient,
        thermal_coefficient=thermal_coefficient,
    )
    return result(_core.en1991_1_3_roof_load(shape, *args))
