// SPDX-License-Identifier: BSD-3-Clause
#include "actions/catalogue/nbc.hpp"

namespace coverframe::catalogue {

void add_nbc2015(std::vector<Rule>& rules) { add_nbc(rules, {"nbc2015", "NBC 2015"}); }

}  // namespace coverframe::catalogue
