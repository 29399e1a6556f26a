// SPDX-License-Identifier: BSD-3-Clause
// From a plan to nodes and members.
//
// The ridge line is cut into stations at close spacing, so that film strips can hang on it and a pole's own bow is
// seen. Pieces of a pole that meet at an angle of more than half a degree are taken as spliced there: the splice
// carries no bending moment (safe for the spans; a pole bent over an upright instead would break or lift).
//
// The foot of an upright is held by the boat. Where the plan gives it a soft foot it stands on it instead (feet.hpp):
// free up and down, held level by a step, or by friction where the plan gives one. Of friction and straps the same
// bound is used: soft straps with the least friction, stiff ones with the greatest.
#pragma once

#include <string>
#include <vector>

#include "coverframe/frame/frame.hpp"
#include "coverframe/frame/pretension.hpp"
#include "coverframe/plan/plan.hpp"

namespace coverframe {

/// Which bound of the straps' stiffness is used, and of the friction under feet.
enum class Bound { low, high };

struct LayoutOptions {
    Length station_spacing = Length::from_value(0.25);  ///< greatest distance along the ridge, 0.01 to 10 m
    Bound strap_stiffness = Bound::low;
    int cross_strap_pieces = 1;  ///< of each leg of a cross strap, so that film can lie on it, 1 to 200
};

/// A ridge piece between two neighbouring points of support.
struct RidgeBay {
    std::string name;          ///< "bow to U1", "U1 to U2"
    std::vector<int> members;  ///< from bow to stern
    std::vector<int> stations; ///< nodes, from bow to stern, both ends included
};

struct UprightPart {
    std::string name;
    int member = 0;
    int foot = 0;
    int top = 0;
    const Upright* drawn = nullptr;          ///< set for RidgeSupport; points into the plan given to lay_out
    const FoundMember* found = nullptr;      ///< set for FoundFrame
};

struct CrossStrapPart {
    std::string name;
    std::string strap;         ///< name of its StrapKind
    std::vector<int> members;  ///< its legs, each from the top of the upright to the rail, piece after piece
};

/// The frame and where the parts of the plan are in it. Holds pointers into the plan: keep the plan alive.
struct Layout {
    Frame frame;
    std::vector<StrapRun> runs;         ///< every pretensioned strap
    std::vector<int> stations;          ///< nodes of the ridge line from bow to stern
    std::vector<RidgeBay> bays;
    std::vector<UprightPart> uprights;
    std::vector<CrossStrapPart> cross_straps;
    bool ridge_is_pole = true;
};

/// \throws InputError as require_valid(plan); layout.station_spacing.range, layout.cross_strap_pieces.range
[[nodiscard]] Layout lay_out(const Plan& plan, const LayoutOptions& options = {});

}  // namespace coverframe
