// SPDX-License-Identifier: BSD-3-Clause
#include "assembly.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <numeric>

namespace coverframe::kernel {

namespace {

std::size_t index(int i) { return static_cast<std::size_t>(i); }

/// Adds the lower triangle of a member's block.
template <int size>
void add_block(const Eigen::Matrix<double, size, size>& block, const std::vector<int>& places, Eigen::VectorXd& K) {
    const int* place = places.data();
    for (int i = 0; i < size; ++i) {
        for (int j = 0; j <= i; ++j, ++place) {
            if (*place >= 0) K(*place) += block(i, j);
        }
    }
}

}  // namespace

Eigen::Matrix3d member_axes(const Eigen::Vector3d& from, const Eigen::Vector3d& to) {
    const Eigen::Vector3d along = (to - from).normalized();
    const Eigen::Vector3d up = Eigen::Vector3d::UnitZ();
    Eigen::Vector3d across = up.cross(along);
    across = across.norm() > 1e-6 ? across.normalized() : Eigen::Vector3d::UnitY();
    Eigen::Matrix3d axes;
    axes.row(0) = along;
    axes.row(1) = across;
    axes.row(2) = along.cross(across);
    return axes;
}

Assembly::Assembly(const Frame& frame, int left_out) : frame_(frame), left_out_(left_out) {
    const std::size_t count = frame.nodes.size();
    free_.assign(6 * count, false);
    for (std::size_t n = 0; n < count; ++n) {
        for (std::size_t d = 0; d < 3; ++d) free_[6 * n + d] = !frame.nodes[n].held[d];
    }
    parts_.resize(frame.members.size());
    for (std::size_t m = 0; m < frame.members.size(); ++m) {
        const FrameMember& member = frame.members[m];
        const Eigen::Vector3d from(frame.nodes[index(member.from)].at.data());
        const Eigen::Vector3d to(frame.nodes[index(member.to)].at.data());
        Part& part = parts_[m];
        part.from = 6 * member.from;
        part.to = 6 * member.to;
        part.drawn = to - from;
        part.drawn_length = part.drawn.norm();
        if (!is_pole(m)) continue;
        for (const int node : {member.from, member.to}) {
            for (std::size_t d = 3; d < 6; ++d) free_[6 * index(node) + d] = !frame.nodes[index(node)].held[d];
        }
        EndSprings springs;
        if (member.hinged_from) springs.from = 0;
        if (member.hinged_to) springs.to = 0;
        part.pole.emplace(from, to, member_axes(from, to), member.axial_stiffness, member.free_length, member.bending,
                          springs);
    }
    number_unknowns();
}

void Assembly::hold(int full) {
    free_[index(full)] = false;
    number_unknowns();
}

/// Directions that a member's block of the tangent stands for: both ends' places, and for a pole their turns.
std::vector<int> Assembly::directions(std::size_t member) const {
    const int each = is_pole(member) ? 6 : 3;
    std::vector<int> all;
    for (const int end : {parts_[member].from, parts_[member].to}) {
        for (int d = 0; d < each; ++d) all.push_back(end + d);
    }
    return all;
}

/// Numbers the free directions of the nodes in that order, and sets the band that the members then need.
void Assembly::number_in(const std::vector<int>& order) {
    number_.assign(free_.size(), -1);
    full_.clear();
    std::vector<int> last;
    for (const int node : order) {
        for (int full = 6 * node; full < 6 * node + 6; ++full) {
            if (!free_[index(full)]) continue;
            number_[index(full)] = unknowns();
            full_.push_back(full);
        }
        last.resize(full_.size(), unknowns() - 1);
    }
    for (std::size_t m = 0; m < parts_.size(); ++m) {
        const std::vector<int> all = directions(m);
        int furthest = -1;
        for (const int full : all) furthest = std::max(furthest, number_[index(full)]);
        for (const int full : all) {
            const int unknown = number_[index(full)];
            if (unknown >= 0) last[index(unknown)] = std::max(last[index(unknown)], furthest);
        }
    }
    band_ = Band(last);
}

std::vector<int> Assembly::narrow_order() const {
    const auto moves = [&](int node) {
        return std::any_of(free_.begin() + 6 * node, free_.begin() + 6 * node + 6, [](bool free) { return free; });
    };
    std::vector<std::array<int, 2>> links;
    for (const FrameMember& member : frame_.members) {
        if (moves(member.from) && moves(member.to)) links.push_back({member.from, member.to});
    }
    return reverse_cuthill_mckee(static_cast<int>(frame_.nodes.size()), links);
}

void Assembly::number_unknowns() {
    std::vector<int> drawn(frame_.nodes.size());
    std::iota(drawn.begin(), drawn.end(), 0);
    number_in(drawn);
    const double work = band_.work();
    number_in(narrow_order());
    if (band_.work() >= work) number_in(drawn);
    for (std::size_t m = 0; m < parts_.size(); ++m) {
        const std::vector<int> all = directions(m);
        parts_[m].places.clear();
        for (std::size_t i = 0; i < all.size(); ++i) {
            for (std::size_t j = 0; j <= i; ++j) {
                const int row = number_[index(all[i])];
                const int column = number_[index(all[j])];
                const bool held = row < 0 || column < 0;
                parts_[m].places.push_back(held ? -1 : static_cast<int>(band_.at(row, column)));
            }
        }
    }
}

Vector12 Assembly::ends(const Part& part, const Eigen::VectorXd& u) {
    Vector12 d;
    d << u.segment<6>(part.from), u.segment<6>(part.to);
    return d;
}

Assembly::Axial Assembly::axial(std::size_t m, const Eigen::VectorXd& u) const {
    const FrameMember& member = frame_.members[m];
    const Part& part = parts_[m];
    const Eigen::Vector3d moved = u.segment<3>(part.to) - u.segment<3>(part.from);
    const Eigen::Vector3d chord = part.drawn + moved;
    Axial a;
    a.length = chord.norm();
    a.direction = a.length > 0 ? Eigen::Vector3d(chord / a.length) : Eigen::Vector3d(Eigen::Vector3d::Zero());
    // l - L0 by what the ends moved, not as a difference of two long lengths: a stiff member would drown in rounding.
    const double stretch =
        (part.drawn_length - member.free_length) + moved.dot(2 * part.drawn + moved) / (a.length + part.drawn_length);
    a.active = member.kind == MemberKind::strap ? stretch >= 0 : stretch <= 0;
    a.force = a.active ? member.axial_stiffness / member.free_length * stretch : 0;
    return a;
}

void Assembly::add_pole(const Part& part, const Eigen::VectorXd& u, State& state, bool geometric) const {
    const Vector12 d = ends(part, u);
    const Pole::State own = part.pole->evaluate(d, geometric);
    state.energy += own.energy;
    state.largest_force = std::max(state.largest_force, std::abs(own.axial));
    state.rounding = std::max(state.rounding, 1e-15 * own.tangent.diagonal().maxCoeff() * d.cwiseAbs().maxCoeff());
    state.gradient.segment<6>(part.from) += own.gradient.head<6>();
    state.gradient.segment<6>(part.to) += own.gradient.tail<6>();
    add_block(own.tangent, part.places, state.K);
}

void Assembly::add_members(const Eigen::VectorXd& u, State& state, bool geometric) const {
    for (std::size_t m = 0; m < frame_.members.size(); ++m) {
        if (static_cast<int>(m) == left_out_) continue;
        const FrameMember& member = frame_.members[m];
        const Part& part = parts_[m];
        if (part.pole) {
            add_pole(part, u, state, geometric);
            continue;
        }
        const Axial a = axial(m, u);
        // A slack strap or a lifted upright adds nothing; its place in the band stays.
        if (!a.active) continue;
        state.energy += 0.5 * a.force * a.force * member.free_length / member.axial_stiffness;
        state.largest_force = std::max(state.largest_force, std::abs(a.force));
        const double reach =
            std::max(u.segment<3>(part.from).cwiseAbs().maxCoeff(), u.segment<3>(part.to).cwiseAbs().maxCoeff());
        state.rounding = std::max(state.rounding, member.axial_stiffness / member.free_length * reach * 1e-15);
        const Eigen::Vector3d pull = a.force * a.direction;
        state.gradient.segment<3>(part.to) += pull;
        state.gradient.segment<3>(part.from) -= pull;
        Eigen::Matrix3d k = member.axial_stiffness / member.free_length * a.direction * a.direction.transpose();
        if (geometric && a.length > 0) {
            k += a.force / a.length * (Eigen::Matrix3d::Identity() - a.direction * a.direction.transpose());
        }
        Eigen::Matrix<double, 6, 6> block;
        block << k, -k, -k, k;
        add_block(block, part.places, state.K);
    }
}

void Assembly::add_loads(const Eigen::VectorXd& u, const FrameLoads& loads, State& state) const {
    for (std::size_t n = 0; 3 * n < loads.force.size(); ++n) {
        for (std::size_t d = 0; d < 3; ++d) {
            const double force = loads.force[3 * n + d];
            const auto full = static_cast<Eigen::Index>(6 * n + d);
            state.energy -= force * u(full);
            state.gradient(full) -= force;
            state.largest_force = std::max(state.largest_force, std::abs(force));
        }
    }
    for (const FrameLoads::Spring& spring : loads.springs) {
        const int first = 6 * spring.node;
        const Eigen::Matrix3d k(spring.stiffness.data());
        const Eigen::Vector3d force0(spring.force0.data());
        const Eigen::Vector3d moved = u.segment<3>(first) - Eigen::Vector3d(spring.u0.data());
        const Eigen::Vector3d back = k * moved;
        const Eigen::Vector3d force = force0 - back;
        state.energy += 0.5 * moved.dot(back) - force0.dot(moved);
        state.gradient.segment<3>(first) -= force;
        state.largest_force = std::max(state.largest_force, force.norm());
        for (int i = 0; i < 3; ++i) {
            for (int j = 0; j <= i; ++j) {
                const int row = number_[index(first + i)];
                const int column = number_[index(first + j)];
                if (row >= 0 && column >= 0) state.K(band_.at(row, column)) += k(i, j);
            }
        }
    }
}

void Assembly::evaluate(const Eigen::VectorXd& u, const FrameLoads& loads, State& state, bool geometric) const {
    state.gradient.setZero(static_cast<Eigen::Index>(free_.size()));
    state.K.setZero(band_.length());
    state.energy = 0;
    state.largest_force = 0;
    state.rounding = 0;
    add_members(u, state, geometric);
    add_loads(u, loads, state);
}

MemberForces Assembly::forces(std::size_t m, const Eigen::VectorXd& u) const {
    MemberForces f;
    const Part& part = parts_[m];
    if (!part.pole) {
        const Axial a = axial(m, u);
        f.axial = a.force;
        f.active = a.active;
        return f;
    }
    const PoleForces own = part.pole->forces(ends(part, u));
    f.axial = own.axial;
    f.moment_vertical_from = own.moment_2[0];
    f.moment_vertical_to = -own.moment_2[1];
    f.moment_level_from = own.moment_3[0];
    f.moment_level_to = -own.moment_3[1];
    f.shear_vertical = (f.moment_vertical_to - f.moment_vertical_from) / own.length;
    f.shear_level = (f.moment_level_to - f.moment_level_from) / own.length;
    f.twist = own.twist;
    return f;
}

double Assembly::bend(std::size_t m, const Eigen::VectorXd& u) const {
    return parts_[m].pole ? parts_[m].pole->forces(ends(parts_[m], u)).bend : 0;
}

}  // namespace coverframe::kernel
