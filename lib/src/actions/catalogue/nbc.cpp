// SPDX-License-Identifier: BSD-3-Clause
#include "actions/catalogue/nbc.hpp"

#include <algorithm>
#include <cmath>

#include "actions/catalogue/elementary.hpp"
#include "coverframe/actions/nbc.hpp"

namespace coverframe::catalogue {
namespace {

using namespace nbc;

Head head(const NbcEdition& edition, const char* name, const char* article, const char* summary, Read read,
          const std::string& source) {
    const bool seen = read == Read::page || read == Read::part;
    if (edition.read_apart || !seen) return {edition.space, name, {edition.document, article}, summary, read, source};
    return {edition.space, name,       {edition.document, article},
            summary,       Read::part, source + "; that this edition keeps it is from memory"};
}

std::string ontario_4_1_6_2() { return "Ontario code 4.1.6.2 (codeindex.ca)"; }
std::string ontario_4_1_6_5() { return "Ontario code 4.1.6.5 (codeindex.ca)"; }

Text ground_snow() { return {"ground_snow_kpa", "S_s", "1-in-50 ground snow load, 0 to 100"}; }
Text unit_weight() { return {"unit_weight_kn_per_m3", "gamma", "unit weight of snow, 1 to 10"}; }
Text basic() { return {"basic_factor", "C_b", "basic roof snow load factor, 0.8 to 2.0"}; }
Text wind() { return {"wind_factor", "C_w", "wind exposure factor, 0.5 to 1.0"}; }
Text slope() { return {"slope_deg", "slope", "of the cover, 0 to 90"}; }
Text peak() { return {"peak_factor", "C_a0", "at the wall, from 1"}; }
Text drift_length() { return {"drift_length_m", "x_d", "over which the drift falls off, from 0"}; }

constexpr Covered fast_ground(double snow) { return within(snow, 0.0, limit::ground_high); }
constexpr Covered fast_weight(double gamma) { return within(gamma, limit::weight_low, limit::weight_high); }
constexpr Covered fast_basic(double c_b) { return within(c_b, limit::basic_low, limit::basic_high); }
constexpr Covered fast_wind(double c_w) { return within(c_w, limit::wind_low, limit::wind_high); }
constexpr Covered fast_length(double length) { return within(length, 0.0, argument::largest); }
constexpr double fast_drift(double c_a0, double x_d, double x) {
    const double falling = c_a0 - (c_a0 - 1.0) * (x / x_d);
    return x >= x_d ? 1.0 : falling;
}
constexpr Covered fast_drift_covered(double c_a0, double x_d, double x) {
    return within(c_a0, 1.0, argument::largest) * fast_length(x_d) * fast_length(x);
}

void add_factors(std::vector<Rule>& rules, const NbcEdition& edition) {
    add(rules,
        head(edition, "importance_factor", "4.1.6.2", "Importance factor on snow.", Read::sure, "Table 4.1.6.2.-A"),
        {{"importance", "importance", "what depends on the structure"},
         {"limit_state", "state", "what is looked at", "ultimate"}},
        {{"importance_factor", "I_s", "0.8 low, 1.0 normal, 1.15 high, 1.25 post-disaster; 0.9 for serviceability"}},
        [](Importance importance, LimitState state) { return importance_factor_4_1_6_2(importance, state); });
    add(rules,
        head(edition, "characteristic_length", "4.1.6.2", "Characteristic length of a roof.", Read::page,
             ontario_4_1_6_2()),
        {{"width_m", "w", "smaller plan size, over 0"}, {"length_m", "l", "larger plan size, not under w"}},
        {{"characteristic_length_m", "l_c", "2 w - w^2/l"}},
        [](Length width, Length length) { return characteristic_length_4_1_6_2(width, length); },
        [](double w, double l) {
            return fast(within(w, argument::smallest, argument::largest) * within(l, w, argument::largest),
                        2.0 * w - w * (w / l));
        });
    add(rules,
        head(edition, "basic_factor", "4.1.6.2", "Basic roof snow load factor.", Read::page,
             ontario_4_1_6_2() + ", which prints the same sign before both lines"),
        {{"characteristic_length_m", "l_c", "of the roof, from 0"}, wind()},
        {{"basic_factor", "C_b", "0.8 for l_c <= 70/C_w^2, else {1 - (1 - 0.8 C_w) exp[-(l_c C_w^2 - 70)/100]}/C_w"}},
        [](Length length, double c_w) { return basic_factor_4_1_6_2(length, c_w); },
        [](double length, double c_w) {
            const double beyond = length * c_w * c_w - 70.0;
            const double large = (1.0 - (1.0 - 0.8 * c_w) * fast_exp(std::max(-beyond / 100.0, -700.0))) / c_w;
            return fast(fast_length(length) * fast_wind(c_w), beyond <= 0.0 ? 0.8 : large);
        });
    add(rules,
        head(edition, "wind_factor", "4.1.6.2", "Wind exposure factor.", Read::part,
             ontario_4_1_6_2() + "; that accumulations are left out is from memory, sure"),
        {{"importance", "importance", "lowered for low and normal only"},
         {"site", "site", "where the wind may have taken snow off", "other"},
         {"open_on_all_sides", "open", "open terrain all round, and to stay so"},
         {"unobstructed", "free", "nothing on the roof nearer than the obstruction distance"},
         {"accumulation", "gathers", "the load is one that gathers"}},
        {{"wind_factor", "C_w", "1.0; 0.75 rural, 0.5 north of the tree line if every condition holds"}},
        [](Importance importance, WindSite site, bool open, bool unobstructed, bool accumulation) {
            return wind_factor_4_1_6_2(importance, {site, open, unobstructed, accumulation});
        });
    add(rules,
        head(edition, "obstruction_distance", "4.1.6.2", "How near an obstruction may stand without spoiling C_w.",
             Read::page, ontario_4_1_6_2()),
        {{"height_m", "h_o", "obstruction above the roof, from 0"}, ground_snow(), unit_weight(), basic(), wind()},
        {{"distance_m", "a", "10 (h_o - C_b C_w S_s/gamma), not under 0"}},
        [](Length height, Pressure snow, UnitWeight gamma, double c_b, double c_w) {
            return obstruction_distance_4_1_6_2(height, snow, gamma, c_b, c_w);
        },
        [](double height, double snow, double gamma, double c_b, double c_w) {
            return fast(fast_length(height) * fast_ground(snow) * fast_weight(gamma) * fast_basic(c_b) * fast_wind(c_w),
                        10.0 * std::max(0.0, height - c_b * c_w * snow / gamma));
        });
    add(rules,
        head(edition, "slope_factor", "4.1.6.2", "Slope factor.", Read::page,
             "course notes ARC1046; the gable eng-tips.com, thread 370069"),
        {slope(),
         {"surface", "surface", "slippery means unobstructed too", "other"},
         {"accumulation", "accumulation", "why C_a differs from 1"}},
        {{"slope_factor", "C_s",
          "(70 - slope)/40 from 30 to 70 deg; slippery (60 - slope)/45 from 15 to 60; 1 below, 0 above; 1 where snow "
          "gathers"}},
        [](Angle angle, Surface surface, Accumulation accumulation) {
            return slope_factor_4_1_6_2(angle, surface, accumulation);
        },
        [](double angle, Surface surface, Accumulation accumulation) {
            const bool slippery = surface == Surface::unobstructed_slippery;
            const double none = slippery ? 60.0 : 70.0;
            const double falls_over = slippery ? 45.0 : 40.0;
            const double factor = std::clamp((none - angle) / falls_over, 0.0, 1.0);
            return fast(within(angle, 0.0, 90.0), accumulation == Accumulation::gathered ? 1.0 : factor);
        });
}

void add_loads(std::vector<Rule>& rules, const NbcEdition& edition) {
    add(rules,
        head(edition, "specified_load", "4.1.6.2", "Specified load of snow and the rain in it.", Read::page,
             ontario_4_1_6_2() + "; NBC Part 4 (guides.co)"),
        {ground_snow(),
         {"rain_kpa", "S_r", "1-in-50 rain that goes with the snow, 0 to 100"},
         {"importance_factor", "I_s", "importance factor, 0.8 to 1.25"},
         basic(),
         wind(),
         {"slope_factor", "C_s", "slope factor, 0 to 1"},
         {"accumulation_factor", "C_a", "accumulation factor, from 0"}},
        {{"snow_kpa", "S_snow", "S_s C_b C_w C_s C_a"},
         {"rain_in_snow_kpa", "S_rain", "min(S_r, S_snow)"},
         {"specified_load_kpa", "S", "I_s (S_snow + S_rain)"}},
        [](Pressure snow, Pressure rain, double i_s, double c_b, double c_w, double c_s, double c_a) {
            const SpecifiedLoad load = specified_load_4_1_6_2(snow, rain, i_s, {c_b, c_w, c_s, c_a});
            return std::tuple(load.snow, load.rain, load.load);
        },
        [](double ground, double rain, double i_s, double c_b, double c_w, double c_s, double c_a) {
            const double snow = c_b * c_w * c_s * c_a * ground;
            const double held = std::min(rain, snow);
            return fast(fast_ground(ground) * within(rain, 0.0, limit::ground_high) *
                            within(i_s, limit::importance_low, limit::importance_high) * fast_basic(c_b) *
                            fast_wind(c_w) * within(c_s, 0.0, 1.0) * within(c_a, 0.0, argument::largest),
                        snow, held, i_s * (snow + held));
        });
    add(rules,
        head(edition, "partial_loading", "4.1.6.3",
             "Whether partial loading has to be looked at, and the load on the rest.", Read::page,
             "Ontario code 4.1.6.3 (buildingcode.online)"),
        {slope()},
        {{"applies", "applies", "slope <= 15 deg"},
         {"rest_share", "share", "0.5 of the load with C_a = 1, while one part carries all of it"}},
        [](Angle angle) { return std::tuple(partial_applies_4_1_6_3(angle), double(partial_share_4_1_6_3)); },
        [](double angle) {
            return fast(within(angle, 0.0, 90.0), one_if(from_deg(angle) <= from_deg(15.0)),
                        double(partial_share_4_1_6_3));
        });
    add(rules,
        head(edition, "unbalanced_applies", "4.1.6.9", "Whether a gable has an unbalanced case.", Read::sure,
             "from memory"),
        {slope()}, {{"applies", "applies", "slope > 15 deg"}},
        [](Angle angle) { return unbalanced_applies_4_1_6_9(angle); },
        [](double angle) { return fast(within(angle, 0.0, 90.0), one_if(from_deg(angle) > from_deg(15.0))); });
    add(rules,
        head(edition, "unbalanced_gable", "4.1.6.9", "Accumulation factors of an unbalanced gable.", Read::part,
             "the 1.25 on a page (eng-tips.com, thread 370069), ramp and empty side from memory, sure"),
        {{"slope_deg", "slope", "of the downwind side, 15 to 90"}},
        {{"upwind_factor", "C_a,up", "0"},
         {"downwind_factor", "C_a", "0.25 + slope/20 from 15 to 20 deg, 1.25 from there"}},
        [](Angle angle) {
            return std::tuple(double(upwind_accumulation_4_1_6_9), downwind_accumulation_4_1_6_9(angle));
        },
        [](double angle) {
            return fast(within(angle, 15.0, 90.0), double(upwind_accumulation_4_1_6_9),
                        1.0 + 0.25 * std::min((angle - 15.0) / 5.0, 1.0));
        });
    add(rules,
        head(edition, "combination", "4.1.3.2", "Factors of a combination for strength.", Read::sure, "Table 4.1.3.2"),
        {{"combination", "combination", "the load that leads, and the one that goes with it"}},
        {{"permanent", "D", "1.25; 1.4 alone, 1.0 with earthquake"},
         {"permanent_favourable", "D_min", "0.9 where D helps; 1.4 alone, 1.0 with earthquake"},
         {"live", "L", "1.5; 1.0 with snow, 0.5 with wind or earthquake"},
         {"snow", "S", "1.5; 1.0 with live load, 0.5 with wind(), 0.25 with earthquake"},
         {"wind", "W", "1.4; 0.4 with live load or snow"},
         {"earthquake", "E", "1.0"}},
        [](Combination combination) {
            const CombinationFactors f = combination_4_1_3_2(combination);
            return std::tuple(f.permanent, f.permanent_favourable, f.live, f.snow, f.wind, f.earthquake);
        });
}

void add_drifts(std::vector<Rule>& rules, const NbcEdition& edition) {
    add(rules,
        head(edition, "unit_weight", "4.1.6.13", "Unit weight of drifted snow.", Read::fair,
             "from memory; that 2015 brought a method in was read (Commentary G, list of changes)"),
        {ground_snow()}, {{"unit_weight_kn_per_m3", "gamma", "0.43 S_s + 2.2, at most 4.0"}},
        [](Pressure snow) { return unit_weight_4_1_6_13(snow); },
        [](double snow) { return fast(fast_ground(snow), std::min(0.43 * snow + 2.2, 4.0)); });
    add(rules,
        head(edition, "step_drift", "4.1.6.5", "Drift on a roof below a step.", Read::page,
             ontario_4_1_6_5() + ", which prints \"5 h0\" for 5 h_p'"),
        {ground_snow(),
         unit_weight(),
         {"height_m", "h", "from the lower roof to the top of the upper parapet, from 0"},
         basic(),
         {"source", "case", "I from the upper roof, II and III from the lower one"},
         {"source_length_m", "l_cs", "characteristic length of the roof the snow comes from, from 0"},
         {"parapet_m", "h_p", "parapet of that roof, from 0"},
         {"source_wind_factor", "C_ws", "of that roof, 0.5 to 1.0"}},
        {{"standing_parapet_m", "h_p'", "h_p - 0.8 S_s/gamma, 0 to l_cs/5"},
         {"fetch_factor", "F",
          "0.35 beta sqrt[gamma (l_cs - 5 h_p')/S_s] + C_b, at most 5 where C_ws = 1; beta = 1.0 in case I, else 0.67"},
         {"peak_factor", "C_a0", "min[beta gamma h/(C_b S_s), F/C_b], not under 1"},
         {"drift_length_m", "x_d", "5 (C_b S_s/gamma) (C_a0 - 1)"}},
        [](Pressure snow, UnitWeight gamma, Length height, double c_b, StepCase source, Length length, Length parapet,
           double c_ws) {
            const StepDrift d = step_drift_4_1_6_5({snow, gamma, height, c_b, source, length, parapet, c_ws});
            return std::tuple(d.parapet, d.fetch, d.drift.peak, d.drift.length);
        },
        [](double snow, double gamma, double h, double c_b, StepCase source, double l_cs, double h_p, double c_ws) {
            const double beta = source == StepCase::I ? 1.0 : 0.67;
            const double standing = std::clamp(h_p - 0.8 * snow / gamma, 0.0, l_cs / 5.0);
            const double trapped = std::max(0.0, l_cs - 5.0 * standing);
            const double unlimited = 0.35 * beta * std::sqrt(gamma * trapped / snow) + c_b;
            const double fetch = c_ws < 1.0 ? unlimited : std::min(unlimited, 5.0);
            const double peak = std::max(1.0, std::min(beta * gamma * h / (c_b * snow), fetch / c_b));
            return fast(within(snow, above_zero, limit::ground_high) * fast_weight(gamma) * fast_length(h) *
                            fast_basic(c_b) * fast_length(l_cs) * fast_length(h_p) * fast_wind(c_ws),
                        standing, fetch, peak, 5.0 * (c_b * snow / gamma) * (peak - 1.0));
        });
    add(rules,
        head(edition, "drift_accumulation", "4.1.6.5", "Accumulation factor at a distance from the wall.", Read::page,
             ontario_4_1_6_5()),
        {peak(), drift_length(), {"distance_m", "x", "from the wall, from 0"}},
        {{"accumulation_factor", "C_a", "C_a0 - (C_a0 - 1) x/x_d to x_d, then 1"}},
        [](double c_a0, Length x_d, Length x) {
            return accumulation_4_1_6_5({c_a0, x_d}, x);
        },
        [](double c_a0, double x_d, double x) {
            return fast(fast_drift_covered(c_a0, x_d, x), fast_drift(c_a0, x_d, x));
        });
    add(rules,
        head(edition, "adjacent_accumulation", "4.1.6.6", "Accumulation factor beside a higher building across a gap.",
             Read::fair, "from memory; the whole drift is kept, our reading"),
        {peak(),
         drift_length(),
         {"gap_m", "gap", "between building and roof, from 0"},
         {"distance_m", "x", "from the edge of the lower roof, from 0"}},
        {{"accumulation_factor", "C_a", "C_a0 - (C_a0 - 1) x/x_d to x_d, then 1; 1 if the gap is over 5 m"}},
        [](double c_a0, Length x_d, Length gap, Length x) {
            return adjacent_accumulation_4_1_6_6({c_a0, x_d}, gap, x);
        },
        [](double c_a0, double x_d, double gap, double x) {
            const double accumulation = fast_drift(c_a0, x_d, x);
            return fast(fast_drift_covered(c_a0, x_d, x) * fast_length(gap),
                        gap <= in_m(widest_gap_4_1_6_6) ? accumulation : 1.0);
        });
    const Text longest{"longest_m", "l_0", "longest level size of the projection, from 0"};
    add(rules,
        head(edition, "projection_counts", "4.1.6.7", "Whether a projection is long enough to count.", Read::fair,
             "from memory"),
        {longest}, {{"counts", "counts", "l_0 > 3 m"}}, [](Length l_0) { return projection_counts_4_1_6_7(l_0); },
        [](double l_0) { return fast(fast_length(l_0), one_if(l_0 > 3.0)); });
    add(rules, head(edition, "projection_drift", "4.1.6.7", "Drift beside a projection.", Read::fair, "from memory"),
        {ground_snow(), unit_weight(), {"height_m", "h", "of the projection above the roof, from 0"}, longest, basic()},
        {{"peak_factor", "C_a0", "min[0.67 gamma h/(C_b S_s), gamma l_0/(7.5 C_b S_s) + 1], not under 1"},
         {"drift_length_m", "x_d", "min(3.35 h, 2 l_0/3)"}},
        [](Pressure snow, UnitWeight gamma, Length height, Length l_0, double c_b) {
            const Drift drift = projection_drift_4_1_6_7(snow, gamma, height, l_0, c_b);
            return std::tuple(drift.peak, drift.length);
        },
        [](double snow, double gamma, double height, double l_0, double c_b) {
            const double on_roof = c_b * snow;
            const double peak = std::min(0.67 * gamma * height / on_roof, gamma * l_0 / (7.5 * on_roof) + 1.0);
            return fast(within(snow, above_zero, limit::ground_high) * fast_weight(gamma) * fast_length(height) *
                            fast_length(l_0) * fast_basic(c_b),
                        std::max(1.0, peak), std::min(3.35 * height, 2.0 * l_0 / 3.0));
        });
    add(rules,
        head(
            edition, "sliding_total", "4.1.6.11", "All the snow that slides on a lower roof, per length of eave.",
            Read::part,
            "the half from memory, \"every slope of a slippery roof\" read (Commentary G, list of changes); over which "
            "length it tapers off is not known"),
        {{"upper_load_kpa", "S", "on the upper roof with C_s = 1, 0 to 1000"},
         {"run_m", "b", "level length that slopes towards the lower roof, from 0"}},
        {{"sliding_total_kn_per_m", "T", "0.5 S b"}},
        [](Pressure load, Length run) { return sliding_total_4_1_6_11(load, run); },
        [](double load, double run) { return fast(within(load, 0.0, 1000.0) * fast_length(run), 0.5 * load * run); });
}

}  // namespace

void add_nbc(std::vector<Rule>& rules, const NbcEdition& edition) {
    add_factors(rules, edition);
    add_loads(rules, edition);
    add_drifts(rules, edition);
}

}  // namespace coverframe::catalogue
