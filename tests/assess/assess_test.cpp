// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/assess/assess.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <filesystem>
#include <functional>
#include <map>
#include <set>
#include <sstream>
#include <stdexcept>
#include <string>
#include <thread>
#include <utility>

#include "assess/plans.hpp"
#include "close.hpp"
#include "coverframe/base/error.hpp"
#include "coverframe/plan/read.hpp"

using namespace coverframe;
using namespace coverframe::literals;

namespace {

const SituationResult& in(const Assessment& assessment, const std::string& name) {
    const auto found = std::find_if(assessment.situations.begin(), assessment.situations.end(),
                                    [&](const SituationResult& s) { return s.situation.name == name; });
    REQUIRE_MESSAGE(found != assessment.situations.end(), name);
    return *found;
}

const Finding& finding(const Assessment& assessment, const std::string& check, const std::string& part) {
    const auto found = std::find_if(assessment.findings.begin(), assessment.findings.end(),
                                    [&](const Finding& f) { return f.check == check && f.part == part; });
    REQUIRE_MESSAGE(found != assessment.findings.end(), check << " of " << part);
    return *found;
}

const ForceRange& force(const Assessment& assessment, const std::string& part, const std::string& quantity) {
    const auto found = std::find_if(assessment.forces.begin(), assessment.forces.end(),
                                    [&](const ForceRange& f) { return f.part == part && f.quantity == quantity; });
    REQUIRE_MESSAGE(found != assessment.forces.end(), quantity << " of " << part);
    return *found;
}

/// Plan weight of the snow of one arrangement: load times half breadth, by the trapezoidal rule over the stations.
double snow_weight(const Assessment& assessment, const Arrangement& arrangement) {
    double weight = 0;
    const auto& stations = assessment.stations;
    for (std::size_t i = 0; i < stations.size(); ++i) {
        const double before = i > 0 ? in_m(stations[i].x - stations[i - 1].x) : 0.0;
        const double after = i + 1 < stations.size() ? in_m(stations[i + 1].x - stations[i].x) : 0.0;
        weight += 0.5 * (before + after) * in_m(stations[i].half_breadth) *
                  (in_Pa(arrangement.port[i].value) + in_Pa(arrangement.starboard[i].value));
    }
    return weight;
}

std::vector<std::string> demo_plans() {
    std::vector<std::string> files;
    for (const auto& entry : std::filesystem::directory_iterator(COVERFRAME_SOURCE_FOLDER "/examples/plans")) {
        if (entry.path().extension() == ".json") files.push_back(entry.path().string());
    }
    std::sort(files.begin(), files.end());
    return files;
}

/// The small boat as found, with a ridge of two poles that meet at an angle over the upright, and straps or none.
Plan found_boat(bool straps) {
    Plan plan = plans::small_boat();
    const Section post{89.0_mm, 89.0_mm};
    const std::string grade = "Spruce-Pine-Fir No.1/No.2";
    FoundFrame frame;
    frame.nodes = {{"bow", {0.2_m, 0.0_m, 1.60_m}, true},
                   {"foot", {3.0_m, 0.0_m, 0.20_m}, true},
                   {"top", {3.0_m, 0.0_m, 1.85_m}, false},
                   {"stern", {5.8_m, 0.0_m, 1.60_m}, true}};
    frame.members.resize(3);
    frame.members[0] = {"fore pole", FoundKind::pole, "bow", "top", post, grade, "", {}, "", {}};
    frame.members[1] = {"after pole", FoundKind::pole, "top", "stern", post, grade, "", {}, "", {}};
    frame.members[2] = {"post", FoundKind::upright, "foot", "top", post, grade, "", {}, "sole",
                        FootPad{300.0_mm, 300.0_mm, 38.0_mm}};
    if (straps) {
        frame.nodes.push_back({"rail to port", {3.0_m, -1.09_m, 0.99_m}, true});
        frame.nodes.push_back({"rail to starboard", {3.0_m, 1.09_m, 0.99_m}, true});
        for (const std::string side : {"port", "starboard"}) {
            frame.members.push_back({"strap to " + side, FoundKind::strap, "top", "rail to " + side, {}, "",
                                     "polyester 35 mm", 600.0_N, "", {}});
        }
    }
    frame.ridge_line = {"bow", "top", "stern"};
    plan.support.structure = frame;
    return plan;
}

/// Port and starboard exchanged in a text.
std::string mirrored(std::string text) {
    const auto replace = [&](const std::string& from, const std::string& to) {
        for (std::size_t at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size())) {
            text.replace(at, from.size(), to);
        }
    };
    replace("port", "#");
    replace("starboard", "port");
    replace("#", "starboard");
    return text;
}

/// The same findings, forces and outcome to a relative 1e-7, whatever the texts show.
void check_same(const Assessment& a, const Assessment& b, const std::function<std::string(std::string)>& name) {
    CHECK(a.outcome == b.outcome);
    CHECK(a.findings.size() == b.findings.size());
    for (const Finding& f : a.findings) {
        CAPTURE(f.check);
        CAPTURE(f.part);
        const Finding& other = finding(b, f.check, name(f.part));
        CHECK(close_abs(other.demand, f.demand, 1e-7 * std::abs(f.demand) + 1e-9));
        CHECK(close_abs(other.capacity, f.capacity, 1e-7 * std::abs(f.capacity) + 1e-9));
        CHECK(other.unit == f.unit);
        CHECK(other.verdict == f.verdict);
    }
    REQUIRE(a.forces.size() == b.forces.size());
    for (const ForceRange& f : a.forces) {
        CAPTURE(f.part);
        CAPTURE(f.quantity);
        const ForceRange& other = force(b, name(f.part), f.quantity);
        const bool aside = f.quantity == "reaction, to starboard" || f.quantity == "bending moment, sideways";
        const bool turned = aside && name("port") == "starboard";
        CHECK(close_abs(turned ? -other.greatest : other.least, f.least, 1e-7 * std::abs(f.least) + 1e-4));
        CHECK(close_abs(turned ? -other.least : other.greatest, f.greatest, 1e-7 * std::abs(f.greatest) + 1e-4));
    }
}

std::string unchanged(std::string text) { return text; }

const Assessment& small_boat() {
    static const Assessment assessment = assess(plans::small_boat());
    return assessment;
}

const Assessment& small_boat_en() {
    static const Assessment assessment = assess(plans::small_boat_en());
    return assessment;
}

/// What every assessment keeps, whatever the plan.
void check_whole(const Assessment& a) {
    std::map<std::string, const SituationResult*> situations;
    bool all_stand = true;
    for (const SituationResult& s : a.situations) {
        CAPTURE(s.situation.name);
        CHECK(situations.emplace(s.situation.name, &s).second);
        const bool stands = s.status == SolveStatus::converged;
        all_stand = all_stand && stands;
        CHECK(s.message.empty() == stands);
        if (!stands) continue;
        CHECK(s.vertical_load > 0);
        CHECK(close(s.vertical_reaction, s.vertical_load, 1e-6));
        CHECK(std::isfinite(s.ridge_sag));
        CHECK(s.film_sag > 0);
    }
    CHECK(a.failures.empty() == all_stand);
    std::set<std::pair<std::string, std::string>> judged;
    for (std::size_t i = 0; i < a.findings.size(); ++i) {
        const Finding& f = a.findings[i];
        CAPTURE(f.check);
        CAPTURE(f.part);
        CHECK(judged.insert({f.check, f.part}).second);
        REQUIRE(situations.count(f.situation) == 1);
        CHECK(situations[f.situation]->status == SolveStatus::converged);
        CHECK(std::isfinite(f.demand));
        CHECK(std::isfinite(f.capacity));
        CHECK_FALSE(f.sentence.empty());
        CHECK_FALSE(f.clause.document.empty());
        if (f.verdict != Verdict::not_applicable) CHECK_FALSE(f.workings.empty());
        if (i > 0) CHECK_FALSE(worse(f, a.findings[i - 1]));
    }
    for (const ForceRange& f : a.forces) {
        CAPTURE(f.part);
        CHECK(f.least <= f.greatest);
        CHECK(situations.count(f.least_in) == 1);
        CHECK(situations.count(f.greatest_in) == 1);
    }
    const bool exceeded = std::any_of(a.findings.begin(), a.findings.end(),
                                      [](const Finding& f) { return f.verdict == Verdict::exceeded; });
    CHECK(a.outcome == (!all_stand ? Outcome::no_equilibrium : exceeded ? Outcome::exceeded : Outcome::satisfied));
    if (!a.shape.empty()) {
        REQUIRE(situations.count(a.shape_of) == 1);
        CHECK(situations[a.shape_of]->situation.limit == Limit::service);
        CHECK(a.shape.size() == a.stations.size());
    }
    CHECK(a.assumptions.size() >= 10);
}

}  // namespace

// ------------------------------------------------------------------------------------------------------------ value

TEST_CASE("assess: what presses down is the weight of the parts and the snow over the plan area") {
    const Assessment& a = small_boat_en();
    REQUIRE(a.arrangements.size() == 5);  // three of 5.3.3, and either side cleared
    for (const std::string bounds : {"film loose; straps soft", "film tight; straps stiff"}) {
        const double bare = in(a, "no snow; unfactored; " + bounds).vertical_load;
        const double bare_factored = in(a, "no snow; factored; " + bounds).vertical_load;
        CHECK(close(bare_factored, 1.35 * bare, 1e-12));
        for (const Arrangement& arrangement : a.arrangements) {
            CAPTURE(arrangement.name);
            const double snow = snow_weight(a, arrangement);
            const double service = in(a, arrangement.name + "; unfactored; " + bounds).vertical_load;
            const double strength = in(a, arrangement.name + "; factored; " + bounds).vertical_load;
            CHECK(close(service, bare + snow, 1e-12));
            CHECK(close(strength, bare_factored + 1.5 * snow, 1e-12));
        }
    }
    // EN 1991-1-3, 5.3.3: 0.8 of 1 kPa at any slope if held; both slopes, or one and half of the other
    const double area = snow_weight(a, a.arrangements[0]) / 800.0;
    CHECK(close(snow_weight(a, a.arrangements[1]), 0.75 * 800.0 * area, 1e-12));
    // Plan area by hand: rail 0.8, 1.1, 1.05 m at 1.0, 2.5, 6.0 m, 0 at 0; ridge from 0.2 to 5.8 m. The stations cut
    // the corners of the rail.
    const double by_hand = 2 * (0.5 * (0.16 + 0.80) * 0.8 + 0.5 * (0.80 + 1.10) * 1.5 + 0.5 * (1.10 + 1.0529) * 3.3);
    CHECK(close(area, by_hand, 0.005));
}

TEST_CASE("assess: the film's thrust loads the uprights with more than the snow over their share of the ridge") {
    // The independent net model of another boat gave 2.2 to 2.8 times the tributary area (own work, not published);
    // here the straps' own push is taken off first.
    const Assessment& a = small_boat_en();
    const double bay = 1.12;
    const double tributary = 1.5 * 800.0 * bay * 1.1;  // half of both slopes, half breadth about 1.1 m
    const double push = force(a, "U2", "push").greatest - force(a, "U2", "push").least;
    CHECK(push > 1.3 * tributary);
    CHECK(push < 4.0 * tributary);
}

TEST_CASE("assess: the column check sees the greatest push of all situations") {
    for (const Assessment* a : {&small_boat(), &small_boat_en()}) {
        for (const std::string upright : {"U1", "U2", "U3", "U4"}) {
            const Finding& f = finding(*a, "upright.column", upright);
            const ForceRange& push = force(*a, upright, "push");
            CHECK(close(f.demand * 1000.0, push.greatest, 1e-9));
            CHECK(f.situation == push.greatest_in);
        }
    }
}

TEST_CASE("assess: drawn and loaded shape") {
    const Assessment& a = small_boat_en();
    REQUIRE(a.shape.size() == a.stations.size());
    CHECK(a.shape_of.find("unfactored") != std::string::npos);
    double lowest = 0;
    for (const StationShape& s : a.shape) {
        CHECK(close(s.ridge_drawn, 1.70, 1e-12));
        lowest = std::max(lowest, s.ridge_drawn - s.ridge_loaded);
        CHECK(s.port.span > 0);
        CHECK(s.starboard.span > 0);
        CHECK(close_abs(s.ridge_loaded + s.port.height(1.0), s.rail_z, 1e-9));
        CHECK(close_abs(std::hypot(s.half_breadth + s.ridge_aside, 0.0), s.port.span, 1e-3));
    }
    CHECK(close(in(a, a.shape_of).ridge_sag, lowest, 1e-12));
    double sag = 0;
    for (const SituationResult& s : a.situations) {
        if (s.situation.limit == Limit::service) sag = std::max(sag, s.film_sag);
    }
    CHECK(close(in(a, a.shape_of).film_sag, sag, 0.02));
}

TEST_CASE("assess: names and exit codes") {
    CHECK(exit_code(Outcome::satisfied) == 0);
    CHECK(exit_code(Outcome::exceeded) == 1);
    CHECK(exit_code(Outcome::no_equilibrium) == 3);
    CHECK(std::string(name_of(Outcome::no_equilibrium)) == "no equilibrium");
}

// ------------------------------------------------------------------------------------------------------------ limit

TEST_CASE("assess: without ground snow every arrangement is the bare cover") {
    const Assessment a = assess(plans::small_boat_en(0.0_kPa));
    check_whole(a);
    const double bare = in(a, "no snow; unfactored; film tight; straps stiff").film_sag;
    CHECK(close(in(a, "balanced; unfactored; film tight; straps stiff").film_sag, bare, 1e-9));
}

TEST_CASE("assess: straps of one known stiffness make both bounds the same") {
    Plan plan = plans::small_boat();
    plan.straps[0].stiffness_low = plan.straps[0].stiffness_high;
    const Assessment a = assess(plan);
    for (const std::string rest : {"factored; film loose; ", "unfactored; film tight; "}) {
        const SituationResult& soft = in(a, "balanced; " + rest + "straps soft");
        const SituationResult& stiff = in(a, "balanced; " + rest + "straps stiff");
        CHECK(soft.film_sag == stiff.film_sag);
        CHECK(soft.ridge_sag == stiff.ridge_sag);
    }
}

TEST_CASE("assess: an upright that only the twist of the ridge holds cannot stand, and the report says where") {
    // The spliced poles carry no bending at the top, but they do carry twist, which resists a little: too little.
    const Assessment a = assess(found_boat(false));
    CHECK(a.outcome == Outcome::no_equilibrium);
    CHECK(exit_code(a.outcome) == 3);
    CHECK(a.findings.empty());
    CHECK(a.forces.empty());
    CHECK(a.shape.empty());
    REQUIRE(a.failures.size() == 1);
    CHECK(a.failures[0].find("\"top\"") != std::string::npos);
    CHECK(a.failures[0].find("athwart") != std::string::npos);
    CHECK(a.failures[0].find("add or tighten straps there") != std::string::npos);
    for (const SituationResult& s : a.situations) CHECK(s.status == SolveStatus::unstable);
    check_whole(a);

    const Assessment held = assess(found_boat(true));
    check_whole(held);
    CHECK(held.failures.empty());
    CHECK(force(held, "strap to port", "tension").greatest > 0);
}

// -------------------------------------------------------------------------------------------------------- invariant

TEST_CASE("assess: every demo plan keeps its loads and reactions together") {
    const std::vector<std::string> files = demo_plans();
    REQUIRE(files.size() >= 4);
    for (const std::string& file : files) {
        CAPTURE(file);
        check_whole(assess(read_plan_file(file)));
    }
    check_whole(small_boat());
    check_whole(small_boat_en());
}

TEST_CASE("assess: a mirrored plan has the mirrored result") {
    Plan plan = plans::small_boat_en();
    plan.boat.obstacles.push_back({"console", {{3.0_m, 0.2_m, 1.2_m}, {3.6_m, 0.7_m, 1.2_m}}, {50.0_mm, "invented"}});
    plan.boat.obstacles.push_back({"winch", {{4.2_m, -0.8_m, 1.1_m}}, {20.0_mm, "invented"}});
    Plan other = plan;
    for (Obstacle& obstacle : other.boat.obstacles) {
        for (Point& point : obstacle.outline) point.y = -point.y;
    }
    const Assessment a = assess(plan);
    const Assessment b = assess(other);
    check_same(a, b, mirrored);
    for (const std::string obstacle : {"console", "winch"}) {
        const std::string worst = finding(a, "clearance", obstacle).situation;
        CHECK(finding(b, "clearance", obstacle).situation == mirrored(worst));
    }
    // and within one symmetric boat
    for (const std::string bounds : {"factored; film loose; straps soft", "unfactored; film tight; straps stiff"}) {
        CHECK(close(in(a, "drifted, heavy to port; " + bounds).film_sag,
                    in(a, "drifted, heavy to starboard; " + bounds).film_sag, 1e-9));
    }
}

TEST_CASE("assess: more ground snow never eases an upright, the film or the band") {
    std::map<std::pair<std::string, std::string>, double> before;
    for (const double snow : {0.25, 0.5, 0.75, 1.0, 1.5, 2.0}) {
        CAPTURE(snow);
        const Assessment a = assess(plans::small_boat_en(from_kPa(snow)), {.workings = false});
        REQUIRE(a.failures.empty());
        for (const Finding& f : a.findings) {
            if (f.check != "upright.column" && f.check != "upright.foot" && f.check != "film.stress" &&
                f.check != "band.tension" && f.check != "clearance") {
                continue;
            }
            CAPTURE(f.part);
            const auto [at, is_new] = before.try_emplace({f.check, f.part}, f.demand);
            CHECK(f.demand >= at->second);
            at->second = f.demand;
        }
    }
    CHECK(before.size() >= 4 + 4 + 5 + 1 + 1);
}

TEST_CASE("assess: the units a plan is written in do not change what is found") {
    // Every quantity of the text is put into the other system's unit, to all digits.
    const std::map<std::string, std::pair<std::string, double>> other{
        {"m", {"ft", factor::foot}},           {"mm", {"in", factor::inch / 1e-3}},
        {"N", {"lbf", factor::pound_force}},   {"kN", {"lbf", factor::pound_force / 1e3}},
        {"N/m", {"plf", factor::plf}},         {"kN/m", {"plf", factor::plf / 1e3}},
        {"Pa", {"psf", factor::psf}},          {"kPa", {"psf", factor::psf / 1e3}},
        {"MPa", {"psi", factor::psi / 1e6}},   {"N/mm2", {"psi", factor::psi / 1e6}},
        {"N/m3", {"pcf", factor::pcf}},        {"kN/m3", {"pcf", factor::pcf / 1e3}}};
    for (const Plan& plan : {plans::small_boat(), plans::small_boat_en()}) {
        std::string text = write_plan(plan);
        int changed = 0;
        for (std::size_t open = text.find('"'); open != std::string::npos; open = text.find('"', open + 1)) {
            const std::size_t shut = text.find('"', open + 1);
            const std::string inside = text.substr(open + 1, shut - open - 1);
            const std::size_t space = inside.find(' ');
            std::size_t digits = 0;
            double number = 0;
            try {
                number = std::stod(inside, &digits);
            } catch (const std::invalid_argument&) {
            }
            if (space != std::string::npos && digits == space && other.count(inside.substr(space + 1)) == 1) {
                const auto& [unit, size] = other.at(inside.substr(space + 1));
                std::ostringstream converted;
                converted.precision(17);
                converted << std::fixed << number / size << ' ' << unit;
                text.replace(open + 1, inside.size(), converted.str());
                ++changed;
            }
            open = text.find('"', open + 1);
        }
        CHECK(changed > 50);
        Plan same = read_plan(text);
        same.units_shown = UnitsShown::us;
        CHECK_FALSE(same == plan);
        check_same(assess(plan), assess(same), unchanged);
    }
}

TEST_CASE("assess: the same plan gives the same bits, alone or beside others") {
    const Plan plan = plans::small_boat_en();
    const Assessment& once = small_boat_en();
    std::array<Assessment, 2> beside;
    std::thread one([&] { beside[0] = assess(plan); });
    std::thread two([&] { beside[1] = assess(plan); });
    one.join();
    two.join();
    for (const Assessment& again : beside) {
        CHECK(again.findings == once.findings);
        CHECK(again.shape_of == once.shape_of);
        REQUIRE(again.forces.size() == once.forces.size());
        for (std::size_t i = 0; i < once.forces.size(); ++i) {
            CHECK(again.forces[i].least == once.forces[i].least);
            CHECK(again.forces[i].greatest == once.forces[i].greatest);
            CHECK(again.forces[i].greatest_in == once.forces[i].greatest_in);
        }
    }
}

TEST_CASE("assess: film that creeps sags further where it is loose, and is as before where it is tight") {
    Plan plan = plans::small_boat_en(from_kPa(1.0));
    const Assessment fresh = assess(plan, {.workings = false});
    plan.film.creep_modulus = Cited<Pressure>{0.4 * plan.film.modulus.value, "invented"};
    const Assessment crept = assess(plan, {.workings = false});
    REQUIRE(fresh.situations.size() == crept.situations.size());
    for (std::size_t i = 0; i < fresh.situations.size(); ++i) {
        const SituationResult& a = fresh.situations[i];
        const SituationResult& b = crept.situations[i];
        CAPTURE(a.situation.name);
        if (a.situation.film_tension == Bound::high) {
            CHECK(a.film_sag == b.film_sag);
        } else if (a.situation.arrangement >= 0) {
            CHECK(b.film_sag > 1.1 * a.film_sag);
        }
    }
}

TEST_CASE("assess: workings are left out when nobody asks, and nothing else changes") {
    const Assessment bare = assess(plans::small_boat_en(), {.workings = false});
    const Assessment& full = small_boat_en();
    REQUIRE(bare.findings.size() == full.findings.size());
    for (std::size_t i = 0; i < bare.findings.size(); ++i) {
        Finding stripped = full.findings[i];
        stripped.workings.clear();
        CHECK(bare.findings[i] == stripped);
    }
    for (const Arrangement& arrangement : bare.arrangements) CHECK(arrangement.workings.empty());
}

TEST_CASE("assess: closer stations change little") {
    const Assessment fine = assess(plans::small_boat_en(), {.workings = false, .station_spacing = 0.125_m});
    const Assessment& coarse = small_boat_en();
    for (const std::string upright : {"U1", "U2", "U3", "U4"}) {
        CHECK(close(force(coarse, upright, "push").greatest, force(fine, upright, "push").greatest, 0.01));
    }
    const auto windshield = [](const Assessment& a) { return finding(a, "clearance", "windshield").demand; };
    CHECK(close(windshield(coarse), windshield(fine), 0.02));
}

// ------------------------------------------------------------------------------------------------------------ error

TEST_CASE("assess: a plan that cannot be laid out is refused with all its problems") {
    Plan plan = plans::small_boat();
    RidgeSupport& support = std::get<RidgeSupport>(plan.support.structure);
    support.uprights[0].stands_on = "nowhere";
    support.uprights[1].grade = "balsa";
    try {
        (void)assess(plan);
        FAIL("the plan was taken");
    } catch (const InputError& error) {
        CHECK(error.problems().size() == 2);
    }
}
