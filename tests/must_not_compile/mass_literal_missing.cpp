// SPDX-License-Identifier: BSD-3-Clause
// There is no mass among the literals: a load is a force.
#include "coverframe/units/literals.hpp"

using namespace coverframe;
using namespace coverframe::literals;

#ifdef SHOULD_FAIL
const Force load = 60.0_kg;
#else
const Force load = 0.6_kN;
#endif

int main() { return 0; }
