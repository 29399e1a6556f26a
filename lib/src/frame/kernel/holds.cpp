// SPDX-License-Identifier: BSD-3-Clause
#include "holds.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <set>

#include "coverframe/base/error.hpp"
#include "frame/kernel/diagnosis.hpp"
#include "frame/kernel/require_loads.hpp"

namespace coverframe::kernel {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

std::size_t index(int i) { return static_cast<std::size_t>(i); }

const Solution& usable(const Solution& solution) {
    if (!solution.usable()) {
        throw StateError("frame.solution.unusable", "the frame is not in equilibrium; its stiffness says nothing");
    }
    return solution;
}

/// Whether a condensed tangent holds every direction, measured against what the whole frame held it with.
bool holds_all(const MatrixXd& C, const VectorXd& scale) {
    constexpr double nothing = 1e-7;
    const VectorXd root = scale.cwiseSqrt().cwiseInverse();
    const MatrixXd scaled = root.asDiagonal() * C * root.asDiagonal();
    const Eigen::LDLT<MatrixXd> ldlt(scaled);
    return ldlt.info() == Eigen::Success && ldlt.vectorD().minCoeff() > nothing;
}

}  // namespace

Holds::Holds(const Frame& frame, const FrameLoads& loads, const Solution& solution)
    : frame_(frame),
      loads_(loads),
      assembly_(frame),
      u_(Eigen::Map<const VectorXd>(usable(solution).displacement.data(),
                                    static_cast<Index>(solution.displacement.size()))),
      factor_(assembly_.band()),
      loose_(solution.loose) {
    require_loads(frame, assembly_, loads);
    assembly_.feet().take_pushes(u_);
    Assembly::State state;
    assembly_.evaluate(u_, loads, state);
    hold_loose(assembly_, solution.loose, state.K);
    VectorXd scale;
    scale_of(assembly_.band(), state.K, scale);
    stands_ = factorise_positive(factor_, state.K, scale, 0);
}

/// The free directions of the node and of both ends of the member, as node*6 + direction.
std::vector<int> Holds::directions(const HoldAt& place) const {
    std::set<int> nodes{place.node};
    if (place.without >= 0) {
        const FrameMember& member = frame_.members.at(index(place.without));
        nodes.insert({member.from, member.to});
    }
    std::vector<int> all;
    for (const int node : nodes) {
        for (int full = 6 * node; full < 6 * node + 6; ++full) {
            if (assembly_.unknown_at(full) >= 0) all.push_back(full);
        }
    }
    return all;
}

/// What one member alone resists the directions with.
MatrixXd Holds::tangent_of(int member, const std::vector<int>& directions) const {
    FrameMember alone = frame_.members[index(member)];
    const std::array<int, 2> ends{alone.from, alone.to};
    alone.from = 0;
    alone.to = 1;
    Frame pair;
    VectorXd u(12);
    for (std::size_t end = 0; end < 2; ++end) {
        pair.nodes.push_back({frame_.nodes[index(ends[end])].name, frame_.nodes[index(ends[end])].at, {}});
        u.segment<6>(static_cast<Index>(6 * end)) = u_.segment<6>(6 * ends[end]);
    }
    pair.members.push_back(std::move(alone));
    FrameLoads loads;
    if (!loads_.temperature.empty()) loads.temperature = {loads_.temperature[index(member)]};
    if (!loads_.member_load.empty()) {
        const auto first = loads_.member_load.begin() + 3 * member;
        loads.member_load.assign(first, first + 3);
    }
    const Assembly assembly(pair);
    Assembly::State state;
    assembly.evaluate(u, loads, state);
    const MatrixXd K = assembly.band().dense(state.K);
    const auto unknown_of = [&](int full) {
        for (std::size_t end = 0; end < 2; ++end) {
            if (full / 6 == ends[end]) return assembly.unknown_at(static_cast<int>(6 * end) + full % 6);
        }
        return -1;
    };
    const auto count = static_cast<Index>(directions.size());
    MatrixXd part = MatrixXd::Zero(count, count);
    for (Index i = 0; i < count; ++i) {
        for (Index j = 0; j < count; ++j) {
            const int a = unknown_of(directions[static_cast<std::size_t>(i)]);
            const int b = unknown_of(directions[static_cast<std::size_t>(j)]);
            if (a >= 0 && b >= 0) part(i, j) = K(a, b);
        }
    }
    return part;
}

LateralHold Holds::at(const HoldAt& place) {
    const std::array<int, 2> level{6 * place.node, 6 * place.node + 1};
    if (std::ranges::find(loose_, place.node) != loose_.end()) return {};
    if (!stands_ || assembly_.unknown_at(level[0]) < 0 || assembly_.unknown_at(level[1]) < 0) return {};
    const std::vector<int> all = directions(place);
    const auto count = static_cast<Index>(all.size());
    BandedLDLT::Sides moved = BandedLDLT::Sides::Zero(assembly_.unknowns(), count);
    for (Index j = 0; j < count; ++j) moved(assembly_.unknown_at(all[static_cast<std::size_t>(j)]), j) = 1;
    factor_.solve(moved);
    MatrixXd G(count, count);
    for (Index i = 0; i < count; ++i) G.row(i) = moved.row(assembly_.unknown_at(all[static_cast<std::size_t>(i)]));
    const MatrixXd whole = (0.5 * (G + G.transpose())).inverse();
    MatrixXd C = whole;
    if (place.without >= 0) C -= tangent_of(place.without, all);
    std::vector<Index> kept;  // heights are held
    for (Index i = 0; i < count; ++i) {
        if (all[static_cast<std::size_t>(i)] % 6 != 2) kept.push_back(i);
    }
    const MatrixXd held = 0.5 * (C(kept, kept) + C(kept, kept).transpose());
    if (!holds_all(held, whole.diagonal()(kept))) return {};
    const MatrixXd flexibility = held.inverse();
    std::array<Index, 2> at{};
    for (std::size_t i = 0; i < kept.size(); ++i) {
        for (std::size_t d = 0; d < 2; ++d) {
            if (all[static_cast<std::size_t>(kept[i])] == level[d]) at[d] = static_cast<Index>(i);
        }
    }
    Eigen::Matrix2d two;
    two << flexibility(at[0], at[0]), flexibility(at[0], at[1]), flexibility(at[1], at[0]), flexibility(at[1], at[1]);
    const Eigen::SelfAdjointEigenSolver<Eigen::Matrix2d> eigen(0.5 * (two + two.transpose()));
    LateralHold hold;
    hold.stiffness = 1 / eigen.eigenvalues()(1);
    hold.direction = {eigen.eigenvectors()(0, 1), eigen.eigenvectors()(1, 1)};
    return hold;
}

}  // namespace coverframe::kernel
