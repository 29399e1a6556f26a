// SPDX-License-Identifier: BSD-3-Clause
#include "assembly.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <numeric>

namespace coverframe::kernel {

using Eigen::Vector3d;

namespace {

std::size_t index(int i) { return static_cast<std::size_t>(i); }

/// Strain by which a member is longer when it is warmer.
double warmth_of(const FrameMember& member, std::size_t m, const FrameLoads& loads) {
    return loads.temperature.empty() ? 0 : member.expansion * loads.temperature[m];
}

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

Assembly::Assembly(const Frame& frame, int left_out) : frame_(frame), left_out_(left_out), feet_(frame) {
    const std::size_t count = frame.nodes.size();
    free_.assign(6 * count, false);
    for (std::size_t n = 0; n < count; ++n) {
        for (std::size_t d = 0; d < 3; ++d) free_[6 * n + d] = !frame.nodes[n].held[d];
    }
    for (const FrameMember& member : frame.members) {
        parts_.push_back(part_of(member));
        if (parts_.back().pole || Vector3d(member.arm_from.data()).any()) free_rotations(member.from);
        if (parts_.back().pole || Vector3d(member.arm_to.data()).any()) free_rotations(member.to);
    }
    for (const NodeSpring& spring : frame.springs) {
        if (spring.stiffness[3] > 0 || spring.stiffness[4] > 0 || spring.stiffness[5] > 0) free_rotations(spring.node);
    }
    number_unknowns();
}

Assembly::Part Assembly::part_of(const FrameMember& member) const {
    const Vector3d arm_from(member.arm_from.data());
    const Vector3d arm_to(member.arm_to.data());
    const Vector3d from = Vector3d(frame_.nodes[index(member.from)].at.data()) + arm_from;
    const Vector3d to = Vector3d(frame_.nodes[index(member.to)].at.data()) + arm_to;
    Part part;
    part.from = 6 * member.from;
    part.to = 6 * member.to;
    part.drawn = to - from;
    part.drawn_length = part.drawn.norm();
    if (arm_from.any() || arm_to.any()) part.arms.emplace(std::array<Vector3d, 2>{arm_from, arm_to});
    if (member.kind != MemberKind::pole) return part;
    const EndSprings springs{member.spring_from, member.spring_to};
    const Eigen::Matrix3d axes = member_axes(from, to);
    part.pole.emplace(from, to, axes, member.axial_stiffness, member.free_length, member.bending, springs);
    part.pole_load.emplace(from, to, axes, member.bending, springs);
    return part;
}

void Assembly::free_rotations(int node) {
    for (std::size_t d = 3; d < 6; ++d) free_[6 * index(node) + d] = !frame_.nodes[index(node)].held[d];
}

void Assembly::hold(int full) {
    free_[index(full)] = false;
    number_unknowns();
}

/// Directions that a member's block of the tangent stands for: both ends' places, and their turns if it turns them.
std::vector<int> Assembly::directions(std::size_t member) const {
    const int each = parts_[member].turns() ? 6 : 3;
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

Vector12 Assembly::nodes(const Part& part, const Eigen::VectorXd& u) {
    Vector12 d;
    d << u.segment<6>(part.from), u.segment<6>(part.to);
    return d;
}

Vector12 Assembly::ends(const Part& part, const Eigen::VectorXd& u) {
    return part.arms ? part.arms->ends(nodes(part, u)) : nodes(part, u);
}

Vector3d Assembly::chord(std::size_t m, const Eigen::VectorXd& u) const {
    const Vector12 d = ends(parts_[m], u);
    return parts_[m].drawn + d.segment<3>(6) - d.segment<3>(0);
}

Assembly::Axial Assembly::axial(std::size_t m, const Eigen::VectorXd& u, const FrameLoads& loads) const {
    const FrameMember& member = frame_.members[m];
    const Part& part = parts_[m];
    Vector3d moved = u.segment<3>(part.to) - u.segment<3>(part.from);
    if (part.arms) {
        const Vector12 d = ends(part, u);
        moved = d.segment<3>(6) - d.segment<3>(0);
    }
    const Vector3d chord = part.drawn + moved;
    Axial a;
    a.length = chord.norm();
    a.direction = a.length > 0 ? Vector3d(chord / a.length) : Vector3d(Vector3d::Zero());
    // l - L0 by what the ends moved, not as a difference of two long lengths: a stiff member would drown in rounding.
    const double stretch = (part.drawn_length - member.free_length) +
                           moved.dot(2 * part.drawn + moved) / (a.length + part.drawn_length) -
                           warmth_of(member, m, loads) * member.free_length;
    if (member.kind == MemberKind::strap) a.active = stretch >= 0;
    if (member.kind == MemberKind::upright) a.active = stretch <= 0;
    a.force = a.active ? member.axial_stiffness / member.free_length * stretch : 0;
    a.stretch = stretch;
    return a;
}

/// A strap that carries a load along its length; nothing for other members.
std::optional<Catenary> Assembly::hung_strap(std::size_t m, const Axial& a, const FrameLoads& loads) const {
    const FrameMember& member = frame_.members[m];
    if (loads.member_load.empty() || member.kind != MemberKind::strap) return std::nullopt;
    const Vector3d load = parts_[m].drawn_length * Vector3d(loads.member_load.data() + 3 * m);
    if (load.isZero(0)) return std::nullopt;
    // Warm, it is that much longer and as stiff as it was.
    const double longer = 1 + warmth_of(member, m, loads);
    const double free = longer * member.free_length;
    return catenary(a.length * a.direction, a.stretch, longer * member.axial_stiffness, free, load / free);
}

void Assembly::add_pole(std::size_t m, const Eigen::VectorXd& u, const FrameLoads& loads, State& state,
                        bool geometric) const {
    const FrameMember& member = frame_.members[m];
    const Part& part = parts_[m];
    const Vector12 d = ends(part, u);
    Pole::State own = part.pole->evaluate(d, geometric);
    state.rounding = std::max(state.rounding, 1e-15 * own.tangent.diagonal().maxCoeff() * d.cwiseAbs().maxCoeff());
    if (const double warmth = warmth_of(member, m, loads); warmth != 0) {
        const Vector3d chord = part.drawn + d.segment<3>(6) - d.segment<3>(0);
        add_warmth(member.axial_stiffness, member.free_length, warmth, chord, geometric, own);
    }
    state.largest_force = std::max(state.largest_force, std::abs(own.axial));
    if (!loads.member_load.empty()) {
        const Vector3d q(loads.member_load.data() + 3 * m);
        part.pole_load->add(q, d, geometric, own);
        state.largest_force = std::max(state.largest_force, part.drawn_length * q.norm());
    }
    state.energy += own.energy;
    add_ends(part, u, own.gradient, own.tangent, state, geometric);
}

/// Adds what a member does at its ends, through its arms if it has any.
void Assembly::add_ends(const Part& part, const Eigen::VectorXd& u, Vector12& gradient, Matrix12& tangent, State& state,
                        bool geometric) const {
    if (part.arms) part.arms->carry(nodes(part, u), geometric, gradient, tangent);
    state.gradient.segment<6>(part.from) += gradient.head<6>();
    state.gradient.segment<6>(part.to) += gradient.tail<6>();
    add_block(tangent, part.places, state.K);
}

void Assembly::add_axial(std::size_t m, const Eigen::VectorXd& u, const FrameLoads& loads, State& state,
                         bool geometric) const {
    const FrameMember& member = frame_.members[m];
    const Part& part = parts_[m];
    const Axial a = axial(m, u, loads);
    Vector3d half = Vector3d::Zero();
    if (!loads.member_load.empty()) {
        half = 0.5 * part.drawn_length * Vector3d(loads.member_load.data() + 3 * m);
        const Vector12 d = ends(part, u);
        state.energy -= half.dot(d.segment<3>(0) + d.segment<3>(6));
        state.largest_force = std::max(state.largest_force, 2 * half.norm());
    }
    Vector3d pull = a.force * a.direction;
    Eigen::Matrix3d k = Eigen::Matrix3d::Zero();
    if (const std::optional<Catenary> hung = hung_strap(m, a, loads)) {
        pull = hung->middle;
        k = hung->tangent;
        if (!geometric) k -= hung->turning * (Eigen::Matrix3d::Identity() - a.direction * a.direction.transpose());
        state.energy += hung->energy;
        state.largest_force = std::max({state.largest_force, hung->tension_from, hung->tension_to});
    } else if (a.active) {
        state.energy += 0.5 * a.force * a.force * member.free_length / member.axial_stiffness;
        state.largest_force = std::max(state.largest_force, std::abs(a.force));
        k = member.axial_stiffness / member.free_length * a.direction * a.direction.transpose();
        if (geometric && a.length > 0) {
            k += a.force / a.length * (Eigen::Matrix3d::Identity() - a.direction * a.direction.transpose());
        }
    }
    if (a.active) {
        const double reach =
            std::max(u.segment<3>(part.from).cwiseAbs().maxCoeff(), u.segment<3>(part.to).cwiseAbs().maxCoeff());
        state.rounding = std::max(state.rounding, member.axial_stiffness / member.free_length * reach * 1e-15);
    }
    if (part.arms) {
        Vector12 gradient = Vector12::Zero();
        gradient.segment<3>(0) = -pull - half;
        gradient.segment<3>(6) = pull - half;
        Matrix12 tangent = Matrix12::Zero();
        tangent.block<3, 3>(0, 0) = tangent.block<3, 3>(6, 6) = k;
        tangent.block<3, 3>(0, 6) = tangent.block<3, 3>(6, 0) = -k;
        add_ends(part, u, gradient, tangent, state, geometric);
        return;
    }
    state.gradient.segment<3>(part.to) += pull - half;
    state.gradient.segment<3>(part.from) -= pull + half;
    // A slack strap or a lifted upright adds no stiffness; its place in the band stays.
    if (k.isZero(0)) return;
    Eigen::Matrix<double, 6, 6> block;
    block << k, -k, -k, k;
    add_block(block, part.places, state.K);
}

void Assembly::add_members(const Eigen::VectorXd& u, const FrameLoads& loads, State& state, bool geometric) const {
    for (std::size_t m = 0; m < frame_.members.size(); ++m) {
        if (static_cast<int>(m) == left_out_) continue;
        if (parts_[m].pole)
            add_pole(m, u, loads, state, geometric);
        else
            add_axial(m, u, loads, state, geometric);
    }
}

Vector6 Assembly::spring_force(const NodeSpring& spring, const Eigen::VectorXd& u) {
    return -Vector6(spring.stiffness.data()).cwiseProduct(u.segment<6>(6 * spring.node));
}

void Assembly::add_node_springs(const Eigen::VectorXd& u, State& state) const {
    for (const NodeSpring& spring : frame_.springs) {
        const int first = 6 * spring.node;
        const Vector6 force = spring_force(spring, u);
        state.energy -= 0.5 * force.dot(u.segment<6>(first));
        state.gradient.segment<6>(first) -= force;
        state.largest_force = std::max(state.largest_force, force.head<3>().norm());
        for (int d = 0; d < 6; ++d) {
            const int row = number_[index(first + d)];
            if (row >= 0) state.K(band_.diagonal(row)) += spring.stiffness[index(d)];
        }
    }
}

void Assembly::add_loads(const Eigen::VectorXd& u, const FrameLoads& loads, State& state) const {
    const auto add = [&](const std::vector<double>& forces, std::size_t first) {
        for (std::size_t n = 0; 3 * n < forces.size(); ++n) {
            for (std::size_t d = 0; d < 3; ++d) {
                const auto full = static_cast<Eigen::Index>(6 * n + first + d);
                state.energy -= forces[3 * n + d] * u(full);
                state.gradient(full) -= forces[3 * n + d];
                state.largest_force = std::max(state.largest_force, std::abs(forces[3 * n + d]));
            }
        }
    };
    add(loads.force, 0);
    add(loads.couple, 3);
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
        add_stiffness(spring.node, k, state);
    }
}

void Assembly::add_feet(const Eigen::VectorXd& u, State& state) const {
    for (std::size_t f = 0; f < frame_.feet.size(); ++f) {
        const int node = frame_.feet[f].node;
        const FootState own = feet_.state(f, u);
        state.energy += own.energy;
        state.gradient.segment<3>(6 * node) -= own.force;
        state.largest_force = std::max(state.largest_force, own.force.norm());
        const double reach = u.segment<3>(6 * node).cwiseAbs().maxCoeff();
        state.rounding = std::max(state.rounding, own.tangent.diagonal().maxCoeff() * reach * 1e-15);
        add_stiffness(node, own.tangent, state);
    }
}

/// Adds a stiffness of one node's place.
void Assembly::add_stiffness(int node, const Eigen::Matrix3d& k, State& state) const {
    for (int i = 0; i < 3; ++i) {
        for (int j = 0; j <= i; ++j) {
            const int row = number_[index(6 * node + i)];
            const int column = number_[index(6 * node + j)];
            if (row >= 0 && column >= 0) state.K(band_.at(row, column)) += k(i, j);
        }
    }
}

void Assembly::evaluate(const Eigen::VectorXd& u, const FrameLoads& loads, State& state, bool geometric) const {
    state.gradient.setZero(static_cast<Eigen::Index>(free_.size()));
    state.K.setZero(band_.length());
    state.energy = 0;
    state.largest_force = 0;
    state.rounding = 0;
    add_members(u, loads, state, geometric);
    add_node_springs(u, state);
    add_loads(u, loads, state);
    add_feet(u, state);
}

MemberForces Assembly::forces(std::size_t m, const Eigen::VectorXd& u, const FrameLoads& loads) const {
    MemberForces f;
    const Part& part = parts_[m];
    const Vector3d q =
        loads.member_load.empty() ? Vector3d(Vector3d::Zero()) : Vector3d(loads.member_load.data() + 3 * m);
    if (!part.pole) {
        const Axial a = axial(m, u, loads);
        f.axial = a.force;
        f.active = a.active;
        f.load[0] = part.drawn_length * q.dot(a.direction);
        if (const std::optional<Catenary> hung = hung_strap(m, a, loads)) {
            f.axial = 0.5 * (hung->tension_from + hung->tension_to);
            f.load[0] = hung->tension_from - hung->tension_to;
            f.least = hung->least;
            f.sag = hung->sag;
            f.active = true;
        }
        return f;
    }
    const FrameMember& member = frame_.members[m];
    const Vector12 d = ends(part, u);
    PoleForces own = part.pole->forces(d);
    if (!loads.member_load.empty()) Vector3d::Map(f.load.data()) = part.pole_load->add(q, d, own);
    f.axial = own.axial - member.axial_stiffness * warmth_of(member, m, loads);
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
