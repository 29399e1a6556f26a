// SPDX-License-Identifier: BSD-3-Clause
// One call through each part a user of the package meets first. Prints what consumer.py expects.
#include <iostream>

#include "coverframe/base/error.hpp"
#include "coverframe/base/version.hpp"
#include "coverframe/units/crossing.hpp"
#include "coverframe/units/text.hpp"

int main() {
    std::cout << coverframe::version << '\n';
    std::cout << coverframe::in_mm(coverframe::read<coverframe::Length>("5 ft 6 in")) << " mm\n";
    try {
        (void)coverframe::read<coverframe::Pressure>("1.5 kN");
    } catch (const coverframe::InputError& error) {
        std::cout << error.code() << '\n';
    }
}
