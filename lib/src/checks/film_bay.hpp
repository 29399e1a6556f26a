// SPDX-License-Identifier: BSD-3-Clause
// What the checks of the film share: strips with their states, and bays that have film.
#pragma once

#include <algorithm>
#include <string>
#include <vector>

#include "common.hpp"
#include "coverframe/checks/check.hpp"

namespace coverframe::checks_detail {

/// A strip with its state.
struct Hung {
    const CoverStrip& strip;
    const StripState& state;
    double x = 0;  ///< [m]
};

[[nodiscard]] inline Hung hung(const CheckInput& input, int i) {
    const CoverStrip& strip = input.cover.strips[at(i)];
    return {strip, input.state.strips[at(i)], x_of(input.cover, strip)};
}

/// "on the port side", or "on both sides" where the strip across is as bad.
template <class Badness>
[[nodiscard]] std::string on_side(const CheckInput& input, const Hung& worst, Badness badness) {
    for (std::size_t i = 0; i < input.cover.strips.size(); ++i) {
        const CoverStrip& strip = input.cover.strips[i];
        if (strip.node == worst.strip.node && strip.side != worst.strip.side &&
            alike(badness(hung(input, static_cast<int>(i))), badness(worst)))
            return "on both sides";
    }
    return std::string("on the ") + name_of(worst.strip.side) + " side";
}

/// The strip of a bay for which `badness` is largest; the first of equals. \pre at least one
template <class Badness>
[[nodiscard]] int worst_strip(const CheckInput& input, const std::vector<int>& strips, Badness badness) {
    return *std::ranges::max_element(strips, {}, [&](int i) { return badness(hung(input, i)); });
}

/// A bay that has film.
struct FilmBay {
    const RidgeBay& bay;
    std::string part;         ///< "film, U1 to U2"
    std::vector<int> strips;  ///< of Cover::strips
};

/// One finding for each bay that has film.
template <class Make>
[[nodiscard]] std::vector<Finding> for_each_bay(const CheckInput& input, Make make) {
    require_usable(input);
    std::vector<Finding> findings;
    for (const RidgeBay& bay : input.cover.layout.bays) {
        const FilmBay film{bay, bay_part("film", bay), strips_of(input.cover, bay)};
        if (!film.strips.empty()) findings.push_back(make(film));
    }
    return findings;
}

/// How steeply a strip falls from ridge to rail, and what of that its sag takes away at the rail [-].
[[nodiscard]] inline double chord_slope(const StripState& state) { return -state.rise / state.span; }
[[nodiscard]] inline double sag_slope(const StripState& state) { return 4.0 * state.sag / state.span; }

}  // namespace coverframe::checks_detail
