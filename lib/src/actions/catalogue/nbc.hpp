// SPDX-License-Identifier: BSD-3-Clause
// The entries that every edition of the Canadian code has.
#pragma once

#include <string>
#include <vector>

#include "actions/catalogue/entry.hpp"

namespace coverframe::catalogue {

/// An edition, as its entries are called and cited.
struct NbcEdition {
    std::string space;       ///< "nbc2015"
    std::string document;    ///< "NBC 2015"
    bool read_apart = true;  ///< false: what was read was read for another edition, that this one keeps it is memory
};

void add_nbc(std::vector<Rule>& rules, const NbcEdition& edition);

}  // namespace coverframe::catalogue
