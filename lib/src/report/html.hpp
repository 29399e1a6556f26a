// SPDX-License-Identifier: BSD-3-Clause
// The few pieces of HTML the job sheet is made of. Arguments named `html` are markup; all others are text and are
// escaped here.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "coverframe/plan/plan.hpp"

namespace coverframe::reporting {

/// `text` in an element, escaped: tag("p", "a < b"), tag("td", "4 kN", "number").
[[nodiscard]] std::string tag(std::string_view name, std::string_view text, std::string_view css_class = {});

/// The same around markup.
[[nodiscard]] std::string wrap(std::string_view name, std::string_view html, std::string_view css_class = {});

/// A value with its other unit in brackets; a line may break between the two and nowhere else.
[[nodiscard]] std::string value_html(double value, std::string_view unit, UnitsShown units, int digits = 3,
                                     double beside = 0);
[[nodiscard]] std::string value_html(Length length, UnitsShown units);
[[nodiscard]] std::string value_html(Force force, UnitsShown units);

struct Table {
    std::vector<std::string> head;               ///< text
    std::vector<std::vector<std::string>> rows;  ///< markup, a cell each
};

[[nodiscard]] std::string table_html(const Table& table, std::string_view css_class = {});

/// Heading and body; nothing if the body is empty.
[[nodiscard]] std::string part_html(std::string_view heading, std::string_view html, std::string_view css_class = {});

/// A list of sentences.
[[nodiscard]] std::string list_html(const std::vector<std::string>& sentences, std::string_view css_class = {});

}  // namespace coverframe::reporting
