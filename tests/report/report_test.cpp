// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/report/report.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <nlohmann/json.hpp>

#include "close.hpp"
#include "coverframe/base/error.hpp"
#include "coverframe/base/version.hpp"
#include "coverframe/plan/read.hpp"
#include "coverframe/report/cautions.hpp"
#include "coverframe/report/drawing.hpp"
#include "report/markup.hpp"
#include "report/sample.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using Json = nlohmann::ordered_json;

namespace {

// Blanks and line ends made one blank each.
std::string flat(std::string_view text) {
    std::string out;
    for (const char c : text) {
        const bool blank = c == ' ' || c == '\n';
        if (!blank) out += c;
        else if (!out.empty() && out.back() != ' ') out += ' ';
    }
    return out;
}

bool holds(const std::string& text, std::string_view wanted) { return text.find(wanted) != std::string::npos; }

std::string sheet_words(const Assessment& assessment) { return flat(markup::words(job_sheet(assessment))); }

// In the text each part stands, and no earlier than the part before it.
void check_order(const std::string& text, const std::vector<std::string>& parts) {
    std::size_t at = 0;
    for (const std::string& part : parts) {
        CAPTURE(part);
        const std::size_t found = text.find(part, at);
        REQUIRE(found != std::string::npos);
        at = found;
    }
}

Assessment satisfied() {
    Assessment a = sample::assessment();
    a.outcome = Outcome::satisfied;
    std::erase_if(a.findings, [](const Finding& f) { return f.verdict == Verdict::exceeded; });
    return a;
}

}  // namespace

TEST_CASE("verdict_line: one line for each outcome") {
    CHECK(verdict_line(sample::assessment()) ==
          "exceeded: C3 port, strap strength, fails outright (balanced snow, factored, film slack, straps soft)");
    CHECK(verdict_line(satisfied()) ==
          "satisfied: windshield, clearance to the film, 85 % (balanced snow, factored, film slack, straps soft)");
    const std::string fallen = verdict_line(sample::fallen());
    CHECK(fallen.starts_with("no equilibrium: U3 falls to port"));
    CHECK(fallen.find('\n') == std::string::npos);
    CHECK(verdict_line(Assessment{}).starts_with("no equilibrium: "));
}

TEST_CASE("text_report: cautions, verdict, every sentence, worst first") {
    const Assessment a = sample::assessment();
    const std::string text = flat(text_report(a));
    std::vector<std::string> order;
    for (const std::string_view caution : cautions()) order.emplace_back(caution);
    order.emplace_back("3 of 11 checks fail");
    for (const Finding& finding : a.findings) order.push_back(finding.sentence);
    check_order(text, order);
    CHECK(holds(text, "demand 15.2 N/mm2 (2200 psi), capacity 12.9 N/mm2 (1870 psi); EN 1995-1-1:2004, 6.3.3"));
    CHECK(holds(text, "U2, push: 120 N (27 lbf) (S1) to 1.83 kN (411 lbf) (S2)"));
    for (const std::string& assumption : a.assumptions) CHECK(holds(text, assumption));
}

// Balanced snow of 1.2 kPa by the highest published densities: settled 2.5 kN/m3 (EN 1991-1-3, Annex E, where old snow
// begins) is 1.2/2.5 = 0.480 m; wet 40 pcf = 40 x 0.157087 = 6.2835 kN/m3 is 0.191 m; old 490 kg/m3 = 4.8053 kN/m3 is
// 0.250 m (sources in actions/snowpack).
TEST_CASE("reports: how deep the balanced snow lies, and what the forces are of") {
    Assessment a = sample::assessment();
    for (const std::string& text : {sheet_words(a), flat(text_report(a))}) {
        CHECK(holds(text, "Balanced snow of 1.2 kPa (25.1 psf) lies as deep as this"));
        CHECK(holds(text, "settled 480 mm (1 ft 6 7/8 in), old 250 mm (9 7/8 in), wet 191 mm (7 1/2 in)."));
        CHECK(holds(text, "with the film as strips. Cross straps are without the film that lies on them"));
    }
    // The deepest counts; without balanced snow nothing is told.
    a.arrangements[0].starboard[2] = {2.4_kPa};
    CHECK(holds(flat(text_report(a)), "wet 382 mm (1 ft 3 in)."));
    a.arrangements.erase(a.arrangements.begin());
    std::erase_if(a.findings, [](const Finding& f) { return f.check == "strap.strength"; });
    for (const std::string& text : {sheet_words(a), flat(text_report(a))}) {
        CHECK_FALSE(holds(text, "Balanced snow of"));
        CHECK(holds(text, "with the film as strips."));
        CHECK_FALSE(holds(text, "Cross straps are without"));
    }
}

TEST_CASE("text_report: at most 100 columns") {
    Assessment a = sample::assessment();
    a.findings[0].sentence += " " + std::string(250, 'x');
    a.findings[1].part = std::string(130, 'y');
    for (const Assessment& each : {a, sample::fallen(), sample::assessment(UnitsShown::us)}) {
        const std::string text = text_report(each);
        for (std::size_t at = 0; at < text.size();) {
            const std::size_t end = text.find('\n', at);
            CAPTURE(text.substr(at, end - at));
            CHECK(end - at <= 100);
            at = end + 1;
        }
    }
}

TEST_CASE("json_report: numbers, nulls and the plan") {
    const Assessment a = sample::assessment();
    const Json report = Json::parse(json_report(a));
    CHECK(report.at("coverframe_version") == std::string(version));
    CHECK(report.begin().key() == "coverframe_version");
    CHECK(report.at("cautions").size() == cautions().size());
    CHECK(report.at("outcome") == "exceeded");
    CHECK(report.at("verdict") == verdict_line(a));
    REQUIRE(report.at("findings").size() == a.findings.size());
    for (std::size_t i = 0; i < a.findings.size(); ++i) {
        const Json& row = report.at("findings")[i];
        CHECK(row.at("sentence") == a.findings[i].sentence);
        CHECK(row.at("demand").get<double>() == a.findings[i].demand);
        CHECK(row.at("utilisation").is_null() == !a.findings[i].utilisation);
        CHECK(row.at("workings").size() == a.findings[i].workings.size());
    }
    CHECK(report.at("findings")[2].at("workings")[3].at("clause").at("number") == "2.4.1");
    CHECK(report.at("findings")[2].at("workings")[0].at("clause").is_null());
    CHECK(report.at("forces").size() == a.forces.size());
    CHECK(report.at("shape").size() == a.shape.size());
    CHECK(report.at("shape")[4].at("port").at("sag_m").get<double>() == a.shape[4].port.sag);
    CHECK(close(report.at("arrangements")[1].at("port_kpa")[0].get<double>(), 0.6, 1e-12));
    CHECK(report.at("situations")[1].at("arrangement") == "balanced");
    CHECK(report.at("situations")[0].at("arrangement").is_null());
    CHECK(read_plan(report.at("plan").dump()) == a.plan);
}

TEST_CASE("json_report: a situation without balance has no numbers") {
    const Json report = Json::parse(json_report(sample::fallen()));
    CHECK(report.at("outcome") == "no equilibrium");
    CHECK(report.at("failures").size() == 1);
    CHECK(report.at("situations")[3].at("vertical_reaction_n").is_null());
    CHECK(report.at("situations")[2].at("vertical_reaction_n").get<double>() == 15230.0);
}

TEST_CASE("job_sheet: cautions and verdict before drawings and findings") {
    const Assessment a = sample::assessment();
    const std::string words = sheet_words(a);
    std::vector<std::string> order{"Winter cover, open boat", "Seven-metre open boat", "Yard by the lake", a.plan.note};
    for (const std::string_view caution : cautions()) order.emplace_back(caution);
    for (const char* part :
         {"3 of 11 checks fail", "Side view", "Plan, from above", "Section", "Setting out", "Record", "What fails"})
        order.emplace_back(part);
    for (const Finding& finding : a.findings) order.push_back(finding.sentence);
    for (const char* part :
         {"What each part carries", "Snow on the cover", "Situations", "Choices", "Taken as given"}) {
        order.emplace_back(part);
    }
    for (const std::string& assumption : a.assumptions) order.push_back(assumption);
    order.emplace_back("k_mod f_k / gamma_M");
    check_order(words, order);
}

TEST_CASE("job_sheet: numbers of findings, forces, setting out") {
    const std::string words = sheet_words(sample::assessment());
    for (const char* wanted :
         {"15.2 N/mm2 (2200 psi)", "12.9 N/mm2 (1870 psi)", "118 %", "FAILS", "EN 1995-1-1:2004, 6.3.3",
          "1.83 kN (411 lbf)", "1.60 m (5 ft 3 in)", "600 N (135 lbf)", "150 mm (5 7/8 in) below the rail",
          "38 x 89 mm", "1.2 kPa (25.1 psf)", "12.92 N/mm2 (1874 psi)", "every 800 mm", "0.18 mm (7.1 mil)"}) {
        CAPTURE(wanted);
        CHECK(holds(words, wanted));
    }
    const std::string us = sheet_words(sample::assessment(UnitsShown::us));
    for (const char* wanted : {"2200 psi (15.2 N/mm2)", "411 lbf (1.83 kN)", "5 ft 3 in (1.60 m)", "135 lbf (600 N)",
                               "25.1 psf (1.2 kPa)", "7.1 mil (0.18 mm)"}) {
        CAPTURE(wanted);
        CHECK(holds(us, wanted));
    }
}

TEST_CASE("job_sheet: every chosen value with its source") {
    Assessment a = sample::assessment();
    int count = 0;
    std::vector<std::string> sources;
    const auto mark = [&](auto& cited) {
        sources.push_back(cited.source = "source number " + std::to_string(++count) + ".");
    };
    Plan& p = a.plan;
    p.site.ground_snow.source = "source number 0.";
    sources.push_back(p.site.ground_snow.source);
    p.basis.snow.winter_wind = Cited<double>{0.4, ""};
    p.basis.timber.wet_service = Cited<bool>{true, ""};
    p.basis.timber.time_effect_factor = Cited<double>{0.8, ""};
    mark(p.basis.snow.exposure_factor), mark(p.basis.snow.thermal_factor), mark(p.basis.snow.surface),
        mark(*p.basis.snow.winter_wind);
    mark(p.basis.combination.permanent), mark(p.basis.combination.snow);
    mark(*p.basis.timber.wet_service), mark(*p.basis.timber.time_effect_factor);
    mark(*p.basis.timber.modification_factor), mark(*p.basis.timber.material_factor), mark(*p.basis.shedding_slope);
    for (Stand& stand : p.boat.stands) mark(stand.bearing);
    for (Obstacle& obstacle : p.boat.obstacles) mark(obstacle.clearance);
    StrapKind& strap = p.straps.front();
    mark(strap.stiffness_low), mark(strap.stiffness_high), mark(strap.break_strength);
    mark(strap.buckle_efficiency), mark(strap.ageing), mark(strap.working_share);
    mark(*p.support.band.rub_rail_hold);
    p.support.band.rail_friction = Cited<double>{0.1, ""};
    p.film.creep_modulus = Cited<Pressure>{0.4 * p.film.modulus.value, ""};
    mark(*p.support.band.rail_friction), mark(*p.film.creep_modulus);
    p.film.sheet_width = p.film.sheet_length = p.film.tuck = Cited<Length>{9.0_m, ""};
    mark(*p.film.sheet_width), mark(*p.film.sheet_length), mark(*p.film.tuck);
    mark(p.film.thickness), mark(p.film.tension_low), mark(p.film.tension_high), mark(p.film.modulus),
        mark(p.film.poisson);
    mark(p.film.strength), mark(p.film.unit_weight);
    SoftFoot& foot = std::get<RidgeSupport>(p.support.structure).uprights.front().foot.emplace();
    foot.friction.emplace();
    mark(foot.stiffness), mark(foot.friction->low), mark(foot.friction->high), mark(foot.friction->side_stiffness);
    const std::string words = sheet_words(a);
    CHECK(sources.size() == 39);
    for (const std::string& source : sources) {
        CAPTURE(source);
        CHECK(holds(words, source));
    }
}

TEST_CASE("report: the sheet of film to lay out, rounded up, and how the plan's own compares") {
    // Widest at U3, 4.8 m aft: the rail is 1.2467 m off and 0.7867 m high, the ridge line 1.86 m; to the rail
    // sqrt(1.2467^2 + 1.0733^2) = 1.6451 m, to the band 0.15 m, tucked 0.15 m, over a pole of 38 mm:
    // 2 (1.6451 + 0.3) + 0.038 = 3.9281 m, up to 3.93 m. Along the middle from point to point, by Pythagoras:
    // 0.1860 + 1.5212 + 1.6164 + 1.6000 + 1.6031 + 0.7139 + 0.8261 + 0.6 = 8.6668 m, up to 8.67 m.
    Assessment a = sample::assessment();
    const std::string least =
        "The sheet of film: at least 3.93 m (12 ft 11 in) wide and 8.67 m (28 ft 6 in) long, with 150 mm (5 7/8 in) "
        "tucked under the band all round.";
    const std::string place = "It is widest at U3, 4.80 m (15 ft 9 in) aft of the stem head";
    for (const std::string& text : {sheet_words(a), flat(text_report(a))}) {
        CHECK(holds(text, least));
        CHECK(holds(text, place));
        CHECK(holds(text, "Shrinking only makes film shorter"));
        CHECK_FALSE(holds(text, "The sheet of this plan"));
    }
    a.plan.film.sheet_width = Cited<Length>{4.0_m, "on the roll"};
    CHECK(holds(sheet_words(a), "The sheet of this plan is 4.00 m (13 ft 1 1/2 in) wide: large enough."));
    a.plan.film.sheet_length = Cited<Length>{10.0_m, "on the roll"};
    CHECK(holds(flat(text_report(a)), "4.00 m (13 ft 1 1/2 in) wide and 10.00 m (32 ft 9 3/4 in) long: large enough."));
    const Json told = Json::parse(json_report(a)).at("film_sheet");
    CHECK(close_abs(told.at("needed_width_m").get<double>(), 3.9281, 1e-4));
    CHECK(close_abs(told.at("needed_length_m").get<double>(), 8.6668, 1e-4));
    CHECK(told.at("widest_place") == "at U3");
    CHECK(told.at("given_width_m") == 4.0);
    CHECK(close(told.at("tuck_m").get<double>(), 0.15, 1e-15));
    CHECK(Json::parse(json_report(sample::assessment())).at("film_sheet").at("given_length_m").is_null());
    std::swap(a.plan.boat.rail[1], a.plan.boat.rail[2]);  // nothing is drawn, so nothing is told
    CHECK_FALSE(holds(flat(text_report(a)), "The sheet of film"));
    CHECK(Json::parse(json_report(a)).at("film_sheet").is_null());
}

TEST_CASE("job_sheet: what cannot stand says so first") {
    for (const bool any_shape : {true, false}) {
        const Assessment a = sample::fallen(any_shape);
        check_order(sheet_words(a), {std::string(cautions().front()), "cannot stand as planned", "1 of 4 situations",
                                     a.failures.front(), "Side view"});
        check_order(flat(text_report(a)), {"cannot stand as planned", a.failures.front()});
    }
    check_order(sheet_words(satisfied()),
                {"Nothing that was looked at goes beyond its limit (8 checks)", "windshield, clearance to the film"});
}

TEST_CASE("report: a sheet stands alone") {
    const std::string html = job_sheet(sample::assessment());
    for (const char* outside : {"<script", "<link", "@import", "url(", "src=", "href="}) {
        CAPTURE(outside);
        CHECK_FALSE(holds(html, outside));
    }
    CHECK(holds(html, "size: A4 portrait"));
}

TEST_CASE("report: texts of the plan cannot break the markup") {
    Assessment a = sample::assessment();
    const std::string nasty = "</p><script>alert('x')</script>&\"\x01\xff";
    a.plan.title = a.plan.note = a.plan.boat.name = a.plan.site.name = nasty;
    a.plan.boat.obstacles.front().name = a.plan.boat.stands.front().name = nasty;
    a.plan.film.thickness.source = nasty;
    for (Finding& finding : a.findings) {
        finding.part = finding.sentence = finding.situation = finding.check = nasty;
        finding.clause = {nasty, nasty};
        for (Term& term : finding.workings) term.symbol = term.formula = term.unit = nasty;
    }
    for (ForceRange& force : a.forces) force.part = force.quantity = force.least_in = force.unit = nasty;
    for (SituationResult& result : a.situations) result.situation.name = result.message = nasty;
    a.shape_of = nasty;
    a.assumptions = {nasty};
    const std::string html = job_sheet(a);
    CHECK(markup::trouble(html) == "");
    CHECK_FALSE(holds(html, "<script"));
    CHECK(holds(html, "&lt;script&gt;"));
    CHECK_FALSE(holds(html, "\x01"));
    CHECK(holds(html, "\xEF\xBF\xBD"));
    CHECK_FALSE(holds(text_report(a), "\x01"));
}

TEST_CASE("report: well-formed, finite, the same bytes again") {
    for (const Assessment& a : {sample::assessment(), sample::assessment(UnitsShown::us), sample::fallen(),
                                sample::fallen(false), satisfied()}) {
        CHECK(markup::trouble(job_sheet(a)) == "");
        CHECK(markup::bad_number(sheet_words(a)) == "");
        CHECK(markup::bad_number(text_report(a)) == "");
        CHECK(markup::bad_number(json_report(a)) == "");
        CHECK(job_sheet(a) == job_sheet(a));
        CHECK(text_report(a) == text_report(a));
        CHECK(json_report(a) == json_report(a));
    }
    Assessment minus = sample::assessment();
    minus.forces.front().least = -0.0;
    CHECK(markup::bad_number(json_report(minus)) == "");
    CHECK(markup::bad_number(text_report(minus)) == "");
}

TEST_CASE("report: the names of a force's situations lead to the list") {
    const std::string words = sheet_words(sample::assessment());
    CHECK(holds(words, "S4half to port, as it lies, film tight, straps stiff"));
}

TEST_CASE("report: a number that is not finite is refused") {
    for (const double bad : {std::nan(""), HUGE_VAL}) {
        Assessment a = sample::assessment();
        a.findings[3].demand = bad;
        CHECK_THROWS_AS((void)text_report(a), StateError);
        CHECK_THROWS_AS((void)json_report(a), StateError);
        CHECK_THROWS_AS((void)job_sheet(a), StateError);
        a = sample::assessment();
        a.shape[2].ridge_loaded = bad;
        CHECK_THROWS_AS((void)side_view(a), StateError);
        CHECK_THROWS_AS((void)json_report(a), StateError);
    }
}
