// SPDX-License-Identifier: BSD-3-Clause
// Where a visitor is in the document, as a JSON pointer (RFC 6901). Cheap to move along; text is made only for a
// report.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace coverframe::plan_detail {

class Pointer {
public:
    void enter(std::string_view key) { tokens_.push_back({key, 0, false}); }
    void enter(std::size_t index) { tokens_.push_back({{}, index, true}); }
    void leave() { tokens_.pop_back(); }

    /// "/support/uprights/1/top"; in keys "~" is written "~0" and "/" is written "~1".
    [[nodiscard]] std::string text() const {
        std::string text;
        for (const Token& token : tokens_) {
            text += '/';
            if (token.is_index) {
                text += std::to_string(token.index);
                continue;
            }
            for (const char c : token.key) {
                if (c == '~') {
                    text += "~0";
                } else if (c == '/') {
                    text += "~1";
                } else {
                    text += c;
                }
            }
        }
        return text;
    }

private:
    struct Token {
        std::string_view key;
        std::size_t index = 0;
        bool is_index = false;
    };
    std::vector<Token> tokens_;
};

/// Enters on construction, leaves on destruction.
class Step {
public:
    template <class Token>
    Step(Pointer& pointer, Token token) : pointer_(pointer) {
        pointer_.enter(token);
    }
    ~Step() { pointer_.leave(); }
    Step(const Step&) = delete;
    Step& operator=(const Step&) = delete;

private:
    Pointer& pointer_;
};

}  // namespace coverframe::plan_detail
