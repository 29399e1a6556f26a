// SPDX-License-Identifier: BSD-3-Clause
#include <algorithm>
#include <cmath>

#include "actions/catalogue/en1991_1_3_parts.hpp"
#include "coverframe/actions/en1991_1_3_curved.hpp"

namespace coverframe::catalogue {

using namespace en1991_1_3;

namespace {

const char* const line_of_slope = "0.8 up to 30 deg, 0.8 (60 - slope)/30 to 60, then 0; 0.8 if sliding is prevented";
const char* const read_of_slope =
    "Table 5.2: the line on a page (University of Zagreb course notes), the floor from memory, sure";

constexpr double fast_line(double slope, Sliding sliding, double level) {
    return sliding == Sliding::prevented ? level : level * std::clamp((60.0 - slope) / 30.0, 0.0, 1.0);
}

constexpr Covered fast_span(double b) { return within(b, argument::smallest, limit::width_high); }

constexpr double fast_valley(double slope) { return 0.8 + 0.8 * std::min(slope / 30.0, 1.0); }

constexpr auto fast_shape = [](double slope, Sliding sliding) {
    return fast(within(slope, 0.0, 90.0), fast_line(slope, sliding, 0.8));
};

std::vector<Text> two_slopes(const std::string& limits) {
    return {{"first_slope_deg", "a_1", "first slope, " + limits},
            {"first_sliding", "sliding_1", "whether snow may leave the first slope", "prevented"},
            {"second_slope_deg", "a_2", "second slope, " + limits},
            {"second_sliding", "sliding_2", "whether snow may leave the second slope", "prevented"}};
}

void add_single(std::vector<Rule>& rules, const std::string& space) {
    const Text slope{"slope_deg", "slope", "of the cover, 0 to 90"};
    const Text sliding{"sliding", "sliding", "whether snow may leave", "prevented"};
    add(rules, {space, "shape_coefficient", clause_5_3_3, "Shape coefficient of a plane slope.", Read::part,
                read_of_slope},
        {slope, sliding}, {{"shape_coefficient", "mu_1", line_of_slope}},
        [](Angle pitch, Sliding leaving) { return shape_coefficient_pitched_5_3_3(pitch, leaving); }, fast_shape);
    add(rules, {space, "raised_shape_coefficient", clause_5_3_3,
                "Shape coefficient of a plane slope where the National Annex raises that of a level roof.", Read::fair,
                "amendment A1:2015, from memory"},
        {slope, sliding, {"level_coefficient", "mu(0)", "coefficient of a level roof, 0.8 to 1.25"}},
        {{"shape_coefficient", "mu", "mu(0) up to 30 deg, mu(0) (60 - slope)/30 to 60, then 0; mu(0) if sliding is "
                                     "prevented"}},
        [](Angle pitch, Sliding leaving, double level) {
            return shape_coefficient_pitched_5_3_3(pitch, leaving, level);
        },
        [](double pitch, Sliding leaving, double level) {
            return fast(within(pitch, 0.0, 90.0) * within(level, limit::level_low, limit::level_high),
                        fast_line(pitch, leaving, level));
        });
    add(rules, {space, "monopitch", clause_5_3_2, "Load arrangement of a monopitch cover, drifted or not.", Read::sure,
                "Figure 5.2, from memory, sure"},
        {slope, sliding}, {{"shape_coefficient", "mu", line_of_slope}},
        [](Angle pitch, Sliding leaving) { return monopitch_5_3_2({pitch, leaving}); }, fast_shape);
}

void add_double(std::vector<Rule>& rules, const std::string& space) {
    add(rules, {space, "duopitch", clause_5_3_3,
                "Load arrangements of a duopitch cover: (i) both, (ii) first halved, (iii) second halved.", Read::page,
                "Figure 5.3 (Steel Buildings in Europe, Part 3, Appendix A)"},
        two_slopes("0 to 90"),
        {{"first_coefficient", "mu_1", std::string("first slope: ") + line_of_slope},
         {"second_coefficient", "mu_2", std::string("second slope: ") + line_of_slope},
         {"first_halved", "mu_1/2", "0.5 mu_1, with mu_2 on the second slope (ii)"},
         {"second_halved", "mu_2/2", "0.5 mu_2, with mu_1 on the first slope (iii)"}},
        [](Angle first, Sliding first_leaving, Angle second, Sliding second_leaving) {
            const DuopitchArrangements all = duopitch_5_3_3({first, first_leaving}, {second, second_leaving});
            return std::tuple{all.undrifted.first, all.undrifted.second, all.first_halved.first,
                              all.second_halved.second};
        },
        [](double first, Sliding first_leaving, double second, Sliding second_leaving) {
            const double mu_1 = fast_line(first, first_leaving, 0.8);
            const double mu_2 = fast_line(second, second_leaving, 0.8);
            return fast(within(first, 0.0, 90.0) * within(second, 0.0, 90.0), mu_1, mu_2, 0.5 * mu_1, 0.5 * mu_2);
        });
    add(rules, {space, "valley_coefficient", clause_5_3_4, "Shape coefficient at the bottom of a valley.", Read::page,
                "Table 5.2 (Istruzioni per l'applicazione delle Norme tecniche, 2008, Table C3.4.I; University of "
                "Zagreb course notes)"},
        {{"mean_slope_deg", "a", "mean of the two slopes that meet, 0 to 60"}},
        {{"valley_coefficient", "mu", "0.8 + 0.8 a/30 up to 30 deg, 1.6 to 60"}},
        [](Angle mean) { return valley_coefficient_5_3_4(mean); },
        [](double mean) { return fast(within(mean, 0.0, 60.0), fast_valley(mean)); });
    add(rules, {space, "multi_span", clause_5_3_4,
                "Load arrangements of a valley: (i) mu_1 and mu_2 all over, (ii) from these at the ridges to mu_v.",
                Read::page, "Figure 5.4 (Steel Buildings in Europe, Part 3, Figure 7.3)"},
        two_slopes("0 to 60"),
        {{"first_coefficient", "mu_1", std::string("first slope: ") + line_of_slope},
         {"second_coefficient", "mu_2", std::string("second slope: ") + line_of_slope},
         {"mean_slope_deg", "a", "(a_1 + a_2)/2"},
         {"valley_coefficient", "mu_v", "0.8 + 0.8 a/30 up to 30 deg, 1.6 to 60"}},
        [](Angle first, Sliding first_leaving, Angle second, Sliding second_leaving) {
            const ValleyArrangements found = multi_span_5_3_4({first, first_leaving}, {second, second_leaving});
            return std::tuple{found.slopes.first, found.slopes.second, Angle(0.5 * (first + second)), found.valley};
        },
        [](double first, Sliding first_leaving, double second, Sliding second_leaving) {
            const double mean = 0.5 * (first + second);
            return fast(within(first, 0.0, 60.0) * within(second, 0.0, 60.0), fast_line(first, first_leaving, 0.8),
                        fast_line(second, second_leaving, 0.8), mean, fast_valley(mean));
        });
}

void add_cylinder(std::vector<Rule>& rules, const std::string& space) {
    const char* const source = "from memory, sure; no published number was found to compare with";
    const Text rise{"rise_m", "h", "rise of the crown over the eaves"};
    const Text span{"span_m", "b", "span from eave to eave, up to 1000"};
    const Text width{"loaded_width_m", "l_s", "width with a tangent up to 60 deg, up to b"};
    const Text distance{"distance_m", "x", "level, from the left eave, 0 to b"};
    add(rules, {space, "cylinder_coefficient", clause_5_3_5, "Shape coefficient of a cylinder.", Read::sure, source},
        {rise, span}, {{"cylinder_coefficient", "mu", "0.2 + 10 h/b, at most 2.0"}},
        [](Length h, Length b) { return cylinder_coefficient_5_3_5(h, b); },
        [](double h, double b) {
            return fast(fast_span(b) * within(h, 0.0, b), std::min(0.2 + 10.0 * h / b, 2.0));
        });
    add(rules, {space, "loaded_width", clause_5_3_5, "Loaded width of a circular arc.", Read::derived,
                "geometry; that snow stays up to 60 deg from memory, sure"},
        {{"rise_m", "h", "rise of the crown over the eaves, up to b/2"}, span},
        {{"loaded_width_m", "l_s", "b up to h/b = tan(30 deg)/2, then sin(60 deg) (b^2/4 + h^2)/h"}},
        [](Length h, Length b) { return loaded_width_5_3_5(h, b); },
        [](double h, double b) {
            constexpr double sin_60 = 0.86602540378443865;
            constexpr double half_tan_30 = 0.28867513459481288;
            const double arc = std::min(sin_60 * (0.25 * b * b + h * h) / h, b);
            return fast(fast_span(b) * within(h, 0.0, 0.5 * b), h <= half_tan_30 * b ? b : arc);
        });
    add(rules, {space, "cylinder_undrifted_at", clause_5_3_5, "Undrifted snow at a place of a cylinder.", Read::sure,
                source},
        {span, width, distance}, {{"shape_coefficient", "mu(x)", "0.8 if |x - b/2| is no more than l_s/2, else 0"}},
        [](Length b, Length l_s, Length x) { return cylinder_undrifted_at_5_3_5({b, l_s, 0.2}, x); },
        [](double b, double l_s, double x) {
            return fast(fast_span(b) * within(l_s, argument::smallest, b) * within(x, 0.0, b),
                        0.8 * one_if(std::abs(x - 0.5 * b) <= 0.5 * l_s));
        });
    add(rules, {space, "cylinder_drifted_at", clause_5_3_5,
                "Drifted snow at a place of a cylinder, heavier half on the right.", Read::sure, source},
        {span, width, {"cylinder_coefficient", "mu", "shape coefficient of the cylinder, 0.2 to 2.0"}, distance},
        {{"shape_coefficient", "mu(x)", "peak (1 - ||x - b/2| - l_s/4|/(l_s/4)), not under 0; peak = mu/2 left and mu "
                                        "right of b/2"}},
        [](Length b, Length l_s, double mu, Length x) { return cylinder_drifted_at_5_3_5({b, l_s, mu}, x); },
        [](double b, double l_s, double mu, double x) {
            const double from_crown = x - 0.5 * b;
            const double quarter = 0.25 * l_s;
            const double share = std::max(1.0 - std::abs(std::abs(from_crown) - quarter) / quarter, 0.0);
            return fast(fast_span(b) * within(l_s, argument::smallest, b) * within(mu, 0.2, 2.0) * within(x, 0.0, b),
                        (from_crown < 0.0 ? 0.5 : 1.0) * mu * share);
        });
}

}  // namespace

void add_en1991_1_3_shapes(std::vector<Rule>& rules) {
    const std::string space = "en1991_1_3";
    add_single(rules, space);
    add_double(rules, space);
    add_cylinder(rules, space);
}

}  // namespace coverframe::catalogue
