// SPDX-License-Identifier: BSD-3-Clause
// The quantities of the library: Boost.Units types under the names of the trade.
//
// Everything is held in SI. Two dimensions of structural mechanics have no unit in Boost.Units under their own
// name, or have a wrong one under a tempting name, so they are fixed here once:
//   * force times length is `si::energy`; `si::torque` carries an angle and is NOT a bending moment;
//   * force per length is `si::surface_tension`; it serves for line loads and for film tension;
//   * length to the fourth power is the second moment of area; Boost's "moment of inertia" is the one of a mass.
#pragma once

#include <boost/units/derived_dimension.hpp>
#include <boost/units/physical_dimensions/volume.hpp>
#include <boost/units/quantity.hpp>
#include <boost/units/systems/si/area.hpp>
#include <boost/units/systems/si/dimensionless.hpp>
#include <boost/units/systems/si/energy.hpp>
#include <boost/units/systems/si/force.hpp>
#include <boost/units/systems/si/length.hpp>
#include <boost/units/systems/si/plane_angle.hpp>
#include <boost/units/systems/si/pressure.hpp>
#include <boost/units/systems/si/surface_tension.hpp>
#include <boost/units/systems/si/temperature.hpp>
#include <boost/units/systems/si/volume.hpp>

namespace coverframe {

namespace dimension {
namespace bu = boost::units;
using second_moment = bu::derived_dimension<bu::length_base_dimension, 4>::type;
using unit_weight =
    bu::derived_dimension<bu::mass_base_dimension, 1, bu::length_base_dimension, -2, bu::time_base_dimension, -2>::type;
}  // namespace dimension

using Length = boost::units::quantity<boost::units::si::length>;                    ///< [m]
using Area = boost::units::quantity<boost::units::si::area>;                        ///< [m2]
using Volume = boost::units::quantity<boost::units::si::volume>;                    ///< [m3], also section modulus
using SecondMoment =                                                                ///< second moment of area [m4]
    boost::units::quantity<boost::units::unit<dimension::second_moment, boost::units::si::system>>;
using Force = boost::units::quantity<boost::units::si::force>;                      ///< [N]
using Moment = boost::units::quantity<boost::units::si::energy>;                    ///< bending moment [N m]
using LineLoad = boost::units::quantity<boost::units::si::surface_tension>;         ///< force per length [N/m]
using Pressure = boost::units::quantity<boost::units::si::pressure>;                ///< area load or stress [Pa]
using UnitWeight =                                                                  ///< weight per volume [N/m3]
    boost::units::quantity<boost::units::unit<dimension::unit_weight, boost::units::si::system>>;
using Angle = boost::units::quantity<boost::units::si::plane_angle>;                ///< [rad]
using TemperatureDifference = boost::units::quantity<boost::units::si::temperature>;  ///< a difference, [K]

/// Area load on the horizontal projection of a surface (how every snow load is given).
struct PlanLoad {
    Pressure value{};
};

}  // namespace coverframe
