// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/en1991_1_6.hpp"

#include "coverframe/base/error.hpp"

namespace coverframe::en1991_1_6 {

namespace {

double years_of(Duration duration) {
    switch (duration) {
        case Duration::up_to_3_days: return 2.0;
        case Duration::up_to_3_months: return 5.0;
        case Duration::up_to_1_year: return 10.0;
        case Duration::longer: return 50.0;
    }
    argument::refuse({"en1991_1_6.duration.unknown", "duration number", "-"}, static_cast<double>(duration), 0, 3);
}

}  // namespace

double return_period_3_1(Duration duration, Erection erection) {
    const double years = years_of(duration);
    if (erection != Erection::once && erection != Erection::again) {
        argument::refuse({"en1991_1_6.erection.unknown", "erection number", "-"}, static_cast<double>(erection), 0, 1);
    }
    if (erection == Erection::again && duration != Duration::longer) {
        throw InputError("en1991_1_6.duration.range", "", choices_of(duration)[static_cast<std::size_t>(duration)],
                         "what is set up again every winter is not one use of a short duration (EN 1991-1-6:2005, "
                         "3.1): take \"longer\"");
    }
    return years;
}

}  // namespace coverframe::en1991_1_6
