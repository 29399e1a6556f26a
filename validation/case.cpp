// SPDX-License-Identifier: BSD-3-Clause
#include "case.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <fstream>
#include <set>
#include <sstream>
#include <string_view>

#include "values.hpp"

namespace coverframe::validation {
namespace {

using nlohmann::json;
namespace fs = std::filesystem;

constexpr std::array<std::string_view, 5> kinds{"closed_form", "published", "measured", "independent", "convergence"};
constexpr std::array<std::string_view, 4> ways_to_read{"read on the page", "from memory", "closed form, derived",
                                                       "independent program"};

std::string whole_file(const fs::path& file) {
    std::ifstream stream(file, std::ios::binary);
    if (!stream) throw CaseError("cannot read " + file.string());
    std::ostringstream text;
    text << stream.rdbuf();
    return text.str();
}

/// Keys of the entries of a BibTeX file: what stands between "{" and "," after an "@word".
std::set<std::string> bibliography_keys(const fs::path& file) {
    std::set<std::string> keys;
    std::istringstream lines(whole_file(file));
    for (std::string line; std::getline(lines, line);) {
        if (line.empty() || line.front() != '@') continue;
        const std::size_t brace = line.find('{');
        const std::size_t comma = line.find(',', brace);
        if (brace == std::string::npos || comma == std::string::npos) continue;
        keys.insert(line.substr(brace + 1, comma - brace - 1));
    }
    return keys;
}

void allow_only(const json& object, const std::set<std::string>& allowed, const std::string& where) {
    if (!object.is_object()) throw CaseError(where + " must be an object");
    for (const auto& [key, value] : object.items()) {
        if (!allowed.contains(key)) throw CaseError(where + " has an unknown key \"" + key + "\"");
    }
}

std::string text_at(const json& object, const std::string& key, const std::string& where) {
    const auto found = object.find(key);
    if (found == object.end() || !found->is_string() || found->get<std::string>().empty()) {
        throw CaseError(where + " needs a text \"" + key + "\"");
    }
    return found->get<std::string>();
}

std::string optional_text(const json& object, const std::string& key, const std::string& where) {
    return object.contains(key) ? text_at(object, key, where) : "";
}

double number_at(const json& object, const std::string& key, const std::string& where) {
    const auto found = object.find(key);
    if (found == object.end() || !found->is_number() || !std::isfinite(found->get<double>())) {
        throw CaseError(where + " needs a number \"" + key + "\"");
    }
    return found->get<double>();
}

Expected read_expected(const json& object, const std::string& where) {
    allow_only(object,
               {"quantity", "printed", "value", "unrounded", "unit", "relative", "absolute", "reason", "disagrees"},
               where);
    Expected expected;
    expected.quantity = text_at(object, "quantity", where);
    const std::string here = where + ", " + expected.quantity;
    for (const char* key : {"printed", "unrounded"}) {
        if (!object.contains(key)) throw CaseError(here + ": \"" + key + "\" must be there, null if there is none");
    }
    if (!object["printed"].is_null()) expected.printed = text_at(object, "printed", here);
    if (!object["unrounded"].is_null()) expected.unrounded = number_at(object, "unrounded", here);
    expected.value = number_at(object, "value", here);
    expected.unit = text_at(object, "unit", here);
    if (object.contains("relative") == object.contains("absolute")) {
        throw CaseError(here + ": give one tolerance, \"relative\" or \"absolute\"");
    }
    expected.relative = object.contains("relative");
    expected.tolerance = number_at(object, expected.relative ? "relative" : "absolute", here);
    if (expected.tolerance < 0) throw CaseError(here + ": a tolerance is not negative");
    if (expected.relative && expected.value == 0) throw CaseError(here + ": zero needs an absolute tolerance");
    expected.reason = text_at(object, "reason", here);  // a tolerance without a reason is refused
    if (object.contains("disagrees")) expected.disagrees = text_at(object, "disagrees", here);
    return expected;
}

void read_source(Case& one, const json& source, const std::set<std::string>& keys, const std::string& where) {
    allow_only(source, {"key", "place", "address"}, where + ", source");
    one.source_key = text_at(source, "key", where + ", source");
    one.source_place = text_at(source, "place", where + ", source");
    if (!keys.contains(one.source_key)) {
        throw CaseError(where + ": source key \"" + one.source_key + "\" is not in the bibliography");
    }
}

template <std::size_t Size>
void demand_one_of(const std::array<std::string_view, Size>& allowed, const std::string& text,
                   const std::string& where) {
    if (std::ranges::find(allowed, text) == allowed.end()) throw CaseError(where + ": \"" + text + "\" is not allowed");
}

Case read_case(const fs::path& file, const std::set<std::string>& keys, bool held) {
    const std::string where = file.filename().string();
    const json object = json::parse(whole_file(file));
    const std::string runs_by = held ? "held" : "model";
    allow_only(object,
               {"id", "title", "kind", "source", "how_read", "quality", "note", runs_by, "input", "expected", "status"},
               where);
    Case one;
    one.id = text_at(object, "id", where);
    if (one.id != file.stem().string()) throw CaseError(where + ": the file must be called as its id");
    one.topic = file.parent_path().filename().string();
    one.title = text_at(object, "title", where);
    one.kind = text_at(object, "kind", where);
    demand_one_of(kinds, one.kind, where + ", kind");
    one.how_read = text_at(object, "how_read", where);
    demand_one_of(ways_to_read, one.how_read, where + ", how_read");
    one.quality = text_at(object, "quality", where);
    one.note = optional_text(object, "note", where);
    (held ? one.held : one.model) = text_at(object, runs_by, where);
    if (!object.contains("source")) throw CaseError(where + " needs a source");
    read_source(one, object["source"], keys, where);
    if (!object.contains("input") || !object["input"].is_object()) throw CaseError(where + " needs an input");
    one.input = object["input"];
    if (!object.contains("expected") || !object["expected"].is_array() || object["expected"].empty()) {
        throw CaseError(where + " needs expected numbers");
    }
    bool disagrees = false;
    if (!held) {
        for (const json& item : object["expected"]) {
            one.expected.push_back(read_expected(item, where));
            disagrees = disagrees || one.expected.back().disagrees.has_value();
        }
        const std::string status = text_at(object, "status", where);
        if (status != (disagrees ? "disagrees" : "agrees")) {
            throw CaseError(where + ": status \"" + status + "\" does not fit its expected numbers");
        }
    }
    return one;
}

}  // namespace

std::vector<Case> read_cases(const fs::path& folder, const fs::path& bibliography, bool held) {
    const std::set<std::string> keys = bibliography_keys(bibliography);
    std::vector<fs::path> files;
    for (const fs::directory_entry& entry : fs::recursive_directory_iterator(folder)) {
        if (entry.path().extension() == ".json") files.push_back(entry.path());
    }
    std::ranges::sort(files);
    std::vector<Case> cases;
    std::set<std::string> ids;
    std::string problems;
    for (const fs::path& file : files) {
        try {
            Case one = read_case(file, keys, held);
            if (!ids.insert(one.id).second) throw CaseError(file.filename().string() + ": the id is used twice");
            cases.push_back(std::move(one));
        } catch (const std::exception& error) {
            problems += std::string(problems.empty() ? "" : "\n") + error.what();
        }
    }
    if (!problems.empty()) throw CaseError(problems);
    return cases;
}

}  // namespace coverframe::validation
