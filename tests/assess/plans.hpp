// SPDX-License-Identifier: BSD-3-Clause
// Covers made in code, all of them invented, for the tests of the whole job.
#pragma once

#include <string>
#include <variant>

#include "coverframe/plan/plan.hpp"
#include "coverframe/units/crossing.hpp"

namespace plans {

using namespace coverframe;
using namespace coverframe::literals;

inline StrapKind polyester_strap() {
    const std::string source = "invented";
    return {"polyester 35 mm", {60.0_kN, source}, {600.0_kN, source}, {20.0_kN, source}, {0.8, source}, {0.75, source},
            {0.33, source}};
}

inline Upright upright(const std::string& name, Length x, Length top) {
    return {name, x, "sole", top, {38.0_mm, 89.0_mm}, "Spruce-Pine-Fir No.1/No.2", {300.0_mm, 300.0_mm, 38.0_mm}, {}};
}

inline RidgeSupport ridge_support() {
    RidgeSupport support;
    support.ridge.member = PoleRidge{{89.0_mm, 89.0_mm}, "Spruce-Pine-Fir No.1/No.2"};
    support.ridge.bow = {0.2_m, 1.70_m, Hold::pinned};
    support.ridge.stern = {5.8_m, 1.70_m, Hold::sliding};
    for (int i = 1; i <= 4; ++i) {
        const std::string number = std::to_string(i);
        support.uprights.push_back(upright("U" + number, from_m(0.2 + 1.12 * i), 1.70_m));
        support.cross_straps.push_back({"C" + number, "U" + number, "polyester 35 mm", 600.0_N, Sides::both});
    }
    return support;
}

/// A small open boat with four uprights under a level pole, ASCE 7-22 and NDS 2018.
inline Plan small_boat(Pressure ground_snow = 20.0_psf) {
    Plan plan;
    plan.title = "small boat";
    plan.note = "Invented for a test.";
    plan.site = {"invented yard", {ground_snow, SnowDocument::asce7_22, "II", "invented"}};
    plan.basis.snow = {SnowDocument::asce7_22, {1.0, "invented"}, {1.2, "invented"}, {Surface::slippery, "invented"},
                       Cited<double>{0.45, "invented"}};
    plan.basis.combination = {{1.2, "ASCE 7-22, 2.3.1"}, {1.0, "ASCE 7-22, 2.3.1"}};
    plan.basis.timber.document = TimberDocument::nds2018;
    plan.basis.timber.wet_service = Cited<bool>{true, "invented"};
    plan.basis.timber.time_effect_factor = Cited<double>{0.8, "invented"};
    plan.boat.name = "small boat";
    plan.boat.rail = {
        {0.0_m, 0.0_m, 1.10_m}, {1.0_m, 0.80_m, 1.05_m}, {2.5_m, 1.10_m, 1.00_m}, {6.0_m, 1.05_m, 0.95_m}};
    plan.boat.stands = {{"sole", 0.8_m, 5.9_m, 0.5_m, 0.20_m, {200.0_kPa, "invented"}}};
    plan.boat.obstacles = {{"windshield", {{2.2_m, -0.6_m, 1.15_m}, {2.2_m, 0.6_m, 1.15_m}}, {50.0_mm, "invented"}}};
    plan.straps = {polyester_strap()};
    plan.support.structure = ridge_support();
    plan.support.band.strap = "polyester 35 mm";
    plan.support.band.pretension = 400.0_N;
    plan.support.band.below_rail = 150.0_mm;
    plan.support.band.hangers.spacing = 0.8_m;
    plan.support.band.belly_straps = {{1.5_m, "polyester 35 mm", 200.0_N}, {3.0_m, "polyester 35 mm", 200.0_N},
                                      {4.5_m, "polyester 35 mm", 200.0_N}};
    plan.film = {.thickness = {0.20_mm, "invented"},
                 .tension_low = {80.0_N_per_m, "invented"},
                 .tension_high = {300.0_N_per_m, "invented"},
                 .modulus = {200.0_MPa, "invented"},
                 .poisson = {0.4, "invented"},
                 .strength = {12.0_MPa, "invented"},
                 .unit_weight = {9.2_kN_per_m3, "invented"}};
    return plan;
}

/// The same boat by EN 1991-1-3 and EN 1995-1-1.
inline Plan small_boat_en(Pressure ground_snow = 1.0_kPa) {
    Plan plan = small_boat();
    plan.site.ground_snow = {ground_snow, SnowDocument::en1991_1_3, "", "invented"};
    plan.basis.snow = {.document = SnowDocument::en1991_1_3,
                       .exposure_factor = {1.0, "invented"},
                       .thermal_factor = {1.0, "invented"},
                       .surface = {Surface::other, "invented"},
                       .winter_wind = {}};
    plan.basis.combination = {{1.35, "EN 1990, Table A1.2(B)"}, {1.5, "EN 1990, Table A1.2(B)"}};
    plan.basis.timber = {.document = TimberDocument::en1995_1_1,
                         .wet_service = {},
                         .time_effect_factor = {},
                         .modification_factor = Cited<double>{0.7, "invented"},
                         .material_factor = Cited<double>{1.3, "invented"}};
    RidgeSupport& support = std::get<RidgeSupport>(plan.support.structure);
    std::get<PoleRidge>(support.ridge.member).grade = "C24";
    for (Upright& upright : support.uprights) upright.grade = "C24";
    return plan;
}

/// A ridge that hardly gives over a level rail of one breadth, from end to end: no film closes the ends.
inline Plan long_level_cover() {
    Plan plan = small_boat_en();
    plan.boat.obstacles.clear();
    plan.boat.rail = {{0.0_m, 1.1_m, 1.0_m}, {9.0_m, 1.1_m, 1.0_m}};
    RidgeSupport& support = std::get<RidgeSupport>(plan.support.structure);
    std::get<PoleRidge>(support.ridge.member).section = {300.0_mm, 300.0_mm};
    support.ridge.bow = {0.0_m, 1.7_m, Hold::pinned};
    support.ridge.stern = {9.0_m, 1.7_m, Hold::sliding};
    support.cross_straps.clear();
    support.uprights.clear();
    return plan;
}

}  // namespace plans
