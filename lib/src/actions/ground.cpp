// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/ground.hpp"

#include <string>

#include "actions/arrangements/common.hpp"
#include "coverframe/base/error.hpp"

namespace coverframe {

using arranging::text_of_number;

Pressure load_for(const GroundSnow& ground, SnowDocument rules) {
    if (ground.document == rules) return ground.load;
    throw InputError("ground.document.mixed", "", name_of(ground.document),
                     std::string("a ground load of ") + name_of(ground.document) +
                         " does not belong in the rules of " + name_of(rules) + "; their loads do not mean the same");
}

Pressure factored(const GroundSnow& ground, Pressure snow_load, double factor) {
    const SnowFactorRange due = snow_factor_range(ground.document);
    if (factor >= due.low && factor <= due.high) return factor * snow_load;
    const std::string wanted = text_of_number(due.low) + (due.low == due.high ? "" : " to " + text_of_number(due.high));
    const bool strength = level_of(ground.document) == Level::strength;
    throw InputError(
        "ground.factor.mixed", "", text_of_number(factor),
        std::string("a ground load of ") + name_of(ground.document) +
            (strength ? " is at strength level already" : " is a characteristic load with no factor in it") +
            ": its factor on snow is " + wanted + " (" + due.clause + "), not " + text_of_number(factor));
}

}  // namespace coverframe
