// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/frame/imperfection.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

#include "coverframe/base/error.hpp"

namespace coverframe {

namespace {

using Eigen::Vector3d;

std::size_t index(int i) { return static_cast<std::size_t>(i); }

Vector3d place_of(const Frame& frame, int node) { return Vector3d(frame.nodes[index(node)].at.data()); }

/// Moves the nodes that are free to move so, and lets the free lengths follow.
Frame drawn_anew(const Frame& frame, const std::vector<Vector3d>& moves) {
    Frame other = frame;
    for (std::size_t n = 0; n < moves.size(); ++n) {
        FrameNode& node = other.nodes[n];
        bool stays = false;
        for (std::size_t d = 0; d < 3; ++d) stays = stays || (node.held[d] && moves[n](static_cast<int>(d)) != 0);
        if (stays) continue;
        for (std::size_t d = 0; d < 3; ++d) node.at[d] += moves[n](static_cast<int>(d));
    }
    for (std::size_t m = 0; m < frame.members.size(); ++m) {
        other.members[m].free_length *=
            drawn_length(other, other.members[m]) / drawn_length(frame, frame.members[m]);
    }
    require_sound(other);
    return other;
}

/// Sideways over a height of 1.
Vector3d lean_of(double angle, const std::array<double, 2>& direction) {
    constexpr double most = 1.2;
    if (!(std::abs(angle) < most)) {
        throw InputError("frame.imperfection.angle", "/angle", std::to_string(angle),
                         "an angle from plumb must lie between -1.2 and 1.2 rad");
    }
    const double size = std::hypot(direction[0], direction[1]);
    if (!(size > 0 && std::isfinite(size))) {
        throw InputError("frame.imperfection.direction", "/direction", "",
                         "a direction must be finite numbers, not all zero");
    }
    return std::tan(angle) * Vector3d(direction[0] / size, direction[1] / size, 0);
}

std::vector<Vector3d> no_moves(const Frame& frame) {
    require_sound(frame);
    return std::vector<Vector3d>(frame.nodes.size(), Vector3d::Zero());
}

/// Nodes along a chain of members, one more than members.
std::vector<int> nodes_of(const Frame& frame, const std::vector<int>& members) {
    const auto refuse = [](const std::string& advice) {
        throw InputError("frame.imperfection.chain", "/members", "", advice);
    };
    const auto count = static_cast<int>(frame.members.size());
    if (members.size() < 2) refuse("a bow needs a chain of two members or more");
    for (const int m : members) {
        if (m < 0 || m >= count) refuse("the members of a chain must be members of the frame");
    }
    const auto ends = [&](std::size_t i) {
        const FrameMember& member = frame.members[index(members[i])];
        return std::array<int, 2>{member.from, member.to};
    };
    const std::array<int, 2> first = ends(0);
    const std::array<int, 2> second = ends(1);
    const bool forward = first[1] == second[0] || first[1] == second[1];
    std::vector<int> nodes{forward ? first[0] : first[1]};
    for (std::size_t i = 0; i < members.size(); ++i) {
        const std::array<int, 2> both = ends(i);
        if (both[0] != nodes.back() && both[1] != nodes.back()) refuse("the members of a chain must meet end to end");
        nodes.push_back(both[0] == nodes.back() ? both[1] : both[0]);
    }
    std::vector<int> sorted = nodes;
    std::ranges::sort(sorted);
    if (std::ranges::adjacent_find(sorted) != sorted.end()) refuse("a chain must not come back to a node");
    return nodes;
}

/// Unit vector across the line between the ends of a chain.
Vector3d across(const Vector3d& line, const std::array<double, 3>& direction) {
    const Vector3d given(direction.data());
    const Vector3d along = line.normalized();
    const Vector3d part = given - given.dot(along) * along;
    if (!(given.allFinite() && part.norm() > 1e-6 * given.norm())) {
        throw InputError("frame.imperfection.direction", "/direction", "",
                         "a bow must go some way across the line between its ends");
    }
    return part.normalized();
}

}  // namespace

Frame out_of_plumb(const Frame& frame, double level, double angle, std::array<double, 2> direction) {
    std::vector<Vector3d> moves = no_moves(frame);
    const Vector3d lean = lean_of(angle, direction);
    if (!std::isfinite(level)) {
        throw InputError("frame.imperfection.level", "/level", "",
                         "the level of what is plumb must be a finite number");
    }
    for (std::size_t n = 0; n < moves.size(); ++n) moves[n] = std::max(frame.nodes[n].at[2] - level, 0.0) * lean;
    return drawn_anew(frame, moves);
}

Frame leaning(const Frame& frame, int member, double angle, std::array<double, 2> direction) {
    std::vector<Vector3d> moves = no_moves(frame);
    const Vector3d lean = lean_of(angle, direction);
    if (member < 0 || member >= static_cast<int>(frame.members.size())) {
        throw InputError("frame.imperfection.member", "/member", std::to_string(member), "there is no such member");
    }
    const FrameMember& one = frame.members[index(member)];
    const double rise = place_of(frame, one.to).z() - place_of(frame, one.from).z();
    if (!(std::abs(rise) > 1e-6)) {
        throw InputError("frame.imperfection.member", "/member", one.name,
                         "member " + one.name + " lies level and so has no upper end");
    }
    moves[index(rise > 0 ? one.to : one.from)] = std::abs(rise) * lean;
    return drawn_anew(frame, moves);
}

Frame bowed(const Frame& frame, const std::vector<int>& members, double rise, const std::array<double, 3>& direction,
            BowShape shape) {
    std::vector<Vector3d> moves = no_moves(frame);
    const std::vector<int> nodes = nodes_of(frame, members);
    if (!std::isfinite(rise)) {
        throw InputError("frame.imperfection.rise", "/rise", "", "the rise of a bow must be a finite number");
    }
    const Vector3d n = across(place_of(frame, nodes.back()) - place_of(frame, nodes.front()), direction);
    double whole = 0;
    for (const int m : members) whole += drawn_length(frame, frame.members[index(m)]);
    double here = 0;
    for (std::size_t i = 1; i + 1 < nodes.size(); ++i) {
        here += drawn_length(frame, frame.members[index(members[i - 1])]);
        const double s = here / whole;
        const double f = shape == BowShape::sine ? std::sin(std::numbers::pi * s) : 4 * s * (1 - s);
        moves[index(nodes[i])] = rise * f * n;
    }
    return drawn_anew(frame, moves);
}

Frame shaped(const Frame& frame, const std::vector<double>& displacement, double amplitude) {
    std::vector<Vector3d> moves = no_moves(frame);
    if (displacement.size() != 6 * frame.nodes.size()) {
        throw InputError("frame.imperfection.shape", "/displacement", std::to_string(displacement.size()),
                         "a shape must be 6 numbers a node");
    }
    if (!std::isfinite(amplitude)) {
        throw InputError("frame.imperfection.amplitude", "/amplitude", "", "an amplitude must be a finite number");
    }
    double largest = 0;
    bool finite = true;
    for (std::size_t n = 0; n < moves.size(); ++n) {
        moves[n] = Vector3d(displacement.data() + 6 * n);
        finite = finite && moves[n].allFinite();
        largest = std::max(largest, moves[n].norm());
    }
    if (!finite || !(largest > 0)) {
        throw InputError("frame.imperfection.shape", "/displacement", "",
                         "a shape must be finite numbers and move at least one node");
    }
    for (Vector3d& move : moves) move *= amplitude / largest;
    return drawn_anew(frame, moves);
}

}  // namespace coverframe
