// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/en1991_1_3.hpp"

#include "actions/catalogue/en1991_1_3_parts.hpp"

namespace coverframe::catalogue {

using namespace en1991_1_3;

namespace {

const char* const steel_buildings = "Steel Buildings in Europe, Single-storey steel buildings, Part 3, Appendix A";

constexpr auto fast_load = [](double ground, double mu, double c_e, double c_t) {
    return fast(within(ground, 0.0, limit::ground_high) * within(mu, 0.0, limit::shape_high) *
                    within(c_e, limit::exposure_low, limit::exposure_high) *
                    within(c_t, limit::thermal_low, limit::thermal_high),
                mu * c_e * c_t * ground);
};

void add_situations(std::vector<Rule>& rules, const std::string& space) {
    add(rules, {space, "exceptional_ground_load", clause_4_3, "Ground load of an exceptional fall.", Read::page,
                std::string("Eq. 4.1 (") + steel_buildings + ")"},
        {{"ground_snow_kpa", "s_k", "ground snow load, 0 to 100"},
         {"exceptional_factor", "C_esl", "coefficient for exceptional snow loads, 1 to 4; 2.0 is recommended"}},
        {{"exceptional_ground_snow_kpa", "s_Ad", "C_esl s_k"}},
        [](Pressure s_k, double c_esl) { return exceptional_ground_load_4_3(s_k, c_esl); },
        [](double s_k, double c_esl) {
            return fast(within(s_k, 0.0, limit::ground_high) * within(c_esl, 1.0, 4.0), c_esl * s_k);
        });
    add(rules, {space, "design_situations", annex_A, "Load arrangements a site asks for.", Read::part,
                "Table A.1: the four cases (Steel Buildings in Europe, Part 3, 7.2.1) and B2 (New Steel Construction, "
                "AD 484) on pages, the rest from memory, fairly sure"},
        {{"exceptional", "case", "exceptional snow the National Annex counts on: A, B1, B2, B3"},
         {"annex_b_shape", "shape", "whether Annex B gives a coefficient for the roof"}},
        {{"undrifted", "undrifted", "always; persistent, Eq. 5.1"},
         {"drifted", "drifted", "not for a shape of Annex B in B2 and B3; persistent, Eq. 5.1"},
         {"exceptional_fall_undrifted", "fall undrifted", "B1 and B3; accidental, Eq. 5.2"},
         {"exceptional_fall_drifted", "fall drifted", "B1; accidental, Eq. 5.2"},
         {"exceptional_drift", "exceptional drift", "for a shape of Annex B in B2 and B3; accidental, Eq. 5.3"}},
        [](ExceptionalSnow exceptional, bool annex_b_shape) {
            const DesignSituations found = design_situations_A(exceptional, annex_b_shape);
            return std::tuple{found.undrifted, found.drifted, found.exceptional_fall_undrifted,
                              found.exceptional_fall_drifted, found.exceptional_drift};
        });
    add(rules, {space, "exposure_coefficient", clause_5_2_7, "Exposure coefficient.", Read::part,
                "Table 5.1: the three classes on a page, the values from memory, sure"},
        {{"topography", "topography", "lie of the land"}},
        {{"exposure_coefficient", "C_e", "0.8 windswept, 1.0 normal, 1.2 sheltered"}},
        [](Topography topography) { return exposure_coefficient_5_2_7(topography); });
}

void add_loads(std::vector<Rule>& rules, const std::string& space) {
    const Text mu{"shape_coefficient", "mu", "shape coefficient, 0 to 25"};
    const Text c_e{"exposure_coefficient", "C_e", "exposure coefficient, 0.5 to 1.5"};
    const Text c_t{"thermal_coefficient", "C_t", "thermal coefficient, 0.8 to 1.4; 1.0 for a cover"};
    add(rules, {space, "roof_load", clause_5_2, "Snow load on a slope, persistent and transient situations.",
                Read::page, std::string("Eq. 5.1 (") + steel_buildings + ")"},
        {{"ground_snow_kpa", "s_k", "ground snow load, 0 to 100"}, mu, c_e, c_t},
        {{"roof_load_kpa", "s", "mu C_e C_t s_k"}},
        [](Pressure s_k, double shape, double exposure, double thermal) {
            return roof_load_5_2(s_k, shape, exposure, thermal);
        },
        fast_load);
    add(rules, {space, "exceptional_fall_load", clause_5_2,
                "Snow load on a slope after an exceptional fall, accidental situations.", Read::page,
                std::string("Eq. 5.2 (") + steel_buildings + ")"},
        {{"exceptional_ground_snow_kpa", "s_Ad", "ground load of the exceptional fall, 0 to 100"}, mu, c_e, c_t},
        {{"roof_load_kpa", "s", "mu C_e C_t s_Ad"}},
        [](Pressure s_ad, double shape, double exposure, double thermal) {
            return exceptional_fall_load_5_2(s_ad, shape, exposure, thermal);
        },
        fast_load);
    add(rules, {space, "exceptional_drift_load", clause_5_2,
                "Snow load of an exceptional drift of Annex B, accidental situations.", Read::page,
                std::string("Eq. 5.3 (") + steel_buildings + ")"},
        {{"ground_snow_kpa", "s_k", "ground snow load, 0 to 100"}, {"shape_coefficient", "mu", "of Annex B, 0 to 8"}},
        {{"roof_load_kpa", "s", "mu s_k"}},
        [](Pressure s_k, double shape) { return exceptional_drift_load_5_2(s_k, shape); },
        [](double s_k, double shape) {
            return fast(within(s_k, 0.0, limit::ground_high) * within(shape, 0.0, 8.0), shape * s_k);
        });
}

}  // namespace

void add_en1991_1_3(std::vector<Rule>& rules) {
    const std::string space = "en1991_1_3";
    add_situations(rules, space);
    add_loads(rules, space);
    add_en1991_1_3_shapes(rules);
    add_en1991_1_3_drift(rules);
    add_en1991_1_3_local(rules);
    add_en1991_1_3_annex_b(rules);
    add_national_roof(rules);
}

}  // namespace coverframe::catalogue
