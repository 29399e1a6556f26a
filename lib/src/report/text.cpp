// SPDX-License-Identifier: BSD-3-Clause
#include "report/text.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <optional>
#include <utility>

#include "coverframe/actions/snowpack.hpp"
#include "coverframe/units/crossing.hpp"
#include "report/format.hpp"

namespace coverframe::reporting {
namespace {

constexpr std::string_view replacement = "\xEF\xBF\xBD";

struct Character {
    std::string_view bytes;  ///< what it is printed as
    std::size_t length = 1;  ///< bytes it took in the text
};

bool allowed_in_xml(std::uint32_t code) {
    if (code < 0x20) return code == '\t' || code == '\n' || code == '\r';
    return code != 0xFFFE && code != 0xFFFF && !(code >= 0xD800 && code <= 0xDFFF) && code <= 0x10FFFF;
}

// The character that begins at `at`; the replacement character for a byte that begins none.
Character character_at(std::string_view text, std::size_t at) {
    const auto byte = [&](std::size_t i) { return static_cast<std::uint32_t>(static_cast<unsigned char>(text[i])); };
    const std::uint32_t lead = byte(at);
    const std::size_t length = lead < 0x80 ? 1 : lead >= 0xF0 ? 4 : lead >= 0xE0 ? 3 : 2;
    if ((lead >= 0x80 && lead < 0xC2) || lead > 0xF4 || at + length > text.size()) return {replacement, 1};
    std::uint32_t code = length == 1 ? lead : lead & (0xFFU >> (length + 1));
    for (std::size_t i = 1; i < length; ++i) {
        if ((byte(at + i) & 0xC0U) != 0x80U) return {replacement, 1};
        code = (code << 6U) | (byte(at + i) & 0x3FU);
    }
    constexpr std::array<std::uint32_t, 5> least{0, 0, 0x80, 0x800, 0x10000};
    if (code < least[length] || !allowed_in_xml(code)) return {replacement, length == 1 ? 1 : length};
    return {text.substr(at, length), length};
}

template <class Use>
void each_character(std::string_view text, Use use) {
    for (std::size_t at = 0; at < text.size();) {
        const Character next = character_at(text, at);
        use(next.bytes);
        at += next.length;
    }
}

constexpr std::array plain_names{
    std::pair{"ridge.bending", "bending"},
    std::pair{"ridge.shear", "shear"},
    std::pair{"ridge.bearing", "pressed across the grain"},
    std::pair{"ridge.strap", "strap strength"},
    std::pair{"strap.strength", "strap strength"},
    std::pair{"upright.column", "buckling as a column"},
    std::pair{"upright.hold", "held upright by the straps"},
    std::pair{"upright.foot", "pressure under the foot"},
    std::pair{"film.stress", "stress"},
    std::pair{"film.drainage", "water running off"},
    std::pair{"film.ponding", "tension against sinking under water"},
    std::pair{"film.shedding", "slope for shedding snow"},
    std::pair{"clearance", "clearance to the film"},
    std::pair{"surface.stands", "standing as a surface"},
    std::pair{"surface.water", "water standing on it"},
    std::pair{"surface.clearance", "clearance to the film as a surface"},
    std::pair{"surface.upright", "push under film as a surface"},
    std::pair{"surface.ridge", "load from film as a surface"},
    std::pair{"surface.strap", "tension under film as a surface"},
    std::pair{"surface.film", "stress of film as a surface"},
    std::pair{"surface.band", "pull under film as a surface"},
    std::pair{"band.lift", "band pulled up"},
    std::pair{"band.tension", "band tension"},
};

std::string counted(std::size_t count, const std::string& thing) {
    return std::to_string(count) + ' ' + thing + (count == 1 ? "" : "s");
}

std::string used_in(const Finding& finding) {
    const std::string where = finding.situation.empty() ? "" : " (" + one_line(finding.situation) + ")";
    if (finding.utilisation) return percent(*finding.utilisation) + " of its limit" + where;
    return (finding.verdict == Verdict::exceeded ? "it fails outright" : "nothing of its limit") + where;
}

}  // namespace

std::string escaped(std::string_view text) {
    std::string out;
    out.reserve(text.size() + 16);
    each_character(text, [&](std::string_view c) {
        if (c == "&") out += "&amp;";
        else if (c == "<") out += "&lt;";
        else if (c == ">") out += "&gt;";
        else if (c == "\"") out += "&quot;";
        else if (c == "'") out += "&#39;";
        else out += c;
    });
    return out;
}

std::string one_line(std::string_view text) {
    std::string out;
    out.reserve(text.size());
    each_character(text, [&](std::string_view c) {
        const bool blank = c == "\n" || c == "\r" || c == "\t" || c == " ";
        if (!blank) out += c;
        else if (!out.empty() && out.back() != ' ') out += ' ';
    });
    if (!out.empty() && out.back() == ' ') out.pop_back();
    return out;
}

std::size_t characters(std::string_view text) {
    std::size_t count = 0;
    each_character(text, [&](std::string_view) { ++count; });
    return count;
}

std::vector<std::string> wrapped(std::string_view text, std::size_t width) {
    std::vector<std::string> lines;
    std::string line;
    std::string word;
    std::size_t in_line = 0;
    std::size_t in_word = 0;
    const auto end_line = [&] {
        lines.push_back(std::exchange(line, {}));
        in_line = 0;
    };
    const auto end_word = [&] {
        if (in_word == 0) return;
        if (in_line > 0 && in_line + 1 + in_word > width) end_line();
        if (in_line > 0) line += ' ', ++in_line;
        line += std::exchange(word, {});
        in_line += std::exchange(in_word, 0);
    };
    each_character(one_line(text), [&](std::string_view c) {
        if (c == " ") return end_word();
        if (in_word == width) end_word();
        word += c;
        ++in_word;
    });
    end_word();
    if (in_line > 0 || lines.empty()) end_line();
    return lines;
}

std::string plain_name(std::string_view check) {
    for (const auto& [name, plain] : plain_names) {
        if (name == check) return plain;
    }
    return one_line(check);
}

std::string subject(const Finding& finding) { return one_line(finding.part) + ", " + plain_name(finding.check); }

std::string sentence_of(const Finding& finding) {
    std::string sentence = one_line(finding.sentence);
    if (!sentence.empty() && sentence.front() >= 'a' && sentence.front() <= 'z')
        sentence.front() = static_cast<char>(sentence.front() - 'a' + 'A');
    return sentence;
}

std::pair<double, double> ends_shown(const ForceRange& force) {
    constexpr double noticed = 1e-3;
    const double least = std::abs(force.least) < noticed * std::abs(force.greatest) ? 0.0 : force.least;
    const double greatest = std::abs(force.greatest) < noticed * std::abs(force.least) ? 0.0 : force.greatest;
    return {least, greatest};
}

std::string forces_note(const Assessment& assessment) {
    if (assessment.forces.empty()) return {};
    const bool straps = std::ranges::count(assessment.findings, "strap.strength", &Finding::check) > 0;
    std::string note = "Least and greatest of all situations (S1, S2, ... are listed below), with the film as strips.";
    return note + (straps ? " Cross straps are without the film that lies on them; their checks have it." : "");
}

std::string depth_note(const Assessment& assessment) {
    Pressure load{};
    for (const Arrangement& arrangement : assessment.arrangements) {
        if (arrangement.name != "balanced") continue;
        for (const auto* side : {&arrangement.port, &arrangement.starboard})
            for (const PlanLoad& at : *side) load = std::max(load, at.value);
    }
    if (!(load > Pressure{})) return {};
    const UnitsShown units = assessment.plan.units_shown;
    const auto deep = [&](snowpack::Kind kind) { return both(snowpack::depth_of(load, kind).low, units); };
    return "Balanced snow of " + both(in_kPa(load), "kPa", units) + " lies as deep as this where it is as heavy as " +
           "published: fresh " + deep(snowpack::Kind::fresh) + ", settled " + deep(snowpack::Kind::settled) + ", old " +
           deep(snowpack::Kind::old) + ", wet " + deep(snowpack::Kind::wet) +
           ". Ice under it is not seen from above: dig down to the film. These depths are no leave to wait for them.";
}

std::string situation_number(const Assessment& assessment, std::string_view name) {
    for (std::size_t i = 0; i < assessment.situations.size(); ++i) {
        if (assessment.situations[i].situation.name == name) return "S" + std::to_string(i + 1);
    }
    return one_line(name);
}

std::string verdict_sentence(const Assessment& assessment) {
    const std::vector<Finding>& findings = assessment.findings;
    const auto count = [&](Verdict verdict) {
        return static_cast<std::size_t>(std::ranges::count(findings, verdict, &Finding::verdict));
    };
    const std::size_t failed = count(Verdict::exceeded);
    const std::size_t judged = failed + count(Verdict::satisfied);
    const auto fallen = std::ranges::count_if(assessment.situations, [](const SituationResult& result) {
        return result.status != SolveStatus::converged;
    });
    const Finding* worst = governing(findings);
    switch (assessment.outcome) {
        case Outcome::no_equilibrium:
            return "This cover cannot stand as planned. No balance of forces was found in " + std::to_string(fallen) +
                   " of " + counted(assessment.situations.size(), "situation") +
                   ". Do not build it or leave it standing like this.";
        case Outcome::exceeded:
            if (worst == nullptr) break;
            return "This cover is not good enough as planned: " + std::to_string(failed) + " of " +
                   counted(judged, "check") + (failed == 1 ? " fails" : " fail") + ". Worst is " + subject(*worst) +
                   ": " + used_in(*worst) + ".";
        case Outcome::satisfied:
            if (worst == nullptr || judged == 0) break;
            return "Nothing that was looked at goes beyond its limit (" + counted(judged, "check") +
                   "). Closest to its limit is " + subject(*worst) + ": " + used_in(*worst) + ".";
    }
    return "No part of this cover was judged.";
}

std::string what_this_is(const Assessment& assessment) {
    const Plan& plan = assessment.plan;
    const GroundSnow& snow = plan.site.ground_snow;
    std::string text = "A calculation of the winter cover on " + one_line(plan.boat.name) + " at " +
                       one_line(plan.site.name) +
                       ": what every part carries under snow, whether snow and water leave it, and whether the film "
                       "touches anything. Ground snow " +
                       both(in_kPa(snow.load), "kPa", plan.units_shown) + " by " + name_of(snow.document);
    if (!snow.risk_category.empty()) text += ", risk category " + one_line(snow.risk_category);
    text += "; timber by " + std::string(name_of(plan.basis.timber.document)) +
            ". It holds for the measures and choices printed here and for no others.";
    return text;
}

}  // namespace coverframe::reporting
