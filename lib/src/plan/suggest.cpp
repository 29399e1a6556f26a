// SPDX-License-Identifier: BSD-3-Clause
#include "plan/suggest.hpp"

#include <algorithm>
#include <numeric>
#include <vector>

namespace coverframe::plan_detail {
namespace {

/// Number of letters to insert, remove or replace (Levenshtein distance).
std::size_t distance(std::string_view a, std::string_view b) {
    std::vector<std::size_t> row(b.size() + 1);
    std::iota(row.begin(), row.end(), std::size_t{0});
    for (std::size_t i = 0; i < a.size(); ++i) {
        std::size_t diagonal = row[0];
        row[0] = i + 1;
        for (std::size_t j = 0; j < b.size(); ++j) {
            const std::size_t replaced = diagonal + (a[i] == b[j] ? 0 : 1);
            diagonal = row[j + 1];
            row[j + 1] = std::min({replaced, row[j] + 1, diagonal + 1});
        }
    }
    return row.back();
}

/// Small letters and digits only.
std::string bare(std::string_view word) {
    std::string out;
    for (const char c : word) {
        if (c >= 'A' && c <= 'Z') {
            out += static_cast<char>(c - 'A' + 'a');
        } else if (c != ' ' && c != '-' && c != '_') {
            out += c;
        }
    }
    return out;
}

}  // namespace

std::string_view nearest(std::string_view word, std::span<const std::string_view> candidates) {
    constexpr std::size_t longest = 80;  // a longer word is no slip of a known one
    if (word.empty() || word.size() > longest) return {};
    const std::string sought = bare(word);
    std::string_view best;
    std::size_t least = word.size() / 3 + 1;
    for (const std::string_view candidate : candidates) {
        const std::string offered = bare(candidate);
        const std::size_t wrong = distance(sought, offered);
        if (wrong < least && wrong < offered.size()) {  // at least one letter has to be right
            least = wrong;
            best = candidate;
        }
    }
    return best;
}

std::string did_you_mean(std::string_view word, std::span<const std::string_view> candidates) {
    const std::string_view near = nearest(word, candidates);
    return near.empty() ? std::string{} : "; did you mean \"" + std::string(near) + "\"?";
}

}  // namespace coverframe::plan_detail
