// SPDX-License-Identifier: BSD-3-Clause
#include "actions/catalogue/entry.hpp"
#include "coverframe/actions/en1991_1_3.hpp"

namespace coverframe::catalogue {

using namespace en1991_1_3;

void add_en1991_1_3(std::vector<Rule>& rules) {
    const std::string space = "en1991_1_3";
    add(rules, {space, "exposure_coefficient", clause_5_2_7, "Exposure coefficient.", Read::part,
                "Table 5.1: the three classes on a page, the values from memory, sure"},
        {{"topography", "topography", "lie of the land", "normal"}},
        {{"exposure_coefficient", "C_e", "0.8 windswept, 1.0 normal, 1.2 sheltered"}},
        [](Topography topography) { return exposure_coefficient_5_2_7(topography); });
    add(rules, {space, "shape_coefficient", clause_5_3_3, "Shape coefficient of a plane slope.", Read::part,
                "Table 5.2: the line on a page (University of Zagreb course notes), the floor from memory, sure"},
        {{"slope_deg", "slope", "of the cover, 0 to 90"}, {"sliding", "sliding", "whether snow may leave", "prevented"}},
        {{"shape_coefficient", "mu_1", "0.8 up to 30 deg, 0.8 (60 - slope)/30 to 60, then 0; 0.8 if sliding is prevented"}},
        [](Angle pitch, Sliding sliding) { return shape_coefficient_pitched_5_3_3(pitch, sliding); });
    add(rules, {space, "roof_load", clause_5_2, "Snow load on a slope, persistent and transient situations.", Read::page,
                "Eq. 5.1 and 5.2 (Steel Buildings in Europe, Single-storey steel buildings, Part 3, Appendix A)"},
        {{"ground_snow_kpa", "s_k", "ground snow load, 0 to 100"}, {"shape_coefficient", "mu", "0 to 4"},
         {"exposure_coefficient", "C_e", "0.5 to 1.5"}, {"thermal_coefficient", "C_t", "0.8 to 1.4; 1.0 for a cover"}},
        {{"roof_load_kpa", "s", "mu C_e C_t s_k"}},
        [](Pressure s_k, double mu, double c_e, double c_t) { return roof_load_5_2(s_k, mu, c_e, c_t); });
}

}  // namespace coverframe::catalogue
