// SPDX-License-Identifier: BSD-3-Clause
// An area load is no force until it is given an area.
#include "coverframe/units/literals.hpp"

using namespace coverframe;
using namespace coverframe::literals;

#ifdef SHOULD_FAIL
const Force load = 1.5_kPa;
#else
const Force load = 1.5_kPa * 2.0_m2;
#endif

int main() { return 0; }
