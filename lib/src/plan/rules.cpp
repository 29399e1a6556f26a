// SPDX-License-Identifier: BSD-3-Clause
#include "plan/rules.hpp"

namespace coverframe::plan_detail {

std::optional<Fault> fault_of(const std::string& text, const TextRule& rule) {
    const auto shown = [&] { return short_text(JsonValue::of_text(text)); };
    const std::optional<std::size_t> length = utf8_length(text);
    if (!length) return Fault{"plan.text.utf8", "", "must be UTF-8; convert it before it goes into the plan"};
    if (*length > rule.longest) {
        return Fault{"plan.text.long", shown(),
                     "has " + std::to_string(*length) + " characters and may have " + std::to_string(rule.longest) +
                         "; shorten it"};
    }
    const auto unwanted = [&](char c) {
        const bool line = c == '\n' || c == '\t' || c == '\r';
        return (static_cast<unsigned char>(c) < 0x20 && !(rule.free_text && line)) || c == 0x7F;
    };
    if (std::any_of(text.begin(), text.end(), unwanted)) {
        return Fault{"plan.text.control", shown(),
                     rule.free_text ? "has a control character in it; remove it"
                                    : "has a line end, tab or other control character in it; write it on one line"};
    }
    const bool blank = std::all_of(text.begin(), text.end(), [](char c) { return c == ' '; });
    if (blank && !rule.free_text) return Fault{"plan.text.empty", shown(), "is blank; write it down"};
    return std::nullopt;
}

std::optional<Fault> fault_of(std::size_t items, const Count& count) {
    if (items >= count.least && items <= count.most) return std::nullopt;
    return Fault{"plan.list.count", std::to_string(items) + (items == 1 ? " item" : " items"),
                 "the list has " + std::to_string(items) + (items == 1 ? " item" : " items") + " and must have " +
                     std::to_string(count.least) + " to " + std::to_string(count.most)};
}

}  // namespace coverframe::plan_detail
