// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/en13782.hpp"

#include "coverframe/base/error.hpp"

namespace coverframe::en13782 {

Pressure reduced_snow_load(Clearing clearing) {
    switch (clearing) {
        case Clearing::depth_to_8_cm: return from_kPa(0.2);
        case Clearing::none:
            throw InputError("en13782.clearing.range", "", "none",
                             "the reduced snow load of EN 13782 is for a cover that somebody keeps cleared to 8 cm; "
                             "without that take the snow load of EN 1991-1-3");
    }
    argument::refuse({"en13782.clearing.unknown", "clearing number", "-"}, static_cast<double>(clearing), 0, 1);
}

}  // namespace coverframe::en13782
