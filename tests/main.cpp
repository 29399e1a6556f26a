// SPDX-License-Identifier: BSD-3-Clause
// The one translation unit that carries doctest's own code and the main function of coverframe_tests.
#define DOCTEST_CONFIG_IMPLEMENT_WITH_MAIN
#include <doctest/doctest.h>
