// SPDX-License-Identifier: BSD-3-Clause
#include "input.hpp"

#include <charconv>

namespace coverframe::validation {
namespace {

void collect_unread(const nlohmann::json& value, const std::string& pointer, const std::set<std::string>& used,
                    std::vector<std::string>& unread) {
    if (value.is_array()) {
        for (std::size_t i = 0; i < value.size(); ++i) {
            if (value[i].is_object()) collect_unread(value[i], pointer + "/" + std::to_string(i), used, unread);
        }
    }
    if (!value.is_object()) return;
    for (const auto& [key, child] : value.items()) {
        const std::string here = pointer + "/" + key;
        if (!used.contains(here)) unread.push_back(here);
        else collect_unread(child, here, used, unread);
    }
}

}  // namespace

const nlohmann::json& Input::member(const std::string& key) const {
    const auto found = json_->find(key);
    if (found == json_->end()) throw CaseError("input " + pointer_ + "/" + key + " is missing");
    used_->insert(pointer_ + "/" + key);
    return *found;
}

Input Input::at(const std::string& key) const {
    const nlohmann::json& value = member(key);
    if (!value.is_object()) throw CaseError("input " + pointer_ + "/" + key + " must be an object");
    return {value, pointer_ + "/" + key, used_};
}

std::vector<Input> Input::list(const std::string& key) const {
    const nlohmann::json& value = member(key);
    if (!value.is_array()) throw CaseError("input " + pointer_ + "/" + key + " must be a list of objects");
    std::vector<Input> items;
    for (std::size_t i = 0; i < value.size(); ++i) {
        if (!value[i].is_object()) throw CaseError("input " + pointer_ + "/" + key + " must be a list of objects");
        items.push_back(Input(value[i], pointer_ + "/" + key + "/" + std::to_string(i), used_));
    }
    return items;
}

std::vector<std::string> Input::keys() const {
    std::vector<std::string> names;
    for (const auto& [key, child] : json_->items()) names.push_back(key);
    return names;
}

double Input::number(const std::string& key) const {
    const nlohmann::json& value = member(key);
    if (!value.is_number()) throw CaseError("input " + pointer_ + "/" + key + " must be a number");
    return value.get<double>();
}

std::vector<double> Input::numbers(const std::string& key) const {
    const nlohmann::json& value = member(key);
    if (!value.is_array()) throw CaseError("input " + pointer_ + "/" + key + " must be a list of numbers");
    std::vector<double> all;
    for (const nlohmann::json& item : value) {
        if (!item.is_number()) throw CaseError("input " + pointer_ + "/" + key + " must be a list of numbers");
        all.push_back(item.get<double>());
    }
    return all;
}

double Input::number_or(const std::string& key, double otherwise) const { return has(key) ? number(key) : otherwise; }

int Input::count_or(const std::string& key, int otherwise) const {
    if (!has(key)) return otherwise;
    const nlohmann::json& value = member(key);
    if (!value.is_number_integer() || value.get<int>() < 1) {
        throw CaseError("input " + pointer_ + "/" + key + " must be a whole number over zero");
    }
    return value.get<int>();
}

bool Input::flag(const std::string& key) const {
    if (!has(key)) return false;
    const nlohmann::json& value = member(key);
    if (!value.is_boolean()) throw CaseError("input " + pointer_ + "/" + key + " must be true or false");
    return value.get<bool>();
}

std::string Input::text(const std::string& key) const {
    const nlohmann::json& value = member(key);
    if (!value.is_string()) throw CaseError("input " + pointer_ + "/" + key + " must be a text");
    return value.get<std::string>();
}

std::string Input::text_or(const std::string& key, const std::string& otherwise) const {
    return has(key) ? text(key) : otherwise;
}

std::vector<std::string> Input::texts(const std::string& key) const {
    const nlohmann::json& value = member(key);
    if (!value.is_array()) throw CaseError("input " + pointer_ + "/" + key + " must be a list of texts");
    std::vector<std::string> all;
    for (const nlohmann::json& item : value) {
        if (!item.is_string()) throw CaseError("input " + pointer_ + "/" + key + " must be a list of texts");
        all.push_back(item.get<std::string>());
    }
    return all;
}

double Input::second_moment(const std::string& key) const {
    const std::string written = text(key);
    double value = 0;
    const auto [end, error] = std::from_chars(written.data(), written.data() + written.size(), value);
    if (error != std::errc() || end == written.data() + written.size() || *end != ' ') {
        throw CaseError("input " + pointer_ + "/" + key + " must be a second moment of area like \"8 in4\"");
    }
    return value * size_of_unit(Dimension::second_moment, std::string(end + 1));
}

std::vector<std::string> Input::unread() const {
    std::vector<std::string> all;
    collect_unread(*json_, pointer_, *used_, all);
    return all;
}

}  // namespace coverframe::validation
