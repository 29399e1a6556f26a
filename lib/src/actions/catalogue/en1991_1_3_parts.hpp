// SPDX-License-Identifier: BSD-3-Clause
// Parts of the entries of EN 1991-1-3, each in the file of its name.
#pragma once

#include "actions/catalogue/entry.hpp"

namespace coverframe::catalogue {

void add_en1991_1_3_shapes(std::vector<Rule>& rules);   ///< 5.3.2 to 5.3.5
void add_en1991_1_3_drift(std::vector<Rule>& rules);    ///< 5.3.6
void add_en1991_1_3_local(std::vector<Rule>& rules);    ///< clause 6
void add_en1991_1_3_annex_b(std::vector<Rule>& rules);  ///< Annex B
void add_national_roof(std::vector<Rule>& rules);       ///< roofs of the national annexes

}  // namespace coverframe::catalogue
