// SPDX-License-Identifier: BSD-3-Clause
#include "actions/catalogue/entry.hpp"

namespace coverframe::catalogue {

void add_en1991_1_6(std::vector<Rule>& /*rules*/) {}

}  // namespace coverframe::catalogue
