// SPDX-License-Identifier: BSD-3-Clause
// A bare number is no length: 1.68 of what?
#include "coverframe/units/literals.hpp"

using namespace coverframe;
using namespace coverframe::literals;

#ifdef SHOULD_FAIL
const Length height = 1.68;
#else
const Length height = 1.68_m;
#endif

int main() { return 0; }
