// SPDX-License-Identifier: BSD-3-Clause
#include "diagnosis.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "frame/kernel/conditioning.hpp"
#include "frame/kernel/parts.hpp"

namespace coverframe::kernel {

namespace {

using Eigen::Index;
using Eigen::Vector3d;
using Eigen::VectorXd;

/// A shape whose stiffness is below this share of the diagonal is a free motion.
constexpr double free_motion = 1e-9;

std::size_t index(int i) { return static_cast<std::size_t>(i); }

std::string quoted(const std::string& name) { return "\"" + name + "\""; }

const char* direction_name(int direction) {
    static constexpr std::array<const char*, 6> names{
        "fore and aft", "athwart", "up and down", "about its length axis", "about athwart axis", "about upright axis"};
    return names[index(direction)];
}

/// A direction of a node: node*6 + direction, in which a shape of the unknowns moves most.
int place_of(const Frame& frame, const Assembly& assembly, const VectorXd& shape) {
    VectorXd size = VectorXd::Zero(static_cast<Index>(6 * frame.nodes.size()));
    for (int i = 0; i < assembly.unknowns(); ++i) {
        const int full = assembly.full_of(i);
        size(full) = move_of(full, shape(i));
    }
    Index worst = 0;
    size.maxCoeff(&worst);
    return static_cast<int>(worst);
}

std::string place_text(const Frame& frame, int full) {
    const std::string& name = frame.nodes[index(full / 6)].name;
    const int direction = full % 6;
    const bool slides =
        direction < 2 && std::ranges::any_of(frame.feet, [&](const Foot& foot) { return foot.node == full / 6; });
    if (slides) return "the foot at node " + quoted(name) + " can slide " + direction_name(direction);
    return "node " + quoted(name) + (direction < 3 ? " can move " : " can turn ") + direction_name(direction);
}

bool ends_at(const FrameMember& member, int node) { return member.from == node || member.to == node; }

/// Straps that are slack and uprights that have lifted at a node and would hold it in that direction.
std::string let_go_text(const Frame& frame, const Assembly& assembly, const VectorXd& u, const FrameLoads& loads,
                        int full) {
    std::string text;
    if (full % 6 >= 3) return text;
    for (std::size_t m = 0; m < frame.members.size(); ++m) {
        const FrameMember& member = frame.members[m];
        if (!ends_at(member, full / 6) || assembly.forces(m, u, loads).active) continue;
        const Vector3d chord = assembly.chord(m, u);
        if (std::abs(chord(full % 6)) < 0.1 * chord.norm()) continue;
        text += text.empty() ? "" : ", ";
        text += member.kind == MemberKind::strap ? quoted(member.name) + " is slack"
                                                 : "the foot of " + quoted(member.name) + " has lifted";
    }
    return text;
}

/// The parts that nothing ties to the boat, three of them at most.
std::string adrift_text(const Frame& frame, const std::vector<std::vector<int>>& parts) {
    constexpr std::size_t most_parts = 3;
    std::string text;
    for (std::size_t p = 0; p < std::min(parts.size(), most_parts); ++p) {
        text += p > 0 ? "; " : "";
        text += "node " + quoted(frame.nodes[index(parts[p].front())].name) +
                " can move any way: nothing ties its part to the boat (" + names_of_part(frame, parts[p]) + ")";
    }
    if (parts.size() > most_parts) text += "; and " + std::to_string(parts.size() - most_parts) + " parts more";
    return text + "; join it to the rest or hold it";
}

/// What there should be at a node where nothing has let go: "no strap holds "U2" athwart".
std::string missing_text(const Frame& frame, int full) {
    const FrameMember* part = nullptr;
    for (const FrameMember& member : frame.members) {
        if (!ends_at(member, full / 6)) continue;
        const bool better = part == nullptr || member.kind == MemberKind::upright ||
                            (member.kind == MemberKind::pole && part->kind != MemberKind::upright);
        if (better) part = &member;
    }
    if (part == nullptr) return "nothing holds it there";
    if (full % 6 >= 3) {
        return part->kind == MemberKind::pole ? "nothing keeps " + quoted(part->name) + " from turning there"
                                              : "nothing holds it there";
    }
    return "nothing holds it there, no strap holds " + quoted(part->name) + " " + direction_name(full % 6);
}

/// Lean of the uprights that push.
Furthest largest_lean(const Frame& frame, const Assembly& assembly, const VectorXd& u) {
    Furthest turn;
    for (std::size_t m = 0; m < frame.members.size(); ++m) {
        const FrameMember& member = frame.members[m];
        if (member.kind != MemberKind::upright) continue;
        const Vector3d& drawn = assembly.drawn_chord(m);
        const Vector3d now = assembly.chord(m, u);
        if (now.norm() > member.free_length) continue;  // lifted off
        const double angle = std::atan2(drawn.cross(now).norm(), drawn.dot(now));
        if (angle > turn.angle) turn = {angle, "upright " + quoted(member.name) + " leans"};
    }
    return turn;
}

/// The lowest shape of D^(-1/2) K D^(-1/2), as displacements.
VectorXd lowest_shape(const Assembly& assembly, const VectorXd& K, const VectorXd& scale) {
    const VectorXd root = scale.cwiseSqrt().cwiseInverse();
    const Eigen::MatrixXd scaled = root.asDiagonal() * assembly.band().dense(K) * root.asDiagonal();
    const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> eigen(scaled);
    return root.asDiagonal() * eigen.eigenvectors().col(0);
}

}  // namespace

double move_of(int full, double displacement) { return std::abs(displacement) * (full % 6 >= 3 ? 0.1 : 1.0); }

void scale_of(const Band& band, const VectorXd& K, VectorXd& scale) {
    scale.resize(band.size());
    double largest = 0;
    for (int i = 0; i < band.size(); ++i) {
        scale(i) = std::abs(K(band.diagonal(i)));
        largest = std::max(largest, scale(i));
    }
    scale = scale.cwiseMax(1e-12 * std::max(largest, 1.0));
}

bool factorise_positive(BandedLDLT& factor, const VectorXd& K, const VectorXd& scale, double shift) {
    return factor.factorise(K, scale, shift) && factor.smallest_ratio() > singular_pivot;
}

VectorXd product(const Band& band, const VectorXd& K, const VectorXd& v) {
    VectorXd sum = VectorXd::Zero(band.size());
    for (int t = 0; t < band.size(); ++t) {
        const Index below = band.reach(t) - t;
        const auto column = K.segment(band.diagonal(t), below + 1);
        sum.segment(t, below + 1) += v(t) * column;
        sum(t) += column.tail(below).dot(v.segment(t + 1, below));
    }
    return sum;
}

void diagnose(const Frame& frame, const Assembly& assembly, const VectorXd& u, const FrameLoads& loads,
              const std::vector<int>& loose, Solution& solution) {
    if (const auto adrift = parts_adrift(frame, loads); !adrift.empty()) {
        solution.status = SolveStatus::mechanism;
        solution.message = adrift_text(frame, adrift);
        return;
    }
    Assembly::State whole;
    Assembly::State elastic;
    assembly.evaluate(u, loads, whole);
    assembly.evaluate(u, loads, elastic, false);
    hold_loose(assembly, loose, whole.K);
    hold_loose(assembly, loose, elastic.K);
    VectorXd scale;
    scale_of(assembly.band(), whole.K, scale);
    const VectorXd shape = lowest_shape(assembly, whole.K, scale);
    const double size = shape.cwiseAbs2().dot(scale);
    const double resistance = shape.dot(product(assembly.band(), elastic.K, shape)) / size;
    const double against = -shape.dot(product(assembly.band(), whole.K, shape)) / size;
    const int full = place_of(frame, assembly, shape);
    solution.message = place_text(frame, full) + ": ";
    const Shape moved{frame, assembly, u, loads, shape};
    // Forces in the members bend the shape a little out of what nothing holds: without them it is asked.
    VectorXd elastic_scale;
    scale_of(assembly.band(), elastic.K, elastic_scale);
    const bool held = resistance < free_motion &&
                      strained({frame, assembly, u, loads, lowest_shape(assembly, elastic.K, elastic_scale)});
    if (held && against < singular_pivot) {
        solution.status = SolveStatus::ill_conditioned;
        solution.message += conditioning_text(moved, no_digit_left) + "; bring them closer together";
        return;
    }
    const std::string let_go = let_go_text(frame, assembly, u, loads, full);
    if (resistance < free_motion && !held) {
        solution.status = SolveStatus::mechanism;
        solution.message += let_go.empty() ? missing_text(frame, full) : let_go;
        return;
    }
    solution.status = SolveStatus::unstable;
    solution.message += "the push on it is more than its straps and poles can hold there";
    if (!let_go.empty()) solution.message += "; " + let_go;
}

Furthest largest_turn(const Frame& frame, const Assembly& assembly, const VectorXd& u,
                      const std::vector<double>& bends) {
    Furthest turn = largest_lean(frame, assembly, u);
    const auto most = std::max_element(bends.begin(), bends.end());
    if (most == bends.end() || !(*most > turn.angle)) return turn;
    const auto member = static_cast<std::size_t>(most - bends.begin());
    const std::string& node = frame.nodes[index(frame.members[member].from)].name;
    return {*most, "the pole at node " + quoted(node) + " bends"};
}

void hold_loose(const Assembly& assembly, const std::vector<int>& loose, VectorXd& K) {
    if (loose.empty()) return;
    const Eigen::Index length = assembly.band().length();
    const double firm = std::max(length > 0 ? K.head(length).maxCoeff() : 0, 1.0);
    for (const int node : loose) {
        for (int full = 6 * node; full < 6 * node + 3; ++full) {
            const int unknown = assembly.unknown_at(full);
            if (unknown >= 0) K(assembly.band().diagonal(unknown)) += firm;
        }
    }
}

}  // namespace coverframe::kernel
