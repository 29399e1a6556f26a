// SPDX-License-Identifier: BSD-3-Clause
// A quantity does not turn into a number by itself.
#include "coverframe/units/crossing.hpp"

using namespace coverframe;
using namespace coverframe::literals;

#ifdef SHOULD_FAIL
const double height = 1.68_m;
#else
const double height = in_mm(1.68_m);
#endif

int main() { return 0; }
