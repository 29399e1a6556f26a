// SPDX-License-Identifier: BSD-3-Clause
// An area load and a force have no sum.
#include "coverframe/units/literals.hpp"

using namespace coverframe;
using namespace coverframe::literals;

#ifdef SHOULD_FAIL
const auto load = 1.5_kPa + 2.0_kN;
#else
const auto load = 1.5_kPa + 30.0_psf;
#endif

int main() { return 0; }
