# SPDX-License-Identifier: BSD-3-Clause
# Written by bindings/tools/write_rules.py from the catalogue of rules; do not edit.
"""ASCE 7-22: one function for each rule.

Every argument may be a number, an array, text with a unit or a pint quantity; arrays broadcast, words of a choice too.
The first item a rule does not cover raises `coverframe.InputError` whose ``where`` is its index ("/3"). Loads of roofs
are per horizontal area. `coverframe.rules.workings` lists how a number comes about.
"""

from __future__ import annotations

from typing import Any, NamedTuple

from .rules import Result, call

__all__ = [
    "AllowableStressFactors",
    "BalancedDepth",
    "CircularArc",
    "LeewardDrift",
    "LeewardDriftOverGap",
    "SlidingLoad",
    "SlidingLoadOverGap",
    "StrengthFactors",
    "UnbalancedCurve",
    "UnbalancedGable",
    "UnbalancedValley",
    "allowable_stress_factors",
    "balanced_depth",
    "circular_arc",
    "curve_unbalanced_applies",
    "drift_height",
    "drift_load_at",
    "existing_roof_affected",
    "exposure_factor",
    "flat_load",
    "full_load_slope",
    "leeward_drift",
    "leeward_drift_over_gap",
    "minimum_applies",
    "minimum_load",
    "minimum_load_limit",
    "narrow_gable",
    "obstruction_shelters",
    "partial_factor",
    "partial_loading_applies",
    "partial_patterns",
    "projection_needs_drift",
    "rain_on_snow",
    "sliding_applies",
    "sliding_load",
    "sliding_load_over_gap",
    "slope_factor",
    "sloped_load",
    "strength_factors",
    "thermal_factor",
    "unbalanced_applies",
    "unbalanced_curve",
    "unbalanced_gable",
    "unbalanced_valley",
    "unit_weight",
    "warm_slippery_applies",
    "windward_drift_height",
]


class AllowableStressFactors(NamedTuple):
    """Results of `allowable_stress_factors`."""

    #: f_D [-]: on self-weight D.
    permanent_factor: Result
    #: f_S [-]: on snow S.
    snow_factor: Result
    #: f_L [-]: on live load L.
    live_factor: Result
    #: f_W [-]: on wind W.
    wind_factor: Result
    #: f_E [-]: on earthquake E.
    earthquake_factor: Result


def allowable_stress_factors(*, combination: Any) -> AllowableStressFactors:
    """Factors of an allowable-stress combination with snow. ASCE 7-22, 2.4.1.

    f_D = on self-weight D; f_S = on snow S; f_L = on live load L; f_W = on wind W; f_E = on earthquake E.

    Parameters
    ----------
    combination
        combination: one of "snow", "snow and live", "snow, live and wind": the actions that come together.

    How read: read on a page. 3a, 4a, 6a (STRUCTURE magazine, ASCE 7-22 Flat Roof Snow Load Versus Minimum Snow
    Load).
    """
    return AllowableStressFactors(*call("asce7_22.allowable_stress_factors", combination=combination))


class BalancedDepth(NamedTuple):
    """Results of `balanced_depth`."""

    #: gamma [kN/m3]: min(0.13 p_g + 14, 30).
    unit_weight_kn_per_m3: Result
    #: h_b [m]: p_b/gamma.
    balanced_depth_m: Result


def balanced_depth(*, balanced_load_kpa: Any, ground_snow_kpa: Any) -> BalancedDepth:
    """Depth of the balanced snow. ASCE 7-22, 7.7.1.

    gamma = min(0.13 p_g + 14, 30); h_b = p_b/gamma.

    Parameters
    ----------
    balanced_load_kpa
        p_b [kPa]: balanced load of the lower roof, 0 to 200.
    ground_snow_kpa
        p_g [kPa]: ground snow load, 0 to 100.

    How read: read in part. Eq. 7.7-1 (O'Rourke, Guide to ASCE 7-10, Example 6-2; STRUCTURE magazine on Canadian and
    U.S. drifts); the depth from memory, sure.
    """
    return BalancedDepth(*call(
        "asce7_22.balanced_depth",
        balanced_load_kpa=balanced_load_kpa,
        ground_snow_kpa=ground_snow_kpa,
    ))


class CircularArc(NamedTuple):
    """Results of `circular_arc`."""

    #: R [m]: (b^2 + f^2)/(2 f).
    radius_m: Result
    #: slope_chord [deg]: atan(f/b).
    eave_to_crown_deg: Result
    #: slope_eave [deg]: 2 atan(f/b).
    eave_slope_deg: Result
    #: x_30 [m]: min(R sin(30 deg), b).
    to_30_degrees_m: Result
    #: x_70 [m]: min(R sin(70 deg), b).
    to_70_degrees_m: Result


def circular_arc(*, half_span_m: Any, rise_m: Any) -> CircularArc:
    """Slopes of a roof that is part of a circle. ASCE 7-22, 7.6.2, Fig. 7.4-2.

    R = (b^2 + f^2)/(2 f); slope_chord = atan(f/b); slope_eave = 2 atan(f/b); x_30 = min(R sin(30 deg), b); x_70 =
    min(R sin(70 deg), b).

    Parameters
    ----------
    half_span_m
        b [m]: crown to eave, level, up to 3000 ft.
    rise_m
        f [m]: crown above eaves, up to b.

    How read: derived here. geometry.
    """
    return CircularArc(*call("asce7_22.circular_arc", half_span_m=half_span_m, rise_m=rise_m))


def curve_unbalanced_applies(*, eave_to_crown_deg: Any) -> Any:
    """Whether a curved roof needs the unbalanced case. ASCE 7-22, 7.6.2, Fig. 7.4-2.

    applies = 10 deg <= slope <= 60 deg.

    Parameters
    ----------
    eave_to_crown_deg
        slope [deg]: line from eave (or 70 degree point) to crown, 0 to 90.

    How read: from memory, sure. 7.6.2.
    """
    value: Any = call("asce7_22.curve_unbalanced_applies", eave_to_crown_deg=eave_to_crown_deg)[0]
    return value


def drift_height(*, ground_snow_kpa: Any, fetch_m: Any, winter_wind: Any) -> Result:
    """Drift height. ASCE 7-22, 7.6.

    h_d = 1.5 sqrt(p_g^0.74 l_u^0.70 W_2^1.7/gamma), l_u at least 20 ft; at most sqrt(p_g l_u/(4 gamma)).

    Parameters
    ----------
    ground_snow_kpa
        p_g [kPa]: ground snow load, strength level for the risk category, 0 to 100.
    fetch_m
        l_u [m]: length of the upwind surface, up to 600 ft.
    winter_wind
        W_2 [-]: share of the winter with wind over 10 mph, 0 to 1.

    How read: read in part. Eq. 7.6-1: coefficient and variables on a page (STRUCTURE magazine on Canadian and U.S.
    drifts), exponents from memory, sure, cap and least fetch from memory.
    """
    value: Result = call(
        "asce7_22.drift_height",
        ground_snow_kpa=ground_snow_kpa,
        fetch_m=fetch_m,
        winter_wind=winter_wind,
    )[0]
    return value


def drift_load_at(*, peak_kpa: Any, width_m: Any, distance_m: Any) -> Result:
    """Load of a triangular drift at a distance from its high end, on top of the balanced load. ASCE 7-22, 7.7.1.

    p = p_d (1 - x/w) up to w, then 0.

    Parameters
    ----------
    peak_kpa
        p_d [kPa]: peak of the drift.
    width_m
        w [m]: width of the drift.
    distance_m
        x [m]: from the wall, or from the near end across a gap.

    How read: from memory, sure. 7.7.1.
    """
    value: Result = call("asce7_22.drift_load_at", peak_kpa=peak_kpa, width_m=width_m, distance_m=distance_m)[0]
    return value


def existing_roof_affected(*, gap_m: Any) -> Any:
    """Whether an existing lower roof has to be checked again for a higher one beside it. ASCE 7-22, 7.12.

    affected = s <= 20 ft.

    Parameters
    ----------
    gap_m
        s [m]: between both structures, level.

    How read: from memory, sure. 7.12.
    """
    value: Any = call("asce7_22.existing_roof_affected", gap_m=gap_m)[0]
    return value


def exposure_factor(*, terrain: Any, roof_exposure: Any) -> Result:
    """Exposure factor. ASCE 7-22, 7.3.1, Table 7.3-1.

    C_e = fully, partially exposed, sheltered: B 0.9, 1.0, 1.2; C 0.9, 1.0, 1.1; D 0.8, 0.9, 1.0; treeless 0.7, 0.8,
    none.

    Parameters
    ----------
    terrain
        terrain: one of "B", "C", "D", "above tree line", "Alaska, treeless": roughness of the land round the
        yard.
    roof_exposure
        exposure: one of "partially exposed", "fully exposed", "sheltered": how the wind reaches the roof.

    How read: read in part. terrain B, partially exposed, on a page (O'Rourke, Guide to ASCE 7-10, Example 4-3); the
    rest from memory, sure.
    """
    value: Result = call("asce7_22.exposure_factor", terrain=terrain, roof_exposure=roof_exposure)[0]
    return value


def flat_load(*, ground_snow_kpa: Any, exposure_factor: Any, thermal_factor: Any) -> Result:
    """Flat roof snow load. ASCE 7-22, 7.3.

    p_f = 0.7 C_e C_t p_g.

    Parameters
    ----------
    ground_snow_kpa
        p_g [kPa]: ground snow load, strength level for the risk category, 0 to 100.
    exposure_factor
        C_e [-]: exposure factor, 0.5 to 1.5.
    thermal_factor
        C_t [-]: thermal factor, 0.8 to 1.4; 1.2 for an unheated cover.

    How read: read on a page. Eq. 7.3-1 (NFBA magazine, Sept. 2025, p. 26).
    """
    value: Result = call(
        "asce7_22.flat_load",
        ground_snow_kpa=ground_snow_kpa,
        exposure_factor=exposure_factor,
        thermal_factor=thermal_factor,
    )[0]
    return value


def full_load_slope(*, thermal_factor: Any, surface: Any = "other") -> Result:
    """Slope at which the slope factor begins to fall. ASCE 7-22, 7.4.

    a = 5 (slippery) or 30 deg for C_t < 1.1, 10 or 37.5 below 1.2, 15 or 45 from 1.2.

    Parameters
    ----------
    thermal_factor
        C_t [-]: thermal factor, 0.8 to 1.4; 1.2 for an unheated cover.
    surface
        surface: one of "slippery", "other": slippery if smooth, nothing holds snow back and there is room
        below.

    How read: read in part. Fig. 7.4-1: 10 degrees on a page (forum thread on Fig. 7-2b of 7-05), the rest from
    memory, sure; the limits of C_t from memory.
    """
    value: Result = call("asce7_22.full_load_slope", thermal_factor=thermal_factor, surface=surface)[0]
    return value


class LeewardDrift(NamedTuple):
    """Results of `leeward_drift`."""

    #: gamma [kN/m3]: min(0.13 p_g + 14, 30).
    unit_weight_kn_per_m3: Result
    #: h_b [m]: p_b/gamma.
    balanced_depth_m: Result
    #: h_c [m]: h_r - h_b.
    clear_height_m: Result
    #: h_d [m]: 1.5 sqrt(p_g^0.74 l_upper^0.70 W_2^1.7/gamma), l_upper at least 20 ft; at most sqrt(p_g l_upper/(4
    #: gamma)).
    drift_height_m: Result
    #: needed: h_c/h_b >= 0.2.
    needed: Any
    #: h [m]: min(h_d, h_c); 0 if not needed.
    height_m: Result
    #: w [m]: 4 h_d up to h_c, above it min(4 h_d^2/h_c, 8 h_c).
    width_m: Result
    #: p_d [kPa]: h gamma, at the wall.
    peak_kpa: Result
    #: p_wall [kPa]: p_b + p_d.
    at_wall_kpa: Result
    #: p_end [kPa]: p_d (1 - l_lower/w) where the roof ends first, else 0.
    at_end_kpa: Result


def leeward_drift(
    *,
    ground_snow_kpa: Any,
    balanced_load_kpa: Any,
    step_m: Any,
    upper_length_m: Any,
    lower_length_m: Any,
    winter_wind: Any,
) -> LeewardDrift:
    """Leeward drift on a lower roof; the windward drift is a case of its own. ASCE 7-22, 7.7.1.

    gamma = min(0.13 p_g + 14, 30); h_b = p_b/gamma; h_c = h_r - h_b; h_d = 1.5 sqrt(p_g^0.74 l_upper^0.70
    W_2^1.7/gamma), l_upper at least 20 ft; at most sqrt(p_g l_upper/(4 gamma)); needed = h_c/h_b >= 0.2; h =
    min(h_d, h_c); 0 if not needed; w = 4 h_d up to h_c, above it min(4 h_d^2/h_c, 8 h_c); p_d = h gamma, at the
    wall; p_wall = p_b + p_d; p_end = p_d (1 - l_lower/w) where the roof ends first, else 0.

    Parameters
    ----------
    ground_snow_kpa
        p_g [kPa]: ground snow load, strength level for the risk category, 0 to 100.
    balanced_load_kpa
        p_b [kPa]: balanced load of the lower roof, 0 to 200.
    step_m
        h_r [m]: wall, parapet, projection or higher edge above the lower roof.
    upper_length_m
        l_upper [m]: upper roof, square to the step, up to 600 ft.
    lower_length_m
        l_lower [m]: lower roof, square to the step or gap, up to 600 ft.
    winter_wind
        W_2 [-]: share of the winter with wind over 10 mph, 0 to 1.

    How read: read in part. p_d = h gamma on a page (design firm's article on drifts in 7-16 and 7-22), the rest
    from memory, sure, the drift height as drift_height.
    """
    return LeewardDrift(*call(
        "asce7_22.leeward_drift",
        ground_snow_kpa=ground_snow_kpa,
        balanced_load_kpa=balanced_load_kpa,
        step_m=step_m,
        upper_length_m=upper_length_m,
        lower_length_m=lower_length_m,
        winter_wind=winter_wind,
    ))


class LeewardDriftOverGap(NamedTuple):
    """Results of `leeward_drift_over_gap`."""

    #: gamma [kN/m3]: min(0.13 p_g + 14, 30).
    unit_weight_kn_per_m3: Result
    #: h_d [m]: 1.5 sqrt(p_g^0.74 l_upper^0.70 W_2^1.7/gamma), l_upper at least 20 ft; at most sqrt(p_g l_upper/(4
    #: gamma)).
    drift_height_m: Result
    #: needed: s < 20 ft and s < 6 h_r.
    needed: Any
    #: h [m]: min(h_d, (6 h_r - s)/6); 0 if not needed.
    height_m: Result
    #: l [m]: min(6 h_d, 6 h_r - s).
    length_m: Result
    #: p_d [kPa]: h gamma, at the near edge.
    peak_kpa: Result
    #: p_end [kPa]: p_d (1 - l_lower/l) where the roof ends first, else 0.
    at_end_kpa: Result


def leeward_drift_over_gap(
    *, ground_snow_kpa: Any, gap_m: Any, step_m: Any, higher_length_m: Any, lower_length_m: Any, winter_wind: Any
) -> LeewardDriftOverGap:
    """Drift that snow of the higher structure makes on the lower one across a gap. ASCE 7-22, 7.7.2.

    gamma = min(0.13 p_g + 14, 30); h_d = 1.5 sqrt(p_g^0.74 l_upper^0.70 W_2^1.7/gamma), l_upper at least 20 ft; at
    most sqrt(p_g l_upper/(4 gamma)); needed = s < 20 ft and s < 6 h_r; h = min(h_d, (6 h_r - s)/6); 0 if not
    needed; l = min(6 h_d, 6 h_r - s); p_d = h gamma, at the near edge; p_end = p_d (1 - l_lower/l) where the roof
    ends first, else 0.

    Parameters
    ----------
    ground_snow_kpa
        p_g [kPa]: ground snow load, strength level for the risk category, 0 to 100.
    gap_m
        s [m]: between both structures, level.
    step_m
        h_r [m]: wall, parapet, projection or higher edge above the lower roof.
    higher_length_m
        l_upper [m]: higher structure, square to the gap, up to 600 ft.
    lower_length_m
        l_lower [m]: lower roof, square to the step or gap, up to 600 ft.
    winter_wind
        W_2 [-]: share of the winter with wind over 10 mph, 0 to 1.

    How read: from memory. 7.7.2; the limits of s from memory, sure.
    """
    return LeewardDriftOverGap(*call(
        "asce7_22.leeward_drift_over_gap",
        ground_snow_kpa=ground_snow_kpa,
        gap_m=gap_m,
        step_m=step_m,
        higher_length_m=higher_length_m,
        lower_length_m=lower_length_m,
        winter_wind=winter_wind,
    ))


def minimum_applies(*, slope_deg: Any, roof_shape: Any = "hip or gable") -> Any:
    """Whether the minimum load has to be looked at. ASCE 7-22, 7.3.3.

    applies = slope < 15 deg; 10 deg for a curved roof.

    Parameters
    ----------
    slope_deg
        slope [deg]: of the roof, or from eave to crown of a curved one, 0 to 90.
    roof_shape
        shape: one of "hip or gable", "monoslope", "curved": of the roof.

    How read: read in part. 15 degrees on a page (O'Rourke, Guide to ASCE 7-10, Example 4-3), 10 degrees from
    memory, sure.
    """
    value: Any = call("asce7_22.minimum_applies", slope_deg=slope_deg, roof_shape=roof_shape)[0]
    return value


def minimum_load(*, ground_snow_kpa: Any, risk_category: Any) -> Result:
    """Minimum snow load of a low slope, a load of its own. ASCE 7-22, 7.3.3.

    p_m = min(p_g, p_m,max); p_m,max I 25, II 30, III 35, IV 40 psf.

    Parameters
    ----------
    ground_snow_kpa
        p_g [kPa]: ground snow load, strength level for the risk category, 0 to 100.
    risk_category
        category: one of "I", "II", "III", "IV": of the structure.

    How read: from memory. 7.3.3; that it stands apart on a page (STRUCTURE magazine, ASCE 7-22 Flat Roof Snow Load
    Versus Minimum Snow Load).
    """
    value: Result = call(
        "asce7_22.minimum_load",
        ground_snow_kpa=ground_snow_kpa,
        risk_category=risk_category,
    )[0]
    return value


def minimum_load_limit(*, risk_category: Any) -> Result:
    """Upper limit of the minimum snow load. ASCE 7-22, 7.3.3.

    p_m,max = I 25, II 30, III 35, IV 40 psf.

    Parameters
    ----------
    risk_category
        category: one of "I", "II", "III", "IV": of the structure.

    How read: from memory. Table 7.3-4; that it exists on a page (NFBA magazine, Sept. 2025, p. 25).
    """
    value: Result = call("asce7_22.minimum_load_limit", risk_category=risk_category)[0]
    return value


def narrow_gable(*, ground_snow_kpa: Any, slope_deg: Any, eave_to_ridge_m: Any, framing: Any = "other") -> Result:
    """Load on the lee slope of a narrow gable of simple rafters, the windward slope being empty. ASCE 7-22, 7.6.1.

    p_lee = p_g.

    Parameters
    ----------
    ground_snow_kpa
        p_g [kPa]: ground snow load, strength level for the risk category, 0 to 100.
    slope_deg
        slope [deg]: of both slopes, 2.38 to 30.26 (7 on 12).
    eave_to_ridge_m
        W [m]: eave to ridge, level, up to 20 ft.
    framing
        framing: one of "other", "simple rafters": has to be simple rafters; film on straps is not.

    How read: from memory, sure. 7.6.1.
    """
    value: Result = call(
        "asce7_22.narrow_gable",
        ground_snow_kpa=ground_snow_kpa,
        slope_deg=slope_deg,
        eave_to_ridge_m=eave_to_ridge_m,
        framing=framing,
    )[0]
    return value


def obstruction_shelters(*, distance_m: Any, obstruction_m: Any) -> Any:
    """Whether an obstruction shelters a roof, so that it is not fully exposed. ASCE 7-22, 7.3.1, Table 7.3-1.

    shelters = d <= 10 h_o.

    Parameters
    ----------
    distance_m
        d [m]: from the roof to the obstruction, level.
    obstruction_m
        h_o [m]: top of the obstruction above the roof.

    How read: read in part. the ten heights on a page (O'Rourke, Guide to ASCE 7-10, Example 4-3), the rest from
    memory, sure.
    """
    value: Any = call("asce7_22.obstruction_shelters", distance_m=distance_m, obstruction_m=obstruction_m)[0]
    return value


def partial_factor(*, spans: Any, pattern: Any, span: Any) -> Result:
    """Share of the balanced load on one span in one partial loading. ASCE 7-22, 7.5, Fig. 7.5-1.

    factor = 1 where all of the balanced load lies, 0.5 where half of it does.

    Parameters
    ----------
    spans
        n [-]: number of spans, a cantilever counts as one, from 2.
    pattern
        k [-]: 1, 2: all on the first or last span; 3, 4: half on the first or last; 4 + i: all on i and i + 1.
    span
        i [-]: number of the span, from 1.

    How read: from memory, sure. 7.5.1.
    """
    value: Result = call("asce7_22.partial_factor", spans=spans, pattern=pattern, span=span)[0]
    return value


def partial_loading_applies(*, member_run: Any = "other", slope_deg: Any) -> Any:
    """Whether partial loading has to be looked at. ASCE 7-22, 7.5, Fig. 7.5-1.

    applies = not from eave to ridge at 2.38 deg (1/2 on 12) or steeper.

    Parameters
    ----------
    member_run
        member: one of "other", "eave to ridge": how it runs.
    slope_deg
        slope [deg]: of the roof, 0 to 90.

    How read: from memory, sure. 7.5.
    """
    value: Any = call("asce7_22.partial_loading_applies", member_run=member_run, slope_deg=slope_deg)[0]
    return value


def partial_patterns(*, spans: Any) -> Result:
    """How many partial loadings a continuous member has. ASCE 7-22, 7.5, Fig. 7.5-1.

    N = n + 3.

    Parameters
    ----------
    spans
        n [-]: number of spans, a cantilever counts as one, from 2.

    How read: from memory, sure. 7.5.1.
    """
    value: Result = call("asce7_22.partial_patterns", spans=spans)[0]
    return value


def projection_needs_drift(*, side_m: Any, clearance_m: Any) -> Any:
    """Whether a side of a projection needs a drift. ASCE 7-22, 7.8.

    needed = l >= 15 ft and c < 2 ft.

    Parameters
    ----------
    side_m
        l [m]: length of that side of the projection.
    clearance_m
        c [m]: balanced snow to underside of the projection, 0 if it stands on the roof.

    How read: from memory. 7.8.
    """
    value: Any = call("asce7_22.projection_needs_drift", side_m=side_m, clearance_m=clearance_m)[0]
    return value


def rain_on_snow(*, ground_snow_kpa: Any, slope_deg: Any, eave_to_ridge_m: Any, risk_category: Any) -> Result:
    """Rain that falls on the snow, added to the balanced load. ASCE 7-22, 7.10.

    p_rain = 8 psf if 0 < p_g <= p_m,max and slope < W/50 (deg, ft), else 0.

    Parameters
    ----------
    ground_snow_kpa
        p_g [kPa]: ground snow load, strength level for the risk category, 0 to 100.
    slope_deg
        slope [deg]: of the roof, 0 to 90.
    eave_to_ridge_m
        W [m]: eave to ridge, level, up to 600 ft; half the breadth of a boat.
    risk_category
        category: one of "I", "II", "III", "IV": of the structure.

    How read: from memory, doubtful. the 8 psf on a page (engineering firm's list of changes in 7-22), the slope
    from memory, sure, p_m,max as limit from memory, doubtful.
    """
    value: Result = call(
        "asce7_22.rain_on_snow",
        ground_snow_kpa=ground_snow_kpa,
        slope_deg=slope_deg,
        eave_to_ridge_m=eave_to_ridge_m,
        risk_category=risk_category,
    )[0]
    return value


def sliding_applies(*, slope_deg: Any, surface: Any = "slippery") -> Any:
    """Whether snow of an upper roof has to be taken as sliding. ASCE 7-22, 7.9.

    applies = steeper than 1/4 on 12 if slippery, than 2 on 12 if not.

    Parameters
    ----------
    slope_deg
        slope [deg]: of the roof, 0 to 90.
    surface
        surface: one of "slippery", "other": of the upper roof.

    How read: from memory, sure. 7.9.
    """
    value: Any = call("asce7_22.sliding_applies", slope_deg=slope_deg, surface=surface)[0]
    return value


class SlidingLoad(NamedTuple):
    """Results of `sliding_load`."""

    #: needed: whether snow can slide so far.
    needed: Any
    #: q [kN/m]: 0.4 p_f W; 0 if not needed.
    per_eave_kn_per_m: Result
    #: p_slide [kPa]: q/15 ft.
    intensity_kpa: Result
    #: x [m]: min(15 ft, b).
    extent_m: Result
    #: q_lower [kN/m]: p_slide x.
    on_lower_roof_kn_per_m: Result


def sliding_load(*, flat_load_kpa: Any, eave_to_ridge_m: Any, lower_width_m: Any) -> SlidingLoad:
    """Sliding snow on a lower roof that touches the upper one. ASCE 7-22, 7.9.

    needed = whether snow can slide so far; q = 0.4 p_f W; 0 if not needed; p_slide = q/15 ft; x = min(15 ft, b);
    q_lower = p_slide x.

    Parameters
    ----------
    flat_load_kpa
        p_f [kPa]: flat roof snow load, 0 to 200.
    eave_to_ridge_m
        W [m]: eave to ridge, level, up to 600 ft; half the breadth of a boat.
    lower_width_m
        b [m]: lower roof, away from the eave, up to 600 ft.

    How read: from memory, sure. 7.9.
    """
    return SlidingLoad(*call(
        "asce7_22.sliding_load",
        flat_load_kpa=flat_load_kpa,
        eave_to_ridge_m=eave_to_ridge_m,
        lower_width_m=lower_width_m,
    ))


class SlidingLoadOverGap(NamedTuple):
    """Results of `sliding_load_over_gap`."""

    #: needed: s < 15 ft and h_r > s.
    needed: Any
    #: q [kN/m]: 0.4 p_f W; 0 if not needed.
    per_eave_kn_per_m: Result
    #: p_slide [kPa]: q/15 ft.
    intensity_kpa: Result
    #: x [m]: min(15 ft - s, b).
    extent_m: Result
    #: q_lower [kN/m]: p_slide x.
    on_lower_roof_kn_per_m: Result


def sliding_load_over_gap(
    *, flat_load_kpa: Any, eave_to_ridge_m: Any, lower_width_m: Any, gap_m: Any, step_m: Any
) -> SlidingLoadOverGap:
    """Sliding snow that reaches a lower structure across a gap. ASCE 7-22, 7.9.

    needed = s < 15 ft and h_r > s; q = 0.4 p_f W; 0 if not needed; p_slide = q/15 ft; x = min(15 ft - s, b);
    q_lower = p_slide x.

    Parameters
    ----------
    flat_load_kpa
        p_f [kPa]: flat roof snow load, 0 to 200.
    eave_to_ridge_m
        W [m]: eave to ridge, level, up to 600 ft; half the breadth of a boat.
    lower_width_m
        b [m]: lower roof, away from the eave, up to 600 ft.
    gap_m
        s [m]: between both structures, level.
    step_m
        h_r [m]: wall, parapet, projection or higher edge above the lower roof.

    How read: from memory. 7.9.
    """
    return SlidingLoadOverGap(*call(
        "asce7_22.sliding_load_over_gap",
        flat_load_kpa=flat_load_kpa,
        eave_to_ridge_m=eave_to_ridge_m,
        lower_width_m=lower_width_m,
        gap_m=gap_m,
        step_m=step_m,
    ))


def slope_factor(*, slope_deg: Any, thermal_factor: Any, surface: Any = "other") -> Result:
    """Slope factor. ASCE 7-22, 7.4.

    C_s = 1 up to a, (70 - slope)/(70 - a) to 70 deg, then 0; a: 5 (slippery) or 30 deg for C_t < 1.1, 10 or 37.5
    below 1.2, 15 or 45 from 1.2.

    Parameters
    ----------
    slope_deg
        slope [deg]: of the roof, 0 to 90.
    thermal_factor
        C_t [-]: thermal factor, 0.8 to 1.4; 1.2 for an unheated cover.
    surface
        surface: one of "slippery", "other": slippery if smooth, nothing holds snow back and there is room
        below.

    How read: read in part. Fig. 7.4-1: 10 degrees on a page (forum thread on Fig. 7-2b of 7-05), the rest from
    memory, sure; the limits of C_t from memory.
    """
    value: Result = call(
        "asce7_22.slope_factor",
        slope_deg=slope_deg,
        thermal_factor=thermal_factor,
        surface=surface,
    )[0]
    return value


def sloped_load(*, flat_load_kpa: Any, slope_factor: Any) -> Result:
    """Sloped roof (balanced) snow load. ASCE 7-22, 7.4.

    p_s = C_s p_f.

    Parameters
    ----------
    flat_load_kpa
        p_f [kPa]: flat roof snow load, 0 to 200.
    slope_factor
        C_s [-]: slope factor, 0 to 1.

    How read: read on a page. Eq. 7.4-1 (Beginner's Guide to ASCE 7-05, 8.4).
    """
    value: Result = call("asce7_22.sloped_load", flat_load_kpa=flat_load_kpa, slope_factor=slope_factor)[0]
    return value


class StrengthFactors(NamedTuple):
    """Results of `strength_factors`."""

    #: f_D [-]: on self-weight D.
    permanent_factor: Result
    #: f_S [-]: on snow S.
    snow_factor: Result
    #: f_L [-]: on live load L.
    live_factor: Result
    #: f_W [-]: on wind W.
    wind_factor: Result
    #: f_E [-]: on earthquake E.
    earthquake_factor: Result


def strength_factors(*, combination: Any) -> StrengthFactors:
    """Factors of a strength combination with snow. ASCE 7-22, 2.3.1.

    f_D = on self-weight D; f_S = on snow S; f_L = on live load L; f_W = on wind W; f_E = on earthquake E.

    Parameters
    ----------
    combination
        combination: one of "snow", "snow and live", "snow and wind", "live", "wind", "earthquake", "uplift":
        the action that leads, and what comes with it.

    How read: read in part. 1.2 D + 1.0 S on a page (Maguire et al., STRUCTURE magazine, Feb. 2022, Eq. 1); 0.3 and
    0.15 from memory, the rest from memory, sure.
    """
    return StrengthFactors(*call("asce7_22.strength_factors", combination=combination))


def thermal_factor(*, thermal_condition: Any) -> Result:
    """Thermal factor. ASCE 7-22, 7.3.2, Table 7.3-2.

    C_t = unheated, open air or ventilated 1.2, below freezing 1.3, greenhouse 0.85.

    Parameters
    ----------
    thermal_condition
        condition: one of "unheated or open air", "below freezing", "just above freezing", "ventilated",
        "heated", "greenhouse": what warms or cools the roof.

    How read: read in part. ventilated on a page (NFBA magazine, Sept. 2025, p. 26), the others from memory; Table
    7.3-3 is not known here, so heated and just above freezing are refused.
    """
    value: Result = call("asce7_22.thermal_factor", thermal_condition=thermal_condition)[0]
    return value


def unbalanced_applies(*, slope_deg: Any) -> Any:
    """Whether a gable or hip needs the unbalanced case. ASCE 7-22, 7.6.1.

    applies = 2.38 deg (1/2 on 12) <= slope <= 7 on 12 (30.26 deg).

    Parameters
    ----------
    slope_deg
        slope [deg]: of the roof, 0 to 90.

    How read: read in part. the lower end on a page (O'Rourke, Guide to ASCE 7-10, Example 6-2), the upper from
    memory, sure.
    """
    value: Any = call("asce7_22.unbalanced_applies", slope_deg=slope_deg)[0]
    return value


class UnbalancedCurve(NamedTuple):
    """Results of `unbalanced_curve`."""

    #: case [-]: 1 eave under 30 deg, 2 to 70 deg, 3 above.
    figure_case: Result
    #: C_s,30 [-]: slope factor at the 30 degree point; at the eave in case 1.
    slope_factor_30: Result
    #: C_s,eave [-]: slope factor at the eave.
    slope_factor_eave: Result
    #: p_crown [kPa]: 0.5 p_f.
    crown_kpa: Result
    #: p_30 [kPa]: 2 p_f C_s,30/C_e.
    at_30_degrees_kpa: Result
    #: p_eave [kPa]: 2 p_f C_s,eave/C_e; p_30 in cases 2 and 3 if c <= 3 ft.
    eave_kpa: Result


def unbalanced_curve(
    *,
    flat_load_kpa: Any,
    exposure_factor: Any,
    thermal_factor: Any,
    surface: Any = "other",
    eave_slope_deg: Any,
    eave_clearance_m: Any,
) -> UnbalancedCurve:
    """Unbalanced load of the lee half of a curved roof, the windward half being empty. ASCE 7-22, 7.6.2, Fig.
    7.4-2.

    case = 1 eave under 30 deg, 2 to 70 deg, 3 above; C_s,30 = slope factor at the 30 degree point; at the eave in
    case 1; C_s,eave = slope factor at the eave; p_crown = 0.5 p_f; p_30 = 2 p_f C_s,30/C_e; p_eave = 2 p_f
    C_s,eave/C_e; p_30 in cases 2 and 3 if c <= 3 ft.

    Parameters
    ----------
    flat_load_kpa
        p_f [kPa]: flat roof snow load, 0 to 200.
    exposure_factor
        C_e [-]: exposure factor, 0.5 to 1.5.
    thermal_factor
        C_t [-]: thermal factor, 0.8 to 1.4; 1.2 for an unheated cover.
    surface
        surface: one of "slippery", "other": slippery if smooth, nothing holds snow back and there is room
        below.
    eave_slope_deg
        slope_eave [deg]: tangent at the eave, 0 to 90.
    eave_clearance_m
        c [m]: eave to the ground or another roof.

    How read: from memory, sure. Fig. 7.4-2; the rule of 3 ft from memory.
    """
    return UnbalancedCurve(*call(
        "asce7_22.unbalanced_curve",
        flat_load_kpa=flat_load_kpa,
        exposure_factor=exposure_factor,
        thermal_factor=thermal_factor,
        surface=surface,
        eave_slope_deg=eave_slope_deg,
        eave_clearance_m=eave_clearance_m,
    ))


class UnbalancedGable(NamedTuple):
    """Results of `unbalanced_gable`."""

    #: l_u [m]: max(W, 20 ft).
    fetch_m: Result
    #: gamma [kN/m3]: min(0.13 p_g + 14, 30).
    unit_weight_kn_per_m3: Result
    #: h_d [m]: 1.5 sqrt(p_g^0.74 l_u^0.70 W_2^1.7/gamma), l_u at least 20 ft; at most sqrt(p_g l_u/(4 gamma)).
    drift_height_m: Result
    #: S [-]: 1/tan(slope).
    run: Result
    #: p_windward [kPa]: 0.3 p_s.
    windward_kpa: Result
    #: p_drift [kPa]: h_d gamma/sqrt(S), on top of p_s.
    leeward_surcharge_kpa: Result
    #: w_drift [m]: min(8 h_d sqrt(S)/3, W), from the ridge.
    surcharge_width_m: Result


def unbalanced_gable(
    *, sloped_load_kpa: Any, ground_snow_kpa: Any, slope_deg: Any, eave_to_ridge_m: Any, winter_wind: Any
) -> UnbalancedGable:
    """Unbalanced load of a gable of any framing but simple rafters. ASCE 7-22, 7.6.1.

    l_u = max(W, 20 ft); gamma = min(0.13 p_g + 14, 30); h_d = 1.5 sqrt(p_g^0.74 l_u^0.70 W_2^1.7/gamma), l_u at
    least 20 ft; at most sqrt(p_g l_u/(4 gamma)); S = 1/tan(slope); p_windward = 0.3 p_s; p_drift = h_d
    gamma/sqrt(S), on top of p_s; w_drift = min(8 h_d sqrt(S)/3, W), from the ridge.

    Parameters
    ----------
    sloped_load_kpa
        p_s [kPa]: sloped roof snow load of both slopes, 0 to 200.
    ground_snow_kpa
        p_g [kPa]: ground snow load, strength level for the risk category, 0 to 100.
    slope_deg
        slope [deg]: of both slopes, 2.38 to 30.26 (7 on 12).
    eave_to_ridge_m
        W [m]: eave to ridge, level, up to 600 ft; half the breadth of a boat.
    winter_wind
        W_2 [-]: share of the winter with wind over 10 mph, 0 to 1.

    How read: read in part. 0.3 p_s and the intensity on a page (O'Rourke, Guide to ASCE 7-10, Example 6-2), the
    length from memory, sure, the least fetch from memory, doubtful.
    """
    return UnbalancedGable(*call(
        "asce7_22.unbalanced_gable",
        sloped_load_kpa=sloped_load_kpa,
        ground_snow_kpa=ground_snow_kpa,
        slope_deg=slope_deg,
        eave_to_ridge_m=eave_to_ridge_m,
        winter_wind=winter_wind,
    ))


class UnbalancedValley(NamedTuple):
    """Results of `unbalanced_valley`."""

    #: gamma [kN/m3]: min(0.13 p_g + 14, 30).
    unit_weight_kn_per_m3: Result
    #: p_crown [kPa]: 0.5 p_f.
    crown_kpa: Result
    #: p_valley [kPa]: min(2 p_f/C_e, 0.5 p_f + gamma z).
    valley_kpa: Result


def unbalanced_valley(
    *, flat_load_kpa: Any, exposure_factor: Any, ground_snow_kpa: Any, depth_m: Any
) -> UnbalancedValley:
    """Unbalanced load between the ridges or crowns of several roofs side by side. ASCE 7-22, 7.6.3.

    gamma = min(0.13 p_g + 14, 30); p_crown = 0.5 p_f; p_valley = min(2 p_f/C_e, 0.5 p_f + gamma z).

    Parameters
    ----------
    flat_load_kpa
        p_f [kPa]: flat roof snow load, 0 to 200.
    exposure_factor
        C_e [-]: exposure factor, 0.5 to 1.5.
    ground_snow_kpa
        p_g [kPa]: ground snow load, 0 to 100.
    depth_m
        z [m]: ridge or crown above the bottom of the valley.

    How read: from memory, sure. 7.6.3.
    """
    return UnbalancedValley(*call(
        "asce7_22.unbalanced_valley",
        flat_load_kpa=flat_load_kpa,
        exposure_factor=exposure_factor,
        ground_snow_kpa=ground_snow_kpa,
        depth_m=depth_m,
    ))


def unit_weight(*, ground_snow_kpa: Any) -> Result:
    """Unit weight of drifted snow. ASCE 7-22, 7.7.1.

    gamma = min(0.13 p_g + 14, 30).

    Parameters
    ----------
    ground_snow_kpa
        p_g [kPa]: ground snow load, 0 to 100.

    How read: read on a page. Eq. 7.7-1 (O'Rourke, Guide to ASCE 7-10, Example 6-2; STRUCTURE magazine on Canadian
    and U.S. drifts).
    """
    value: Result = call("asce7_22.unit_weight", ground_snow_kpa=ground_snow_kpa)[0]
    return value


def warm_slippery_applies(*, r_value: Any, ventilated: Any) -> Any:
    """Whether a warm roof is insulated well enough for the slippery line. ASCE 7-22, 7.4.

    applies = R >= 30, or 20 if ventilated.

    Parameters
    ----------
    r_value
        R [-]: thermal resistance in US units (deg F h ft2/Btu).
    ventilated
        ventilated: whether air passes between roof and insulation.

    How read: from memory, sure. 7.4.1.
    """
    value: Any = call("asce7_22.warm_slippery_applies", r_value=r_value, ventilated=ventilated)[0]
    return value


def windward_drift_height(*, ground_snow_kpa: Any, fetch_m: Any, winter_wind: Any) -> Result:
    """Height of a windward drift, also at a parapet or projection; its width is not known here. ASCE 7-22, 7.7.1.

    h_wind = 0.75 times 1.5 sqrt(p_g^0.74 l_u^0.70 W_2^1.7/gamma), l_u at least 20 ft; at most sqrt(p_g l_u/(4
    gamma)).

    Parameters
    ----------
    ground_snow_kpa
        p_g [kPa]: ground snow load, strength level for the risk category, 0 to 100.
    fetch_m
        l_u [m]: length of the upwind surface, up to 600 ft.
    winter_wind
        W_2 [-]: share of the winter with wind over 10 mph, 0 to 1.

    How read: from memory, doubtful. that 7-22 keeps the 0.75 from memory, doubtful.
    """
    value: Result = call(
        "asce7_22.windward_drift_height",
        ground_snow_kpa=ground_snow_kpa,
        fetch_m=fetch_m,
        winter_wind=winter_wind,
    )[0]
    return value
