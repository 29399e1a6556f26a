// SPDX-License-Identifier: BSD-3-Clause
// Germany's National Annex to EN 1991-1-3: limits of the drift in a valley (5.3.4) and on a lower roof against taller
// works (5.3.6).
#pragma once

#include <algorithm>
#include <array>
#include <cmath>

#include "coverframe/actions/en1991_1_3_drift.hpp"

namespace coverframe::na_de {

inline const Clause clause_5_3_4{"DIN EN 1991-1-3/NA:2010", "NDP to 5.3.4"};
inline const Clause clause_5_3_6{"DIN EN 1991-1-3/NA:2010", "NDP to 5.3.6(1)"};

/// Shape coefficient at the bottom of a valley, no more than what fills it.
/// mu_valley at most gamma h/s_k + mu_slope, gamma = 2 kN/m3
/// \param valley       `valley_coefficient_5_3_4` [-], 0.8 to 1.6
/// \param slope        mu of 5.3.3 on the slopes, the larger of the two [-], 0 to 0.8
/// \param height       h, from the bottom of the valley up to the ridge [m], up to 200 m
/// \param ground_load  s_k [Pa], more than 0, to 100 kPa
/// \return mu [-]
/// Source: DIN EN 1991-1-3/NA:2010, 5.3.4; read on a page for its predecessor (University of Siegen lecture script on
/// DIN 1055-5:2005, p. 53).
/// \throws InputError na_de.valley.range, na_de.slope.range, en1991_1_3.height.range, en1991_1_3.ground_load.range
[[nodiscard]] constexpr double capped_valley_5_3_4(double valley, double slope, Length height, Pressure ground_load) {
    argument::within(valley, 0.8, 1.6, {"na_de.valley.range", "shape coefficient of the valley", "-"});
    argument::within(slope, 0.0, 0.8, {"na_de.slope.range", "shape coefficient of the slopes", "-"});
    const double filled = in_kN_per_m3(en1991_1_3::drift_weight_5_3_6) * en1991_1_3::height_in_m(height) /
                          en1991_1_3::drifting_ground_load_in_kPa(ground_load);
    return std::min(valley, filled + slope);
}

/// What the sum of both drifts is limited by.
enum class LowerRoof {
    general,  ///< everything else
    canopy,   ///< open at the sides, no deeper than 3 m, within reach of somebody who clears it
    alpine,   ///< ground load of 3 kN/m2 and more in the Alpine region
};

[[nodiscard]] constexpr std::array<const char*, 3> choices_of(LowerRoof) { return {"general", "canopy", "alpine"}; }

/// Limits of mu_s + mu_w.
struct SumLimits {
    double least = 0;  ///< [-]
    double most = 0;   ///< [-]
};

/// Limits of the drift on a lower roof against taller works.
/// 0.8 to 2.4; canopy 0.8 to 2.0; alpine 1.2 to 6.45/s_k^0.9 (s_k in kN/m2)
/// \param ground_load  s_k [Pa], more than 0, to 100 kPa; 3 kPa and more if alpine
/// \return both limits; above 6.4 kPa the alpine ones cross, and the least counts
/// Source: DIN EN 1991-1-3/NA:2010, 5.3.6(1), NA.5; 0.8 to 2.4 read on a page (baunormenlexikon.de, extract of p. 10),
/// the canopy and the Alpine region from memory, moderately sure. At 3 kN/m2 the Alpine limit is 2.40, as it should.
/// \throws InputError en1991_1_3.ground_load.range, na_de.lower_roof.unknown
[[nodiscard]] inline SumLimits drift_limits_5_3_6(LowerRoof roof, Pressure ground_load) {
    const double s_k = en1991_1_3::drifting_ground_load_in_kPa(ground_load);
    switch (roof) {
        case LowerRoof::general: return {0.8, 2.4};
        case LowerRoof::canopy: return {0.8, 2.0};
        case LowerRoof::alpine:
            argument::within(s_k, 3.0, en1991_1_3::limit::ground_high,
                             {"en1991_1_3.ground_load.range", "ground snow load s_k of an alpine site", "kPa"});
            return {1.2, 6.45 / std::pow(s_k, 0.9)};
    }
    argument::refuse({"na_de.lower_roof.unknown", "number of the kind of lower roof", "-"}, static_cast<double>(roof),
                     0, 2);
}

/// Shape coefficient at the wall of a lower roof against taller works.
/// mu_w = (b_1 + b_2)/(2 h), at most gamma h/s_k - mu_s, counted for h > 0.5 m; mu_2 = mu_s + mu_w within
/// `drift_limits_5_3_6`
/// \param works  as for `taller_works_5_3_6`; its upper slope counts with 0.8 at any pitch (from memory, moderately
///               sure)
/// \return mu_2 [-], over the length of `drift_length_5_3_6`
/// Limits: the least of the limits counts last.
/// Source: DIN EN 1991-1-3/NA:2010, 5.3.6(1), NA.4 and NA.5; read on a page (baunormenlexikon.de, extract of p. 10).
/// \throws InputError as `taller_works_5_3_6`
[[nodiscard]] inline double wall_coefficient_5_3_6(const en1991_1_3::TallerWorks& works, LowerRoof roof) {
    const en1991_1_3::WallDrift drift = en1991_1_3::taller_works_5_3_6(works);
    const SumLimits limits = drift_limits_5_3_6(roof, works.ground_load);
    const double room = std::max(drift.wind.height - drift.sliding, 0.0);
    const double wind = works.height > from_m(0.5) ? std::min(drift.wind.supply, room) : 0.0;
    return std::max(std::min(drift.sliding + wind, limits.most), limits.least);
}

}  // namespace coverframe::na_de
