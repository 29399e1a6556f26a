// SPDX-License-Identifier: BSD-3-Clause
// A pressure may be per square metre of slope; a plan load says it is not.
#include "coverframe/units/literals.hpp"

using namespace coverframe;
using namespace coverframe::literals;

#ifdef SHOULD_FAIL
PlanLoad snow() { return 1.5_kPa; }
#else
PlanLoad snow() { return {1.5_kPa}; }
#endif

int main() { return 0; }
