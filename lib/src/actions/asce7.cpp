// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/asce7.hpp"

#include "coverframe/base/error.hpp"

namespace coverframe::asce7 {
namespace {

double of_three(RoofExposure exposure, double fully, double partially, double sheltered) {
    switch (exposure) {
        case RoofExposure::partially_exposed: return partially;
        case RoofExposure::fully_exposed: return fully;
        case RoofExposure::sheltered: return sheltered;
    }
    argument::refuse({"asce7.roof_exposure.range", "roof exposure number", "-"}, static_cast<double>(exposure), 0, 2);
}

double of_treeless(RoofExposure exposure) {
    if (exposure == RoofExposure::sheltered) {
        throw InputError("asce7.roof_exposure.range", "", "sheltered",
                         "above the tree line and in treeless Alaska no roof is sheltered; take partially exposed");
    }
    return of_three(exposure, 0.7, 0.8, 0.8);
}

}  // namespace

double exposure_factor_7_3_1(Terrain terrain, RoofExposure exposure) {
    switch (terrain) {
        case Terrain::B: return of_three(exposure, 0.9, 1.0, 1.2);
        case Terrain::C: return of_three(exposure, 0.9, 1.0, 1.1);
        case Terrain::D: return of_three(exposure, 0.8, 0.9, 1.0);
        case Terrain::above_tree_line:
        case Terrain::alaska_treeless: return of_treeless(exposure);
    }
    argument::refuse({"asce7.terrain.range", "terrain number", "-"}, static_cast<double>(terrain), 0, 4);
}

}  // namespace coverframe::asce7
