// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/film/ageing.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include "coverframe/base/error.hpp"

namespace coverframe {

namespace {

void require(bool good, double value, const char* where, const char* advice) {
    if (good) return;
    throw InputError("film.ageing.range", where, std::to_string(value), advice);
}

bool over_zero(double value) { return std::isfinite(value) && value > 0; }
bool not_negative(double value) { return std::isfinite(value) && value >= 0; }

/// (t/t_1)^-n
double fall(double exponent, double known_after, double after) {
    require(exponent >= 0 && exponent <= 0.5, exponent, "/exponent", "the exponent of creep must be 0 to 0.5");
    require(over_zero(known_after), known_after, "/known_after", "times under load must be over zero");
    require(over_zero(after), after, "/after", "times under load must be over zero");
    return std::pow(after / known_after, -exponent);
}

}  // namespace

Pressure film_modulus(const Film& film, Bound tension) {
    return tension == Bound::low && film.creep_modulus ? film.creep_modulus->value : film.modulus.value;
}

double modulus_after(double modulus, double exponent, double known_after, double after) {
    require(over_zero(modulus), modulus, "/modulus", "the modulus must be over zero");
    return modulus * fall(exponent, known_after, after);
}

double tension_after(double tension, double exponent, double known_after, double after) {
    require(not_negative(tension), tension, "/tension", "the tension must not be negative");
    return tension * fall(exponent, known_after, after);
}

double tension_warmed(double tension, double stiffness, double expansion, double warmer) {
    require(not_negative(tension), tension, "/tension", "the tension must not be negative");
    require(over_zero(stiffness), stiffness, "/stiffness", "the stiffness must be over zero");
    require(expansion >= 0 && expansion <= 1e-3, expansion, "/expansion", "expansion must be 0 to 0.001 per kelvin");
    require(warmer >= -100 && warmer <= 100, warmer, "/warmer", "a change of temperature must be within 100 K");
    return std::max(0.0, tension - stiffness * expansion * warmer);
}

double stretch_left(double tension, double stiffness, double exponent, double known_after, double after) {
    require(not_negative(tension), tension, "/tension", "the tension must not be negative");
    require(over_zero(stiffness), stiffness, "/stiffness", "the stiffness must be over zero");
    const double share = fall(exponent, known_after, after);
    require(after >= known_after, after, "/after", "creep is counted from when the stiffness is known");
    return tension / stiffness * (1 / share - 1);
}

}  // namespace coverframe
