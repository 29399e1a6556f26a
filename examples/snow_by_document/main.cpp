// SPDX-License-Identifier: BSD-3-Clause
// How much snow, by which document: the demo motor boat in four yards.
//
//   1. Read the plan.
//   2. Give each yard its ground load, with the document it belongs to.
//   3. Compare: balanced snow, the heaviest arrangement, and that times the document's factor on snow.
//   4. Assert one number that can be worked out by hand.
//
// Boat, yards and ground loads are invented; none of the numbers is one to build by. The documents are compared by the
// load on the plan of the cover, not by what it does to the frame.
#include <cmath>
#include <cstdio>
#include <string>
#include <vector>

#include "coverframe/actions/compare.hpp"
#include "coverframe/plan/read.hpp"
#include "coverframe/units/crossing.hpp"

namespace {

using namespace coverframe;

GroundSnow yard(SnowDocument document, Pressure load) {
    GroundSnow ground;
    ground.load = load;
    ground.document = document;
    ground.source = "invented";
    if (is_asce7(document)) ground.risk_category = "II";
    if (is_nbc(document)) ground.rain = from_kPa(0.4);
    return ground;
}

}  // namespace

int main() {
    const Plan plan = read_plan_file(std::string(COVERFRAME_EXAMPLES_FOLDER) + "/plans/motor_boat.json");
    const std::vector<GroundSnow> yards{yard(SnowDocument::asce7_16, from_psf(30.0)),
                                        yard(SnowDocument::asce7_22, from_psf(50.0)),
                                        yard(SnowDocument::nbc2020, from_kPa(1.8)),
                                        yard(SnowDocument::en1991_1_3, from_kPa(1.5))};

    const std::vector<ComparedDocument> documents = compare_snow(plan, yards, drawn_stations(plan));

    std::printf("%-18s %8s %9s %9s %7s %9s  %s\n", "", "ground", "balanced", "heaviest", "factor", "factored", "");
    std::printf("%-18s %8s %9s %9s %7s %9s  %s\n", "document", "kPa", "kPa", "kPa", "-", "kPa", "heaviest arrangement");
    for (const ComparedDocument& one : documents) {
        std::printf("%-18s %8.2f %9.2f %9.2f %7.2f %9.2f  %s\n", name_of(one.plan.basis.snow.document),
                    in_kPa(one.plan.site.ground_snow.load), in_kPa(one.balanced.value), in_kPa(one.greatest.value),
                    one.plan.basis.combination.snow.value, in_kPa(one.factored.value), one.greatest_in.c_str());
    }

    // NBC 2020, 4.1.6.2, by hand: I_s [S_s C_b C_w C_s C_a + S_r] = 1.0 (1.8 x 0.8 + 0.4) = 1.84 kPa, no slope of the
    // cover being over 30 degrees
    const double by_hand = 1.0 * (1.8 * 0.8 * 1.0 * 1.0 * 1.0 + 0.4);
    const double ours = in_kPa(documents[3].balanced.value);
    if (std::abs(ours - by_hand) > 1e-9) {
        std::printf("balanced snow by NBC 2020 is %.6f kPa, by hand %.6f\n", ours, by_hand);
        return 1;
    }
    return 0;
}
