// SPDX-License-Identifier: BSD-3-Clause
// One strip of film, or one strap under a load spread over its plan length.
#include "coverframe/film/strip.hpp"
#include "model.hpp"

namespace coverframe::validation {
namespace {

const std::string rule = "strip_state";

/// Input: "span", "drop" of the lower end (0 if left out), "EA", "pretension" along the chord or "free_length", "load"
/// per plan length.
StripState state_of(const Input& input) {
    const double span = input.si<Length>("span");
    const std::array<double, 3> upper{0, 0, 0};
    const std::array<double, 3> lower{0, span, input.has("drop") ? -input.si<Length>("drop") : 0.0};
    Strip strip;
    strip.stiffness = input.si<Force>("EA");
    strip.free_length = input.has("free_length")
                            ? input.si<Length>("free_length")
                            : free_length_for_tension(strip.stiffness, input.si<Force>("pretension"), upper, lower);
    strip.load = input.si<LineLoad>("load") * span;
    return strip_state(strip, upper, lower);
}

Number force(double newtons) { return {newtons, Dimension::force, rule}; }
Number metres(double m, const std::string& function) { return {m, Dimension::length, function}; }

Answers strip(const Input& input) {
    const StripState state = state_of(input);
    const Hollow hollow = hollow_of(state);
    return {{"H", force(state.level_force)},
            {"T_upper", force(state.tension_upper)},
            {"T_lower", force(state.tension_lower)},
            {"down_upper", force(-state.pull_upper[2])},
            {"up_lower", force(state.pull_lower[2])},
            {"sag", metres(state.sag, rule)},
            {"hollow_from", metres(hollow.from, "hollow_of")},
            {"hollow_to", metres(hollow.to, "hollow_of")},
            {"hollow_deepest", metres(hollow.deepest, "hollow_of")},
            {"hollow_depth", metres(hollow.depth, "hollow_of")},
            {"hollow_area", {hollow.area, Dimension::area, "hollow_of"}}};
}

}  // namespace

void add_strip_models(std::map<std::string, Model>& all) { all["strip"] = strip; }

}  // namespace coverframe::validation
