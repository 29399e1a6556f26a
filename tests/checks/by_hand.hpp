// SPDX-License-Identifier: BSD-3-Clause
// A cover put together by hand, so that a check can be given any state without a solver. Invented numbers throughout.
//
//     bow o----o----o----o----o stern       ridge 38 x 89 mm, level at z = 1.5 m, nodes 0 to 4 at x = 0 to 4 m
//                   |U1                      upright 38 x 89 mm from (2, 0, 0), node 5, to node 2: member 4
//          rails at y = -1.2 and 1.2 m, z = 0.6 m; strips at every node, 0 to 9, port first
//          strap C1 from node 2 to the rails, nodes 6 (port) and 7: members 5 and 6
//
// A strip has the level span L = 1.2 m and the rise h = -0.9 m: its chord slopes 0.75, is 1.5 m long, cos 0.8, sin 0.6.
#pragma once

#include <cmath>
#include <string>
#include <vector>

#include "coverframe/checks/check.hpp"
#include "coverframe/units/crossing.hpp"

namespace by_hand {

using namespace coverframe;
using namespace coverframe::literals;

inline constexpr int ridge_members = 4;
inline constexpr int upright_member = 4;
inline constexpr int strap_port = 5;
inline constexpr int strap_starboard = 6;

inline Plan plan() {
    Plan plan;
    plan.title = "Invented";
    plan.site.ground_snow = {1.0_kPa, SnowDocument::asce7_22, "II", "invented"};
    plan.basis.snow = {SnowDocument::asce7_22,
                       {1.0, "invented"},
                       {1.2, "invented"},
                       {Surface::other, "invented"},
                       Cited<double>{0.4, "invented"}};
    plan.basis.timber.wet_service = Cited<bool>{true, "invented"};
    plan.basis.timber.time_effect_factor = Cited<double>{0.8, "invented"};
    plan.boat.rail = {{0.0_m, 1.2_m, 0.6_m}, {4.0_m, 1.2_m, 0.6_m}};
    plan.boat.stands = {{"cockpit sole", 0.0_m, 4.0_m, 1.0_m, 0.0_m, {120.0_kPa, "invented"}}};
    const StrapKind cord{"cord",
                         {60.0_kN, "invented"},
                         {600.0_kN, "invented"},
                         {9.0_kN, "invented"},
                         {0.75, "invented"},
                         {0.9, "invented"},
                         {0.33, "invented"}};
    plan.straps = {cord};
    RidgeSupport support;
    support.ridge = {PoleRidge{{38.0_mm, 89.0_mm}, "Spruce-Pine-Fir No.1/No.2"},
                     {0.0_m, 1.5_m, Hold::pinned},
                     {4.0_m, 1.5_m, Hold::sliding}};
    support.uprights = {{"U1",
                         2.0_m,
                         "cockpit sole",
                         1.5_m,
                         {38.0_mm, 89.0_mm},
                         "Spruce-Pine-Fir No.1/No.2",
                         {200.0_mm, 200.0_mm, 18.0_mm},
                         {}}};
    support.cross_straps = {{"C1", "U1", "cord", 600.0_N, Sides::both}};
    plan.support.structure = support;
    plan.support.band = {"cord", 300.0_N, 200.0_mm, {0.8_m}, {}, {}};
    plan.film = {{0.2_mm, "invented"},       {100.0_N_per_m, "invented"}, {400.0_N_per_m, "invented"},
                 {200.0_MPa, "invented"},    {0.4, "invented"},           {5.0_MPa, "invented"},
                 {9.0_kN_per_m3, "invented"}};
    return plan;
}

/// The same plan judged by the European documents, in C24.
inline Plan european_plan() {
    Plan plan = by_hand::plan();
    plan.basis.snow.document = SnowDocument::en1991_1_3;
    plan.basis.timber = {
        TimberDocument::en1995_1_1, {}, {}, Cited<double>{0.7, "invented"}, Cited<double>{1.3, "invented"}};
    RidgeSupport& support = std::get<RidgeSupport>(plan.support.structure);
    std::get<PoleRidge>(support.ridge.member).grade = "C24";
    support.uprights[0].grade = "C24";
    return plan;
}

inline FrameMember member(std::string name, MemberKind kind, int from, int to) {
    FrameMember m;
    m.name = std::move(name);
    m.kind = kind;
    m.from = from;
    m.to = to;
    return m;
}

/// The cover of `plan`; keep the plan alive, for the upright points into it.
inline Cover cover(const Plan& plan) {
    Cover cover;
    Layout& layout = cover.layout;
    const double half = 1.2;
    for (int i = 0; i < 5; ++i) layout.frame.nodes.push_back({"ridge " + std::to_string(i), {double(i), 0.0, 1.5}, {}});
    layout.frame.nodes[0].held = {true, true, true, true, false, false};
    layout.frame.nodes[4].held = {false, true, true, true, false, false};
    layout.frame.nodes.push_back({"U1 foot", {2.0, 0.0, 0.0}, {true, true, true, false, false, false}});
    layout.frame.nodes.push_back({"C1 port at the rail", {2.0, -half, 0.6}, {true, true, true, false, false, false}});
    layout.frame.nodes.push_back(
        {"C1 starboard at the rail", {2.0, half, 0.6}, {true, true, true, false, false, false}});
    for (int i = 0; i < ridge_members; ++i) {
        FrameMember pole = member("ridge", MemberKind::pole, i, i + 1);
        pole.axial_stiffness = 30e6;
        pole.bending = {20e3, 4e3, 0.0, 0.0, 1e3};
        layout.frame.members.push_back(pole);
    }
    layout.frame.members.push_back(member("U1", MemberKind::upright, 5, 2));
    layout.frame.members.push_back(member("C1 port", MemberKind::strap, 2, 6));
    layout.frame.members.push_back(member("C1 starboard", MemberKind::strap, 2, 7));
    layout.frame.members[upright_member].axial_stiffness = 30e6;
    layout.frame.members[strap_port].axial_stiffness = layout.frame.members[strap_starboard].axial_stiffness = 60e3;
    for (FrameMember& m : layout.frame.members) m.free_length = drawn_length(layout.frame, m);
    layout.stations = {0, 1, 2, 3, 4};
    layout.bays = {{"bow to U1", {0, 1}, {0, 1, 2}}, {"U1 to stern", {2, 3}, {2, 3, 4}}};
    const auto* support = std::get_if<RidgeSupport>(&plan.support.structure);
    layout.uprights = {{"U1", upright_member, 5, 2, support ? support->uprights.data() : nullptr, nullptr}};
    layout.cross_straps = {{"C1", "cord", {strap_port, strap_starboard}}};
    for (int i = 0; i < 5; ++i) {
        for (const Side side : {Side::port, Side::starboard}) {
            const double width = i == 0 || i == 4 ? 0.5 : 1.0;
            cover.strips.push_back(
                {i, i, side, width, {double(i), side == Side::port ? -half : half, 0.6}, {200e3, 1.5, 0.0}});
        }
    }
    return cover;
}

/// A strip between its drawn ends with the level force H under the load W, as film/strip.hpp has it.
inline StripState hung(const CoverStrip& strip, double H, double W) {
    StripState s;
    s.level_force = H;
    s.span = std::abs(strip.rail[1]);
    s.rise = strip.rail[2] - 1.5;
    s.sag = W * s.span / (8 * H);
    const double out = strip.side == Side::port ? -1.0 : 1.0;
    const double upper = H * s.rise / s.span - W / 2;
    const double lower = H * s.rise / s.span + W / 2;
    s.tension_upper = std::hypot(H, upper);
    s.tension_lower = std::hypot(H, lower);
    s.pull_upper = {0.0, out * H, upper};
    s.pull_lower = {0.0, -out * H, -lower};
    return s;
}

/// A usable state: nothing has moved, no member carries anything, every strip carries H = 300 N and W = 240 N a metre
/// of its width, so that it sags 0.12 m. No film lies on the cross strap.
inline CoverState state(const Cover& cover) {
    CoverState state;
    state.frame.status = SolveStatus::converged;
    state.frame.message = "";
    state.frame.displacement.assign(6 * cover.layout.frame.nodes.size(), 0.0);
    state.frame.reaction = state.frame.displacement;
    state.frame.members.resize(cover.layout.frame.members.size());
    for (const CoverStrip& strip : cover.strips)
        state.strips.push_back(hung(strip, 300 * strip.width, 240 * strip.width));
    for (const CrossStrapPart& part : cover.layout.cross_straps) {
        for (const int member : part.members) state.legs.emplace_back().member = member;
    }
    return state;
}

/// Plan, cover and state that stay together.
struct Case {
    Plan plan;
    Cover cover;
    CoverState state;
    bool workings = false;

    explicit Case(Plan p = by_hand::plan())
        : plan(std::move(p)), cover(by_hand::cover(plan)), state(by_hand::state(cover)) {}
    Case(const Case&) = delete;
    Case& operator=(const Case&) = delete;

    [[nodiscard]] CheckInput input() const { return {plan, cover, state, "by hand", workings}; }
    MemberForces& forces(int m) { return state.frame.members[static_cast<std::size_t>(m)]; }
    FrameMember& member(int m) { return cover.layout.frame.members[static_cast<std::size_t>(m)]; }
    StripState& strip(int i) { return state.strips[static_cast<std::size_t>(i)]; }
    /// Hangs strip i again.
    void hang(int i, double H, double W) { strip(i) = hung(cover.strips[static_cast<std::size_t>(i)], H, W); }
    void move(int node, int direction, double by) {
        state.frame.displacement[static_cast<std::size_t>(6 * node + direction)] = by;
    }
    RidgeSupport& support() { return std::get<RidgeSupport>(plan.support.structure); }
};

/// The finding of that check and part; a default one, not applicable and without a name, if there is none.
inline Finding find(const std::vector<Finding>& findings, const std::string& check, const std::string& part) {
    for (const Finding& finding : findings) {
        if (finding.check == check && finding.part == part) return finding;
    }
    return {};
}

/// Whether every number of the findings is finite, and everything said that has to be.
inline bool sound(const std::vector<Finding>& findings) {
    for (const Finding& f : findings) {
        bool good = std::isfinite(f.demand) && std::isfinite(f.capacity) &&
                    std::isfinite(f.utilisation.value_or(0.0)) && std::isfinite(f.x.value_or(0.0)) &&
                    !f.check.empty() && !f.part.empty() && !f.unit.empty() && !f.clause.document.empty() &&
                    f.situation == "by hand" && f.sentence.size() > 20 && f.sentence.back() == '.';
        for (const Term& term : f.workings)
            good = good && std::isfinite(term.value) && !term.symbol.empty() && !term.unit.empty();
        if (!good) return false;
    }
    return true;
}

/// Value of the term of that symbol in a working; NaN if there is none.
inline double term(const Finding& finding, const std::string& symbol) {
    for (const Term& each : finding.workings) {
        if (each.symbol == symbol) return each.value;
    }
    return std::nan("");
}

}  // namespace by_hand
