# SPDX-License-Identifier: BSD-3-Clause
# Written by bindings/tools/write_rules.py from the catalogue of rules; do not edit.
"""NBC 2015: one function for each rule.

Every argument may be a number, an array, text with a unit or a pint quantity; arrays broadcast, words of a choice too.
The first item a rule does not cover raises `coverframe.InputError` whose ``where`` is its index ("/3"). Loads of roofs
are per horizontal area. `coverframe.rules.workings` lists how a number comes about.
"""

from __future__ import annotations

from typing import Any, NamedTuple

from .rules import Result, call

__all__ = [
    "Combination",
    "PartialLoading",
    "ProjectionDrift",
    "SpecifiedLoad",
    "StepDrift",
    "UnbalancedGable",
    "adjacent_accumulation",
    "basic_factor",
    "characteristic_length",
    "combination",
    "drift_accumulation",
    "importance_factor",
    "obstruction_distance",
    "partial_loading",
    "projection_counts",
    "projection_drift",
    "sliding_total",
    "slope_factor",
    "specified_load",
    "step_drift",
    "unbalanced_applies",
    "unbalanced_gable",
    "unit_weight",
    "wind_factor",
]


def adjacent_accumulation(*, peak_factor: Any, drift_length_m: Any, gap_m: Any, distance_m: Any) -> Result:
    """Accumulation factor beside a higher building across a gap. NBC 2015, 4.1.6.6.

    C_a = C_a0 - (C_a0 - 1) x/x_d to x_d, then 1; 1 if the gap is over 5 m.

    Parameters
    ----------
    peak_factor
        C_a0 [-]: at the wall, from 1.
    drift_length_m
        x_d [m]: over which the drift falls off, from 0.
    gap_m
        gap [m]: between building and roof, from 0.
    distance_m
        x [m]: from the edge of the lower roof, from 0.

    How read: from memory. from memory; the whole drift is kept, our reading.
    """
    value: Result = call(
        "nbc2015.adjacent_accumulation",
        peak_factor=peak_factor,
        drift_length_m=drift_length_m,
        gap_m=gap_m,
        distance_m=distance_m,
    )[0]
    return value


def basic_factor(*, characteristic_length_m: Any, wind_factor: Any) -> Result:
    """Basic roof snow load factor. NBC 2015, 4.1.6.2.

    C_b = 0.8 for l_c <= 70/C_w^2, else {1 - (1 - 0.8 C_w) exp[-(l_c C_w^2 - 70)/100]}/C_w.

    Parameters
    ----------
    characteristic_length_m
        l_c [m]: of the roof, from 0.
    wind_factor
        C_w [-]: wind exposure factor, 0.5 to 1.0.

    How read: read on a page. Ontario code 4.1.6.2 (codeindex.ca), which prints the same sign before both lines.
    """
    value: Result = call(
        "nbc2015.basic_factor",
        characteristic_length_m=characteristic_length_m,
        wind_factor=wind_factor,
    )[0]
    return value


def characteristic_length(*, width_m: Any, length_m: Any) -> Result:
    """Characteristic length of a roof. NBC 2015, 4.1.6.2.

    l_c = 2 w - w^2/l.

    Parameters
    ----------
    width_m
        w [m]: smaller plan size, over 0.
    length_m
        l [m]: larger plan size, not under w.

    How read: read on a page. Ontario code 4.1.6.2 (codeindex.ca).
    """
    value: Result = call("nbc2015.characteristic_length", width_m=width_m, length_m=length_m)[0]
    return value


class Combination(NamedTuple):
    """Results of `combination`."""

    #: D [-]: 1.25; 1.4 alone, 1.0 with earthquake.
    permanent: Result
    #: D_min [-]: 0.9 where D helps; 1.4 alone, 1.0 with earthquake.
    permanent_favourable: Result
    #: L [-]: 1.5; 1.0 with snow, 0.5 with wind or earthquake.
    live: Result
    #: S [-]: 1.5; 1.0 with live load, 0.5 with wind(), 0.25 with earthquake.
    snow: Result
    #: W [-]: 1.4; 0.4 with live load or snow.
    wind: Result
    #: E [-]: 1.0.
    earthquake: Result


def combination(*, combination: Any) -> Combination:
    """Factors of a combination for strength. NBC 2015, 4.1.3.2.

    D = 1.25; 1.4 alone, 1.0 with earthquake; D_min = 0.9 where D helps; 1.4 alone, 1.0 with earthquake; L = 1.5;
    1.0 with snow, 0.5 with wind or earthquake; S = 1.5; 1.0 with live load, 0.5 with wind(), 0.25 with earthquake;
    W = 1.4; 0.4 with live load or snow; E = 1.0.

    Parameters
    ----------
    combination
        combination: one of "dead", "live and snow", "live and wind", "snow and live", "snow and wind", "wind
        and live", "wind and snow", "earthquake": the load that leads, and the one that goes with it.

    How read: from memory, sure. Table 4.1.3.2.
    """
    return Combination(*call("nbc2015.combination", combination=combination))


def drift_accumulation(*, peak_factor: Any, drift_length_m: Any, distance_m: Any) -> Result:
    """Accumulation factor at a distance from the wall. NBC 2015, 4.1.6.5.

    C_a = C_a0 - (C_a0 - 1) x/x_d to x_d, then 1.

    Parameters
    ----------
    peak_factor
        C_a0 [-]: at the wall, from 1.
    drift_length_m
        x_d [m]: over which the drift falls off, from 0.
    distance_m
        x [m]: from the wall, from 0.

    How read: read on a page. Ontario code 4.1.6.5 (codeindex.ca).
    """
    value: Result = call(
        "nbc2015.drift_accumulation",
        peak_factor=peak_factor,
        drift_length_m=drift_length_m,
        distance_m=distance_m,
    )[0]
    return value


def importance_factor(*, importance: Any, limit_state: Any = "ultimate") -> Result:
    """Importance factor on snow. NBC 2015, 4.1.6.2.

    I_s = 0.8 low, 1.0 normal, 1.15 high, 1.25 post-disaster; 0.9 for serviceability.

    Parameters
    ----------
    importance
        importance: one of "low", "normal", "high", "post-disaster": what depends on the structure.
    limit_state
        state: one of "ultimate", "serviceability": what is looked at.

    How read: from memory, sure. Table 4.1.6.2.-A.
    """
    value: Result = call("nbc2015.importance_factor", importance=importance, limit_state=limit_state)[0]
    return value


def obstruction_distance(
    *, height_m: Any, ground_snow_kpa: Any, unit_weight_kn_per_m3: Any, basic_factor: Any, wind_factor: Any
) -> Result:
    """How near an obstruction may stand without spoiling C_w. NBC 2015, 4.1.6.2.

    a = 10 (h_o - C_b C_w S_s/gamma), not under 0.

    Parameters
    ----------
    height_m
        h_o [m]: obstruction above the roof, from 0.
    ground_snow_kpa
        S_s [kPa]: 1-in-50 ground snow load, 0 to 100.
    unit_weight_kn_per_m3
        gamma [kN/m3]: unit weight of snow, 1 to 10.
    basic_factor
        C_b [-]: basic roof snow load factor, 0.8 to 2.0.
    wind_factor
        C_w [-]: wind exposure factor, 0.5 to 1.0.

    How read: read on a page. Ontario code 4.1.6.2 (codeindex.ca).
    """
    value: Result = call(
        "nbc2015.obstruction_distance",
        height_m=height_m,
        ground_snow_kpa=ground_snow_kpa,
        unit_weight_kn_per_m3=unit_weight_kn_per_m3,
        basic_factor=basic_factor,
        wind_factor=wind_factor,
    )[0]
    return value


class PartialLoading(NamedTuple):
    """Results of `partial_loading`."""

    #: applies: slope <= 15 deg.
    applies: Any
    #: share [-]: 0.5 of the load with C_a = 1, while one part carries all of it.
    rest_share: Result


def partial_loading(*, slope_deg: Any) -> PartialLoading:
    """Whether partial loading has to be looked at, and the load on the rest. NBC 2015, 4.1.6.3.

    applies = slope <= 15 deg; share = 0.5 of the load with C_a = 1, while one part carries all of it.

    Parameters
    ----------
    slope_deg
        slope [deg]: of the cover, 0 to 90.

    How read: read on a page. Ontario code 4.1.6.3 (buildingcode.online).
    """
    return PartialLoading(*call("nbc2015.partial_loading", slope_deg=slope_deg))


def projection_counts(*, longest_m: Any) -> Any:
    """Whether a projection is long enough to count. NBC 2015, 4.1.6.7.

    counts = l_0 > 3 m.

    Parameters
    ----------
    longest_m
        l_0 [m]: longest level size of the projection, from 0.

    How read: from memory. from memory.
    """
    value: Any = call("nbc2015.projection_counts", longest_m=longest_m)[0]
    return value


class ProjectionDrift(NamedTuple):
    """Results of `projection_drift`."""

    #: C_a0 [-]: min[0.67 gamma h/(C_b S_s), gamma l_0/(7.5 C_b S_s) + 1], not under 1.
    peak_factor: Result
    #: x_d [m]: min(3.35 h, 2 l_0/3).
    drift_length_m: Result


def projection_drift(
    *, ground_snow_kpa: Any, unit_weight_kn_per_m3: Any, height_m: Any, longest_m: Any, basic_factor: Any
) -> ProjectionDrift:
    """Drift beside a projection. NBC 2015, 4.1.6.7.

    C_a0 = min[0.67 gamma h/(C_b S_s), gamma l_0/(7.5 C_b S_s) + 1], not under 1; x_d = min(3.35 h, 2 l_0/3).

    Parameters
    ----------
    ground_snow_kpa
        S_s [kPa]: 1-in-50 ground snow load, 0 to 100.
    unit_weight_kn_per_m3
        gamma [kN/m3]: unit weight of snow, 1 to 10.
    height_m
        h [m]: of the projection above the roof, from 0.
    longest_m
        l_0 [m]: longest level size of the projection, from 0.
    basic_factor
        C_b [-]: basic roof snow load factor, 0.8 to 2.0.

    How read: from memory. from memory.
    """
    return ProjectionDrift(*call(
        "nbc2015.projection_drift",
        ground_snow_kpa=ground_snow_kpa,
        unit_weight_kn_per_m3=unit_weight_kn_per_m3,
        height_m=height_m,
        longest_m=longest_m,
        basic_factor=basic_factor,
    ))


def sliding_total(*, upper_load_kpa: Any, run_m: Any) -> Result:
    """All the snow that slides on a lower roof, per length of eave. NBC 2015, 4.1.6.11.

    T = 0.5 S b.

    Parameters
    ----------
    upper_load_kpa
        S [kPa]: on the upper roof with C_s = 1, 0 to 1000.
    run_m
        b [m]: level length that slopes towards the lower roof, from 0.

    How read: read in part. the half from memory, "every slope of a slippery roof" read (Commentary G, list of
    changes); over which length it tapers off is not known.
    """
    value: Result = call("nbc2015.sliding_total", upper_load_kpa=upper_load_kpa, run_m=run_m)[0]
    return value


def slope_factor(*, slope_deg: Any, surface: Any = "other", accumulation: Any) -> Result:
    """Slope factor. NBC 2015, 4.1.6.2.

    C_s = (70 - slope)/40 from 30 to 70 deg; slippery (60 - slope)/45 from 15 to 60; 1 below, 0 above; 1 where snow
    gathers.

    Parameters
    ----------
    slope_deg
        slope [deg]: of the cover, 0 to 90.
    surface
        surface: one of "slippery", "other": slippery means unobstructed too.
    accumulation
        accumulation: one of "none", "gable", "gathered": why C_a differs from 1.

    How read: read on a page. course notes ARC1046; the gable eng-tips.com, thread 370069.
    """
    value: Result = call(
        "nbc2015.slope_factor",
        slope_deg=slope_deg,
        surface=surface,
        accumulation=accumulation,
    )[0]
    return value


class SpecifiedLoad(NamedTuple):
    """Results of `specified_load`."""

    #: S_snow [kPa]: S_s C_b C_w C_s C_a.
    snow_kpa: Result
    #: S_rain [kPa]: min(S_r, S_snow).
    rain_in_snow_kpa: Result
    #: S [kPa]: I_s (S_snow + S_rain).
    specified_load_kpa: Result


def specified_load(
    *,
    ground_snow_kpa: Any,
    rain_kpa: Any,
    importance_factor: Any,
    basic_factor: Any,
    wind_factor: Any,
    slope_factor: Any,
    accumulation_factor: Any,
) -> SpecifiedLoad:
    """Specified load of snow and the rain in it. NBC 2015, 4.1.6.2.

    S_snow = S_s C_b C_w C_s C_a; S_rain = min(S_r, S_snow); S = I_s (S_snow + S_rain).

    Parameters
    ----------
    ground_snow_kpa
        S_s [kPa]: 1-in-50 ground snow load, 0 to 100.
    rain_kpa
        S_r [kPa]: 1-in-50 rain that goes with the snow, 0 to 100.
    importance_factor
        I_s [-]: importance factor, 0.8 to 1.25.
    basic_factor
        C_b [-]: basic roof snow load factor, 0.8 to 2.0.
    wind_factor
        C_w [-]: wind exposure factor, 0.5 to 1.0.
    slope_factor
        C_s [-]: slope factor, 0 to 1.
    accumulation_factor
        C_a [-]: accumulation factor, from 0.

    How read: read on a page. Ontario code 4.1.6.2 (codeindex.ca); NBC Part 4 (guides.co).
    """
    return SpecifiedLoad(*call(
        "nbc2015.specified_load",
        ground_snow_kpa=ground_snow_kpa,
        rain_kpa=rain_kpa,
        importance_factor=importance_factor,
        basic_factor=basic_factor,
        wind_factor=wind_factor,
        slope_factor=slope_factor,
        accumulation_factor=accumulation_factor,
    ))


class StepDrift(NamedTuple):
    """Results of `step_drift`."""

    #: h_p' [m]: h_p - 0.8 S_s/gamma, 0 to l_cs/5.
    standing_parapet_m: Result
    #: F [-]: 0.35 beta sqrt[gamma (l_cs - 5 h_p')/S_s] + C_b, at most 5 where C_ws = 1; beta = 1.0 in case I, else
    #: 0.67.
    fetch_factor: Result
    #: C_a0 [-]: min[beta gamma h/(C_b S_s), F/C_b], not under 1.
    peak_factor: Result
    #: x_d [m]: 5 (C_b S_s/gamma) (C_a0 - 1).
    drift_length_m: Result


def step_drift(
    *,
    ground_snow_kpa: Any,
    unit_weight_kn_per_m3: Any,
    height_m: Any,
    basic_factor: Any,
    source: Any,
    source_length_m: Any,
    parapet_m: Any,
    source_wind_factor: Any,
) -> StepDrift:
    """Drift on a roof below a step. NBC 2015, 4.1.6.5.

    h_p' = h_p - 0.8 S_s/gamma, 0 to l_cs/5; F = 0.35 beta sqrt[gamma (l_cs - 5 h_p')/S_s] + C_b, at most 5 where
    C_ws = 1; beta = 1.0 in case I, else 0.67; C_a0 = min[beta gamma h/(C_b S_s), F/C_b], not under 1; x_d = 5 (C_b
    S_s/gamma) (C_a0 - 1).

    Parameters
    ----------
    ground_snow_kpa
        S_s [kPa]: 1-in-50 ground snow load, 0 to 100.
    unit_weight_kn_per_m3
        gamma [kN/m3]: unit weight of snow, 1 to 10.
    height_m
        h [m]: from the lower roof to the top of the upper parapet, from 0.
    basic_factor
        C_b [-]: basic roof snow load factor, 0.8 to 2.0.
    source
        case: one of "I", "II", "III": I from the upper roof, II and III from the lower one.
    source_length_m
        l_cs [m]: characteristic length of the roof the snow comes from, from 0.
    parapet_m
        h_p [m]: parapet of that roof, from 0.
    source_wind_factor
        C_ws [-]: of that roof, 0.5 to 1.0.

    How read: read on a page. Ontario code 4.1.6.5 (codeindex.ca), which prints "5 h0" for 5 h_p'.
    """
    return StepDrift(*call(
        "nbc2015.step_drift",
        ground_snow_kpa=ground_snow_kpa,
        unit_weight_kn_per_m3=unit_weight_kn_per_m3,
        height_m=height_m,
        basic_factor=basic_factor,
        source=source,
        source_length_m=source_length_m,
        parapet_m=parapet_m,
        source_wind_factor=source_wind_factor,
    ))


def unbalanced_applies(*, slope_deg: Any) -> Any:
    """Whether a gable has an unbalanced case. NBC 2015, 4.1.6.9.

    applies = slope > 15 deg.

    Parameters
    ----------
    slope_deg
        slope [deg]: of the cover, 0 to 90.

    How read: from memory, sure. from memory.
    """
    value: Any = call("nbc2015.unbalanced_applies", slope_deg=slope_deg)[0]
    return value


class UnbalancedGable(NamedTuple):
    """Results of `unbalanced_gable`."""

    #: C_a,up [-]: 0.
    upwind_factor: Result
    #: C_a [-]: 0.25 + slope/20 from 15 to 20 deg, 1.25 from there.
    downwind_factor: Result


def unbalanced_gable(*, slope_deg: Any) -> UnbalancedGable:
    """Accumulation factors of an unbalanced gable. NBC 2015, 4.1.6.9.

    C_a,up = 0; C_a = 0.25 + slope/20 from 15 to 20 deg, 1.25 from there.

    Parameters
    ----------
    slope_deg
        slope [deg]: of the downwind side, 15 to 90.

    How read: read in part. the 1.25 on a page (eng-tips.com, thread 370069), ramp and empty side from memory, sure.
    """
    return UnbalancedGable(*call("nbc2015.unbalanced_gable", slope_deg=slope_deg))


def unit_weight(*, ground_snow_kpa: Any) -> Result:
    """Unit weight of drifted snow. NBC 2015, 4.1.6.13.

    gamma = 0.43 S_s + 2.2, at most 4.0.

    Parameters
    ----------
    ground_snow_kpa
        S_s [kPa]: 1-in-50 ground snow load, 0 to 100.

    How read: from memory. from memory; that 2015 brought a method in was read (Commentary G, list of changes).
    """
    value: Result = call("nbc2015.unit_weight", ground_snow_kpa=ground_snow_kpa)[0]
    return value


def wind_factor(
    *, importance: Any, site: Any = "other", open_on_all_sides: Any, unobstructed: Any, accumulation: Any
) -> Result:
    """Wind exposure factor. NBC 2015, 4.1.6.2.

    C_w = 1.0; 0.75 rural, 0.5 north of the tree line if every condition holds.

    Parameters
    ----------
    importance
        importance: one of "low", "normal", "high", "post-disaster": lowered for low and normal only.
    site
        site: one of "other", "rural", "north of tree line": where the wind may have taken snow off.
    open_on_all_sides
        open: open terrain all round, and to stay so.
    unobstructed
        free: nothing on the roof nearer than the obstruction distance.
    accumulation
        gathers: the load is one that gathers.

    How read: read in part. Ontario code 4.1.6.2 (codeindex.ca); that accumulations are left out is from memory,
    sure.
    """
    value: Result = call(
        "nbc2015.wind_factor",
        importance=importance,
        site=site,
        open_on_all_sides=open_on_all_sides,
        unobstructed=unobstructed,
        accumulation=accumulation,
    )[0]
    return value
