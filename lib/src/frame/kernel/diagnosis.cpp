// SPDX-License-Identifier: BSD-3-Clause
#include "diagnosis.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

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
    // A turn counts like a move at an arm of 0.1 m, so that a bow is named by where it moves most.
    VectorXd size = VectorXd::Zero(static_cast<Index>(6 * frame.nodes.size()));
    for (int i = 0; i < assembly.unknowns(); ++i) {
        const int full = assembly.full_of(i);
        size(full) = std::abs(shape(i)) * (full % 6 >= 3 ? 0.1 : 1.0);
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

/// Names of the nodes of a part that nothing ties to the boat; empty if something does.
std::string adrift_text(const Frame& frame, const FrameLoads& loads, int node) {
    std::vector<bool> reached(frame.nodes.size(), false);
    std::vector<int> part{node};
    reached[index(node)] = true;
    for (std::size_t done = 0; done < part.size(); ++done) {
        for (const FrameMember& member : frame.members) {
            if (!ends_at(member, part[done])) continue;
            const int other = member.from == part[done] ? member.to : member.from;
            if (!reached[index(other)]) part.push_back(other);
            reached[index(other)] = true;
        }
    }
    const auto at_part = [&](const auto& tie) { return reached[index(tie.node)]; };
    const bool tied = std::ranges::any_of(
        part, [&](int n) { return std::ranges::any_of(frame.nodes[index(n)].held, [](bool held) { return held; }); });
    if (tied || std::ranges::any_of(frame.springs, at_part) || std::ranges::any_of(frame.feet, at_part) ||
        std::ranges::any_of(loads.springs, at_part)) {
        return "";
    }
    std::string names;
    for (std::size_t n = 0; n < std::min<std::size_t>(part.size(), 8); ++n) {
        names += (n == 0 ? "" : ", ") + quoted(frame.nodes[index(part[n])].name);
    }
    return "nothing ties its part to the boat (nodes " + names + (part.size() > 8 ? ", ...)" : ")");
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

VectorXd signs_of(const VectorXd& v) {
    return v.unaryExpr([](double x) { return x < 0 ? -1.0 : 1.0; });
}

/// The lowest shape of D^(-1/2) K D^(-1/2), as displacements.
VectorXd lowest_shape(const Assembly& assembly, const VectorXd& K, const VectorXd& scale) {
    const VectorXd root = scale.cwiseSqrt().cwiseInverse();
    const Eigen::MatrixXd scaled = root.asDiagonal() * assembly.band().dense(K) * root.asDiagonal();
    const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> eigen(scaled);
    return root.asDiagonal() * eigen.eigenvectors().col(0);
}

/// Name of the member with the largest share of v^T K v.
std::string largest_share(const Frame& frame, const VectorXd& u, const FrameLoads& loads, const VectorXd& K,
                          const VectorXd& v) {
    std::size_t most = 0;
    double largest = -std::numeric_limits<double>::infinity();
    for (std::size_t m = 0; m < frame.members.size(); ++m) {
        const Assembly rest(frame, static_cast<int>(m));
        Assembly::State without;
        rest.evaluate(u, loads, without);
        if (rest.band().size() != v.size() || without.K.size() != K.size()) continue;
        const double share = v.dot(product(rest.band(), K - without.K, v));
        if (share > largest) {
            largest = share;
            most = m;
        }
    }
    return quoted(frame.members[most].name);
}

}  // namespace

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
    Assembly::State whole;
    Assembly::State elastic;
    assembly.evaluate(u, loads, whole);
    assembly.evaluate(u, loads, elastic, false);
    hold_loose(assembly, loose, whole.K);
    hold_loose(assembly, loose, elastic.K);
    VectorXd scale;
    scale_of(assembly.band(), whole.K, scale);
    const VectorXd shape = lowest_shape(assembly, whole.K, scale);
    const double resistance = shape.dot(product(assembly.band(), elastic.K, shape)) / shape.cwiseAbs2().dot(scale);
    const int full = place_of(frame, assembly, shape);
    const std::string let_go = let_go_text(frame, assembly, u, loads, full);
    solution.status = resistance < free_motion ? SolveStatus::mechanism : SolveStatus::unstable;
    solution.message = place_text(frame, full) + ": ";
    if (solution.status == SolveStatus::mechanism) {
        const std::string adrift = adrift_text(frame, loads, full / 6);
        solution.message += !adrift.empty() ? adrift : let_go.empty() ? missing_text(frame, full) : let_go;
    } else {
        solution.message += "the push on it is more than its straps and poles can hold there";
        if (!let_go.empty()) solution.message += "; " + let_go;
    }
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

double condition_of(BandedLDLT& factor, const VectorXd& K, const VectorXd& scale) {
    const Band& band = factor.band();
    const int n = band.size();
    if (n == 0) return 1;
    const VectorXd root = scale.cwiseSqrt();
    const VectorXd over_root = root.cwiseInverse();
    VectorXd columns = VectorXd::Zero(n);
    VectorXd entries(n);
    for (int t = 0; t < n; ++t) {
        const Index below = band.reach(t) - t;
        auto column = entries.head(below + 1);
        column = over_root(t) * K.segment(band.diagonal(t), below + 1).cwiseAbs();
        column = column.cwiseProduct(over_root.segment(t, below + 1));
        columns(t) += column.sum();
        columns.segment(t + 1, below) += column.tail(below);
    }
    const auto inverse = [&](VectorXd v) {
        v = v.cwiseProduct(root);
        factor.solve(v);
        return VectorXd(v.cwiseProduct(root));
    };
    VectorXd x = VectorXd::Constant(n, 1.0 / n);
    VectorXd signs = VectorXd::Zero(n);
    double norm = 0;
    for (int climbs = 0; climbs < 5; ++climbs) {
        const VectorXd y = inverse(x);
        if (climbs > 0 && y.lpNorm<1>() <= norm) break;
        norm = y.lpNorm<1>();
        const VectorXd before = signs;
        signs = signs_of(y);
        if (signs == before) break;         // it would climb to where it is
        const VectorXd z = inverse(signs);  // S is symmetric
        Index best = 0;
        if (z.cwiseAbs().maxCoeff(&best) <= z.dot(x)) break;
        x = VectorXd::Unit(n, best);
    }
    VectorXd alternating(n);
    for (int i = 0; i < n; ++i) alternating(i) = (i % 2 == 0 ? 1 : -1) * (1 + (n > 1 ? 1.0 * i / (n - 1) : 0.0));
    norm = std::max(norm, 2 * inverse(alternating).lpNorm<1>() / (3 * n));
    return std::max(1.0, columns.maxCoeff() * norm);
}

std::string conditioning_text(const Frame& frame, BandedLDLT& factor, const VectorXd& u, const FrameLoads& loads,
                              const VectorXd& K, const VectorXd& scale) {
    constexpr int powers = 30;
    const VectorXd root = scale.cwiseSqrt();
    const Index n = scale.size();
    // Neither even nor alternating, so that it has a part of every shape.
    VectorXd stiff = VectorXd::LinSpaced(n, 1.0, 2.0).array().sin() + 0.3;
    VectorXd soft = stiff;
    for (int i = 0; i < powers; ++i) {
        stiff = product(factor.band(), K, stiff.cwiseQuotient(root).normalized()).cwiseQuotient(root);
        soft = soft.cwiseProduct(root).normalized();
        factor.solve(soft);
        soft = soft.cwiseProduct(root);
    }
    return largest_share(frame, u, loads, K, stiff.cwiseQuotient(root).normalized()) + " is stiffest, " +
           largest_share(frame, u, loads, K, soft.cwiseQuotient(root).normalized()) + " softest";
}

}  // namespace coverframe::kernel
