// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/en1991_1_3_annex_c.hpp"

#include <algorithm>
#include <charconv>
#include <string>

#include "coverframe/base/error.hpp"

namespace coverframe::en1991_1_3 {

namespace {

constexpr std::array four_zones{1.0, 2.0, 3.0, 4.5};
constexpr std::array three_zones{1.0, 2.0, 4.0};

/// One row of Table C.1: (per_zone Z + constant) [1 + (A/altitude)^2], or per_zone Z + constant + A/altitude.
struct Row {
    std::span<const double> zones;
    double per_zone;  // [kN/m2]
    double constant;  // [kN/m2]
    double altitude;  // [m]
    bool squared;
};

Row row_of(ClimaticRegion region) {
    switch (region) {
        case ClimaticRegion::alpine: return {four_zones, 0.642, 0.009, 728.0, true};
        case ClimaticRegion::central_east: return {four_zones, 0.264, -0.002, 256.0, true};
        case ClimaticRegion::central_west: return {four_zones, 0.164, -0.082, 966.0, false};
        case ClimaticRegion::greece: return {three_zones, 0.420, -0.030, 917.0, true};
        case ClimaticRegion::iberian_peninsula: return {three_zones, 0.190, -0.095, 524.0, true};
        case ClimaticRegion::mediterranean: return {four_zones, 0.498, -0.209, 452.0, true};
        case ClimaticRegion::sweden_finland: return {four_zones, 0.790, 0.375, 336.0, false};
        case ClimaticRegion::uk_ireland: return {four_zones, 0.140, -0.1, 501.0, false};
        case ClimaticRegion::norway:
        case ClimaticRegion::iceland: return {{}, 0.0, 0.0, 1.0, false};
    }
    argument::refuse({"en1991_1_3.region.unknown", "region number", "-"}, static_cast<double>(region), 0, 9);
}

std::string text_of(double zone) {
    std::array<char, 32> digits{};
    const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), zone, std::chars_format::general, 6);
    return {digits.data(), end.ptr};
}

[[noreturn]] void refuse_zone(double zone, const std::string& region, std::span<const double> zones) {
    std::string list;
    for (const double known : zones) list += (list.empty() ? "" : ", ") + text_of(known);
    throw InputError("en1991_1_3.zone.range", "", text_of(zone),
                     "zone " + text_of(zone) + " is not on the map of the region " + region +
                         " (EN 1991-1-3:2003, Annex C), whose zones are " + list);
}

}  // namespace

std::span<const double> map_zones(ClimaticRegion region) { return row_of(region).zones; }

Pressure ground_load_C_1(ClimaticRegion region, double zone, Length altitude) {
    const Row row = row_of(region);
    const std::string name = choices_of(region)[static_cast<std::size_t>(region)];
    if (row.zones.empty()) {
        throw InputError("en1991_1_3.region.range", "", name,
                         "EN 1991-1-3:2003, Annex C has no formula for " + name +
                             ": ask the national authority for the ground snow load of the place");
    }
    if (std::ranges::find(row.zones, zone) == row.zones.end()) refuse_zone(zone, name, row.zones);
    const double a = argument::within(
        in_m(altitude), 0.0, 1500.0,
        {"en1991_1_3.altitude.range", "altitude, which EN 1991-1-3:2003, 1.1 limits to 1500 m, is", "m"});
    const double at_sea_level = row.per_zone * zone + row.constant;
    const double rise = a / row.altitude;
    return from_kPa(row.squared ? at_sea_level * (1.0 + rise * rise) : at_sea_level + rise);
}

}  // namespace coverframe::en1991_1_3
