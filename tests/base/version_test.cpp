// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/base/version.hpp"

#include <string>

#include <doctest/doctest.h>

using namespace coverframe;

TEST_CASE("version: the header, its three numbers and the build agree") {
    CHECK(version == COVERFRAME_VERSION);
    CHECK(version == std::to_string(version_major) + '.' + std::to_string(version_minor) + '.' +
                         std::to_string(version_patch));
}
