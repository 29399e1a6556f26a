// SPDX-License-Identifier: BSD-3-Clause
// Snow that lies against what stands beside the cover: drifts, and snow that slid from a roof.
#include <algorithm>
#include <optional>

#include "actions/arrangements/common.hpp"
#include "coverframe/units/crossing.hpp"

namespace coverframe::arranging {
namespace {

bool along_the_boat(const Neighbour& neighbour) {
    return neighbour.side == NeighbourSide::port || neighbour.side == NeighbourSide::starboard;
}

bool stands_beside(const Neighbour& neighbour, const CoverStation& station) {
    return carries(station) && (!neighbour.from || station.x >= *neighbour.from) &&
           (!neighbour.to || station.x <= *neighbour.to);
}

/// The step down to the lowest rail beside the neighbour; empty if no station is beside it or its eave is not higher.
std::optional<NeighbourStep> step_of(const Neighbour& neighbour, Stations stations) {
    NeighbourStep step{.neighbour = &neighbour, .step = {}, .lower_length = {}, .slope = from_deg(90.0), .widest = {}};
    for (const CoverStation& station : stations) {
        if (!stands_beside(neighbour, station)) continue;
        step.step = std::max(step.step, neighbour.eave_z - station.rail_z);
        step.slope = std::min(step.slope, station.slope);
        if (station.half_breadth > step.widest.half_breadth) step.widest = station;
    }
    if (!(step.step > Length{}) || !carries(step.widest)) return std::nullopt;
    step.lower_length =
        along_the_boat(neighbour) ? 2.0 * step.widest.half_breadth : stations.back().x - stations.front().x;
    return step;
}

/// One side under snow from its near to its far edge; `begin` is the distance of the near one.
LoadProfile across(const CoverStation& station, const EdgeLoad& load, Length begin, bool near_is_rail) {
    const Length width = station.half_breadth;
    if (load.extent <= begin) return even(load.beyond(station));
    LoadProfile profile{{0.0, {load.at(station, begin)}}};
    if (load.extent < begin + width) {
        const double end = in_m(load.extent - begin) / in_m(width);
        profile.push_back({end, {load.at(station, load.extent)}});
        profile.push_back({end, {load.beyond(station)}});
        profile.push_back({1.0, {load.beyond(station)}});
    } else {
        profile.push_back({1.0, {load.at(station, begin + width)}});
    }
    if (!near_is_rail) return profile;
    for (LoadPoint& point : profile) point.share = 1.0 - point.share;
    std::ranges::reverse(profile);
    return profile;
}

StationField field_at(const CoverStation& station, const Neighbour& neighbour, const EdgeLoad& load,
                      Stations stations) {
    if (along_the_boat(neighbour)) {
        return heavy_side(neighbour.side == NeighbourSide::port, across(station, load, Length{}, true),
                          across(station, load, station.half_breadth, false));
    }
    const bool ahead = neighbour.side == NeighbourSide::bow;
    const Length distance = ahead ? station.x - stations.front().x : stations.back().x - station.x;
    return both(distance <= load.extent ? load.at(station, distance) : load.beyond(station));
}

}  // namespace

std::vector<Arrangement> beside_neighbours(const Plan& plan, const DocumentSnow& snow, Stations stations,
                                           bool workings) {
    std::vector<Arrangement> all;
    for (const Neighbour& neighbour : plan.site.neighbours) {
        const std::optional<NeighbourStep> step = step_of(neighbour, stations);
        if (!step) continue;
        for (const EdgeLoad& load : snow.beside(*step)) {
            const auto field = [&](const CoverStation& s) {
                return stands_beside(neighbour, s) ? field_at(s, neighbour, load, stations) : both(snow.balanced(s));
            };
            const auto terms = [&](const CoverStation& s) {
                std::vector<Term> lines = snow.balanced_workings(s);
                lines.insert(lines.end(), load.workings.begin(), load.workings.end());
                return lines;
            };
            all.push_back(over_stations(load.heading, stations, field, workings ? WorkingsRule(terms) : nullptr));
        }
    }
    return all;
}

}  // namespace coverframe::arranging
