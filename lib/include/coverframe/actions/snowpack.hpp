// SPDX-License-Identifier: BSD-3-Clause
// Snow as it is found on a cover: from a depth, a weighed column or its melt water to a load, and back.
//
// Depth alone is no check of a cover: a foot of wet snow weighs eight times as much as a foot of fluffy snow. And a
// layer of wet snow or ice hides under fresh snow, where a rule on the surface does not find it (Scotland 2009 to 2011:
// 600 to 1200 mm on roofs with ice under it, after repeated falls; CROSS-UK report 264). So dig down to the film in
// more than one place and name every layer, or better weigh a column of the full depth: weighing needs no density and
// is the most exact of the three.
//
// A density is a range somebody published, with low, mean and high, and the load of a layer keeps all three. Judge
// strength by the high one. To find at which depth a load is reached, take the smallest depth. The deepest snow and
// the heaviest snow of a winter need not fall on one day.
//
// None of this is a design load. Ground loads of 50 years from a record of depths: depth_relation.hpp.
#pragma once

#include <array>
#include <span>

#include "coverframe/actions/argument.hpp"
#include "coverframe/base/finding.hpp"

namespace coverframe::snowpack {

inline const Clause clause_density{"snow as found", "published densities"};
inline const Clause clause_column{"snow as found", "weighed column"};
inline const Clause clause_water{"snow as found", "melt water"};

/// What lies there. The first six are what a crew can tell apart; the others are finer, or belong to a country and a
/// season.
enum class Kind {
    fresh,                    ///< fallen within hours
    settled,                  ///< hours to days old
    old,                      ///< weeks to months old
    wet,                      ///< melting, or rained on
    ice,                      ///< solid, frozen through
    water,                    ///< standing in a pocket
    fluffy,                   ///< fresh and light, 12 to 15 inches to an inch of water
    ordinary_fresh,           ///< fresh, 10 to 12 inches to an inch of water
    spring_storm,             ///< one storm, Colorado, 6 March 1990
    packed,                   ///< packed or old, 3 to 5 inches to an inch of water
    heavy_wet,                ///< wet, 3 to 4 inches to an inch of water
    soaked,                   ///< wet snow as it lay on film houses
    roof_canada,              ///< measured on roofs in Canada, all kinds
    roof_finland,             ///< measured on single roofs in Finland
    ground_finland_february,  ///< 2021
    ground_finland_march,     ///< 2021
    ground_finland_april,     ///< 2021
    ground_sweden,            ///< behind the Swedish map of ground loads
    ground_ohio,              ///< packs that carried the greatest loads
};

[[nodiscard]] constexpr std::array<const char*, 19> choices_of(Kind) {
    return {"fresh",
            "settled",
            "old",
            "wet",
            "ice",
            "water",
            "fluffy",
            "ordinary fresh",
            "spring storm",
            "packed",
            "heavy wet",
            "soaked",
            "roof Canada",
            "roof Finland",
            "ground Finland February",
            "ground Finland March",
            "ground Finland April",
            "ground Sweden",
            "ground Ohio"};
}

/// Unit weight of water that snow melts to: 62.418 pcf, 5.20 psf an inch.
/// Source: USDA Natural Resources Conservation Service, Alaska snow survey; read on a page.
inline constexpr UnitWeight water_weight = from_pcf(62.418);

/// Unit weight of one kind of snow, and who published each number.
struct Density {
    UnitWeight low{};   ///< [N/m3]
    UnitWeight mean{};  ///< printed as a mean, or the middle of a printed range; its source says which
    UnitWeight high{};
    const char* low_source = "";
    const char* mean_source = "";
    const char* high_source = "";
};

/// Published unit weights of a kind of snow.
/// \return low, mean and high [N/m3] with a source for each
/// Limits: what was measured elsewhere. Sources differ by a factor of two within one kind.
/// Source: beside each number.
/// \throws InputError snowpack.kind.unknown
[[nodiscard]] const Density& density_of(Kind kind);

/// A load with its spread.
struct Spread {
    Pressure low{};
    Pressure mean{};
    Pressure high{};
};

/// One layer, measured straight down.
struct Layer {
    Kind kind = Kind::wet;
    Length depth{};  ///< [m], 0 to 20
};

/// Load of one layer.
/// s = gamma d
/// \return low, mean and high, per horizontal area [Pa]
/// Limits: depth is measured straight down, not across the slope.
/// Source: statics; densities as `density_of`.
/// \throws InputError snowpack.depth.range, snowpack.kind.unknown
[[nodiscard]] Spread load_of(const Layer& layer);

/// Load of several layers, low with low and high with high: the widest spread they can have.
/// s = sum of gamma_i d_i
/// \param layers  in any order; none is a bare cover
/// \return low, mean and high, per horizontal area [Pa]
/// Limits: as for one layer.
/// Source: statics; densities as `density_of`.
/// \throws InputError snowpack.depth.range, snowpack.kind.unknown
[[nodiscard]] Spread load_of(std::span<const Layer> layers);

/// Depths that may make a load.
struct Depths {
    Length low{};  ///< if the snow is as heavy as published: clear by this one
    Length mean{};
    Length high{};  ///< if it is as light as published
};

/// Which depth of one kind makes a load.
/// d = s/gamma
/// \param load  [Pa], 0 to 100 kPa
/// \return depth [m] with the high, mean and low unit weight
/// Limits: the whole depth of one kind. Where wet snow or ice may lie below, take the depth of that kind.
/// Source: statics; densities as `density_of`.
/// \throws InputError snowpack.load.range, snowpack.kind.unknown
[[nodiscard]] Depths depth_of(Pressure load, Kind kind);

/// Load from a column cut through the full depth and weighed.
/// s = m g/A
/// \param mass_kg  of the column [kg], 0 to 10000
/// \param area     of the column seen from above [m2], 1e-4 to 1000
/// \return load, per horizontal area [Pa]
/// Limits: g = 9.80665 m/s2. A column of 10 cm by 10 cm gives a hundred times its kilograms to the square metre.
/// Source: statics; the 10 cm column read on a page (county notice, wallgau.feuerwehren.bayern).
/// \throws InputError snowpack.mass.range, snowpack.area.range
[[nodiscard]] constexpr Pressure load_of_column(double mass_kg, Area area) {
    argument::within(mass_kg, 0.0, 1e4, {"snowpack.mass.range", "mass of the column", "kg"});
    argument::within(in_m2(area), 1e-4, 1000.0, {"snowpack.area.range", "area of the column", "m2"});
    return from_N(mass_kg * 9.80665) / area;
}

/// Load from the depth of the water a column melts to, measured in a vessel of the same area.
/// s = gamma_w d
/// \param melt_depth  d [m], 0 to 20
/// \return load, per horizontal area [Pa]
/// Limits: gamma_w = 62.418 pcf, 9.81 Pa a millimetre.
/// Source: USDA Natural Resources Conservation Service, Alaska snow survey; read on a page.
/// \throws InputError snowpack.depth.range
[[nodiscard]] constexpr Pressure load_of_melt_water(Length melt_depth) {
    argument::within(in_m(melt_depth), 0.0, 20.0, {"snowpack.depth.range", "depth of the melt water", "m"});
    return water_weight * melt_depth;
}

}  // namespace coverframe::snowpack
