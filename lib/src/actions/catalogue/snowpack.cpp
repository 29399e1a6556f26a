// SPDX-License-Identifier: BSD-3-Clause
// Snow as found, and 50-year ground loads from a record of depths or from another return period.
#include <algorithm>
#include <array>
#include <tuple>

#include "actions/catalogue/elementary.hpp"
#include "actions/catalogue/entry.hpp"
#include "coverframe/actions/depth_relation.hpp"
#include "coverframe/actions/snowpack.hpp"

namespace coverframe::catalogue {
namespace {

using namespace snowpack;

std::tuple<Pressure, Pressure, Pressure> three(const Spread& load) { return {load.low, load.mean, load.high}; }

/// Published unit weights [kN/m3].
struct Weights {
    double low = 0;
    double mean = 0;
    double high = 0;
};

/// In the order of Kind.
const std::array<Weights, choices_of(Kind{}).size()> weights = [] {
    std::array<Weights, choices_of(Kind{}).size()> all;
    for (std::size_t k = 0; k < all.size(); ++k) {
        const Density& density = density_of(static_cast<Kind>(k));
        all[k] = {in_kN_per_m3(density.low), in_kN_per_m3(density.mean), in_kN_per_m3(density.high)};
    }
    return all;
}();

const Weights& weights_of(Kind kind) { return weights[static_cast<std::size_t>(kind)]; }

constexpr Covered fast_depth(double depth) { return within(depth, 0.0, 20.0); }

constexpr double fast_column_load(double mass, double area) { return mass * 9.80665 / area / 1000.0; }

constexpr Covered fast_column(double mass, double area) {
    return within(mass, 0.0, 1e4) * within(area, 1e-4, 1000.0);
}

constexpr Covered fast_side(double side) { return within(side, above_zero, argument::largest); }

/// A side or diameter of the column: the area alone does not tell that it is negative.
constexpr Length side_of(Length side) {
    argument::positive(in_m(side), {"snowpack.column_side.range", "side or diameter of the column", "m"});
    return side;
}

constexpr const char* every_source =
    "EN 1991-1-3:2003, Annex E, as quoted (skierniewice.pinb.pl); weather page (mywabashvalley.com); design firm "
    "(sgh.com); insurers' guidance as quoted (deadlinedetroit.com); Colorado Climate Center, 2001; Schmidlin et al., "
    "1992; Martinec, J. Glaciology; Bartok (nurserymag.com); Grubinger (farmingmagazine.com); Ontario code, 9.4.2.2, "
    "appendix; Finnish Environment Institute; Boverket; br.de; USDA NRCS; 917 kg/m3 of ice from memory, sure. Which is "
    "whose: snowpack::density_of";
constexpr const char* as_density = "statics; unit weights as snowpack.density";

void add_found(std::vector<Rule>& rules) {
    const std::string space = "snowpack";
    add(rules,
        {space, "density", clause_density, "Published unit weights of a kind of snow.", Read::part, every_source},
        {{"kind", "kind", "of snow"}},
        {{"low_kn_per_m3", "gamma_low", "lowest published"},
         {"mean_kn_per_m3", "gamma_mean", "published as mean, or the middle of a range"},
         {"high_kn_per_m3", "gamma_high", "highest published"}},
        [](Kind kind) {
            const Density& density = density_of(kind);
            return std::tuple(density.low, density.mean, density.high);
        });
    add(rules, {space, "layer_load", clause_density, "Load of one layer of snow.", Read::part, as_density},
        {{"kind", "kind", "of snow"}, {"depth_m", "d", "straight down, 0 to 20"}},
        {{"low_kpa", "s_low", "gamma_low d"},
         {"mean_kpa", "s_mean", "gamma_mean d"},
         {"high_kpa", "s_high", "gamma_high d"}},
        [](Kind kind, Length depth) {
            return three(load_of({kind, depth}));
        },
        [](Kind kind, double depth) {
            const Weights& gamma = weights_of(kind);
            return fast(fast_depth(depth), gamma.low * depth, gamma.mean * depth, gamma.high * depth);
        });
    add(rules,
        {space, "three_layers_load", clause_density, "Load of up to three layers; a depth of 0 leaves one out.",
         Read::part, as_density},
        {{"top_kind", "kind 1", "of the snow that is seen"},
         {"top_depth_m", "d_1", "straight down, 0 to 20"},
         {"middle_kind", "kind 2", "of the snow below it"},
         {"middle_depth_m", "d_2", "depth of the middle layer, 0 to 20"},
         {"bottom_kind", "kind 3", "of what lies on the film"},
         {"bottom_depth_m", "d_3", "depth of the lowest layer, 0 to 20"}},
        {{"low_kpa", "s_low", "sum of gamma_low d"},
         {"mean_kpa", "s_mean", "sum of gamma_mean d"},
         {"high_kpa", "s_high", "sum of gamma_high d"}},
        [](Kind top, Length d_1, Kind middle, Length d_2, Kind bottom, Length d_3) {
            const std::array<Layer, 3> layers{Layer{top, d_1}, Layer{middle, d_2}, Layer{bottom, d_3}};
            return three(load_of(layers));
        },
        [](Kind top, double d_1, Kind middle, double d_2, Kind bottom, double d_3) {
            const Weights& g_1 = weights_of(top);
            const Weights& g_2 = weights_of(middle);
            const Weights& g_3 = weights_of(bottom);
            return fast(fast_depth(d_1) * fast_depth(d_2) * fast_depth(d_3),
                        g_1.low * d_1 + g_2.low * d_2 + g_3.low * d_3,
                        g_1.mean * d_1 + g_2.mean * d_2 + g_3.mean * d_3,
                        g_1.high * d_1 + g_2.high * d_2 + g_3.high * d_3);
        });
    add(rules,
        {space, "depth_of_load", clause_density, "Which depth of one kind of snow makes a load.", Read::part,
         as_density},
        {{"load_kpa", "s", "load, 0 to 100"}, {"kind", "kind", "of snow"}},
        {{"low_m", "d_low", "s/gamma_high; clear by this one"},
         {"mean_m", "d_mean", "s/gamma_mean"},
         {"high_m", "d_high", "s/gamma_low"}},
        [](Pressure load, Kind kind) {
            const Depths depths = depth_of(load, kind);
            return std::tuple(depths.low, depths.mean, depths.high);
        },
        [](double load, Kind kind) {
            const Weights& gamma = weights_of(kind);
            return fast(within(load, 0.0, 100.0), load / gamma.high, load / gamma.mean, load / gamma.low);
        });
    add(
        rules,
        {space, "column_load", clause_column, "Load from a weighed column of the full depth.", Read::page,
         "statics; the 10 cm column in a county notice (wallgau.feuerwehren.bayern)"},
        {{"mass_kg", "m", "of the column [kg], 0 to 10000"},
         {"width_m", "a", "of the column seen from above, over 0"},
         {"breadth_m", "b", "across it, over 0"}},
        {{"load_kpa", "s", "m g/(a b), g = 9.80665 m/s2"}},
        [](double mass, Length width, Length breadth) {
            return load_of_column(mass, side_of(width) * side_of(breadth));
        },
        [](double mass, double width, double breadth) {
            return fast(fast_column(mass, width * breadth) * fast_side(width) * fast_side(breadth),
                        fast_column_load(mass, width * breadth));
        });
    add(rules,
        {space, "tube_load", clause_column, "Load from a weighed column cut with a round tube.", Read::derived,
         "statics"},
        {{"mass_kg", "m", "of the column [kg], 0 to 10000"}, {"diameter_m", "D", "of the tube inside, over 0"}},
        {{"load_kpa", "s", "m g/(pi D^2/4), g = 9.80665 m/s2"}}, [](double mass, Length diameter) {
            constexpr double quarter_turn = argument::right_angle;  // pi/2
            return load_of_column(mass, 0.5 * quarter_turn * side_of(diameter) * diameter);
        },
        [](double mass, double diameter) {
            const double area = 0.5 * argument::right_angle * diameter * diameter;
            return fast(fast_column(mass, area) * fast_side(diameter), fast_column_load(mass, area));
        });
    add(rules,
        {space, "melt_water_load", clause_water, "Load from the depth of water a column melts to.", Read::page,
         "USDA Natural Resources Conservation Service, Alaska snow survey"},
        {{"melt_depth_m", "d", "in a vessel of the same area, 0 to 20"}},
        {{"load_kpa", "s", "gamma_w d, gamma_w = 62.418 pcf"}}, [](Length depth) { return load_of_melt_water(depth); },
        [](double depth) { return fast(fast_depth(depth), in_kN_per_m3(water_weight) * depth); });
}

void add_records(std::vector<Rule>& rules) {
    const std::string space = "depth_relation";
    const Text depth{"depth_m", "h", "50-year ground depth, 0 to 10"};
    const char* summary = "50-year ground load from the 50-year depth.";
    add(rules,
        {space, "tobiasson_greatorex_1996", depth_relation::clause_tobiasson_greatorex, summary, Read::sure,
         "stations of the United States", us_units},
        {depth}, {{"ground_snow_kpa", "p_g", "0.279 h^1.36, psf and inches"}},
        [](Length h) { return depth_relation::tobiasson_greatorex_1996(h); },
        [](double h) {
            const double power = fast_power(std::max(in_in(from_m(h)), 1e-200), 1.36);
            return fast(within(h, 0.0, 10.0), 0.279 * power * one_if(h > 0.0) * in_kPa(from_psf(1.0)));
        });
    add(rules,
        {space, "sack_sheikh_taheri_1986", depth_relation::clause_sack_sheikh_taheri, summary, Read::fair,
         "Rocky Mountain sites", us_units},
        {depth}, {{"ground_snow_kpa", "p_g", "0.90 h to 22 in, 2.36 h - 31.9 above, psf and inches"}},
        [](Length h) { return depth_relation::sack_sheikh_taheri_1986(h); },
        [](double h) {
            const double inches = in_in(from_m(h));
            const double psf = from_m(h) <= from_in(22.0) ? 0.90 * inches : 2.36 * inches - 31.9;
            return fast(within(h, 0.0, 10.0), psf * in_kPa(from_psf(1.0)));
        });
    add(rules,
        {space, "schmidlin_1992", depth_relation::clause_schmidlin, summary, Read::page,
         "Ohio; J. Applied Meteorology 31 (1992), abstract", us_units},
        {depth}, {{"ground_snow_kpa", "p_g", "0.15 gamma_w h, gamma_w = 62.418 pcf"}},
        [](Length h) { return depth_relation::schmidlin_1992(h); },
        [](double h) { return fast(within(h, 0.0, 10.0), in_kN_per_m3(0.15 * from_pcf(62.418)) * h); });
    add(rules,
        {"asce7_commentary", "to_50_years", asce7_commentary::clause_C7,
         "Multiplier from a ground load of another return period to one of 50 years.", Read::sure,
         "7-05 and 7-10; averages over the United States", us_units},
        {{"return_period_years", "T", "return period, one of 10, 25, 30, 50 or 100"}},
        {{"multiplier", "k", "1.82, 1.20, 1.15, 1.00, 0.82; p_50 = k p_T"}},
        [](double years) { return asce7_commentary::to_50_years_C7(years); });
}

}  // namespace

void add_snowpack(std::vector<Rule>& rules) {
    add_found(rules);
    add_records(rules);
}

}  // namespace coverframe::catalogue
