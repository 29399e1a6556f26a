// SPDX-License-Identifier: BSD-3-Clause
// A section modulus is a length to the third power.
#include "coverframe/units/literals.hpp"

using namespace coverframe;
using namespace coverframe::literals;

#ifdef SHOULD_FAIL
const Volume modulus = 45.0_mm * 95.0_mm / 6.0;
#else
const Volume modulus = 45.0_mm * 95.0_mm * 95.0_mm / 6.0;
#endif

int main() { return 0; }
