// SPDX-License-Identifier: BSD-3-Clause
// A tension per metre of film is not its stress until it is given a thickness.
#include "coverframe/units/literals.hpp"

using namespace coverframe;
using namespace coverframe::literals;

#ifdef SHOULD_FAIL
const Pressure stress = 2.0_kN_per_m;
#else
const Pressure stress = 2.0_kN_per_m / 0.18_mm;
#endif

int main() { return 0; }
