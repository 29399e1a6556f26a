// SPDX-License-Identifier: BSD-3-Clause
#include "assess/solved.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <string>

using namespace coverframe;

TEST_CASE("assess: a state out of balance is not used") {
    CoverState state;
    state.frame.status = SolveStatus::converged;
    state.vertical_load = 1000.0;
    for (const double reaction : {1000.0, 1000.0 + 0.9e-3, 1000.0 - 0.9e-3}) {
        state.vertical_reaction = reaction;
        assess_detail::require_balance(state);
        CHECK(state.usable());
    }
    for (const double reaction : {1000.0 + 1.1e-3, 999.0, std::nan("")}) {
        CoverState off = state;
        off.vertical_reaction = reaction;
        assess_detail::require_balance(off);
        CHECK_FALSE(off.usable());
        CHECK(off.frame.message.find("1000 N") != std::string::npos);
    }
}
