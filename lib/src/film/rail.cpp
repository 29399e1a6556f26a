// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/film/rail.hpp"

#include <cmath>
#include <numbers>

#include "coverframe/base/error.hpp"
#include "coverframe/units/crossing.hpp"

namespace coverframe {

RailTurn turn_over_rail(double tension, Angle arrives, Angle leaves, double friction) {
    const double in = in_rad(arrives);
    const double out = in_rad(leaves);
    const bool good = std::isfinite(tension) && tension >= 0 && std::abs(in) <= std::numbers::pi / 2 && out >= in &&
                      out <= std::numbers::pi && friction >= 0 && friction <= 2;
    if (!good) {
        throw InputError(
            "film.rail.range", "", "",
            "film must arrive at the rail within a right angle of the level and leave it no flatter, down to "
            "180 degrees; its pull must not be negative, friction 0 to 2");
    }
    RailTurn r;
    r.turn = out - in;
    const double cone = std::exp(friction * r.turn);
    r.band_pull = {tension / cone, tension * cone};
    for (std::size_t i = 0; i < 2; ++i) r.band_lift[i] = r.band_pull[i] * std::sin(out);
    r.relief = {tension - r.band_pull[1], tension - r.band_pull[0]};
    // The film above pulls the rail up and in along its own line, the film below pulls it down along the hull.
    r.rail_down = tension * (std::sin(out) - std::sin(in));
    r.rail_inwards = tension * (std::cos(in) - std::cos(out));
    return r;
}

}  // namespace coverframe
