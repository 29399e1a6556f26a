// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/snowpack.hpp"

#include <array>
#include <cstring>
#include <vector>

#include <doctest/doctest.h>

#include "actions/refusal.hpp"
#include "close.hpp"
#include "coverframe/actions/rule.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using snowpack::Kind;

namespace {

std::vector<Kind> every_kind() {
    std::vector<Kind> kinds;
    for (std::size_t i = 0; i < choices_of(Kind{}).size(); ++i) kinds.push_back(static_cast<Kind>(i));
    return kinds;
}

double density_in_kg_per_m3(UnitWeight weight) { return in_kN_per_m3(weight) * 1e3 / 9.80665; }

}  // namespace

TEST_CASE("snowpack: published numbers") {
    // Colorado Climate Center, release of 9 May 2001, read on a page: 3.48 in of water, 18.1 psf, in 17 in of snow
    CHECK(close_abs(in_psf(snowpack::load_of_melt_water(3.48_in)), 18.1, 0.05));
    CHECK(close_abs(in_psf(snowpack::load_of({Kind::spring_storm, 17_in}).mean), 18.1, 0.05));
    // 12.8 pcf of that storm, derived from its two numbers
    CHECK(close_abs(in_pcf(snowpack::density_of(Kind::fresh).high), 12.8, 0.05));
    // USDA NRCS, Alaska, read on a page: 5.2 psf an inch of water
    CHECK(close_abs(in_psf(snowpack::load_of_melt_water(1_in)), 5.2, 0.05));
    // television weather page (mywabashvalley.com), read: 12 in make 6.2 psf at 10 to 1 and 12.5 psf at 5 to 1. It has
    // 4.1 psf at 15 to 1, where 62.418/15 is 4.16
    CHECK(close_abs(in_psf(snowpack::load_of({Kind::ordinary_fresh, 12_in}).high), 6.2, 0.05));
    CHECK(close_abs(in_psf(snowpack::load_of({Kind::wet, 12_in}).low), 12.5, 0.05));
    CHECK(close_abs(in_psf(snowpack::load_of({Kind::fluffy, 12_in}).low), 4.1, 0.1));
    // insurance research institute guidance, read as quoted: 5.2 to 6.2 and 12.5 to 20.8 pcf
    CHECK(close_abs(in_pcf(snowpack::density_of(Kind::ordinary_fresh).low), 5.2, 0.05));
    CHECK(close_abs(in_pcf(snowpack::density_of(Kind::packed).low), 12.5, 0.05));
    CHECK(close_abs(in_pcf(snowpack::density_of(Kind::packed).high), 20.8, 0.05));
    // Bartok, trade magazine, read: 15.6 to 20.8 pcf
    CHECK(close_abs(in_pcf(snowpack::density_of(Kind::heavy_wet).low), 15.6, 0.05));
    CHECK(close_abs(in_pcf(snowpack::density_of(Kind::heavy_wet).high), 20.8, 0.05));
    // design-firm article (sgh.com), read: 5 to 40 pcf
    CHECK(close(in_pcf(snowpack::density_of(Kind::fluffy).mean), 5.0, 1e-12));
    CHECK(close(in_pcf(snowpack::density_of(Kind::wet).high), 40.0, 1e-12));
    // Grubinger, read: a foot of wet snow makes 30 to 40 psf
    CHECK(close(in_psf(snowpack::load_of({Kind::soaked, 1_ft}).low), 30.0, 1e-12));
    CHECK(close(in_psf(snowpack::load_of({Kind::soaked, 1_ft}).high), 40.0, 1e-12));
    // Ontario code, appendix to 9.4.2.2, read: 1.0 to 4.5 kN/m3 on roofs
    CHECK(close(in_kN_per_m3(snowpack::density_of(Kind::roof_canada).low), 1.0, 1e-12));
    CHECK(close(in_kN_per_m3(snowpack::density_of(Kind::roof_canada).high), 4.5, 1e-12));
}

TEST_CASE("snowpack: published numbers of Europe") {
    // EN 1991-1-3:2003, Annex E, read as quoted by a Polish notice: 1.0, 2.0, 2.5 to 3.5, 4.0 kN/m3
    CHECK(close(in_kN_per_m3(snowpack::density_of(Kind::fresh).mean), 1.0, 1e-12));
    CHECK(close(in_kN_per_m3(snowpack::density_of(Kind::settled).mean), 2.0, 1e-12));
    CHECK(close(in_kN_per_m3(snowpack::density_of(Kind::settled).high), 2.5, 1e-12));
    CHECK(close(in_kN_per_m3(snowpack::density_of(Kind::old).mean), 3.0, 1e-12));
    CHECK(close(in_kN_per_m3(snowpack::density_of(Kind::wet).mean), 4.0, 1e-12));
    // Finnish Environment Institute, read on a page: 126 kg/m2 in 0.60 m at the highest value of February
    CHECK(close_abs(in_kPa(snowpack::load_of({Kind::ground_finland_february, 0.60_m}).high), 0.126 * 9.80665, 5e-3));
    CHECK(close(density_in_kg_per_m3(snowpack::density_of(Kind::ground_finland_april).high), 365.0, 1e-12));
    CHECK(close(density_in_kg_per_m3(snowpack::density_of(Kind::ground_finland_march).mean), 275.0, 1e-12));
    CHECK(close(density_in_kg_per_m3(snowpack::density_of(Kind::roof_finland).low), 190.0, 1e-12));
    // Boverket, read on a page: 230 to 280 kg/m3
    CHECK(close(density_in_kg_per_m3(snowpack::density_of(Kind::ground_sweden).low), 230.0, 1e-12));
    CHECK(close(density_in_kg_per_m3(snowpack::density_of(Kind::ground_sweden).high), 280.0, 1e-12));
    // Belgian Building Research Institute, read on a page: about 200 kg on 10 m2 in 10 cm
    CHECK(close_abs(in_kPa(snowpack::load_of({Kind::settled, 0.10_m}).mean) * 10.0, 200.0 * 9.80665e-3, 0.05));
    // broadcaster's page, read: 10 cm of ice 90 kg/m2, of wet snow up to 40 kg/m2
    CHECK(close(in_kPa(snowpack::load_of({Kind::ice, 0.10_m}).low), 0.90 * 0.980665, 1e-12));
    CHECK(close_abs(in_kPa(snowpack::load_of({Kind::wet, 0.10_m}).mean), 0.40, 1e-12));
    // Schmidlin et al. 1992, abstract, read: 0.15 g/cm3
    CHECK(close(density_in_kg_per_m3(snowpack::density_of(Kind::ground_ohio).mean), 150.0, 1e-12));
    // Martinec, J. Glaciology, read: 490 kg/m3
    CHECK(close(density_in_kg_per_m3(snowpack::density_of(Kind::old).high), 490.0, 1e-12));
    // the spread between fresh and wet snow the reference warns of: a factor of eight
    CHECK(snowpack::density_of(Kind::wet).high / snowpack::density_of(Kind::fluffy).mean >= 8.0);
}

TEST_CASE("snowpack: every kind is in order and says where its numbers come from") {
    for (const Kind kind : every_kind()) {
        CAPTURE(static_cast<int>(kind));
        const snowpack::Density& density = snowpack::density_of(kind);
        CHECK(in_kN_per_m3(density.low) >= 0.6);
        CHECK(density.low <= density.mean);
        CHECK(density.mean <= density.high);
        CHECK(density.high <= snowpack::water_weight);
        CHECK(std::strlen(density.low_source) > 20);
        CHECK(std::strlen(density.mean_source) > 20);
        CHECK(std::strlen(density.high_source) > 20);
    }
    // heavier as it ages, wets and freezes
    const std::vector<Kind> ageing{Kind::fresh, Kind::settled, Kind::old, Kind::wet, Kind::ice, Kind::water};
    for (std::size_t i = 1; i < ageing.size(); ++i) {
        CHECK(snowpack::density_of(ageing[i - 1]).mean < snowpack::density_of(ageing[i]).mean);
    }
    for (const int number : {-1, 19, 1000}) {
        CHECK(code_of([=] { return in_kN_per_m3(snowpack::density_of(static_cast<Kind>(number)).low); }) ==
              "snowpack.kind.unknown");
    }
}

TEST_CASE("snowpack: load of a layer, and the depth that makes a load") {
    for (const Kind kind : every_kind()) {
        CAPTURE(static_cast<int>(kind));
        const snowpack::Spread load = snowpack::load_of({kind, 0.4_m});
        CHECK(close(load.mean, Pressure(snowpack::density_of(kind).mean * 0.4_m), 1e-12));
        // there and back, light snow with the larger depth
        CHECK(close(snowpack::depth_of(load.low, kind).high, 0.4_m, 1e-12));
        CHECK(close(snowpack::depth_of(load.mean, kind).mean, 0.4_m, 1e-12));
        CHECK(close(snowpack::depth_of(load.high, kind).low, 0.4_m, 1e-12));
        const snowpack::Depths depths = snowpack::depth_of(1_kPa, kind);
        CHECK(depths.low <= depths.mean);
        CHECK(depths.mean <= depths.high);
        CHECK(in_kPa(snowpack::load_of({kind, 0_m}).high) == 0.0);
        CHECK(in_m(snowpack::depth_of(0_kPa, kind).high) == 0.0);
    }
    // by hand, mean densities of Annex E: 0.2 kN/m2 are 20 cm fresh, 10 cm settled, 5 cm wet
    CHECK(close(snowpack::depth_of(0.2_kPa, Kind::fresh).mean, 0.20_m, 1e-12));
    CHECK(close(snowpack::depth_of(0.2_kPa, Kind::settled).mean, 0.10_m, 1e-12));
    CHECK(close(snowpack::depth_of(0.2_kPa, Kind::wet).mean, 0.05_m, 1e-12));
    // the same in US units
    CHECK(close(snowpack::depth_of(40_psf, Kind::wet).low, 1_ft, 1e-12));

    for (const double bad : {-0.1, 20.1, not_finite[0], not_finite[1], not_finite[2]}) {
        CHECK(code_of([=] { return snowpack::load_of({Kind::wet, from_m(bad)}).low; }) == "snowpack.depth.range");
        CHECK(code_of([=] { return snowpack::load_of_melt_water(from_m(bad)); }) == "snowpack.depth.range");
    }
    for (const double bad : {-0.1, 100.1, not_finite[0], not_finite[1], not_finite[2]}) {
        CHECK(code_of([=] { return snowpack::depth_of(from_kPa(bad), Kind::wet).low; }) == "snowpack.load.range");
    }
}

TEST_CASE("snowpack: layers add, low with low and high with high") {
    // by hand: 0.30 m fresh (1.0) on 0.10 m wet (4.0) on 0.02 m ice (8.992698) in the mean
    const std::vector<snowpack::Layer> layers{{Kind::ice, 0.02_m}, {Kind::wet, 0.10_m}, {Kind::fresh, 0.30_m}};
    const snowpack::Spread load = snowpack::load_of(layers);
    CHECK(close(in_kPa(load.mean), 0.30 + 0.40 + 0.02 * 8.99269805, 1e-9));
    const double low = in_kPa(snowpack::load_of(layers[0]).low) + in_kPa(snowpack::load_of(layers[1]).low) +
                       in_kPa(snowpack::load_of(layers[2]).low);
    const double high = in_kPa(snowpack::load_of(layers[0]).high) + in_kPa(snowpack::load_of(layers[1]).high) +
                        in_kPa(snowpack::load_of(layers[2]).high);
    CHECK(close(in_kPa(load.low), low, 1e-12));
    CHECK(close(in_kPa(load.high), high, 1e-12));
    // what the surface hides: all of it taken for fresh snow is less than half
    CHECK(snowpack::load_of({Kind::fresh, 0.42_m}).mean < 0.5 * load.mean);

    const std::vector<snowpack::Layer> turned(layers.rbegin(), layers.rend());
    CHECK(close(snowpack::load_of(turned).mean, load.mean, 1e-12));
    const std::vector<snowpack::Layer> split{{Kind::wet, 0.04_m}, {Kind::wet, 0.06_m}};
    CHECK(close(snowpack::load_of(split).high, snowpack::load_of(layers[1]).high, 1e-12));
    CHECK(in_kPa(snowpack::load_of(std::vector<snowpack::Layer>{}).high) == 0.0);
    CHECK(code_of([&] {
              std::vector<snowpack::Layer> bad = layers;
              bad[1].depth = -1_m;
              return snowpack::load_of(bad).low;
          }) == "snowpack.depth.range");
}

TEST_CASE("snowpack: a weighed column") {
    // county notice (wallgau.feuerwehren.bayern), read on a page: 10 cm by 10 cm, times 100 gives kg/m2
    const Area column = 0.01_m2;
    CHECK(close(in_kPa(snowpack::load_of_column(0.85, column)), 85.0 * 9.80665e-3, 1e-12));
    // by hand: 3.2 lb in a square foot are 3.2 psf
    CHECK(close(in_psf(snowpack::load_of_column(3.2 * 0.45359237, 1_ft * 1_ft)), 3.2, 1e-12));
    CHECK(in_kPa(snowpack::load_of_column(0.0, column)) == 0.0);
    // a column of water a metre deep, and the same water measured by depth: 1000 kg against 62.418 pcf
    CHECK(close(snowpack::load_of_column(1000.0, 1_m2), snowpack::load_of_melt_water(1_m), 2e-4));
    for (const double bad : {-0.1, 1e5, not_finite[0], not_finite[1], not_finite[2]}) {
        CHECK(code_of([=] { return snowpack::load_of_column(bad, column); }) == "snowpack.mass.range");
    }
    for (const double bad : {-0.1, 0.0, 1e-5, 1001.0, not_finite[0], not_finite[1], not_finite[2]}) {
        CHECK(code_of([=] { return snowpack::load_of_column(1.0, from_m2(bad)); }) == "snowpack.area.range");
    }
}

TEST_CASE("snowpack: the catalogue") {
    // 0.30 m fresh on 0.10 m wet on 0.02 m ice, as above
    const std::vector<double> load =
        evaluate(rule_named("snowpack.three_layers_load"), std::array{0.0, 0.30, 3.0, 0.10, 4.0, 0.02});
    CHECK(close(load.at(1), 0.30 + 0.40 + 0.02 * 8.99269805, 1e-9));
    // by hand: 1 kg on 10 cm by 20 cm, and in a tube of 10 cm: 9.80665e-3/0.02, 9.80665e-3/0.00785398
    CHECK(close(evaluate(rule_named("snowpack.column_load"), std::array{1.0, 0.1, 0.2}).at(0), 0.4903325, 1e-12));
    // two negative sides make an area, and so does the square of a negative diameter
    CHECK(code_of([] { return evaluate(rule_named("snowpack.column_load"), std::array{1.0, -0.1, -0.2}); }) ==
          "snowpack.column_side.range");
    CHECK(code_of([] { return evaluate(rule_named("snowpack.tube_load"), std::array{1.0, -0.1}); }) ==
          "snowpack.column_side.range");
    CHECK(close(evaluate(rule_named("snowpack.tube_load"), std::array{1.0, 0.1}).at(0), 1.248621, 1e-6));
    const std::vector<double> depths = evaluate(rule_named("snowpack.depth_of_load"), std::array{0.4, 3.0});
    CHECK(close(depths.at(1), 0.10, 1e-12));
    CHECK(depths.at(0) < depths.at(2));
}
