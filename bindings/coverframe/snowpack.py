# SPDX-License-Identifier: BSD-3-Clause
# Written by bindings/tools/write_rules.py from the catalogue of rules; do not edit.
"""snow as found: one function for each rule.

Every argument may be a number, an array, text with a unit or a pint quantity; arrays broadcast, words of a choice too.
The first item a rule does not cover raises `coverframe.InputError` whose ``where`` is its index ("/3"). Loads of roofs
are per horizontal area. `coverframe.rules.workings` lists how a number comes about.
"""

from __future__ import annotations

from typing import Any, NamedTuple

from .rules import Result, call

__all__ = [
    "Density",
    "DepthOfLoad",
    "LayerLoad",
    "ThreeLayersLoad",
    "column_load",
    "density",
    "depth_of_load",
    "layer_load",
    "melt_water_load",
    "three_layers_load",
    "tube_load",
]


def column_load(*, mass_kg: Any, width_m: Any, breadth_m: Any) -> Result:
    """Load from a weighed column of the full depth. snow as found, weighed column.

    s = m g/(a b), g = 9.80665 m/s2.

    Parameters
    ----------
    mass_kg
        m [-]: of the column [kg], 0 to 10000.
    width_m
        a [m]: of the column seen from above, over 0.
    breadth_m
        b [m]: across it, over 0.

    How read: read on a page. statics; the 10 cm column in a county notice (wallgau.feuerwehren.bayern).
    """
    value: Result = call("snowpack.column_load", mass_kg=mass_kg, width_m=width_m, breadth_m=breadth_m)[0]
    return value


class Density(NamedTuple):
    """Results of `density`."""

    #: gamma_low [kN/m3]: lowest published.
    low_kn_per_m3: Result
    #: gamma_mean [kN/m3]: published as mean, or the middle of a range.
    mean_kn_per_m3: Result
    #: gamma_high [kN/m3]: highest published.
    high_kn_per_m3: Result


def density(*, kind: Any) -> Density:
    """Published unit weights of a kind of snow. snow as found, published densities.

    gamma_low = lowest published; gamma_mean = published as mean, or the middle of a range; gamma_high = highest
    published.

    Parameters
    ----------
    kind
        kind: one of "fresh", "settled", "old", "wet", "ice", "water", "fluffy", "ordinary fresh", "spring
        storm", "packed", "heavy wet", "soaked", "roof Canada", "roof Finland", "ground Finland February",
        "ground Finland March", "ground Finland April", "ground Sweden", "ground Ohio": of snow.

    How read: read in part. EN 1991-1-3:2003, Annex E, as quoted (skierniewice.pinb.pl); weather page
    (mywabashvalley.com); design firm (sgh.com); insurers' guidance as quoted (deadlinedetroit.com); Colorado
    Climate Center, 2001; Schmidlin et al., 1992; Martinec, J. Glaciology; Bartok (nurserymag.com); Grubinger
    (farmingmagazine.com); Ontario code, 9.4.2.2, appendix; Finnish Environment Institute; Boverket; br.de; USDA
    NRCS; 917 kg/m3 of ice from memory, sure. Which is whose: snowpack::density_of.
    """
    return Density(*call("snowpack.density", kind=kind))


class DepthOfLoad(NamedTuple):
    """Results of `depth_of_load`."""

    #: d_low [m]: s/gamma_high; clear by this one.
    low_m: Result
    #: d_mean [m]: s/gamma_mean.
    mean_m: Result
    #: d_high [m]: s/gamma_low.
    high_m: Result


def depth_of_load(*, load_kpa: Any, kind: Any) -> DepthOfLoad:
    """Which depth of one kind of snow makes a load. snow as found, published densities.

    d_low = s/gamma_high; clear by this one; d_mean = s/gamma_mean; d_high = s/gamma_low.

    Parameters
    ----------
    load_kpa
        s [kPa]: load, 0 to 100.
    kind
        kind: one of "fresh", "settled", "old", "wet", "ice", "water", "fluffy", "ordinary fresh", "spring
        storm", "packed", "heavy wet", "soaked", "roof Canada", "roof Finland", "ground Finland February",
        "ground Finland March", "ground Finland April", "ground Sweden", "ground Ohio": of snow.

    How read: read in part. statics; unit weights as snowpack.density.
    """
    return DepthOfLoad(*call("snowpack.depth_of_load", load_kpa=load_kpa, kind=kind))


class LayerLoad(NamedTuple):
    """Results of `layer_load`."""

    #: s_low [kPa]: gamma_low d.
    low_kpa: Result
    #: s_mean [kPa]: gamma_mean d.
    mean_kpa: Result
    #: s_high [kPa]: gamma_high d.
    high_kpa: Result


def layer_load(*, kind: Any, depth_m: Any) -> LayerLoad:
    """Load of one layer of snow. snow as found, published densities.

    s_low = gamma_low d; s_mean = gamma_mean d; s_high = gamma_high d.

    Parameters
    ----------
    kind
        kind: one of "fresh", "settled", "old", "wet", "ice", "water", "fluffy", "ordinary fresh", "spring
        storm", "packed", "heavy wet", "soaked", "roof Canada", "roof Finland", "ground Finland February",
        "ground Finland March", "ground Finland April", "ground Sweden", "ground Ohio": of snow.
    depth_m
        d [m]: straight down, 0 to 20.

    How read: read in part. statics; unit weights as snowpack.density.
    """
    return LayerLoad(*call("snowpack.layer_load", kind=kind, depth_m=depth_m))


def melt_water_load(*, melt_depth_m: Any) -> Result:
    """Load from the depth of water a column melts to. snow as found, melt water.

    s = gamma_w d, gamma_w = 62.418 pcf.

    Parameters
    ----------
    melt_depth_m
        d [m]: in a vessel of the same area, 0 to 20.

    How read: read on a page. USDA Natural Resources Conservation Service, Alaska snow survey.
    """
    value: Result = call("snowpack.melt_water_load", melt_depth_m=melt_depth_m)[0]
    return value


class ThreeLayersLoad(NamedTuple):
    """Results of `three_layers_load`."""

    #: s_low [kPa]: sum of gamma_low d.
    low_kpa: Result
    #: s_mean [kPa]: sum of gamma_mean d.
    mean_kpa: Result
    #: s_high [kPa]: sum of gamma_high d.
    high_kpa: Result


def three_layers_load(
    *, top_kind: Any, top_depth_m: Any, middle_kind: Any, middle_depth_m: Any, bottom_kind: Any, bottom_depth_m: Any
) -> ThreeLayersLoad:
    """Load of up to three layers; a depth of 0 leaves one out. snow as found, published densities.

    s_low = sum of gamma_low d; s_mean = sum of gamma_mean d; s_high = sum of gamma_high d.

    Parameters
    ----------
    top_kind
        kind 1: one of "fresh", "settled", "old", "wet", "ice", "water", "fluffy", "ordinary fresh", "spring
        storm", "packed", "heavy wet", "soaked", "roof Canada", "roof Finland", "ground Finland February",
        "ground Finland March", "ground Finland April", "ground Sweden", "ground Ohio": of the snow that is
        seen.
    top_depth_m
        d_1 [m]: straight down, 0 to 20.
    middle_kind
        kind 2: one of "fresh", "settled", "old", "wet", "ice", "water", "fluffy", "ordinary fresh", "spring
        storm", "packed", "heavy wet", "soaked", "roof Canada", "roof Finland", "ground Finland February",
        "ground Finland March", "ground Finland April", "ground Sweden", "ground Ohio": of the snow below it.
    middle_depth_m
        d_2 [m]: depth of the middle layer, 0 to 20.
    bottom_kind
        kind 3: one of "fresh", "settled", "old", "wet", "ice", "water", "fluffy", "ordinary fresh", "spring
        storm", "packed", "heavy wet", "soaked", "roof Canada", "roof Finland", "ground Finland February",
        "ground Finland March", "ground Finland April", "ground Sweden", "ground Ohio": of what lies on the
        film.
    bottom_depth_m
        d_3 [m]: depth of the lowest layer, 0 to 20.

    How read: read in part. statics; unit weights as snowpack.density.
    """
    return ThreeLayersLoad(*call(
        "snowpack.three_layers_load",
        top_kind=top_kind,
        top_depth_m=top_depth_m,
        middle_kind=middle_kind,
        middle_depth_m=middle_depth_m,
        bottom_kind=bottom_kind,
        bottom_depth_m=bottom_depth_m,
    ))


def tube_load(*, mass_kg: Any, diameter_m: Any) -> Result:
    """Load from a weighed column cut with a round tube. snow as found, weighed column.

    s = m g/(pi D^2/4), g = 9.80665 m/s2.

    Parameters
    ----------
    mass_kg
        m [-]: of the column [kg], 0 to 10000.
    diameter_m
        D [m]: of the tube inside, over 0.

    How read: derived here. statics.
    """
    value: Result = call("snowpack.tube_load", mass_kg=mass_kg, diameter_m=diameter_m)[0]
    return value
