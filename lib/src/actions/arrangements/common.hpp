// SPDX-License-Identifier: BSD-3-Clause
// What the arrangements of all documents share.
#pragma once

#include <functional>
#include <memory>
#include <span>
#include <string>
#include <vector>

#include "coverframe/actions/arrangement.hpp"

namespace coverframe::arranging {

/// The load field at one station.
struct StationField {
    LoadProfile port;
    LoadProfile starboard;
};

using Stations = std::span<const CoverStation>;
using FieldRule = std::function<StationField(const CoverStation&)>;
using WorkingsRule = std::function<std::vector<Term>(const CoverStation&)>;

/// Head of an arrangement.
struct Heading {
    std::string name;
    Clause clause;
    std::string note;
};

[[nodiscard]] inline bool carries(const CoverStation& station) { return station.half_breadth > Length{}; }
[[nodiscard]] LoadProfile even(Pressure load);
[[nodiscard]] inline StationField both(Pressure load) { return {even(load), even(load)}; }
[[nodiscard]] StationField heavy_side(bool port, LoadProfile heavy, LoadProfile light);
[[nodiscard]] const char* side_name(bool port);

/// Runs a rule over the stations, and its workings over the one with the heaviest load (the first of equals).
[[nodiscard]] Arrangement over_stations(Heading heading, Stations stations, const FieldRule& field,
                                        const WorkingsRule& workings);

/// Where the arguments of a working come from, by symbol; an argument not named keeps its own words.
struct ArgumentSource {
    std::string symbol;
    std::string source;
};

/// Appends the workings of a rule of the catalogue. Arguments that stand in `terms` already are not repeated.
/// \param arguments  in the order and the units of the catalogue
void append(std::vector<Term>& terms, const std::string& rule, const std::vector<double>& arguments,
            const std::vector<ArgumentSource>& sources = {});

/// Shortest text of a number, "." as decimal mark whatever the locale.
[[nodiscard]] std::string text_of_number(double value);

/// Snow that lies against a neighbour, from the edge of the cover inwards, with all that lies under it.
struct EdgeLoad {
    Heading heading;
    std::function<Pressure(const CoverStation&, Length distance)> at;  ///< up to `extent` from the near edge, level
    std::function<Pressure(const CoverStation&)> beyond;               ///< further away
    Length extent{};
    std::vector<Term> workings;
};

/// What a drift is worked out from.
struct NeighbourStep {
    const Neighbour* neighbour = nullptr;
    Length step{};          ///< its eave above the lowest rail beside it, over 0
    Length lower_length{};  ///< of the cover, away from the neighbour
    Angle slope{};          ///< flattest slope of the cover beside it
    CoverStation widest;    ///< widest station beside it
};

/// The rules of one document applied to a cover.
class DocumentSnow {
public:
    virtual ~DocumentSnow() = default;

    [[nodiscard]] virtual Pressure balanced(const CoverStation& station) const = 0;
    /// Balanced load if nothing slid off.
    [[nodiscard]] virtual Pressure unshed(const CoverStation& station) const = 0;
    [[nodiscard]] virtual std::vector<Term> balanced_workings(const CoverStation& station) const = 0;
    [[nodiscard]] virtual Heading balanced_heading() const = 0;

    /// Arrangements of the document besides the balanced one: minimum, unbalanced, rain.
    [[nodiscard]] virtual std::vector<Arrangement> own(Stations stations, bool workings) const = 0;
    /// Clause of partial loading of a continuous ridge; no document if it does not ask for it on this cover.
    [[nodiscard]] virtual Clause partial_clause(Stations stations) const = 0;
    /// Clause by which slope takes snow away.
    [[nodiscard]] virtual Clause slope_clause() const = 0;
    /// Drift against a neighbour and snow that slid from its roof; none if the document asks for nothing.
    [[nodiscard]] virtual std::vector<EdgeLoad> beside(const NeighbourStep& step) const = 0;
};

[[nodiscard]] std::unique_ptr<DocumentSnow> asce7_snow(const Plan& plan);
[[nodiscard]] std::unique_ptr<DocumentSnow> nbc_snow(const Plan& plan);
[[nodiscard]] std::unique_ptr<DocumentSnow> en1991_1_3_snow(const Plan& plan);

[[nodiscard]] std::vector<Arrangement> partial(const Plan& plan, const DocumentSnow& snow, Stations stations,
                                               bool workings);
[[nodiscard]] std::vector<Arrangement> beside_neighbours(const Plan& plan, const DocumentSnow& snow, Stations stations,
                                                         bool workings);

}  // namespace coverframe::arranging
