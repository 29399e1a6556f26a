// SPDX-License-Identifier: BSD-3-Clause
// A bare number is no angle either where a function asks for one.
#include "coverframe/units/crossing.hpp"

using namespace coverframe;
using namespace coverframe::literals;

#ifdef SHOULD_FAIL
const double slope = in_deg(18.0);
#else
const double slope = in_deg(18.0_deg);
#endif

int main() { return 0; }
