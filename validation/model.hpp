// SPDX-License-Identifier: BSD-3-Clause
// What the runner can compute: a model takes the input of a case and answers by calling the library.
#pragma once

#include <map>
#include <string>

#include "input.hpp"
#include "values.hpp"

namespace coverframe::validation {

using Model = Answers (*)(const Input&);

/// Models by name; each family in a file of its own.
[[nodiscard]] const std::map<std::string, Model>& models();

void add_rule_models(std::map<std::string, Model>& all);
void add_extremes_models(std::map<std::string, Model>& all);
void add_timber_models(std::map<std::string, Model>& all);
void add_frame_models(std::map<std::string, Model>& all);
void add_strip_models(std::map<std::string, Model>& all);
void add_cover_models(std::map<std::string, Model>& all);
void add_membrane_models(std::map<std::string, Model>& all);
void add_wrinkle_models(std::map<std::string, Model>& all);
void add_film_on_strap_models(std::map<std::string, Model>& all);

}  // namespace coverframe::validation
