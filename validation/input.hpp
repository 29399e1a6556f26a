// SPDX-License-Identifier: BSD-3-Clause
// The input of a case as its model reads it. Dimensional values are texts with their unit, as in a plan file. What is
// read is remembered, so that an input no model looks at is found.
#pragma once

#include <array>
#include <memory>
#include <set>
#include <string>
#include <vector>

#include <nlohmann/json.hpp>

#include "coverframe/units/text.hpp"
#include "values.hpp"

namespace coverframe::validation {

class Input {
public:
    /// \param value  the "input" object of a case; must outlive the Input
    explicit Input(const nlohmann::json& value) : Input(value, "", std::make_shared<std::set<std::string>>()) {}

    [[nodiscard]] bool has(const std::string& key) const { return json_->contains(key); }
    [[nodiscard]] bool is_text(const std::string& key) const { return has(key) && json_->at(key).is_string(); }
    [[nodiscard]] bool is_object(const std::string& key) const { return has(key) && json_->at(key).is_object(); }
    [[nodiscard]] Input at(const std::string& key) const;                 ///< a nested object
    [[nodiscard]] std::vector<Input> list(const std::string& key) const;  ///< the objects of an array
    [[nodiscard]] std::vector<std::string> keys() const;                  ///< of this object, in order

    [[nodiscard]] double number(const std::string& key) const;
    [[nodiscard]] std::vector<double> numbers(const std::string& key) const;
    [[nodiscard]] double number_or(const std::string& key, double otherwise) const;
    [[nodiscard]] int count_or(const std::string& key, int otherwise) const;
    [[nodiscard]] bool flag(const std::string& key) const;  ///< false if it is not there
    [[nodiscard]] std::string text(const std::string& key) const;
    [[nodiscard]] std::string text_or(const std::string& key, const std::string& otherwise) const;
    [[nodiscard]] std::vector<std::string> texts(const std::string& key) const;

    template <Readable Quantity>
    [[nodiscard]] Quantity quantity(const std::string& key) const {
        return read<Quantity>(text(key), pointer_ + "/" + key);
    }

    /// A quantity in SI.
    template <Readable Quantity>
    [[nodiscard]] double si(const std::string& key) const {
        return answer(quantity<Quantity>(key), "").si;
    }

    /// "8 in4", "1.2e-5 m4" [m4].
    [[nodiscard]] double second_moment(const std::string& key) const;

    /// Three quantities, in SI.
    template <Readable Quantity>
    [[nodiscard]] std::array<double, 3> triple(const std::string& key) const {
        const std::vector<std::string> parts = texts(key);
        if (parts.size() != 3) throw CaseError(pointer_ + "/" + key + " must hold three quantities");
        std::array<double, 3> values{};
        for (std::size_t i = 0; i < 3; ++i) values[i] = answer(read<Quantity>(parts[i], pointer_ + "/" + key), "").si;
        return values;
    }

    /// Pointers of the keys nobody has read.
    [[nodiscard]] std::vector<std::string> unread() const;

private:
    Input(const nlohmann::json& value, std::string pointer, std::shared_ptr<std::set<std::string>> used)
        : json_(&value), pointer_(std::move(pointer)), used_(std::move(used)) {}

    [[nodiscard]] const nlohmann::json& member(const std::string& key) const;

    const nlohmann::json* json_;
    std::string pointer_;
    std::shared_ptr<std::set<std::string>> used_;
};

}  // namespace coverframe::validation
