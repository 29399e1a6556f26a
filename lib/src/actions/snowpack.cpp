// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/snowpack.hpp"

#include <array>
#include <cstddef>

namespace coverframe::snowpack {
namespace {

constexpr UnitWeight kg_per_m3(double density) { return from_N_per_m3(density * 9.80665); }

/// So many inches of snow melt to one inch of water.
constexpr UnitWeight inches_to_one(double inches) { return water_weight / inches; }

constexpr const char* annex_e = "EN 1991-1-3:2003, Annex E, read as quoted (skierniewice.pinb.pl, notice)";
constexpr const char* annex_e_middle =
    "middle of 2.5 to 3.5 kN/m3, EN 1991-1-3:2003, Annex E, read as quoted "
    "(skierniewice.pinb.pl, notice)";
constexpr const char* annex_e_old =
    "where old snow begins, EN 1991-1-3:2003, Annex E, read as quoted "
    "(skierniewice.pinb.pl, notice)";
constexpr const char* fifteen_to_one = "fluffy snow, 15 to 1, television weather page, read (mywabashvalley.com)";
constexpr const char* five_to_one = "wet snow, 5 to 1, television weather page, read (mywabashvalley.com)";
constexpr const char* light = "fresh and light, 5 pcf, design-firm article, read (sgh.com)";
constexpr const char* forty_pcf = "wet snow up to 40 pcf, design-firm article, read (sgh.com)";
constexpr const char* insurers = "insurance research institute guidance, read as quoted (deadlinedetroit.com)";
constexpr const char* colorado = "3.48 in of water in 17 in, Colorado Climate Center, release of 9 May 2001, read";
constexpr const char* ohio = "0.15 g/cm3, Schmidlin et al., J. Applied Meteorology 31 (1992), abstract, read";
constexpr const char* martinec = "490 kg/m3 at the yearly maximum load of 1975, Martinec, J. Glaciology, read";
constexpr const char* bartok = "3 to 4 in to an inch of rain, Bartok, trade magazine, read (nurserymag.com)";
constexpr const char* grubinger = "a foot at 30 to 40 psf, Grubinger quoting a builder, read (farmingmagazine.com)";
constexpr const char* canada = "roofs 1.0 to 4.5 kN/m3, Ontario code, appendix to 9.4.2.2, read";
constexpr const char* syke = "Finnish Environment Institute, estimating the snow load of a roof, read";
constexpr const char* boverket = "230 to 280 kg/m3 by region, Boverket, snow load on the ground, read";
constexpr const char* broadcaster = "10 cm at 90 kg/m2, broadcaster's page, read (br.de)";
constexpr const char* ice = "917 kg/m3, pure ice; from memory, sure";
constexpr const char* nrcs = "62.418 pcf, USDA NRCS, Alaska snow survey, read";

constexpr Density range(UnitWeight low, UnitWeight high, const char* source) {
    return {low, 0.5 * (low + high), high, source, source, source};
}

/// In the order of Kind.
constexpr std::array<Density, 19> densities{{
    {inches_to_one(15), from_kN_per_m3(1.0), from_pcf(62.418 * 3.48 / 17.0), fifteen_to_one, annex_e, colorado},
    {kg_per_m3(150), from_kN_per_m3(2.0), from_kN_per_m3(2.5), ohio, annex_e, annex_e_old},
    {inches_to_one(5), from_kN_per_m3(3.0), kg_per_m3(490), insurers, annex_e_middle, martinec},
    {inches_to_one(5), from_kN_per_m3(4.0), from_pcf(40), five_to_one, annex_e, forty_pcf},
    {kg_per_m3(900), kg_per_m3(917), kg_per_m3(917), broadcaster, ice, ice},
    range(water_weight, water_weight, nrcs),
    {inches_to_one(15), from_pcf(5), inches_to_one(12), fifteen_to_one, light, insurers},
    range(inches_to_one(12), inches_to_one(10), insurers),
    range(from_pcf(62.418 * 3.48 / 17.0), from_pcf(62.418 * 3.48 / 17.0), colorado),
    range(inches_to_one(5), inches_to_one(3), insurers),
    range(inches_to_one(4), inches_to_one(3), bartok),
    range(from_pcf(30), from_pcf(40), grubinger),
    range(from_kN_per_m3(1.0), from_kN_per_m3(4.5), canada),
    range(kg_per_m3(190), kg_per_m3(320), syke),
    range(kg_per_m3(180), kg_per_m3(210), syke),
    range(kg_per_m3(240), kg_per_m3(310), syke),
    range(kg_per_m3(300), kg_per_m3(365), syke),
    range(kg_per_m3(230), kg_per_m3(280), boverket),
    range(kg_per_m3(150), kg_per_m3(150), ohio),
}};

static_assert(densities.size() == choices_of(Kind{}).size());

}  // namespace

const Density& density_of(Kind kind) {
    const auto number = static_cast<std::size_t>(kind);
    if (number >= densities.size()) {
        argument::refuse({"snowpack.kind.unknown", "kind of snow number", "-"}, static_cast<double>(kind), 0,
                         static_cast<double>(densities.size() - 1));
    }
    return densities[number];
}

Spread load_of(const Layer& layer) {
    argument::within(in_m(layer.depth), 0.0, 20.0, {"snowpack.depth.range", "depth of a layer", "m"});
    const Density& density = density_of(layer.kind);
    return {density.low * layer.depth, density.mean * layer.depth, density.high * layer.depth};
}

Spread load_of(std::span<const Layer> layers) {
    Spread sum;
    for (const Layer& layer : layers) {
        const Spread load = load_of(layer);
        sum.low += load.low;
        sum.mean += load.mean;
        sum.high += load.high;
    }
    return sum;
}

Depths depth_of(Pressure load, Kind kind) {
    argument::within(in_kPa(load), 0.0, 100.0, {"snowpack.load.range", "load", "kPa"});
    const Density& density = density_of(kind);
    return {load / density.high, load / density.mean, load / density.low};
}

}  // namespace coverframe::snowpack
