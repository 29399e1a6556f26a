// SPDX-License-Identifier: BSD-3-Clause
#include "actions/catalogue/nbc.hpp"

namespace coverframe::catalogue {

void add_nbc2020(std::vector<Rule>& rules) { add_nbc(rules, {"nbc2020", "NBC 2020", false}); }

}  // namespace coverframe::catalogue
