// SPDX-License-Identifier: BSD-3-Clause
#include <array>

#include "actions/catalogue/elementary.hpp"
#include "actions/catalogue/entry.hpp"
#include "coverframe/actions/en1991_1_3_annex_c.hpp"
#include "coverframe/actions/en1991_1_3_annex_d.hpp"
#include "coverframe/actions/en1991_1_3_annex_e.hpp"

namespace coverframe::catalogue {

using namespace en1991_1_3;

namespace {

const std::string space = "en1991_1_3";
const std::string annex_d = "Eq. D.1; about 0.70 for 10 years on a page (Ingenio, on the Italian "
                            "Circolare 2019, C3.4.1)";
const std::string factor_formula =
    "{1 - V (sqrt(6)/pi) [ln(-ln(1 - P_n)) + 0.57722]} / (1 + 2.5923 V), P_n = 1/n";

/// (per_zone Z + constant) [1 + squared (A/altitude)^2] + (1 - squared) A/altitude, squared being 1 or 0. The zones are
/// 1, 2, third and fourth.
struct FastRegion {
    double third;
    double fourth;
    double per_zone;
    double constant;
    double altitude;
    double squared;
};

/// In the order of ClimaticRegion, up to the two that have no formula.
constexpr std::array<FastRegion, 8> fast_regions{{{3.0, 4.5, 0.642, 0.009, 728.0, 1.0},
                                                  {3.0, 4.5, 0.264, -0.002, 256.0, 1.0},
                                                  {3.0, 4.5, 0.164, -0.082, 966.0, 0.0},
                                                  {4.0, 4.0, 0.420, -0.030, 917.0, 1.0},
                                                  {4.0, 4.0, 0.190, -0.095, 524.0, 1.0},
                                                  {3.0, 4.5, 0.498, -0.209, 452.0, 1.0},
                                                  {3.0, 4.5, 0.790, 0.375, 336.0, 0.0},
                                                  {3.0, 4.5, 0.140, -0.1, 501.0, 0.0}}};

constexpr double fast_factor(double years, double variation) {
    constexpr double root_6_over_pi = 0.7796968012336761;
    const double reduced = fast_log(-fast_log1p(-1.0 / years)) + 0.57722;
    return (1.0 - variation * root_6_over_pi * reduced) / (1.0 + 2.5923 * variation);
}

constexpr Covered fast_factor_covered(double years, double variation) {
    return within(years, 5.0, 1e4) * within(variation, 0.0, 2.0);
}

}  // namespace

void add_en1991_1_3_ground(std::vector<Rule>& rules) {
    add(rules, {space, "ground_load", annex_C,
                "Characteristic ground snow load by climatic region, zone and altitude.", Read::sure,
                "Table C.1; the alpine row agrees with eight altitudes printed for Austria"},
        {{"region", "region", "climatic region; a National Annex comes before it"},
         {"zone", "Z", "number on the map of the region"},
         {"altitude_m", "A", "above sea level, 0 to 1500"}},
        {{"ground_snow_kpa", "s_k",
          "alpine (0.642 Z + 0.009)[1 + (A/728)^2]; central east (0.264 Z - 0.002)[1 + (A/256)^2]; greece "
          "(0.420 Z - 0.030)[1 + (A/917)^2]; iberian peninsula (0.190 Z - 0.095)[1 + (A/524)^2]; mediterranean "
          "(0.498 Z - 0.209)[1 + (A/452)^2]; central west 0.164 Z - 0.082 + A/966; sweden finland 0.790 Z + 0.375 + "
          "A/336; uk ireland 0.140 Z - 0.1 + A/501"}},
        [](ClimaticRegion region, double zone, Length altitude) { return ground_load_C_1(region, zone, altitude); },
        [](ClimaticRegion region, double zone, double altitude) {
            const auto number = static_cast<std::size_t>(region);
            const bool has_formula = number < fast_regions.size();
            const FastRegion& row = fast_regions[has_formula ? number : 0];
            const double known = one_if(zone == 1.0) + one_if(zone == 2.0) + one_if(zone == row.third) +
                                 one_if(zone == row.fourth);
            const double at_sea_level = row.per_zone * zone + row.constant;
            const double rise = altitude / row.altitude;
            return fast(one_if(has_formula) * known * within(altitude, 0.0, 1500.0),
                        at_sea_level * (1.0 + row.squared * rise * rise) + (1.0 - row.squared) * rise);
        });
    add(rules, {space, "return_period_factor", annex_D,
                "Factor from the 50-year ground load to that of another return period.", Read::sure, annex_d},
        {{"return_period_years", "n", "return period, 5 to 10000"},
         {"variation", "V", "coefficient of variation of the annual maxima, 0 to 2; 0.2 to 0.6 in Figure D.1"}},
        {{"return_period_factor", "s_n/s_k", factor_formula}},
        [](double years, double variation) { return return_period_factor_D_1(years, variation); },
        [](double years, double variation) {
            return fast(fast_factor_covered(years, variation), fast_factor(years, variation));
        });
    add(rules, {space, "return_period_load", annex_D, "Ground snow load of another return period than 50 years.",
                Read::sure, annex_d},
        {{"ground_snow_kpa", "s_k", "ground snow load of 50 years, 0 to 100"},
         {"return_period_years", "n", "return period, 5 to 10000"},
         {"variation", "V", "coefficient of variation of the annual maxima, 0 to 2; 0.2 to 0.6 in Figure D.1"}},
        {{"return_period_factor", "s_n/s_k", factor_formula}, {"ground_snow_kpa", "s_n", "(s_n/s_k) s_k"}},
        [](Pressure ground_load, double years, double variation) {
            const ReturnPeriodLoad load = return_period_load_D_1(ground_load, years, variation);
            return std::tuple(load.factor, load.load);
        },
        [](double s_k, double years, double variation) {
            const double factor = fast_factor(years, variation);
            return fast(within(s_k, 0.0, 100.0) * fast_factor_covered(years, variation), factor, factor * s_k);
        });
    add(rules, {space, "unit_weight", annex_E, "Mean unit weight of snow by its state, lower and upper value.",
                Read::page, "Table E.1 (building inspectorate of Skierniewice)"},
        {{"snow_state", "state", "of the snow on the cover", "wet"}},
        {{"unit_weight_low_kn_per_m3", "gamma_low", "1.0 fresh, 2.0 settled, 2.5 old, 4.0 wet"},
         {"unit_weight_high_kn_per_m3", "gamma_high", "1.0 fresh, 2.0 settled, 3.5 old, 4.0 wet"}},
        [](SnowState state) {
            const UnitWeightSpread spread = unit_weight_E_1(state);
            return std::tuple(spread.low, spread.high);
        });
}

}  // namespace coverframe::catalogue
