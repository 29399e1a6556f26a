// SPDX-License-Identifier: BSD-3-Clause
// The torque of Boost.Units carries an angle; a bending moment is force times length.
#include "coverframe/units/literals.hpp"

#include <boost/units/systems/si/torque.hpp>

using namespace coverframe;
using namespace coverframe::literals;

#ifdef SHOULD_FAIL
const Moment moment = 1.0 * boost::units::si::newton_meter;
#else
const Moment moment = 2.0 * boost::units::si::newton * boost::units::si::meter;
#endif

int main() { return 0; }
