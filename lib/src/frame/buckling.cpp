// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/frame/buckling.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <array>
#include <cmath>

#include "coverframe/base/error.hpp"
#include "kernel/arm.hpp"
#include "kernel/assembly.hpp"
#include "kernel/bow.hpp"
#include "kernel/diagnosis.hpp"
#include "kernel/holds.hpp"
#include "kernel/lowest.hpp"
#include "kernel/require_loads.hpp"

namespace coverframe {
namespace {

using Eigen::Index;
using Eigen::VectorXd;
using kernel::Assembly;

void require_state(const Frame& frame, const Solution& solution) {
    if (!solution.usable()) {
        throw StateError("frame.solution.unusable", "the frame is not in equilibrium; its stiffness says nothing");
    }
    if (solution.displacement.size() != 6 * frame.nodes.size() || solution.members.size() != frame.members.size()) {
        throw InputError("frame.start.size", "/solution", std::to_string(solution.displacement.size()),
                         "the state must be one of this frame");
    }
}

VectorXd displacement_of(const Solution& solution) {
    return Eigen::Map<const VectorXd>(solution.displacement.data(), static_cast<Index>(solution.displacement.size()));
}

/// With the feet as they stand in that state.
Assembly assembly_at(const Frame& frame, const Solution& solution) {
    require_state(frame, solution);
    Assembly assembly(frame);
    assembly.feet().take_pushes(displacement_of(solution));
    return assembly;
}

/// Adds what axial forces do to poles that bow between their nodes.
void add_bows(const Frame& frame, const Assembly& assembly, const Solution& solution, VectorXd& K) {
    const VectorXd u = displacement_of(solution);
    for (std::size_t m = 0; m < frame.members.size(); ++m) {
        const FrameMember& member = frame.members[m];
        if (member.kind != MemberKind::pole) continue;
        const Eigen::Vector3d arm_from(member.arm_from.data()), arm_to(member.arm_to.data());
        const Eigen::Vector3d from =
            Eigen::Vector3d(frame.nodes[static_cast<std::size_t>(member.from)].at.data()) + arm_from;
        const Eigen::Vector3d to = Eigen::Vector3d(frame.nodes[static_cast<std::size_t>(member.to)].at.data()) + arm_to;
        const kernel::Arms arms({arm_from, arm_to});
        kernel::Vector12 nodes;
        nodes << u.segment<6>(6 * member.from), u.segment<6>(6 * member.to);
        kernel::Matrix12 bow =
            kernel::bow_tangent(from, to, kernel::member_axes(from, to), member.bending,
                                {member.spring_from, member.spring_to}, solution.members[m].axial, arms.ends(nodes));
        kernel::Vector12 none = kernel::Vector12::Zero();
        arms.carry(nodes, false, none, bow);
        for (int i = 0; i < 12; ++i) {
            const int row = assembly.unknown_at(i < 6 ? 6 * member.from + i : 6 * member.to + i - 6);
            for (int j = 0; j <= i && row >= 0; ++j) {
                const int column = assembly.unknown_at(j < 6 ? 6 * member.from + j : 6 * member.to + j - 6);
                if (column >= 0) K(assembly.band().at(row, column)) += bow(i, j);
            }
        }
    }
}

VectorXd tangent(const Assembly& assembly, const FrameLoads& loads, const VectorXd& u, bool geometric) {
    Assembly::State state;
    assembly.evaluate(u, loads, state, geometric);
    return state.K;
}

/// What the present forces of a state add to the tangent.
VectorXd forces_part(const Frame& frame, const Assembly& assembly, const FrameLoads& loads, const Solution& solution) {
    const VectorXd u = displacement_of(solution);
    VectorXd part = tangent(assembly, loads, u, true) - tangent(assembly, loads, u, false);
    add_bows(frame, assembly, solution, part);
    return part;
}

/// K = fixed + factor * scaled, both laid out by the assembly's band.
struct Split {
    VectorXd fixed;
    VectorXd scaled;
};

Split split_of(const Frame& frame, const Assembly& assembly, const FrameLoads& loads, const Solution& solution,
               const Solution* without_loads) {
    kernel::require_loads(frame, assembly, loads);
    Split split{tangent(assembly, loads, displacement_of(solution), false),
                forces_part(frame, assembly, loads, solution)};
    kernel::hold_loose(assembly, solution.loose, split.fixed);
    if (without_loads != nullptr) {
        require_state(frame, *without_loads);
        // The turning of couples and member loads is of the loads, which grow.
        FrameLoads others = loads;
        others.couple.clear();
        others.member_load.clear();
        const VectorXd kept = forces_part(frame, assembly, others, *without_loads);
        split.fixed += kept;
        split.scaled -= kept;
    }
    return split;
}

/// Shape over all directions, its largest displacement 1.
std::vector<double> shape_of(const Frame& frame, const Assembly& assembly, const VectorXd& mode) {
    std::vector<double> shape(6 * frame.nodes.size(), 0.0);
    double moved = 0, turned = 0;
    for (int i = 0; i < assembly.unknowns(); ++i) {
        const int full = assembly.full_of(i);
        shape[static_cast<std::size_t>(full)] = mode(i);
        (full % 6 < 3 ? moved : turned) = std::max(full % 6 < 3 ? moved : turned, std::abs(mode(i)));
    }
    const double size = moved > 1e-9 * turned ? moved : turned;
    for (double& value : shape) value /= size;
    return shape;
}

std::string place_of(const Frame& frame, const std::vector<double>& shape) {
    constexpr std::array<const char*, 6> ways{"moves fore and aft",       "moves athwart",
                                              "moves up and down",        "turns about its length axis",
                                              "turns about athwart axis", "turns about upright axis"};
    std::size_t worst = 0;
    for (std::size_t i = 0; i < shape.size(); ++i) {
        if (std::abs(shape[i]) > std::abs(shape[worst]) * (1 + 1e-9)) worst = i;
    }
    return "node \"" + frame.nodes[worst / 6].name + "\" " + ways[worst % 6];
}

struct Change {
    double now = 0;   ///< stretch beyond the free length [m]
    double rate = 0;  ///< of it with the amplitude of the mode [-]
};

/// By the line between the member's ends a little further along the mode, either way: arms turn with their nodes.
Change change_of(const Assembly& assembly, std::size_t m, double free_length, const VectorXd& u,
                 const std::vector<double>& shape) {
    constexpr double step = 1e-6;
    const Eigen::Map<const VectorXd> mode(shape.data(), u.size());
    const Eigen::Vector3d chord = assembly.chord(m, u);
    const Eigen::Vector3d rate = (assembly.chord(m, u + step * mode) - assembly.chord(m, u - step * mode)) / (2 * step);
    return {chord.norm() - free_length, chord.normalized().dot(rate)};
}

/// Fills in what the unilateral members make of a mode.
void judge(const Frame& frame, const Assembly& assembly, const Solution& solution, BucklingMode& mode) {
    const VectorXd u = displacement_of(solution);
    std::vector<std::pair<double, std::string>> limits;
    for (std::size_t m = 0; m < frame.members.size(); ++m) {
        const FrameMember& member = frame.members[m];
        if (member.kind == MemberKind::pole || member.kind == MemberKind::bar) continue;
        const Change change = change_of(assembly, m, member.free_length, u, mode.shape);
        if (std::abs(change.rate) < 1e-9) continue;
        if (solution.members[m].active)
            limits.emplace_back(std::abs(change.now / change.rate), member.name);
        else
            mode.takes_up.push_back(member.name);
    }
    for (const auto& limit : limits) mode.reach = std::min(mode.reach, limit.first);
    for (const auto& limit : limits) {
        if (limit.first <= 1.01 * mode.reach) mode.lets_go.push_back(limit.second);
    }
}

}  // namespace

Buckling buckling(const Frame& frame, const FrameLoads& loads, const Solution& solution,
                  const BucklingOptions& options) {
    const Assembly assembly = assembly_at(frame, solution);
    const Split split = split_of(frame, assembly, loads, solution, options.without_loads);
    const kernel::Band& band = assembly.band();
    if (band.size() == 0) return {{}, "no part of the frame can move"};
    VectorXd scale;
    kernel::scale_of(band, split.fixed, scale);
    kernel::BandedLDLT ldlt(band);
    if (!kernel::factorise_positive(ldlt, split.fixed, scale, 0)) {
        return {{}, "without the forces that are scaled the frame does not stand, so there is no factor to count from"};
    }
    const bool dense = band.size() <= options.dense_up_to;
    // One more than asked for, so that the count below does not cut a pair in two.
    const kernel::LowestFactors lowest =
        dense ? kernel::lowest_dense(band, split.fixed, split.scaled, options.count + 1)
              : kernel::lowest_banded(band, split.fixed, split.scaled, options.count + 1);
    Buckling found;
    for (Index i = 0; i < std::min<Index>(lowest.factors.size(), options.count); ++i) {
        BucklingMode mode;
        mode.factor = lowest.factors(i);
        mode.shape = shape_of(frame, assembly, lowest.shapes.col(i));
        mode.place = place_of(frame, mode.shape);
        judge(frame, assembly, solution, mode);
        found.modes.push_back(std::move(mode));
    }
    if (found.modes.empty()) {
        found.message = "no part is pressed so that more of these forces could make it buckle";
        return found;
    }
    const double just_over = found.modes.back().factor * (1 + 1e-6);
    const auto ours = static_cast<int>((lowest.factors.array() < just_over).count());
    const int counted = kernel::count_below(band, split.fixed, split.scaled, just_over);
    const bool pair_goes_on = ours > options.count;  // there may be more of the same factor than were asked for
    if (pair_goes_on ? counted < ours : counted != ours) {
        found.message = "the signs of the pivots count " + std::to_string(counted) + " factors where " +
                        std::to_string(ours) + " were found: do not trust them";
    }
    return found;
}

int factors_below(const Frame& frame, const FrameLoads& loads, const Solution& solution, double factor,
                  const Solution* without_loads) {
    const Assembly assembly = assembly_at(frame, solution);
    const Split split = split_of(frame, assembly, loads, solution, without_loads);
    return kernel::count_below(assembly.band(), split.fixed, split.scaled, factor);
}

std::vector<UprightStability> upright_stability(const Frame& frame, const FrameLoads& loads, const Solution& solution) {
    require_state(frame, solution);
    kernel::Holds holds(frame, loads, solution);
    std::vector<UprightStability> all;
    for (std::size_t m = 0; m < frame.members.size(); ++m) {
        const FrameMember& member = frame.members[m];
        if (member.kind != MemberKind::upright || !solution.members[m].active) continue;
        const bool upwards = frame.nodes[static_cast<std::size_t>(member.to)].at[2] >=
                             frame.nodes[static_cast<std::size_t>(member.from)].at[2];
        double stiffness = holds.at({upwards ? member.to : member.from, static_cast<int>(m)}).stiffness;
        // On a foot that gives sideways both ends move: their springs act one behind the other.
        const int foot = upwards ? member.from : member.to;
        const std::array<bool, 6>& held = frame.nodes[static_cast<std::size_t>(foot)].held;
        if (!held[0] || !held[1]) {
            const double below = holds.at({foot, static_cast<int>(m)}).stiffness;
            stiffness = stiffness > 0 && below > 0 ? 1 / (1 / stiffness + 1 / below) : 0;
        }
        UprightStability one{.name = member.name,
                             .push = -solution.members[m].axial,
                             .critical = stiffness * drawn_length(frame, member),
                             .used = 0};
        one.used = one.critical > 0 ? one.push / one.critical : std::numeric_limits<double>::infinity();
        all.push_back(std::move(one));
    }
    return all;
}

}  // namespace coverframe
