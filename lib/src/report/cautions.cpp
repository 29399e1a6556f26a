// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/report/cautions.hpp"

#include <array>

namespace coverframe {

std::span<const std::string_view> cautions() {
    using namespace std::string_view_literals;
    static constexpr std::array sentences{
        "To be read and judged by a competent person, on the boat, before anything is built, changed or left "
        "standing."sv,
        "Local codes and licensed practice come first; this sheet is a calculation and does not take the place of "
        "an engineer."sv,
        "Nobody stands or climbs on a loaded cover, and nobody is under it while snow is on it or is being "
        "cleared."sv,
        "Clear snow from the ground with a soft, blunt tool, a little at a time and evenly on both sides, and "
        "start long before the depth the cover was judged for."sv,
        "Winterise first: engine, water, bilge, batteries and fuel are done before the film goes on, so that no "
        "hot or wet work is left to do under it."sv,
        "Flame and fuel vapour kill: air out the bilge, cover the fuel vents before any heating, and OPEN THEM "
        "AGAIN as soon as the heating is done, or the tank cannot breathe."sv,
        "Have an extinguisher and water in reach while heating, and keep a fire watch afterwards for as long as "
        "the fire rules of the place ask, never under half an hour; gas bottles stay outside, upright, away from "
        "the film."sv,
        "Air the space before anyone enters: carbon monoxide, solvent and gas gather under a closed cover; no "
        "engine or heater runs inside."sv,
        "After the first cold night, after every snowfall and every gale look at the cover: straps re-tensioned, "
        "uprights plumb and standing on their pads, no water lying on the film."sv,
    };
    return sentences;
}

}  // namespace coverframe
