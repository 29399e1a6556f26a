// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/arrangement.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "actions/refusal.hpp"
#include "close.hpp"
#include "coverframe/units/crossing.hpp"

using namespace coverframe;
using namespace coverframe::literals;

namespace {

/// Only what snow_arrangements reads. An invented site.
Plan asce_plan(double p_g_psf, double thermal = 1.2, Surface surface = Surface::other, double winter_wind = 0.5) {
    Plan plan;
    plan.site.ground_snow = {from_psf(p_g_psf), SnowDocument::asce7_22, "II", "invented"};
    plan.basis.snow.document = SnowDocument::asce7_22;
    plan.basis.snow.exposure_factor = {1.0, "invented"};
    plan.basis.snow.thermal_factor = {thermal, "invented"};
    plan.basis.snow.surface = {surface, "invented"};
    plan.basis.snow.winter_wind = Cited<double>{winter_wind, "invented"};
    return plan;
}

Plan en_plan(double s_k_kpa, Surface surface) {
    Plan plan;
    plan.site.ground_snow = {from_kPa(s_k_kpa), SnowDocument::en1991_1_3, "", "invented"};
    plan.basis.snow.document = SnowDocument::en1991_1_3;
    plan.basis.snow.exposure_factor = {1.0, "invented"};
    plan.basis.snow.thermal_factor = {1.0, "invented"};
    plan.basis.snow.surface = {surface, "invented"};
    return plan;
}

CoverStation station(double slope_deg, double half_breadth_ft = 4.0) {
    return {1.0_m, from_deg(slope_deg), from_ft(half_breadth_ft), 1.2_m};
}

const Arrangement* named(const std::vector<Arrangement>& all, const std::string& name) {
    const auto found = std::find_if(all.begin(), all.end(), [&](const Arrangement& a) { return a.name == name; });
    return found == all.end() ? nullptr : &*found;
}

std::vector<std::string> names_of(const std::vector<Arrangement>& all) {
    std::vector<std::string> names;
    for (const Arrangement& a : all) names.push_back(a.name);
    return names;
}

double psf(PlanLoad load) { return in_psf(load.value); }
double kpa(PlanLoad load) { return in_kPa(load.value); }

double term(const Arrangement& arrangement, const std::string& symbol) {
    const auto found = std::find_if(arrangement.workings.begin(), arrangement.workings.end(),
                                    [&](const Term& t) { return t.symbol == symbol; });
    REQUIRE(found != arrangement.workings.end());
    return found->value;
}

/// Load on port of the named arrangement for a cover that is the station looked at and one of 20 degrees, which brings
/// in the unbalanced case.
double port_load_beside_20_deg(const Plan& plan, double slope_deg, const std::string& name) {
    const std::vector<CoverStation> stations{station(20.0), station(slope_deg)};
    const std::vector<Arrangement> all = snow_arrangements(plan, stations);
    const Arrangement* arrangement = named(all, name);
    REQUIRE(arrangement != nullptr);
    return psf(arrangement->port[1]);
}

}  // namespace

// ------------------------------------------------------------------------------------------------------------ value

TEST_CASE("arrangement: ASCE 7-22 balanced load of an unheated gable of 1/2 on 12") {
    // O'Rourke, Guide to the Snow Load Provisions of ASCE 7-10, Example 4-3: p_s printed 25.2 psf (I_s = 1, so that the
    // formula of 7-22 gives the same).
    const std::vector<CoverStation> stations{station(std::atan(1.0 / 24.0) * 180.0 / 3.14159265358979323846)};
    const auto all = snow_arrangements(asce_plan(30.0), stations);
    REQUIRE(all.front().name == "balanced");
    CHECK(close(psf(all.front().port[0]), 25.2, 1e-12));
    CHECK(close(psf(all.front().starboard[0]), 25.2, 1e-12));
    CHECK(all.front().clause.number == "7.4");
}

TEST_CASE("arrangement: ASCE 7-22 balanced load falls with the slope factor") {
    // Commentary C7, Example 1 (from memory): 8 on 12, C_t = 1.0, other surface, p_g = 30 psf; printed C_s 0.91 and p_s
    // 19 psf.
    const std::vector<CoverStation> stations{station(33.69)};
    const auto all = snow_arrangements(asce_plan(30.0, 1.0), stations);
    CHECK(close(term(all.front(), "C_s"), 0.91, 0.005));
    CHECK(close(psf(all.front().port[0]), 19.0, 0.01));
}

TEST_CASE("arrangement: ASCE 7-22 unbalanced by hand") {
    // p_g 30 psf, W 4 ft so l_u 20 ft, W_2 0.5, 20 degrees; slide-rule steps:
    // gamma 0.13*30 + 14 = 17.9; h_d = 1.5 sqrt(30^0.74 20^0.70 0.5^1.7/17.9) = 1.976 ft; S = 2.7475
    // p_drift = 1.976*17.9/1.6576 = 21.33 psf; p_s = 0.7*1.2*30 = 25.2
    const std::vector<CoverStation> stations{station(20.0)};
    const auto all = snow_arrangements(asce_plan(30.0), stations);
    CHECK(names_of(all) == std::vector<std::string>{"balanced", "unbalanced, heavy to port",
                                                    "unbalanced, heavy to starboard", "cleared to port",
                                                    "cleared to starboard"});
    CHECK(close(psf(all[1].port[0]), 25.2 + 21.33, 5e-4));
    CHECK(close(psf(all[1].starboard[0]), 7.56, 1e-12));
    CHECK(close(psf(all[2].starboard[0]), 25.2 + 21.33, 5e-4));
    CHECK(close(psf(all[2].port[0]), 7.56, 1e-12));
    CHECK(all[1].clause.number == "7.6.1");
}

TEST_CASE("arrangement: ASCE 7-22 windward share and unit weight of a printed example") {
    // O'Rourke, Guide to ASCE 7-10, Example 6-2: gamma printed 17.9 pcf; windward printed 7.5 psf from p_s rounded to
    // 25 psf.
    const std::vector<CoverStation> stations{station(2.3859, 130.0)};  // 1/2 on 12
    const auto all = snow_arrangements(asce_plan(30.0), stations);
    const Arrangement* port = named(all, "unbalanced, heavy to port");
    REQUIRE(port != nullptr);
    CHECK(close(term(*port, "gamma"), 17.9, 1e-12));
    CHECK(close(term(*port, "S"), 24.0, 1e-4));
    CHECK(close(term(*port, "p_windward") * 25.0 / term(*port, "p_s"), 7.5, 1e-12));
    // the printed intensity 14.5 psf belongs to the h_d of 7-10, 3.97 ft; the shape h_d gamma/sqrt(S) is the same
    CHECK(close(term(*port, "p_drift") * 3.97 / term(*port, "h_d"), 14.5, 0.001));
    CHECK(close(term(*port, "l_u"), 130.0, 1e-12));
}

TEST_CASE("arrangement: ASCE 7-22 minimum load is a uniform arrangement of its own") {
    // Table 7.3-4, risk category II: 30 psf (from memory)
    const std::vector<CoverStation> stations{station(14.9), station(50.0)};
    for (const auto& row : {std::pair{20.0, 20.0}, std::pair{30.0, 30.0}, std::pair{60.0, 30.0}}) {
        const double ground = row.first;
        const double minimum = row.second;
        CAPTURE(ground);
        const auto all = snow_arrangements(asce_plan(ground), stations);
        REQUIRE(all.size() == 6);
        CHECK(all[1].name == "minimum");
        for (const PlanLoad& load : all[1].port) CHECK(close(psf(load), minimum, 1e-12));
        for (const PlanLoad& load : all[1].starboard) CHECK(close(psf(load), minimum, 1e-12));
    }
    CHECK(named(snow_arrangements(asce_plan(30.0), std::vector{station(15.0)}), "minimum") == nullptr);
}

TEST_CASE("arrangement: EN 1991-1-3 duopitch of a printed example") {
    // Steel Buildings in Europe, Single-storey steel buildings, Part 3, Appendix A: 8.5 degrees, s_k 0.65; printed 0.52
    // for case (i), 0.26 for the halved slope of case (ii).
    const std::vector<CoverStation> stations{station(8.5)};
    const auto all = snow_arrangements(en_plan(0.65, Surface::slippery), stations);
    CHECK(names_of(all) == std::vector<std::string>{"balanced", "drifted, heavy to starboard",
                                                    "drifted, heavy to port", "cleared to port",
                                                    "cleared to starboard"});
    CHECK(close(kpa(all[0].port[0]), 0.52, 1e-12));
    CHECK(close(kpa(all[0].starboard[0]), 0.52, 1e-12));
    CHECK(close(kpa(all[1].port[0]), 0.26, 1e-12));
    CHECK(close(kpa(all[1].starboard[0]), 0.52, 1e-12));
    CHECK(close(kpa(all[2].port[0]), 0.52, 1e-12));
    CHECK(close(kpa(all[2].starboard[0]), 0.26, 1e-12));
    CHECK(all[1].clause.number == "5.3.3, Figure 5.3, case (ii)");
}

TEST_CASE("arrangement: EN 1991-1-3 sliding has to be claimed") {
    const std::vector<CoverStation> stations{station(45.0), station(65.0)};
    const auto held = snow_arrangements(en_plan(1.0, Surface::other), stations);
    CHECK(close(kpa(held[0].port[0]), 0.8, 1e-12));
    CHECK(close(kpa(held[0].port[1]), 0.8, 1e-12));
    const auto free = snow_arrangements(en_plan(1.0, Surface::slippery), stations);
    CHECK(close(kpa(free[0].port[0]), 0.4, 1e-12));  // 0.8 (60 - 45)/30
    CHECK(kpa(free[0].port[1]) == 0.0);
}

TEST_CASE("arrangement: the shedding threshold is where the slope factor begins to fall, or the plan's own") {
    // Fig. 7.4-1 of ASCE 7-22 (from memory, but for the 10 degrees); EN 1991-1-3, Table 5.2
    CHECK(close(shedding_threshold(asce_plan(30, 1.2, Surface::other)).value, 45.0_deg, 1e-12));
    CHECK(close(shedding_threshold(asce_plan(30, 1.2, Surface::slippery)).value, 15.0_deg, 1e-12));
    CHECK(close(shedding_threshold(asce_plan(30, 1.1, Surface::slippery)).value, 10.0_deg, 1e-12));
    CHECK(close(shedding_threshold(asce_plan(30, 1.0, Surface::other)).value, 30.0_deg, 1e-12));
    CHECK(close(shedding_threshold(en_plan(1.0, Surface::slippery)).value, 30.0_deg, 1e-12));
    const Cited<Angle> held = shedding_threshold(en_plan(1.0, Surface::other));
    CHECK(close(held.value, 30.0_deg, 1e-12));
    CHECK(held.source.find("does not claim") != std::string::npos);
    CHECK(shedding_threshold(asce_plan(30)).source.find("ASCE 7-22, 7.4") == 0);

    Plan own = asce_plan(30);
    own.basis.shedding_slope = Cited<Angle>{22.0_deg, "yard's experience"};
    CHECK(shedding_threshold(own) == *own.basis.shedding_slope);
}

TEST_CASE("arrangement: workings lead to the heaviest station's load") {
    const std::vector<CoverStation> stations{station(60.0), station(25.0), station(10.0)};
    for (const Plan& plan : {asce_plan(40.0, 1.2, Surface::slippery), en_plan(1.5, Surface::slippery)}) {
        for (const Arrangement& a : snow_arrangements(plan, stations)) {
            CAPTURE(a.name);
            double most = 0;
            for (std::size_t i = 0; i < stations.size(); ++i) {
                most = std::max({most, in_Pa(a.port[i].value), in_Pa(a.starboard[i].value)});
            }
            double worked = 0;
            for (const Term& t : a.workings) {
                CHECK(std::isfinite(t.value));
                if (t.unit == "psf" && t.symbol != "p_g" && t.symbol != "p_f" && t.symbol != "p_m,max") {
                    worked = std::max(worked, in_Pa(from_psf(t.value)));
                }
                if (t.unit == "kPa" && t.symbol != "s_k") worked = std::max(worked, in_Pa(from_kPa(t.value)));
            }
            CHECK(close(worked, most, 1e-12));
        }
    }
    CHECK(snow_arrangements(asce_plan(40.0), stations, false).front().workings.empty());
}

// ------------------------------------------------------------------------------------------------------------ limit

TEST_CASE("arrangement: ASCE 7-22 window of the unbalanced case") {
    Plan plan = asce_plan(30.0);
    const auto unbalanced = [&](std::vector<double> slopes) {
        std::vector<CoverStation> stations;
        for (const double slope : slopes) stations.push_back(station(slope));
        return named(snow_arrangements(plan, stations), "unbalanced, heavy to port") != nullptr;
    };
    for (const std::vector<double>& level : {std::vector{2.37}, std::vector{0.0, 1.0}}) CHECK_FALSE(unbalanced(level));
    for (const std::vector<double>& inside : {std::vector{2.39}, std::vector{30.25}, std::vector{50.0, 20.0}}) {
        CHECK(unbalanced(inside));
    }
    // steeper than the window: carried on unless the plan chooses otherwise
    CHECK(unbalanced({30.3}));
    CHECK(unbalanced({35.0, 50.0}));
    CHECK(unbalanced({1.0, 50.0}));
    plan.basis.snow.unbalanced_window = Cited<UnbalancedWindow>{UnbalancedWindow::as_written, "invented"};
    CHECK_FALSE(unbalanced({30.3}));
    CHECK_FALSE(unbalanced({35.0, 50.0}));
    CHECK_FALSE(unbalanced({1.0, 50.0}));
    CHECK(unbalanced({50.0, 20.0}));
    const auto all = snow_arrangements(plan, std::vector{station(50.0), station(20.0)});
    const Arrangement* port = named(all, "unbalanced, heavy to port");
    REQUIRE(port != nullptr);
    CHECK(port->starboard[0].value == all.front().starboard[0].value);  // outside the window: balanced
    CHECK(psf(port->starboard[1]) < psf(all.front().starboard[1]));
    CHECK(port->note.find("as the plan chooses (invented)") != std::string::npos);
}

TEST_CASE("arrangement: ASCE 7-22 drift is nothing on a flat station and from 70 degrees") {
    const Plan plan = asce_plan(30.0);
    CHECK(close(port_load_beside_20_deg(plan, 0.0, "unbalanced, heavy to port"), 25.2, 1e-12));
    CHECK(close(port_load_beside_20_deg(plan, 0.0, "unbalanced, heavy to starboard"), 7.56, 1e-12));
    CHECK(port_load_beside_20_deg(plan, 70.0, "unbalanced, heavy to port") == 0.0);
    CHECK(port_load_beside_20_deg(plan, 90.0, "unbalanced, heavy to port") == 0.0);
}

TEST_CASE("arrangement: a station without breadth carries nothing and brings in no case") {
    for (Plan plan : {asce_plan(30.0), en_plan(1.0, Surface::other)}) {
        plan.basis.snow.unbalanced_window = Cited<UnbalancedWindow>{UnbalancedWindow::as_written, "invented"};
        const std::vector<CoverStation> stations{station(90.0, 0.0), station(40.0), station(5.0, 0.0)};
        const auto all = snow_arrangements(plan, stations);
        for (const Arrangement& a : all) {
            CHECK(psf(a.port[0]) == 0.0);
            CHECK(psf(a.starboard[2]) == 0.0);
            CHECK(psf(a.port[1]) + psf(a.starboard[1]) > 0.0);
        }
        CHECK(named(all, "minimum") == nullptr);
        CHECK(named(all, "unbalanced, heavy to port") == nullptr);
    }
}

TEST_CASE("arrangement: no ground snow is no load") {
    for (const Plan& plan : {asce_plan(0.0), en_plan(0.0, Surface::other)}) {
        for (const Arrangement& a : snow_arrangements(plan, std::vector{station(10.0), station(20.0)})) {
            for (const PlanLoad& load : a.port) CHECK(psf(load) == 0.0);
            for (const PlanLoad& load : a.starboard) CHECK(psf(load) == 0.0);
        }
    }
}

// -------------------------------------------------------------------------------------------------------- invariant

TEST_CASE("arrangement: heavy to port is the mirror of heavy to starboard") {
    const std::vector<CoverStation> stations{station(65.0, 1.0), station(35.0), station(20.0), station(8.0, 5.0)};
    const auto mirrored = [](const Arrangement& a, const Arrangement& b) {
        for (std::size_t i = 0; i < a.port.size(); ++i) {
            CHECK(psf(a.port[i]) == psf(b.starboard[i]));
            CHECK(psf(a.starboard[i]) == psf(b.port[i]));
        }
    };
    const auto asce = snow_arrangements(asce_plan(30.0), stations);
    mirrored(*named(asce, "unbalanced, heavy to port"), *named(asce, "unbalanced, heavy to starboard"));
    mirrored(asce[0], asce[0]);
    const auto en = snow_arrangements(en_plan(1.0, Surface::slippery), stations);
    mirrored(*named(en, "drifted, heavy to port"), *named(en, "drifted, heavy to starboard"));
}

TEST_CASE("arrangement: loads are continuous in the slope, also across the ends of the window") {
    // The load beside a station of 20 degrees, at steps of 0.01 degree. Steepest is the root near level; a jump at 2.38
    // or 30.26 or 70 degrees would be tens of psf.
    for (const Surface surface : {Surface::other, Surface::slippery}) {
        const Plan plan = asce_plan(30.0, 1.2, surface);
        for (const std::string name : {"balanced", "unbalanced, heavy to port", "unbalanced, heavy to starboard"}) {
            double before = port_load_beside_20_deg(plan, 0.5, name);
            for (int i = 51; i <= 8990; ++i) {
                const double slope = 0.01 * i;
                const double now = port_load_beside_20_deg(plan, slope, name);
                if (std::abs(now - before) > 0.06) {
                    CAPTURE(slope);
                    CAPTURE(name);
                    CHECK(now == before);
                }
                before = now;
            }
        }
    }
}

TEST_CASE("arrangement: the order of stations does not matter") {
    const std::vector<CoverStation> forward{station(65.0, 1.0), station(35.0), station(20.0), station(8.0, 5.0)};
    const std::vector<CoverStation> backward(forward.rbegin(), forward.rend());
    for (const Plan& plan : {asce_plan(30.0), en_plan(1.0, Surface::slippery)}) {
        const auto a = snow_arrangements(plan, forward);
        const auto b = snow_arrangements(plan, backward);
        REQUIRE(names_of(a) == names_of(b));
        for (std::size_t k = 0; k < a.size(); ++k) {
            for (std::size_t i = 0; i < forward.size(); ++i) {
                CHECK(psf(a[k].port[i]) == psf(b[k].port[forward.size() - 1 - i]));
            }
        }
    }
}

TEST_CASE("arrangement: more ground snow never means less load") {
    const std::vector<CoverStation> stations{station(65.0, 1.0), station(35.0), station(20.0), station(8.0),
                                             station(1.0)};
    const auto never_less = [&](const auto& plan_of, double step, int count) {
        auto before = snow_arrangements(plan_of(step), stations);
        for (int k = 2; k <= count; ++k) {
            const auto now = snow_arrangements(plan_of(step * k), stations);
            REQUIRE(names_of(now) == names_of(before));
            for (std::size_t a = 0; a < now.size(); ++a) {
                for (std::size_t i = 0; i < stations.size(); ++i) {
                    CHECK(now[a].port[i].value >= before[a].port[i].value);
                    CHECK(now[a].starboard[i].value >= before[a].starboard[i].value);
                }
            }
            before = now;
        }
    };
    never_less([](double p_g) { return asce_plan(p_g); }, 4.0, 60);
    never_less([](double s_k) { return en_plan(s_k, Surface::slippery); }, 0.25, 30);
}

TEST_CASE("arrangement: the lee side carries no less than balanced, and more breadth or wind never less") {
    for (const double slope : {3.0, 15.0, 30.0, 40.0, 60.0}) {
        CAPTURE(slope);
        const double balanced = port_load_beside_20_deg(asce_plan(30.0), slope, "balanced");
        double before = balanced;
        for (const double wind : {0.0, 0.25, 0.45, 0.65}) {
            const double now = port_load_beside_20_deg(asce_plan(30.0, 1.2, Surface::other, wind), slope,
                                                       "unbalanced, heavy to port");
            CHECK(now >= before);
            before = now;
        }
    }
    const auto lee = [](double breadth_ft) {
        const auto all = snow_arrangements(asce_plan(30.0), std::vector{station(20.0, breadth_ft)});
        return psf(named(all, "unbalanced, heavy to port")->port[0]);
    };
    CHECK(lee(4.0) == lee(19.0));  // the floor on the fetch
    CHECK(lee(25.0) > lee(19.0));
}

// ------------------------------------------------------------------------------------------------------------ error

TEST_CASE("arrangement: what a document needs and does not get") {
    const std::vector<CoverStation> stations{station(20.0)};
    const auto refusal = [](const Plan& plan, std::span<const CoverStation> where) {
        return code_of([&] { return snow_arrangements(plan, where); });
    };
    Plan plan = asce_plan(30.0);
    plan.basis.snow.winter_wind.reset();
    CHECK(refusal(plan, stations) == "plan.key.missing");
    plan = asce_plan(30.0);
    plan.site.ground_snow.risk_category = "V";
    CHECK(refusal(plan, stations) == "plan.choice");
    plan = asce_plan(30.0);
    plan.basis.snow.exposure_factor.value = 3.0;
    CHECK(refusal(plan, stations) == "asce7.exposure.range");
    CHECK(refusal(asce_plan(30.0), std::vector{station(91.0)}) == "asce7.slope.range");
    CHECK(refusal(asce_plan(30.0), std::vector{station(std::nan(""))}) == "asce7.slope.range");
    CHECK(refusal(en_plan(1.0, Surface::other), std::vector{station(91.0)}) == "en1991_1_3.pitch.range");
}
