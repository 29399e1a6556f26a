// SPDX-License-Identifier: BSD-3-Clause
// Timber rules of NDS 2018. The column examples were printed for an older form of the same equation, with the critical
// stress 0.3 E/(l_e/d)^2; they are run with the E_min' that makes 0.822 E_min' the same number.
#include <algorithm>

#include "coverframe/resistance/nds2018.hpp"
#include "model.hpp"

namespace coverframe::validation {
namespace {

const std::string column_rule =
    "nds2018::column_stability_3_7_1 nds2018::critical_column_stress_3_7_1 nds2018::slenderness_3_7_1";
const std::string beam_rule = "nds2018::beam_stability_3_3_3 nds2018::critical_beam_stress_3_3_3 "
                              "nds2018::beam_slenderness_3_3_3 nds2018::effective_length_3_3_3";

double stability_at(const Input& input, Length length) {
    const Pressure modulus_low = (input.number("euler_coefficient") / 0.822) * input.quantity<Pressure>("E");
    const double slenderness = nds2018::slenderness_3_7_1(length, input.quantity<Length>("d"));
    const Pressure critical = nds2018::critical_column_stress_3_7_1(modulus_low, slenderness);
    return nds2018::column_stability_3_7_1(critical, input.quantity<Pressure>("F_c"), input.number("c"));
}

Area section_of(const Input& input) { return input.quantity<Length>("b") * input.quantity<Length>("d"); }

Answers nds_column(const Input& input) {
    const double stability = stability_at(input, input.quantity<Length>("length"));
    return {{"C_P", answer(stability, column_rule)},
            {"P", answer(stability * input.quantity<Pressure>("F_c") * section_of(input), column_rule)}};
}

/// The longest column that carries a load: found by halving, as C_P falls with the length.
Answers nds_longest_column(const Input& input) {
    const double wanted = in_N(input.quantity<Force>("P")) /
                          in_N(input.quantity<Pressure>("F_c") * section_of(input));
    double low = 2.0;   // l/d
    double high = nds2018::slenderness_limit_3_7_1;
    const Length d = input.quantity<Length>("d");
    for (int i = 0; i < 60; ++i) {
        const double middle = 0.5 * (low + high);
        (stability_at(input, middle * d) > wanted ? low : high) = middle;
    }
    return {{"C_P", answer(stability_at(input, low * d), column_rule)},
            {"L_max", answer(low * d, column_rule)},
            {"L_over_d", answer(low, column_rule)}};
}

nds2018::SpanLoad span_load_of(const Input& input) {
    const std::string load = input.text("span_load");
    if (load == "uniform") return nds2018::SpanLoad::uniform;
    if (load == "mid_point") return nds2018::SpanLoad::mid_point;
    if (load == "other") return nds2018::SpanLoad::other;
    throw CaseError("a span load is \"uniform\", \"mid_point\" or \"other\"");
}

Answers nds_beam(const Input& input) {
    const Length depth = input.quantity<Length>("d");
    const Length effective = nds2018::effective_length_3_3_3(span_load_of(input), input.quantity<Length>("l_u"), depth);
    const double slenderness = nds2018::beam_slenderness_3_3_3(effective, depth, input.quantity<Length>("b"));
    const Pressure critical = nds2018::critical_beam_stress_3_3_3(input.quantity<Pressure>("E_min"), slenderness);
    const Pressure bending = input.quantity<Pressure>("F_b");
    const double stability = nds2018::beam_stability_3_3_3(critical, bending);
    return {{"l_e", answer(effective, "nds2018::effective_length_3_3_3")},
            {"R_B", answer(slenderness, "nds2018::beam_slenderness_3_3_3")},
            {"F_bE", answer(critical, "nds2018::critical_beam_stress_3_3_3")},
            {"C_L", answer(stability, beam_rule)},
            {"F_b'", answer(stability * bending, beam_rule)}};
}

/// A beam-column bent both ways; the same length in both planes, `C_D` multiplies F_c and F_b as the source has it.
Answers nds_beam_column(const Input& input) {
    const Length depth = input.quantity<Length>("d");
    const Length breadth = input.quantity<Length>("b");
    const Length length = input.quantity<Length>("length");
    const Pressure modulus_low = input.quantity<Pressure>("E_min");
    const double duration = input.number("C_D");
    const Pressure compression = duration * input.quantity<Pressure>("F_c");
    const Pressure bending = duration * input.quantity<Pressure>("F_b");
    const auto column = [&](Length d) {
        return nds2018::critical_column_stress_3_7_1(modulus_low, nds2018::slenderness_3_7_1(length, d));
    };
    const Pressure critical_1 = column(depth);
    const Pressure critical_2 = column(breadth);
    const double C_P = nds2018::column_stability_3_7_1(std::min(critical_1, critical_2), compression);
    const Length effective = nds2018::effective_length_3_3_3(span_load_of(input), length, depth);
    const Pressure critical_beam = nds2018::critical_beam_stress_3_3_3(
        modulus_low, nds2018::beam_slenderness_3_3_3(effective, depth, breadth));
    const double C_L = nds2018::beam_stability_3_3_3(critical_beam, bending);
    const Pressure flatwise = input.number("C_fu") * bending;
    const nds2018::BendingCompressionResult both = nds2018::bending_compression_3_9_2(
        {.compression = input.quantity<Pressure>("f_c"), .edgewise = input.quantity<Pressure>("f_b1"),
         .flatwise = input.quantity<Pressure>("f_b2"), .compression_design = C_P * compression,
         .edgewise_design = C_L * bending, .flatwise_design = flatwise, .critical_edgewise = critical_1,
         .critical_flatwise = critical_2, .critical_beam = critical_beam});
    if (!both.sum) throw CaseError("the member buckles: there is no sum");
    return {{"C_P", answer(C_P, column_rule)},       {"F_c'", answer(C_P * compression, column_rule)},
            {"C_L", answer(C_L, beam_rule)},         {"F_b1'", answer(C_L * bending, beam_rule)},
            {"F_b2'", answer(flatwise, "nds2018::bending_compression_3_9_2")},
            {"sum", answer(*both.sum, "nds2018::bending_compression_3_9_2")}};
}

Answers nds_bearing(const Input& input) {
    const Length length = input.quantity<Length>("l_b");
    const double factor = nds2018::bearing_area_factor_3_10_4(length, input.quantity<Length>("to_end"));
    return {{"C_b", answer(factor, "nds2018::bearing_area_factor_3_10_4")},
            {"P", answer(nds2018::bearing_strength_3_10_2(input.quantity<Pressure>("F_c_perp"), length,
                                                          input.quantity<Length>("b"), factor),
                         "nds2018::bearing_strength_3_10_2")}};
}

}  // namespace

void add_timber_models(std::map<std::string, Model>& all) {
    all["nds_column"] = nds_column;
    all["nds_longest_column"] = nds_longest_column;
    all["nds_beam"] = nds_beam;
    all["nds_beam_column"] = nds_beam_column;
    all["nds_bearing"] = nds_bearing;
}

}  // namespace coverframe::validation
