// SPDX-License-Identifier: BSD-3-Clause
// What goes wrong because of the input. An overloaded member is not an error: it is a finding.
#pragma once

#include <stdexcept>
#include <string>
#include <vector>

namespace coverframe {

/// One thing wrong with the input.
struct Problem {
    std::string code;    ///< stable, lower case, dotted: "support.upright.off_boat". Listed in DEVELOPERS.md.
    std::string where;   ///< JSON pointer of the field: "/support/uprights/1/top"; empty for the whole document
    std::string value;   ///< what stands there now, as text; empty if nothing does
    std::string advice;  ///< one sentence: what is wrong with which part, and what to change

    bool operator==(const Problem&) const = default;
};

/// Base of everything the library throws on purpose.
class Error : public std::runtime_error {
public:
    using std::runtime_error::runtime_error;
};

/// The input cannot be used. Carries every problem found, not only the first.
class InputError : public Error {
public:
    /// \param problems  at least one; the message of the exception lists them all, a line each
    explicit InputError(std::vector<Problem> problems)
        : Error(message_of(problems)), problems_(std::move(problems)) {}

    /// A single problem.
    InputError(std::string code, std::string where, std::string value, std::string advice)
        : InputError(std::vector<Problem>{{std::move(code), std::move(where), std::move(value), std::move(advice)}}) {}

    [[nodiscard]] const std::vector<Problem>& problems() const { return problems_; }
    [[nodiscard]] const std::string& code() const { return problems_.front().code; }
    [[nodiscard]] const std::string& where() const { return problems_.front().where; }

private:
    static std::string message_of(const std::vector<Problem>& problems) {
        std::string text;
        for (const Problem& p : problems) {
            if (!text.empty()) text += '\n';
            text += p.code + ": " + p.advice;
            if (!p.where.empty()) text += " (" + p.where + ")";
        }
        return text;
    }

    std::vector<Problem> problems_;
};

/// A result is asked for that the state of the object cannot give, such as checks of a frame that found no equilibrium.
class StateError : public Error {
public:
    StateError(std::string code, const std::string& advice) : Error(code + ": " + advice), code_(std::move(code)) {}
    [[nodiscard]] const std::string& code() const { return code_; }

private:
    std::string code_;
};

}  // namespace coverframe
