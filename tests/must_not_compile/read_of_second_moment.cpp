// SPDX-License-Identifier: BSD-3-Clause
// Only quantities with a table of units are read from text.
#include "coverframe/units/text.hpp"

using namespace coverframe;

#ifdef SHOULD_FAIL
const auto inertia = read<SecondMoment>("7 m4");
#else
const auto length = read<Length>("7 m");
#endif

int main() { return 0; }
