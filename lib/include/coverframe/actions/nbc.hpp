// SPDX-License-Identifier: BSD-3-Clause
// National Building Code of Canada, Division B, 4.1.6: what 2015 and 2020 share, which is all that is known here of
// snow on a cover. Each edition is a namespace of its own (nbc2015, nbc2020) that brings these rules in and holds the
// clauses under its own name. 2020 was not read apart from 2015: that the two agree is from memory.
//
// A ground load of this code is the 1-in-50 snow S_s with the rain S_r that goes with it, both characteristic: the
// factor 1.5 on snow is still to come. Every load is per horizontal area.
//
// There is no thermal factor: an unheated cover gets no increase. The small factors of Part 9 (9.4.2.2: 0.45 and 0.55)
// are for light wood framing and not for covers.
//
// Left out because it is not known here: arches (4.1.6.10), corners of steps (4.1.6.8), valleys, domes; how
// far sliding snow reaches (4.1.6.11); whether the part of a drift that lies over a gap may be left out (4.1.6.6: it is
// kept). The editions of 2005 and 2010 are not covered. Rain alone (4.1.6.4) is not snow.
//
// How each rule was read stands beside it. Whoever claims conformity compares them with a licensed copy first.
#pragma once

#include <array>

#include "coverframe/actions/argument.hpp"
#include "coverframe/base/finding.hpp"

namespace coverframe::nbc {

/// Table 4.1.2.1, by what depends on the structure.
enum class Importance { low, normal, high, post_disaster };

[[nodiscard]] constexpr std::array<const char*, 4> choices_of(Importance) {
    return {"low", "normal", "high", "post-disaster"};
}

/// What is looked at: strength (ULS) or sag, clearance and the like (SLS).
enum class LimitState { ultimate, serviceability };

[[nodiscard]] constexpr std::array<const char*, 2> choices_of(LimitState) { return {"ultimate", "serviceability"}; }

/// What 4.1.6.2.(5) and (6) make of the surface.
enum class Surface {
    unobstructed_slippery,  ///< smooth, nothing holds the snow, and it can leave the roof completely
    other,                  ///< everything else
};

[[nodiscard]] constexpr std::array<const char*, 2> choices_of(Surface) { return {"slippery", "other"}; }

/// Why the accumulation factor C_a differs from 1, as far as the slope factor asks.
enum class Accumulation {
    none,      ///< C_a = 1
    gable,     ///< 4.1.6.9: C_s and C_a multiply
    gathered,  ///< a step, a higher neighbour, a projection, a valley, sliding snow
};

[[nodiscard]] constexpr std::array<const char*, 3> choices_of(Accumulation) { return {"none", "gable", "gathered"}; }

/// Where the wind may have taken snow off.
enum class WindSite { other, rural, north_of_tree_line };

[[nodiscard]] constexpr std::array<const char*, 3> choices_of(WindSite) {
    return {"other", "rural", "north of tree line"};
}

namespace limit {
inline constexpr double ground_high = 100.0;                           ///< S_s and S_r [kPa], beyond any site
inline constexpr double basic_low = 0.8, basic_high = 2.0;             ///< C_b [-]
inline constexpr double wind_low = 0.5, wind_high = 1.0;               ///< C_w [-]
inline constexpr double importance_low = 0.8, importance_high = 1.25;  ///< I_s [-]
inline constexpr double weight_low = 1.0, weight_high = 10.0;          ///< gamma [kN/m3]
}  // namespace limit

/// Importance factor on snow.
/// I_s = 0.8, 1.0, 1.15, 1.25 (ULS: low, normal, high, post-disaster); 0.9 (SLS)
/// \return I_s [-]
/// Limits: none.
/// Source: NBC, Table 4.1.6.2.-A; from memory, sure.
/// \throws InputError nbc.importance.unknown
[[nodiscard]] constexpr double importance_factor_4_1_6_2(Importance importance, LimitState state) {
    if (state == LimitState::serviceability) return 0.9;
    switch (importance) {
        case Importance::low: return 0.8;
        case Importance::normal: return 1.0;
        case Importance::high: return 1.15;
        case Importance::post_disaster: return 1.25;
    }
    argument::refuse({"nbc.importance.unknown", "importance number", "-"}, static_cast<double>(importance), 0, 3);
}

/// Characteristic length of a roof.
/// l_c = 2 w - w^2/l
/// \param width   w, smaller plan size [m], over 0
/// \param length  l, larger plan size [m], not under w
/// \return l_c [m]
/// Limits: none.
/// Source: NBC, 4.1.6.2.(2); read on a page (Ontario code 4.1.6.2, codeindex.ca).
/// \throws InputError nbc.width.range, nbc.length.range
[[nodiscard]] Length characteristic_length_4_1_6_2(Length width, Length length);

/// Basic roof snow load factor.
/// C_b = 0.8 for l_c <= 70/C_w^2, else (1/C_w) {1 - (1 - 0.8 C_w) exp[-(l_c C_w^2 - 70)/100]}
/// \param characteristic_length  l_c [m], from 0
/// \param wind                   C_w [-], 0.5 to 1.0
/// \return C_b [-], 0.8 to 1/C_w; 0.8 for every boat
/// Limits: none. The page prints "<=" before both lines; the second must be ">".
/// Source: NBC, 4.1.6.2.(2); read on a page (Ontario code 4.1.6.2, codeindex.ca).
/// \throws InputError nbc.characteristic_length.range, nbc.wind.range
[[nodiscard]] double basic_factor_4_1_6_2(Length characteristic_length, double wind);

/// What lets C_w be lowered. All of it has to be claimed.
struct WindExposure {
    WindSite site = WindSite::other;
    bool open_on_all_sides = false;  ///< open terrain all round, and to stay so for the life of the structure
    bool unobstructed = false;       ///< nothing on the roof nearer than `obstruction_distance_4_1_6_2`
    bool accumulation = true;        ///< the load is one that gathers (drift); false has to be claimed as well
};

/// Wind exposure factor.
/// C_w = 1.0; 0.75 rural, 0.5 north of the tree line, if every condition of `WindExposure` holds
/// \return C_w [-]
/// Limits: lowered for low and normal importance only. A boat in a yard among boats is not open on all sides.
/// Source: NBC, 4.1.6.2.(3) and (4); read on a page in part (Ontario code 4.1.6.2, codeindex.ca); the last condition
/// from memory, sure.
/// \throws InputError nbc.site.unknown
[[nodiscard]] constexpr double wind_factor_4_1_6_2(Importance importance, const WindExposure& exposure) {
    const bool may_be_lowered = importance == Importance::low || importance == Importance::normal;
    if (!may_be_lowered || !exposure.open_on_all_sides || !exposure.unobstructed || exposure.accumulation) return 1.0;
    switch (exposure.site) {
        case WindSite::other: return 1.0;
        case WindSite::rural: return 0.75;
        case WindSite::north_of_tree_line: return 0.5;
    }
    argument::refuse({"nbc.site.unknown", "site number", "-"}, static_cast<double>(exposure.site), 0, 2);
}

/// How near an obstruction on the roof may stand without spoiling C_w.
/// a = 10 (h_o - C_b C_w S_s/gamma), 0 where the snow buries it
/// \param height       h_o, obstruction above the roof [m], from 0
/// \param ground_snow  S_s [Pa], 0 to 100 kPa
/// \param unit_weight  gamma [N/m3], 1 to 10 kN/m3
/// \param basic        C_b [-], 0.8 to 2.0
/// \param wind         C_w [-], the lowered one, 0.5 to 1.0
/// \return a, smallest distance [m]
/// Limits: none.
/// Source: NBC, 4.1.6.2.(4); read on a page (Ontario code 4.1.6.2, codeindex.ca).
/// \throws InputError nbc.obstruction.range, nbc.ground_snow.range, nbc.unit_weight.range, nbc.basic.range,
///   nbc.wind.range
[[nodiscard]] Length obstruction_distance_4_1_6_2(Length height, Pressure ground_snow, UnitWeight unit_weight,
                                                  double basic, double wind);

/// Slope factor.
/// C_s = 1 to 30 deg, (70 - slope)/40 to 70, then 0; slippery: 1 to 15 deg, (60 - slope)/45 to 60, then 0;
/// 1 where snow gathers
/// \param slope  [rad], 0 to pi/2
/// \return C_s [-], 0 to 1
/// Limits: the clause names two kinds of accumulation by letter, read as step and sliding; projections and valleys are
/// put with them, on the safe side. With the gable case the two factors multiply (a practising engineer's reading).
/// Source: NBC, 4.1.6.2.(5) to (7); read on a page (course notes ARC1046; the gable: eng-tips.com, thread 370069).
/// \throws InputError nbc.slope.range
[[nodiscard]] constexpr double slope_factor_4_1_6_2(Angle slope, Surface surface, Accumulation accumulation) {
    argument::slope_in_deg(slope, "nbc.slope.range");
    const bool slippery = surface == Surface::unobstructed_slippery;
    const Angle full = from_deg(slippery ? 15.0 : 30.0);
    const Angle none = from_deg(slippery ? 60.0 : 70.0);
    if (accumulation == Accumulation::gathered || slope <= full) return 1.0;
    if (slope >= none) return 0.0;
    return (none - slope) / (none - full);
}

/// Factors between ground and roof.
struct RoofFactors {
    double basic = 0.8;         ///< C_b [-], 0.8 to 2.0
    double wind = 1.0;          ///< C_w [-], 0.5 to 1.0
    double slope = 1.0;         ///< C_s [-], 0 to 1
    double accumulation = 1.0;  ///< C_a [-], from 0
};

/// A specified load and its parts.
struct SpecifiedLoad {
    Pressure snow{};  ///< S_s C_b C_w C_s C_a [Pa]
    Pressure rain{};  ///< S_r, not more than `snow` [Pa]
    Pressure load{};  ///< S [Pa]
};

/// Specified load of snow and the rain in it.
/// S = I_s [S_s (C_b C_w C_s C_a) + S_r],  S_r <= S_s (C_b C_w C_s C_a)
/// \param ground_snow  S_s, 1-in-50 [Pa], 0 to 100 kPa
/// \param rain         S_r, 1-in-50 rain that goes with it [Pa], 0 to 100 kPa
/// \param importance   I_s [-], 0.8 to 1.25
/// \return S with its parts, per horizontal area [Pa]
/// Limits: none.
/// Source: NBC, 4.1.6.2.(1); read on a page (Ontario code 4.1.6.2, codeindex.ca; NBC Part 4, guides.co).
/// \throws InputError nbc.ground_snow.range, nbc.rain.range, nbc.importance.range, nbc.basic.range, nbc.wind.range,
///   nbc.slope_factor.range, nbc.accumulation.range
[[nodiscard]] SpecifiedLoad specified_load_4_1_6_2(Pressure ground_snow, Pressure rain, double importance,
                                                   const RoofFactors& factors);

/// Load on the rest while one part carries the full load (C_a = 1), worst placing of the parts.
/// Source: NBC, 4.1.6.3.(2); read on a page (Ontario code 4.1.6.3, buildingcode.online).
inline constexpr double partial_share_4_1_6_3 = 0.5;

/// Whether partial loading has to be looked at besides the full load, which always has to be.
/// slope <= 15 deg
/// \param slope  [rad], 0 to pi/2
/// Limits: flat, shed and gable roofs; arches have it at every slope.
/// Source: NBC, 4.1.6.3.(2); read on a page (Ontario code 4.1.6.3, buildingcode.online).
/// \throws InputError nbc.slope.range
[[nodiscard]] constexpr bool partial_applies_4_1_6_3(Angle slope) {
    argument::slope_in_deg(slope, "nbc.slope.range");
    return slope <= from_deg(15.0);
}

/// Whether the unbalanced case of a gable has to be looked at.
/// slope > 15 deg
/// \param slope  [rad], 0 to pi/2
/// Limits: no upper limit but C_s = 0.
/// Source: NBC, 4.1.6.9; from memory, sure (2005 and 2010: Commentary G).
/// \throws InputError nbc.slope.range
[[nodiscard]] constexpr bool unbalanced_applies_4_1_6_9(Angle slope) {
    argument::slope_in_deg(slope, "nbc.slope.range");
    return slope > from_deg(15.0);
}

/// C_a of the upwind side in the unbalanced case of a gable.   Source: NBC, 4.1.6.9; from memory, sure.
inline constexpr double upwind_accumulation_4_1_6_9 = 0.0;

/// Accumulation factor of the downwind side in the unbalanced case of a gable.
/// C_a = 0.25 + slope/20 from 15 to 20 deg, 1.25 from there
/// \param slope  of the downwind side [rad], 15 to 90 deg
/// \return C_a [-], 1.0 to 1.25
/// Limits: as `unbalanced_applies_4_1_6_9`; 15 degrees itself is answered, with the 1.0 the ramp begins with.
/// Source: NBC, 4.1.6.9; the 1.25 read on a page (eng-tips.com, thread 370069), the ramp from memory, sure.
/// \throws InputError nbc.unbalanced.slope
[[nodiscard]] constexpr double downwind_accumulation_4_1_6_9(Angle slope) {
    constexpr Angle begin = from_deg(15.0);
    constexpr Angle end = from_deg(20.0);
    if (!(slope >= begin && in_rad(slope) <= argument::right_angle)) {
        argument::refuse({"nbc.unbalanced.slope", "slope of an unbalanced gable", "deg"}, in_deg(slope), 15.0, 90.0);
    }
    return slope >= end ? 1.25 : 1.0 + 0.25 * ((slope - begin) / (end - begin));
}

/// Unit weight of drifted snow.
/// gamma = 0.43 S_s + 2.2 <= 4.0 kN/m3
/// \param ground_snow  S_s [Pa], 0 to 100 kPa
/// \return gamma [N/m3]
/// Limits: for drifts, not for snow found on a cover.
/// Source: NBC 2015, 4.1.6.13; from memory. That 2015 brought a method in was read (Commentary G, list of changes).
/// \throws InputError nbc.ground_snow.range
[[nodiscard]] constexpr UnitWeight unit_weight_4_1_6_13(Pressure ground_snow) {
    const double S_s = argument::within(in_kPa(ground_snow), 0.0, limit::ground_high,
                                        {"nbc.ground_snow.range", "ground snow load S_s", "kPa"});
    const double gamma = 0.43 * S_s + 2.2;
    return from_kN_per_m3(gamma < 4.0 ? gamma : 4.0);
}

/// Where the snow of a step drift comes from. All are to be looked at.
enum class StepCase {
    I,    ///< from the upper roof
    II,   ///< from the lower roof, blown against the step
    III,  ///< from the lower roof, from another side
};

[[nodiscard]] constexpr std::array<const char*, 3> choices_of(StepCase) { return {"I", "II", "III"}; }

/// A step and what blows over it.
struct Step {
    Pressure ground_snow{};    ///< S_s [Pa], over 0 to 100 kPa
    UnitWeight unit_weight{};  ///< gamma [N/m3], 1 to 10 kN/m3
    Length height{};           ///< h, from the lower roof to the top of the upper parapet [m], from 0
    double basic = 0.8;        ///< C_b of the lower roof [-], 0.8 to 2.0
    StepCase source = StepCase::I;
    Length source_length{};    ///< l_cs, characteristic length of the roof the snow comes from [m], from 0
    Length parapet{};          ///< h_p, parapet of that roof [m], from 0
    double source_wind = 1.0;  ///< C_ws of that roof [-], 0.5 to 1.0
};

/// A drift that falls off straight.
struct Drift {
    double peak = 1.0;  ///< C_a0 at the wall [-], from 1
    Length length{};    ///< x_d, over which it falls to 1 [m]
};

/// A step drift and what led to it.
struct StepDrift {
    Length parapet{};    ///< h_p', what the parapet stands out of its snow [m]
    double fetch = 1.0;  ///< F [-]
    Drift drift{};
};

/// Drift on a roof below a step.
/// h_p' = h_p - 0.8 S_s/gamma, 0 <= h_p' <= l_cs/5;  beta = 1.0 (case I), 0.67 (II, III)
/// F = 0.35 beta sqrt[gamma (l_cs - 5 h_p')/S_s] + C_b, F <= 5 where C_ws = 1.0
/// C_a0 = min[beta gamma h/(C_b S_s), F/C_b], not under 1;  x_d = 5 (C_b S_s/gamma) (C_a0 - 1)
/// \return h_p', F, C_a0 and x_d
/// Limits: straight steps, no corners. Where the step is lower than the snow beside it C_a0 would fall under 1: there
/// is no drift then (our reading). The worst case is the one with the highest peak, for x_d grows with it.
/// Source: NBC, 4.1.6.5; read on a page (Ontario code 4.1.6.5, codeindex.ca, which prints "5 h0" for 5 h_p').
/// \throws InputError nbc.ground_snow.range, nbc.unit_weight.range, nbc.height.range, nbc.basic.range,
///   nbc.characteristic_length.range, nbc.parapet.range, nbc.wind.range
[[nodiscard]] StepDrift step_drift_4_1_6_5(const Step& step);

/// Accumulation factor at a distance from the wall a drift lies against.
/// C_a(x) = C_a0 - (C_a0 - 1) x/x_d to x_d, then 1
/// \param drift  peak from 1, length from 0
/// \param x      from the wall [m], from 0
/// \return C_a [-], 1 to C_a0
/// Limits: the slope factor beside it is 1 (`Accumulation::gathered`), and C_w is 1.
/// Source: NBC, 4.1.6.5; read on a page (Ontario code 4.1.6.5, codeindex.ca).
/// \throws InputError nbc.peak.range, nbc.drift_length.range, nbc.distance.range
[[nodiscard]] constexpr double accumulation_4_1_6_5(const Drift& drift, Length x) {
    const double peak = argument::within(drift.peak, 1.0, argument::largest, {"nbc.peak.range", "peak C_a0", "-"});
    const double length = argument::not_negative(in_m(drift.length), {"nbc.drift_length.range", "drift x_d", "m"});
    const double distance = argument::not_negative(in_m(x), {"nbc.distance.range", "distance x", "m"});
    return distance >= length ? 1.0 : peak - (peak - 1.0) * (distance / length);
}

/// Widest gap over which a higher building throws snow on a roof.   Source: NBC, 4.1.6.6; from memory.
inline constexpr Length widest_gap_4_1_6_6 = from_m(5.0);

/// Accumulation factor on a roof beside a higher building that stands apart.
/// C_a(x) as for a step if the gap is up to 5 m, else 1
/// \param drift  of the step between the two, as if there were no gap
/// \param gap    between the building and the roof [m], from 0
/// \param x      from the edge of the lower roof [m], from 0
/// \return C_a [-]
/// Limits: the whole drift is put on the roof, nothing taken off for what falls into the gap; whether the code allows
/// that is not known here.
/// Source: NBC, 4.1.6.6; from memory.
/// \throws InputError nbc.gap.range, and as `accumulation_4_1_6_5`
[[nodiscard]] constexpr double adjacent_accumulation_4_1_6_6(const Drift& drift, Length gap, Length x) {
    argument::not_negative(in_m(gap), {"nbc.gap.range", "gap", "m"});
    const double accumulation = accumulation_4_1_6_5(drift, x);
    return gap <= widest_gap_4_1_6_6 ? accumulation : 1.0;
}

/// Whether a projection on the roof is long enough to count.
/// l_0 > 3 m
/// \param longest  l_0, longest level size of the projection [m], from 0
/// Limits: the code allows a smaller one to be left out; it does not demand it.
/// Source: NBC, 4.1.6.7; from memory.
/// \throws InputError nbc.projection.range
[[nodiscard]] constexpr bool projection_counts_4_1_6_7(Length longest) {
    return argument::not_negative(in_m(longest), {"nbc.projection.range", "length of a projection l_0", "m"}) > 3.0;
}

/// Drift beside a projection: mast, wheelhouse or arch that comes through the cover.
/// C_a0 = min[0.67 gamma h/(C_b S_s), gamma l_0/(7.5 C_b S_s) + 1], not under 1;  x_d = min(3.35 h, 2 l_0/3)
/// \param ground_snow  S_s [Pa], over 0 to 100 kPa
/// \param unit_weight  gamma [N/m3], 1 to 10 kN/m3
/// \param height       h above the roof [m], from 0
/// \param longest      l_0, longest level size [m], from 0
/// \param basic        C_b [-], 0.8 to 2.0
/// \return C_a0 and x_d
/// Limits: answered for short projections too. C_a0 not under 1 is our reading, as for steps.
/// Source: NBC, 4.1.6.7; from memory.
/// \throws InputError nbc.ground_snow.range, nbc.unit_weight.range, nbc.height.range, nbc.projection.range,
///   nbc.basic.range
[[nodiscard]] Drift projection_drift_4_1_6_7(Pressure ground_snow, UnitWeight unit_weight, Length height,
                                             Length longest, double basic);

/// All the snow that slides from a higher roof on a lower one, per length of its eave.
/// T = 0.5 S b
/// \param upper_load  S on the upper roof with C_s = 1 [Pa], 0 to 1000 kPa
/// \param run         b, level length of what slopes towards the lower roof [m], from 0
/// \return T [N/m], to be added to the snow that lies there
/// Limits: T tapers off from the edge of the upper roof over a length not known here, so no pressure is given: whoever
/// uses it chooses a length and says so; a short one is the hard one. It slides at every slope of a slippery upper
/// roof. From which slope another surface sheds is not known here: count it. No impact of what falls.
/// Source: NBC 2015, 4.1.6.11; the half from memory, "every slope" read (Commentary G, list of changes).
/// \throws InputError nbc.upper_load.range, nbc.run.range
[[nodiscard]] constexpr LineLoad sliding_total_4_1_6_11(Pressure upper_load, Length run) {
    argument::within(in_kPa(upper_load), 0.0, 1000.0, {"nbc.upper_load.range", "load on the upper roof", "kPa"});
    argument::not_negative(in_m(run), {"nbc.run.range", "run of the upper roof", "m"});
    return 0.5 * upper_load * run;
}

/// Whether the design load may be lowered because snow will be removed, by whatever means: it may not, in 2015 and
/// later. Clearing is a scenario beside the design load, never a discount on it.
/// Source: NBC 2015, 4.1.6.14; the prohibition read on a page (Commentary G, list of changes), the number of the
/// article from memory, doubtful.
inline constexpr bool removal_may_lower_load_4_1_6_14 = false;

/// Combinations of loads for strength, by the load that leads and the one that goes with it.
enum class Combination {
    dead,
    live_and_snow,
    live_and_wind,
    snow_and_live,
    snow_and_wind,
    wind_and_live,
    wind_and_snow,
    earthquake,
};

[[nodiscard]] constexpr std::array<const char*, 8> choices_of(Combination) {
    return {"dead",          "live and snow", "live and wind", "snow and live",
            "snow and wind", "wind and live", "wind and snow", "earthquake"};
}

/// Factors on specified loads in one combination.
struct CombinationFactors {
    double permanent = 0;             ///< on self-weight D where it makes things worse [-]
    double permanent_favourable = 0;  ///< on self-weight D where it helps [-]
    double live = 0;                  ///< on L [-]
    double snow = 0;                  ///< on S [-]
    double wind = 0;                  ///< on W [-]
    double earthquake = 0;            ///< on E [-]

    bool operator==(const CombinationFactors&) const = default;
};

/// Factors of a combination for strength.
/// 1.4D; (1.25 or 0.9)D + 1.5L + (1.0S or 0.4W); (1.25 or 0.9)D + 1.5S + (1.0L or 0.4W);
/// (1.25 or 0.9)D + 1.4W + (0.5L or 0.5S); 1.0D + 1.0E + 0.5L + 0.25S
/// \return the factors [-]
/// Limits: companions of 2015 and 2020; the earlier editions have others.
/// Source: NBC, Table 4.1.3.2; from memory, sure.
/// \throws InputError nbc.combination.unknown
[[nodiscard]] CombinationFactors combination_4_1_3_2(Combination combination);

}  // namespace coverframe::nbc
