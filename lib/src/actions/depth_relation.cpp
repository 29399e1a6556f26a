// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/depth_relation.hpp"

#include <cmath>

namespace coverframe::depth_relation {

Pressure tobiasson_greatorex_1996(Length depth) {
    argument::within(in_m(depth), 0.0, 10.0, {"depth_relation.depth.range", "50-year depth", "m"});
    return from_psf(0.279 * std::pow(in_in(depth), 1.36));
}

}  // namespace coverframe::depth_relation
