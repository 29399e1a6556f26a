# SPDX-License-Identifier: BSD-3-Clause
# Written by bindings/tools/write_rules.py from the catalogue of rules; do not edit.
"""EN 1991-1-3:2003: one function for each rule.

Every argument may be a number, an array, text with a unit or a pint quantity; arrays broadcast, words of a choice too.
The first item a rule does not cover raises `coverframe.InputError` whose ``where`` is its index ("/3"). Loads of roofs
are per horizontal area. `coverframe.rules.workings` lists how a number comes about.
"""

from __future__ import annotations

from typing import Any, NamedTuple

from .rules import Result, call

__all__ = [
    "DesignSituations",
    "Duopitch",
    "ExceptionalAbuttingDrift",
    "ExceptionalObstructionDrift",
    "ExceptionalParapetDrift",
    "ExceptionalValleyDrift",
    "MultiSpan",
    "Overhang",
    "ProjectionDrift",
    "ReturnPeriodLoad",
    "TallerWorks",
    "UnitWeight",
    "WindDrift",
    "all_valleys",
    "cylinder_coefficient",
    "cylinder_drifted_at",
    "cylinder_undrifted_at",
    "design_situations",
    "drift_coefficient_at",
    "drift_length",
    "duopitch",
    "exceptional_abutting_drift",
    "exceptional_drift_load",
    "exceptional_fall_load",
    "exceptional_ground_load",
    "exceptional_obstruction_drift",
    "exceptional_parapet_drift",
    "exceptional_valley_drift",
    "exposure_coefficient",
    "ground_load",
    "guard_force",
    "loaded_width",
    "monopitch",
    "multi_span",
    "obstruction_height",
    "overhang",
    "overhang_applies",
    "overhang_depth",
    "projection_drift",
    "raised_shape_coefficient",
    "return_period_factor",
    "return_period_load",
    "roof_load",
    "shape_coefficient",
    "sliding_drift",
    "taller_works",
    "unit_weight",
    "valley_coefficient",
    "wind_drift",
]


def all_valleys(*, ground_snow_kpa: Any, length_m: Any) -> Result:
    """Most snow in all valleys of a roof at once, per metre along them. EN 1991-1-3:2003, B.2.

    S = s_k L.

    Parameters
    ----------
    ground_snow_kpa
        s_k [kPa]: ground snow load, 0 to 100.
    length_m
        L [m]: of the roof across the valleys, up to 1000.

    How read: from memory. from memory.
    """
    value: Result = call("en1991_1_3.all_valleys", ground_snow_kpa=ground_snow_kpa, length_m=length_m)[0]
    return value


def cylinder_coefficient(*, rise_m: Any, span_m: Any) -> Result:
    """Shape coefficient of a cylinder. EN 1991-1-3:2003, 5.3.5.

    mu = 0.2 + 10 h/b, at most 2.0.

    Parameters
    ----------
    rise_m
        h [m]: rise of the crown over the eaves.
    span_m
        b [m]: span from eave to eave, up to 1000.

    How read: from memory, sure. from memory, sure; no published number was found to compare with.
    """
    value: Result = call("en1991_1_3.cylinder_coefficient", rise_m=rise_m, span_m=span_m)[0]
    return value


def cylinder_drifted_at(*, span_m: Any, loaded_width_m: Any, cylinder_coefficient: Any, distance_m: Any) -> Result:
    """Drifted snow at a place of a cylinder, heavier half on the right. EN 1991-1-3:2003, 5.3.5.

    mu(x) = peak (1 - ||x - b/2| - l_s/4|/(l_s/4)), not under 0; peak = mu/2 left and mu right of b/2.

    Parameters
    ----------
    span_m
        b [m]: span from eave to eave, up to 1000.
    loaded_width_m
        l_s [m]: width with a tangent up to 60 deg, up to b.
    cylinder_coefficient
        mu [-]: shape coefficient of the cylinder, 0.2 to 2.0.
    distance_m
        x [m]: level, from the left eave, 0 to b.

    How read: from memory, sure. from memory, sure; no published number was found to compare with.
    """
    value: Result = call(
        "en1991_1_3.cylinder_drifted_at",
        span_m=span_m,
        loaded_width_m=loaded_width_m,
        cylinder_coefficient=cylinder_coefficient,
        distance_m=distance_m,
    )[0]
    return value


def cylinder_undrifted_at(*, span_m: Any, loaded_width_m: Any, distance_m: Any) -> Result:
    """Undrifted snow at a place of a cylinder. EN 1991-1-3:2003, 5.3.5.

    mu(x) = 0.8 if |x - b/2| is no more than l_s/2, else 0.

    Parameters
    ----------
    span_m
        b [m]: span from eave to eave, up to 1000.
    loaded_width_m
        l_s [m]: width with a tangent up to 60 deg, up to b.
    distance_m
        x [m]: level, from the left eave, 0 to b.

    How read: from memory, sure. from memory, sure; no published number was found to compare with.
    """
    value: Result = call(
        "en1991_1_3.cylinder_undrifted_at",
        span_m=span_m,
        loaded_width_m=loaded_width_m,
        distance_m=distance_m,
    )[0]
    return value


class DesignSituations(NamedTuple):
    """Results of `design_situations`."""

    #: undrifted: always; persistent, Eq. 5.1.
    undrifted: Any
    #: drifted: not for a shape of Annex B in B2 and B3; persistent, Eq. 5.1.
    drifted: Any
    #: fall undrifted: B1 and B3; accidental, Eq. 5.2.
    exceptional_fall_undrifted: Any
    #: fall drifted: B1; accidental, Eq. 5.2.
    exceptional_fall_drifted: Any
    #: exceptional drift: for a shape of Annex B in B2 and B3; accidental, Eq. 5.3.
    exceptional_drift: Any


def design_situations(*, exceptional: Any, annex_b_shape: Any) -> DesignSituations:
    """Load arrangements a site asks for. EN 1991-1-3:2003, Annex A.

    undrifted = always; persistent, Eq. 5.1; drifted = not for a shape of Annex B in B2 and B3; persistent, Eq. 5.1;
    fall undrifted = B1 and B3; accidental, Eq. 5.2; fall drifted = B1; accidental, Eq. 5.2; exceptional drift = for
    a shape of Annex B in B2 and B3; accidental, Eq. 5.3.

    Parameters
    ----------
    exceptional
        case: one of "none", "falls", "drifts", "falls and drifts": exceptional snow the National Annex counts
        on: A, B1, B2, B3.
    annex_b_shape
        shape: whether Annex B gives a coefficient for the roof.

    How read: read in part. Table A.1: the four cases (Steel Buildings in Europe, Part 3, 7.2.1) and B2 (New Steel
    Construction, AD 484) on pages, the rest from memory, fairly sure.
    """
    return DesignSituations(*call("en1991_1_3.design_situations", exceptional=exceptional, annex_b_shape=annex_b_shape))


def drift_coefficient_at(*, wall_coefficient: Any, drift_length_m: Any, distance_m: Any) -> Result:
    """Shape coefficient at a distance from the wall. EN 1991-1-3:2003, 5.3.6.

    mu(x) = mu_2 + (0.8 - mu_2) x/l_s up to l_s, then 0.8.

    Parameters
    ----------
    wall_coefficient
        mu_2 [-]: at the wall, 0.8 to 25.
    drift_length_m
        l_s [m]: length of the drift, 5 to 15.
    distance_m
        x [m]: level, from the wall, 0 to 1000.

    How read: read on a page. Figure 5.7 (Steel Buildings in Europe, Part 3, Figure A.5).
    """
    value: Result = call(
        "en1991_1_3.drift_coefficient_at",
        wall_coefficient=wall_coefficient,
        drift_length_m=drift_length_m,
        distance_m=distance_m,
    )[0]
    return value


def drift_length(*, height_m: Any) -> Result:
    """Length of the drift against taller works. EN 1991-1-3:2003, 5.3.6.

    l_s = 2 h, from 5 to 15 m.

    Parameters
    ----------
    height_m
        h [m]: step down to the lower roof, up to 200.

    How read: read on a page. Eq. 5.9 (Steel Buildings in Europe, Part 3, Appendix A).
    """
    value: Result = call("en1991_1_3.drift_length", height_m=height_m)[0]
    return value


class Duopitch(NamedTuple):
    """Results of `duopitch`."""

    #: mu_1 [-]: first slope: 0.8 up to 30 deg, 0.8 (60 - slope)/30 to 60, then 0; 0.8 if sliding is prevented.
    first_coefficient: Result
    #: mu_2 [-]: second slope: 0.8 up to 30 deg, 0.8 (60 - slope)/30 to 60, then 0; 0.8 if sliding is prevented.
    second_coefficient: Result
    #: mu_1/2 [-]: 0.5 mu_1, with mu_2 on the second slope (ii).
    first_halved: Result
    #: mu_2/2 [-]: 0.5 mu_2, with mu_1 on the first slope (iii).
    second_halved: Result


def duopitch(
    *, first_slope_deg: Any, first_sliding: Any = "prevented", second_slope_deg: Any, second_sliding: Any = "prevented"
) -> Duopitch:
    """Load arrangements of a duopitch cover: (i) both, (ii) first halved, (iii) second halved. EN 1991-1-3:2003,
    5.3.3.

    mu_1 = first slope: 0.8 up to 30 deg, 0.8 (60 - slope)/30 to 60, then 0; 0.8 if sliding is prevented; mu_2 =
    second slope: 0.8 up to 30 deg, 0.8 (60 - slope)/30 to 60, then 0; 0.8 if sliding is prevented; mu_1/2 = 0.5
    mu_1, with mu_2 on the second slope (ii); mu_2/2 = 0.5 mu_2, with mu_1 on the first slope (iii).

    Parameters
    ----------
    first_slope_deg
        a_1 [deg]: first slope, 0 to 90.
    first_sliding
        sliding_1: one of "free", "prevented": whether snow may leave the first slope.
    second_slope_deg
        a_2 [deg]: second slope, 0 to 90.
    second_sliding
        sliding_2: one of "free", "prevented": whether snow may leave the second slope.

    How read: read on a page. Figure 5.3 (Steel Buildings in Europe, Part 3, Appendix A).
    """
    return Duopitch(*call(
        "en1991_1_3.duopitch",
        first_slope_deg=first_slope_deg,
        first_sliding=first_sliding,
        second_slope_deg=second_slope_deg,
        second_sliding=second_sliding,
    ))


class ExceptionalAbuttingDrift(NamedTuple):
    """Results of `exceptional_abutting_drift`."""

    #: l_s [m]: min(5 h, b_1, 15 m).
    drift_length_m: Result
    #: k [-]: 2 h/s_k.
    height_limit: Result
    #: r [-]: 2 max(b_1, b_2)/l_s.
    supply: Result
    #: mu_3 [-]: min(k, r, 8).
    level_coefficient: Result
    #: mu_1 [-]: mu_3 up to 15 deg, mu_3 (30 - a)/15 to 30, then 0.
    first_coefficient: Result
    #: mu_2 [-]: mu_3 up to 30 deg, mu_3 (60 - a)/30 to 60, then 0; safe all along the wall.
    second_coefficient: Result


def exceptional_abutting_drift(
    *, ground_snow_kpa: Any, height_m: Any, lower_width_m: Any, upper_width_m: Any, slope_deg: Any
) -> ExceptionalAbuttingDrift:
    """Exceptional drift on a lower roof against taller works. EN 1991-1-3:2003, B.3.

    l_s = min(5 h, b_1, 15 m); k = 2 h/s_k; r = 2 max(b_1, b_2)/l_s; mu_3 = min(k, r, 8); mu_1 = mu_3 up to 15 deg,
    mu_3 (30 - a)/15 to 30, then 0; mu_2 = mu_3 up to 30 deg, mu_3 (60 - a)/30 to 60, then 0; safe all along the
    wall.

    Parameters
    ----------
    ground_snow_kpa
        s_k [kPa]: ground snow load, more than 0, to 100.
    height_m
        h [m]: step down to the lower roof, up to 200.
    lower_width_m
        b_1 [m]: plan width of the lower roof, up to 1000.
    upper_width_m
        b_2 [m]: plan width of the upper roof, up to 1000.
    slope_deg
        a [deg]: of the lower roof, 0 to 90.

    How read: from memory. Figure B.2 and Table B.1, from memory; which edge has mu_1 and which mu_2 doubtful.
    """
    return ExceptionalAbuttingDrift(*call(
        "en1991_1_3.exceptional_abutting_drift",
        ground_snow_kpa=ground_snow_kpa,
        height_m=height_m,
        lower_width_m=lower_width_m,
        upper_width_m=upper_width_m,
        slope_deg=slope_deg,
    ))


def exceptional_drift_load(*, ground_snow_kpa: Any, shape_coefficient: Any) -> Result:
    """Snow load of an exceptional drift of Annex B, accidental situations. EN 1991-1-3:2003, 5.2(3).

    s = mu s_k.

    Parameters
    ----------
    ground_snow_kpa
        s_k [kPa]: ground snow load, 0 to 100.
    shape_coefficient
        mu [-]: of Annex B, 0 to 8.

    How read: read on a page. Eq. 5.3 (Steel Buildings in Europe, Single-storey steel buildings, Part 3, Appendix
    A).
    """
    value: Result = call(
        "en1991_1_3.exceptional_drift_load",
        ground_snow_kpa=ground_snow_kpa,
        shape_coefficient=shape_coefficient,
    )[0]
    return value


def exceptional_fall_load(
    *, exceptional_ground_snow_kpa: Any, shape_coefficient: Any, exposure_coefficient: Any, thermal_coefficient: Any
) -> Result:
    """Snow load on a slope after an exceptional fall, accidental situations. EN 1991-1-3:2003, 5.2(3).

    s = mu C_e C_t s_Ad.

    Parameters
    ----------
    exceptional_ground_snow_kpa
        s_Ad [kPa]: ground load of the exceptional fall, 0 to 100.
    shape_coefficient
        mu [-]: shape coefficient, 0 to 25.
    exposure_coefficient
        C_e [-]: exposure coefficient, 0.5 to 1.5.
    thermal_coefficient
        C_t [-]: thermal coefficient, 0.8 to 1.4; 1.0 for a cover.

    How read: read on a page. Eq. 5.2 (Steel Buildings in Europe, Single-storey steel buildings, Part 3, Appendix
    A).
    """
    value: Result = call(
        "en1991_1_3.exceptional_fall_load",
        exceptional_ground_snow_kpa=exceptional_ground_snow_kpa,
        shape_coefficient=shape_coefficient,
        exposure_coefficient=exposure_coefficient,
        thermal_coefficient=thermal_coefficient,
    )[0]
    return value


def exceptional_ground_load(*, ground_snow_kpa: Any, exceptional_factor: Any) -> Result:
    """Ground load of an exceptional fall. EN 1991-1-3:2003, 4.3.

    s_Ad = C_esl s_k.

    Parameters
    ----------
    ground_snow_kpa
        s_k [kPa]: ground snow load, 0 to 100.
    exceptional_factor
        C_esl [-]: coefficient for exceptional snow loads, 1 to 4; 2.0 is recommended.

    How read: read on a page. Eq. 4.1 (Steel Buildings in Europe, Single-storey steel buildings, Part 3, Appendix
    A).
    """
    value: Result = call(
        "en1991_1_3.exceptional_ground_load",
        ground_snow_kpa=ground_snow_kpa,
        exceptional_factor=exceptional_factor,
    )[0]
    return value


class ExceptionalObstructionDrift(NamedTuple):
    """Results of `exceptional_obstruction_drift`."""

    #: l_s [m]: min(5 h, b).
    drift_length_m: Result
    #: k [-]: 2 h/s_k.
    height_limit: Result
    #: mu [-]: min(k, 5).
    shape_coefficient: Result


def exceptional_obstruction_drift(*, ground_snow_kpa: Any, height_m: Any, width_m: Any) -> ExceptionalObstructionDrift:
    """Exceptional drift on one side of a local projection or obstruction. EN 1991-1-3:2003, B.4.

    l_s = min(5 h, b); k = 2 h/s_k; mu = min(k, 5).

    Parameters
    ----------
    ground_snow_kpa
        s_k [kPa]: ground snow load, more than 0, to 100.
    height_m
        h [m]: that the drift follows, up to 200.
    width_m
        b [m]: plan width of the roof on that side, up to 1000.

    How read: from memory. Figure B.3, from memory.
    """
    return ExceptionalObstructionDrift(*call(
        "en1991_1_3.exceptional_obstruction_drift",
        ground_snow_kpa=ground_snow_kpa,
        height_m=height_m,
        width_m=width_m,
    ))


class ExceptionalParapetDrift(NamedTuple):
    """Results of `exceptional_parapet_drift`."""

    #: l_s [m]: min(5 h, b_1, 15 m).
    drift_length_m: Result
    #: k [-]: 2 h/s_k.
    height_limit: Result
    #: r [-]: 2 max(b_1, b_2)/l_s.
    supply: Result
    #: mu_1 [-]: min(k, r, 8).
    shape_coefficient: Result


def exceptional_parapet_drift(
    *, ground_snow_kpa: Any, height_m: Any, width_m: Any, other_width_m: Any
) -> ExceptionalParapetDrift:
    """Exceptional drift behind a parapet. EN 1991-1-3:2003, B.4.

    l_s = min(5 h, b_1, 15 m); k = 2 h/s_k; r = 2 max(b_1, b_2)/l_s; mu_1 = min(k, r, 8).

    Parameters
    ----------
    ground_snow_kpa
        s_k [kPa]: ground snow load, more than 0, to 100.
    height_m
        h [m]: of the parapet, up to 200.
    width_m
        b_1 [m]: plan width of the roof along the drift, up to 1000.
    other_width_m
        b_2 [m]: the other plan width, up to 1000.

    How read: read on a page. Steel Buildings in Europe, Part 3, Appendix A, 3.5; the larger width by its second
    number.
    """
    return ExceptionalParapetDrift(*call(
        "en1991_1_3.exceptional_parapet_drift",
        ground_snow_kpa=ground_snow_kpa,
        height_m=height_m,
        width_m=width_m,
        other_width_m=other_width_m,
    ))


class ExceptionalValleyDrift(NamedTuple):
    """Results of `exceptional_valley_drift`."""

    #: l_s1 [m]: b_1.
    first_length_m: Result
    #: l_s2 [m]: b_2.
    second_length_m: Result
    #: k [-]: 2 h/s_k.
    height_limit: Result
    #: r [-]: 2 b_3/(l_s1 + l_s2).
    supply: Result
    #: mu [-]: min(k, r, 5).
    shape_coefficient: Result


def exceptional_valley_drift(
    *, ground_snow_kpa: Any, height_m: Any, first_width_m: Any, second_width_m: Any, swept_width_m: Any
) -> ExceptionalValleyDrift:
    """Exceptional drift in a valley. EN 1991-1-3:2003, B.2.

    l_s1 = b_1; l_s2 = b_2; k = 2 h/s_k; r = 2 b_3/(l_s1 + l_s2); mu = min(k, r, 5).

    Parameters
    ----------
    ground_snow_kpa
        s_k [kPa]: ground snow load, more than 0, to 100.
    height_m
        h [m]: from the valley up to the ridge, up to 200.
    first_width_m
        b_1 [m]: plan width of the first slope, up to 1000.
    second_width_m
        b_2 [m]: plan width of the second slope, up to 1000.
    swept_width_m
        b_3 [m]: plan width the snow is blown from, up to 3000.

    How read: from memory. Figure B.1, from memory.
    """
    return ExceptionalValleyDrift(*call(
        "en1991_1_3.exceptional_valley_drift",
        ground_snow_kpa=ground_snow_kpa,
        height_m=height_m,
        first_width_m=first_width_m,
        second_width_m=second_width_m,
        swept_width_m=swept_width_m,
    ))


def exposure_coefficient(*, topography: Any) -> Result:
    """Exposure coefficient. EN 1991-1-3:2003, 5.2(7).

    C_e = 0.8 windswept, 1.0 normal, 1.2 sheltered.

    Parameters
    ----------
    topography
        topography: one of "windswept", "normal", "sheltered": lie of the land.

    How read: read in part. Table 5.1: the three classes on a page, the values from memory, sure.
    """
    value: Result = call("en1991_1_3.exposure_coefficient", topography=topography)[0]
    return value


def ground_load(*, region: Any, zone: Any, altitude_m: Any) -> Result:
    """Characteristic ground snow load by climatic region, zone and altitude. EN 1991-1-3:2003, Annex C, Table C.1.

    s_k = alpine (0.642 Z + 0.009)[1 + (A/728)^2]; central east (0.264 Z - 0.002)[1 + (A/256)^2]; greece (0.420 Z -
    0.030)[1 + (A/917)^2]; iberian peninsula (0.190 Z - 0.095)[1 + (A/524)^2]; mediterranean (0.498 Z - 0.209)[1 +
    (A/452)^2]; central west 0.164 Z - 0.082 + A/966; sweden finland 0.790 Z + 0.375 + A/336; uk ireland 0.140 Z -
    0.1 + A/501.

    Parameters
    ----------
    region
        region: one of "alpine", "central east", "central west", "greece", "iberian peninsula", "mediterranean",
        "sweden finland", "uk ireland", "norway", "iceland": climatic region; a National Annex comes before it.
    zone
        Z [-]: number on the map of the region.
    altitude_m
        A [m]: above sea level, 0 to 1500.

    How read: from memory, sure. Table C.1; the alpine row agrees with eight altitudes printed for Austria.
    """
    value: Result = call("en1991_1_3.ground_load", region=region, zone=zone, altitude_m=altitude_m)[0]
    return value


def guard_force(*, roof_load_kpa: Any, distance_m: Any, slope_deg: Any) -> Result:
    """Force of sliding snow on a guard, along the slope. EN 1991-1-3:2003, 6.4.

    F_s = s b sin(a).

    Parameters
    ----------
    roof_load_kpa
        s [kPa]: heaviest undrifted load above the guard, 0 to 200.
    distance_m
        b [m]: in plan, to the next guard above or the ridge, 0 to 1000.
    slope_deg
        a [deg]: slope of the cover, 0 to 90.

    How read: read on a page. Eq. 6.5 (University of Siegen lecture script on DIN 1055-5:2005, p. 58).
    """
    value: Result = call(
        "en1991_1_3.guard_force",
        roof_load_kpa=roof_load_kpa,
        distance_m=distance_m,
        slope_deg=slope_deg,
    )[0]
    return value


def loaded_width(*, rise_m: Any, span_m: Any) -> Result:
    """Loaded width of a circular arc. EN 1991-1-3:2003, 5.3.5.

    l_s = b up to h/b = tan(30 deg)/2, then sin(60 deg) (b^2/4 + h^2)/h.

    Parameters
    ----------
    rise_m
        h [m]: rise of the crown over the eaves, up to b/2.
    span_m
        b [m]: span from eave to eave, up to 1000.

    How read: derived here. geometry; that snow stays up to 60 deg from memory, sure.
    """
    value: Result = call("en1991_1_3.loaded_width", rise_m=rise_m, span_m=span_m)[0]
    return value


def monopitch(*, slope_deg: Any, sliding: Any = "prevented") -> Result:
    """Load arrangement of a monopitch cover, drifted or not. EN 1991-1-3:2003, 5.3.2.

    mu = 0.8 up to 30 deg, 0.8 (60 - slope)/30 to 60, then 0; 0.8 if sliding is prevented.

    Parameters
    ----------
    slope_deg
        slope [deg]: of the cover, 0 to 90.
    sliding
        sliding: one of "free", "prevented": whether snow may leave.

    How read: from memory, sure. Figure 5.2, from memory, sure.
    """
    value: Result = call("en1991_1_3.monopitch", slope_deg=slope_deg, sliding=sliding)[0]
    return value


class MultiSpan(NamedTuple):
    """Results of `multi_span`."""

    #: mu_1 [-]: first slope: 0.8 up to 30 deg, 0.8 (60 - slope)/30 to 60, then 0; 0.8 if sliding is prevented.
    first_coefficient: Result
    #: mu_2 [-]: second slope: 0.8 up to 30 deg, 0.8 (60 - slope)/30 to 60, then 0; 0.8 if sliding is prevented.
    second_coefficient: Result
    #: a [deg]: (a_1 + a_2)/2.
    mean_slope_deg: Result
    #: mu_v [-]: 0.8 + 0.8 a/30 up to 30 deg, 1.6 to 60.
    valley_coefficient: Result


def multi_span(
    *, first_slope_deg: Any, first_sliding: Any = "prevented", second_slope_deg: Any, second_sliding: Any = "prevented"
) -> MultiSpan:
    """Load arrangements of a valley: (i) mu_1 and mu_2 all over, (ii) from these at the ridges to mu_v. EN
    1991-1-3:2003, 5.3.4.

    mu_1 = first slope: 0.8 up to 30 deg, 0.8 (60 - slope)/30 to 60, then 0; 0.8 if sliding is prevented; mu_2 =
    second slope: 0.8 up to 30 deg, 0.8 (60 - slope)/30 to 60, then 0; 0.8 if sliding is prevented; a = (a_1 +
    a_2)/2; mu_v = 0.8 + 0.8 a/30 up to 30 deg, 1.6 to 60.

    Parameters
    ----------
    first_slope_deg
        a_1 [deg]: first slope, 0 to 60.
    first_sliding
        sliding_1: one of "free", "prevented": whether snow may leave the first slope.
    second_slope_deg
        a_2 [deg]: second slope, 0 to 60.
    second_sliding
        sliding_2: one of "free", "prevented": whether snow may leave the second slope.

    How read: read on a page. Figure 5.4 (Steel Buildings in Europe, Part 3, Figure 7.3).
    """
    return MultiSpan(*call(
        "en1991_1_3.multi_span",
        first_slope_deg=first_slope_deg,
        first_sliding=first_sliding,
        second_slope_deg=second_slope_deg,
        second_sliding=second_sliding,
    ))


def obstruction_height(*, obstruction_height_m: Any, obstruction_width_m: Any) -> Result:
    """Height of an obstruction that its drift follows. EN 1991-1-3:2003, B.4.

    h_d = h up to 1 m, min(h, w) above.

    Parameters
    ----------
    obstruction_height_m
        h [m]: height of the obstruction, up to 200.
    obstruction_width_m
        w [m]: across the wind; up to 2 if h is over 1.

    How read: from memory. from memory.
    """
    value: Result = call(
        "en1991_1_3.obstruction_height",
        obstruction_height_m=obstruction_height_m,
        obstruction_width_m=obstruction_width_m,
    )[0]
    return value


class Overhang(NamedTuple):
    """Results of `overhang`."""

    #: k [-]: min(3/d, gamma d), gamma = 3.
    irregularity: Result
    #: s_e [kN/m]: k s^2/gamma.
    edge_load_kn_per_m: Result


def overhang(*, roof_load_kpa: Any, depth_m: Any) -> Overhang:
    """Line load of snow that overhangs the edge. EN 1991-1-3:2003, 6.3.

    k = min(3/d, gamma d), gamma = 3; s_e = k s^2/gamma.

    Parameters
    ----------
    roof_load_kpa
        s [kPa]: heaviest undrifted load of the roof, 0 to 200.
    depth_m
        d [m]: depth of the snow layer, 0 to 100.

    How read: from memory, sure. Eq. 6.4, from memory, sure.
    """
    return Overhang(*call("en1991_1_3.overhang", roof_load_kpa=roof_load_kpa, depth_m=depth_m))


def overhang_applies(*, altitude_m: Any) -> Any:
    """Whether snow that overhangs the edge has to be looked at. EN 1991-1-3:2003, 6.3.

    applies = A over 800 m.

    Parameters
    ----------
    altitude_m
        A [m]: above sea level, -500 to 1500.

    How read: from memory, sure. recommended altitude, from memory, sure.
    """
    value: Any = call("en1991_1_3.overhang_applies", altitude_m=altitude_m)[0]
    return value


def overhang_depth(*, roof_load_kpa: Any) -> Result:
    """Depth of the snow layer where nobody has measured it. EN 1991-1-3:2003, 6.3.

    d = s/gamma, gamma = 3 kN/m3.

    Parameters
    ----------
    roof_load_kpa
        s [kPa]: heaviest undrifted load of the roof, 0 to 200.

    How read: from memory. from memory.
    """
    value: Result = call("en1991_1_3.overhang_depth", roof_load_kpa=roof_load_kpa)[0]
    return value


class ProjectionDrift(NamedTuple):
    """Results of `projection_drift`."""

    #: l_s [m]: 2 h, from 5 to 15 m.
    drift_length_m: Result
    #: k [-]: gamma h/s_k, gamma = 2 kN/m3.
    height_limit: Result
    #: mu_2 [-]: k, from 0.8 to 2.0; 0.8 from l_s on.
    shape_coefficient: Result


def projection_drift(*, height_m: Any, ground_snow_kpa: Any) -> ProjectionDrift:
    """Drift at what stands up through the cover. EN 1991-1-3:2003, 6.2.

    l_s = 2 h, from 5 to 15 m; k = gamma h/s_k, gamma = 2 kN/m3; mu_2 = k, from 0.8 to 2.0; 0.8 from l_s on.

    Parameters
    ----------
    height_m
        h [m]: over the cover, up to 200.
    ground_snow_kpa
        s_k [kPa]: ground snow load, more than 0, to 100.

    How read: from memory, sure. from memory, sure.
    """
    return ProjectionDrift(*call("en1991_1_3.projection_drift", height_m=height_m, ground_snow_kpa=ground_snow_kpa))


def raised_shape_coefficient(*, slope_deg: Any, sliding: Any = "prevented", level_coefficient: Any) -> Result:
    """Shape coefficient of a plane slope where the National Annex raises that of a level roof. EN 1991-1-3:2003,
    5.3.3.

    mu = mu(0) up to 30 deg, mu(0) (60 - slope)/30 to 60, then 0; mu(0) if sliding is prevented.

    Parameters
    ----------
    slope_deg
        slope [deg]: of the cover, 0 to 90.
    sliding
        sliding: one of "free", "prevented": whether snow may leave.
    level_coefficient
        mu(0) [-]: coefficient of a level roof, 0.8 to 1.25.

    How read: from memory. amendment A1:2015, from memory.
    """
    value: Result = call(
        "en1991_1_3.raised_shape_coefficient",
        slope_deg=slope_deg,
        sliding=sliding,
        level_coefficient=level_coefficient,
    )[0]
    return value


def return_period_factor(*, return_period_years: Any, variation: Any) -> Result:
    """Factor from the 50-year ground load to that of another return period. EN 1991-1-3:2003, Annex D, Eq. D.1.

    s_n/s_k = {1 - V (sqrt(6)/pi) [ln(-ln(1 - P_n)) + 0.57722]} / (1 + 2.5923 V), P_n = 1/n.

    Parameters
    ----------
    return_period_years
        n [-]: return period, 5 to 10000.
    variation
        V [-]: coefficient of variation of the annual maxima, 0 to 2; 0.2 to 0.6 in Figure D.1.

    How read: from memory, sure. Eq. D.1; about 0.70 for 10 years on a page (Ingenio, on the Italian Circolare 2019,
    C3.4.1).
    """
    value: Result = call(
        "en1991_1_3.return_period_factor",
        return_period_years=return_period_years,
        variation=variation,
    )[0]
    return value


class ReturnPeriodLoad(NamedTuple):
    """Results of `return_period_load`."""

    #: s_n/s_k [-]: {1 - V (sqrt(6)/pi) [ln(-ln(1 - P_n)) + 0.57722]} / (1 + 2.5923 V), P_n = 1/n.
    return_period_factor: Result
    #: s_n [kPa]: (s_n/s_k) s_k.
    ground_snow_kpa: Result


def return_period_load(*, ground_snow_kpa: Any, return_period_years: Any, variation: Any) -> ReturnPeriodLoad:
    """Ground snow load of another return period than 50 years. EN 1991-1-3:2003, Annex D, Eq. D.1.

    s_n/s_k = {1 - V (sqrt(6)/pi) [ln(-ln(1 - P_n)) + 0.57722]} / (1 + 2.5923 V), P_n = 1/n; s_n = (s_n/s_k) s_k.

    Parameters
    ----------
    ground_snow_kpa
        s_k [kPa]: ground snow load of 50 years, 0 to 100.
    return_period_years
        n [-]: return period, 5 to 10000.
    variation
        V [-]: coefficient of variation of the annual maxima, 0 to 2; 0.2 to 0.6 in Figure D.1.

    How read: from memory, sure. Eq. D.1; about 0.70 for 10 years on a page (Ingenio, on the Italian Circolare 2019,
    C3.4.1).
    """
    return ReturnPeriodLoad(*call(
        "en1991_1_3.return_period_load",
        ground_snow_kpa=ground_snow_kpa,
        return_period_years=return_period_years,
        variation=variation,
    ))


def roof_load(
    *, ground_snow_kpa: Any, shape_coefficient: Any, exposure_coefficient: Any, thermal_coefficient: Any
) -> Result:
    """Snow load on a slope, persistent and transient situations. EN 1991-1-3:2003, 5.2(3).

    s = mu C_e C_t s_k.

    Parameters
    ----------
    ground_snow_kpa
        s_k [kPa]: ground snow load, 0 to 100.
    shape_coefficient
        mu [-]: shape coefficient, 0 to 25.
    exposure_coefficient
        C_e [-]: exposure coefficient, 0.5 to 1.5.
    thermal_coefficient
        C_t [-]: thermal coefficient, 0.8 to 1.4; 1.0 for a cover.

    How read: read on a page. Eq. 5.1 (Steel Buildings in Europe, Single-storey steel buildings, Part 3, Appendix
    A).
    """
    value: Result = call(
        "en1991_1_3.roof_load",
        ground_snow_kpa=ground_snow_kpa,
        shape_coefficient=shape_coefficient,
        exposure_coefficient=exposure_coefficient,
        thermal_coefficient=thermal_coefficient,
    )[0]
    return value


def shape_coefficient(*, slope_deg: Any, sliding: Any = "prevented") -> Result:
    """Shape coefficient of a plane slope. EN 1991-1-3:2003, 5.3.3.

    mu_1 = 0.8 up to 30 deg, 0.8 (60 - slope)/30 to 60, then 0; 0.8 if sliding is prevented.

    Parameters
    ----------
    slope_deg
        slope [deg]: of the cover, 0 to 90.
    sliding
        sliding: one of "free", "prevented": whether snow may leave.

    How read: read in part. Table 5.2: the line on a page (University of Zagreb course notes), the floor from
    memory, sure.
    """
    value: Result = call("en1991_1_3.shape_coefficient", slope_deg=slope_deg, sliding=sliding)[0]
    return value


def sliding_drift(
    *, upper_slope_deg: Any, upper_slope_width_m: Any, drift_length_m: Any, upper_shape_coefficient: Any
) -> Result:
    """Shape coefficient of snow that slides from the upper roof. EN 1991-1-3:2003, 5.3.6.

    mu_s = 0 up to 15 deg, mu b_1s/l_s above.

    Parameters
    ----------
    upper_slope_deg
        a [deg]: upper slope that falls towards the lower roof, 0 to 90.
    upper_slope_width_m
        b_1s [m]: plan width of that slope, 0 to 100.
    drift_length_m
        l_s [m]: length of the drift, 5 to 15.
    upper_shape_coefficient
        mu [-]: of that slope, 0 to 1; 0.8 is the safe choice.

    How read: read on a page. half the load of the adjacent slope (Steel Buildings in Europe, Part 3, 7.2.2), the
    form with 0.8 (psds.cz, on change Z2 of the Czech edition).
    """
    value: Result = call(
        "en1991_1_3.sliding_drift",
        upper_slope_deg=upper_slope_deg,
        upper_slope_width_m=upper_slope_width_m,
        drift_length_m=drift_length_m,
        upper_shape_coefficient=upper_shape_coefficient,
    )[0]
    return value


class TallerWorks(NamedTuple):
    """Results of `taller_works`."""

    #: l_s [m]: 2 h, from 5 to 15 m.
    drift_length_m: Result
    #: mu_s [-]: 0 up to 15 deg, mu b_1s/l_s above.
    sliding_coefficient: Result
    #: r [-]: (b_1 + b_2)/(2 h).
    supply: Result
    #: k [-]: gamma h/s_k, gamma = 2 kN/m3.
    height_limit: Result
    #: mu_w [-]: min(r, k, 4), but at least 0.8.
    wind_coefficient: Result
    #: mu_2 [-]: mu_s + mu_w.
    wall_coefficient: Result
    #: mu_end [-]: mu_2 + (0.8 - mu_2) b_2/l_s if b_2 is less than l_s, else 0.8.
    end_coefficient: Result


def taller_works(
    *,
    ground_snow_kpa: Any,
    upper_width_m: Any,
    lower_width_m: Any,
    height_m: Any,
    upper_slope_deg: Any,
    upper_slope_width_m: Any,
    upper_shape_coefficient: Any,
) -> TallerWorks:
    """Drift on a lower roof against taller works. EN 1991-1-3:2003, 5.3.6.

    l_s = 2 h, from 5 to 15 m; mu_s = 0 up to 15 deg, mu b_1s/l_s above; r = (b_1 + b_2)/(2 h); k = gamma h/s_k,
    gamma = 2 kN/m3; mu_w = min(r, k, 4), but at least 0.8; mu_2 = mu_s + mu_w; mu_end = mu_2 + (0.8 - mu_2) b_2/l_s
    if b_2 is less than l_s, else 0.8.

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
    upper_shape_coefficient
        mu [-]: of that slope, 0 to 1; 0.8 is the safe choice.

    How read: read on a page. Eq. 5.7 to 5.9 (Steel Buildings in Europe, Part 3, Appendix A); mu_s: half the load of
    the adjacent slope (Steel Buildings in Europe, Part 3, 7.2.2), the form with 0.8 (psds.cz, on change Z2 of the
    Czech edition).
    """
    return TallerWorks(*call(
        "en1991_1_3.taller_works",
        ground_snow_kpa=ground_snow_kpa,
        upper_width_m=upper_width_m,
        lower_width_m=lower_width_m,
        height_m=height_m,
        upper_slope_deg=upper_slope_deg,
        upper_slope_width_m=upper_slope_width_m,
        upper_shape_coefficient=upper_shape_coefficient,
    ))


class UnitWeight(NamedTuple):
    """Results of `unit_weight`."""

    #: gamma_low [kN/m3]: 1.0 fresh, 2.0 settled, 2.5 old, 4.0 wet.
    unit_weight_low_kn_per_m3: Result
    #: gamma_high [kN/m3]: 1.0 fresh, 2.0 settled, 3.5 old, 4.0 wet.
    unit_weight_high_kn_per_m3: Result


def unit_weight(*, snow_state: Any = "wet") -> UnitWeight:
    """Mean unit weight of snow by its state, lower and upper value. EN 1991-1-3:2003, Annex E, Table E.1.

    gamma_low = 1.0 fresh, 2.0 settled, 2.5 old, 4.0 wet; gamma_high = 1.0 fresh, 2.0 settled, 3.5 old, 4.0 wet.

    Parameters
    ----------
    snow_state
        state: one of "fresh", "settled", "old", "wet": of the snow on the cover.

    How read: read on a page. Table E.1 (building inspectorate of Skierniewice).
    """
    return UnitWeight(*call("en1991_1_3.unit_weight", snow_state=snow_state))


def valley_coefficient(*, mean_slope_deg: Any) -> Result:
    """Shape coefficient at the bottom of a valley. EN 1991-1-3:2003, 5.3.4.

    mu = 0.8 + 0.8 a/30 up to 30 deg, 1.6 to 60.

    Parameters
    ----------
    mean_slope_deg
        a [deg]: mean of the two slopes that meet, 0 to 60.

    How read: read on a page. Table 5.2 (Istruzioni per l'applicazione delle Norme tecniche, 2008, Table C3.4.I;
    University of Zagreb course notes).
    """
    value: Result = call("en1991_1_3.valley_coefficient", mean_slope_deg=mean_slope_deg)[0]
    return value


class WindDrift(NamedTuple):
    """Results of `wind_drift`."""

    #: r [-]: (b_1 + b_2)/(2 h).
    supply: Result
    #: k [-]: gamma h/s_k, gamma = 2 kN/m3.
    height_limit: Result
    #: mu_w [-]: min(r, k, 4), but at least 0.8.
    wind_coefficient: Result


def wind_drift(*, upper_width_m: Any, lower_width_m: Any, height_m: Any, ground_snow_kpa: Any) -> WindDrift:
    """Shape coefficient of wind drift against taller works. EN 1991-1-3:2003, 5.3.6.

    r = (b_1 + b_2)/(2 h); k = gamma h/s_k, gamma = 2 kN/m3; mu_w = min(r, k, 4), but at least 0.8.

    Parameters
    ----------
    upper_width_m
        b_1 [m]: plan width of the upper roof, up to 1000.
    lower_width_m
        b_2 [m]: plan width of the lower roof, up to 1000.
    height_m
        h [m]: step down to the lower roof, up to 200.
    ground_snow_kpa
        s_k [kPa]: ground snow load, more than 0, to 100.

    How read: read on a page. Eq. 5.8 (Steel Buildings in Europe, Part 3, Appendix A).
    """
    return WindDrift(*call(
        "en1991_1_3.wind_drift",
        upper_width_m=upper_width_m,
        lower_width_m=lower_width_m,
        height_m=height_m,
        ground_snow_kpa=ground_snow_kpa,
    ))
