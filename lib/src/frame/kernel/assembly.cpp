// SPDX-License-Identifier: BSD-3-Clause
#include "assembly.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

namespace coverframe::kernel {

namespace {

std::size_t index(int i) { return static_cast<std::size_t>(i); }

/// Bending of one plane: order deflection and slope at `from`, then at `to`. phi = 12 EI/(GA L^2).
Eigen::Matrix4d plane_stiffness(double EI, double GA, double length) {
    const double phi = GA > 0 ? 12 * EI / (GA * length * length) : 0;
    const double c = EI / (length * length * length * (1 + phi));
    const double b = 6 * length;
    const double near = (4 + phi) * length * length;
    const double far = (2 - phi) * length * length;
    Eigen::Matrix4d k;
    k << 12, b, -12, b,    //
        b, near, -b, far,  //
        -12, -b, 12, -b,   //
        b, far, -b, near;
    return c * k;
}

/// Takes the unknown `i` out of `k` on the condition that no force acts on it.
void condense(Eigen::Matrix4d& k, int i) {
    const Eigen::Vector4d column = k.col(i);
    k -= column * column.transpose() / column(i);
    k.row(i).setZero();
    k.col(i).setZero();
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

Matrix12 bending_stiffness(const BendingStiffness& bending, double length, bool hinged_from, bool hinged_to) {
    Eigen::Matrix4d vertical = plane_stiffness(bending.EI_vertical, bending.GA_vertical, length);
    Eigen::Matrix4d level = plane_stiffness(bending.EI_level, bending.GA_level, length);
    for (Eigen::Matrix4d* plane : {&vertical, &level}) {
        if (hinged_from) condense(*plane, 1);
        // A member hinged at both ends has nothing left to condense at the second one.
        if (hinged_to && (*plane)(3, 3) > 0) condense(*plane, 3);
    }
    // The slope of u3 is minus the rotation about axis 2; the slope of u2 is the rotation about axis 3.
    constexpr std::array<int, 4> in_vertical{2, 4, 8, 10};
    constexpr std::array<int, 4> in_level{1, 5, 7, 11};
    constexpr std::array<double, 4> sign{1, -1, 1, -1};
    Matrix12 k = Matrix12::Zero();
    for (int i = 0; i < 4; ++i) {
        for (int j = 0; j < 4; ++j) {
            k(in_vertical[index(i)], in_vertical[index(j)]) += sign[index(i)] * sign[index(j)] * vertical(i, j);
            k(in_level[index(i)], in_level[index(j)]) += level(i, j);
        }
    }
    const double twist = bending.GJ / length;
    k(3, 3) = k(9, 9) = twist;
    k(3, 9) = k(9, 3) = -twist;
    return k;
}

Assembly::Assembly(const Frame& frame, const NodeLoads& loads, int left_out)
    : frame_(frame), loads_(loads), left_out_(left_out) {
    const std::size_t count = frame.nodes.size();
    free_.assign(6 * count, false);
    for (std::size_t n = 0; n < count; ++n) {
        for (std::size_t d = 0; d < 3; ++d) free_[6 * n + d] = !frame.nodes[n].held[d];
    }
    bending_.resize(frame.members.size());
    for (std::size_t m = 0; m < frame.members.size(); ++m) {
        const FrameMember& member = frame.members[m];
        if (member.kind != MemberKind::pole) continue;
        for (const int node : {member.from, member.to}) {
            for (std::size_t d = 3; d < 6; ++d) free_[6 * index(node) + d] = !frame.nodes[index(node)].held[d];
        }
        const Eigen::Vector3d from(frame.nodes[index(member.from)].at.data());
        const Eigen::Vector3d to(frame.nodes[index(member.to)].at.data());
        const Eigen::Matrix3d axes = member_axes(from, to);
        Matrix12 turn = Matrix12::Zero();
        for (int block = 0; block < 4; ++block) turn.block<3, 3>(3 * block, 3 * block) = axes;
        bending_[m] = turn.transpose() *
                      bending_stiffness(member.bending, (to - from).norm(), member.hinged_from, member.hinged_to) *
                      turn;
    }
    number_unknowns();
}

void Assembly::hold(int full) {
    free_[index(full)] = false;
    number_unknowns();
}

void Assembly::number_unknowns() {
    number_.assign(free_.size(), -1);
    full_.clear();
    for (std::size_t i = 0; i < free_.size(); ++i) {
        if (!free_[i]) continue;
        number_[i] = static_cast<int>(full_.size());
        full_.push_back(static_cast<int>(i));
    }
    unknowns_ = static_cast<int>(full_.size());
}

Vector12 Assembly::ends(std::size_t member, const Eigen::VectorXd& u) const {
    Vector12 d;
    d << u.segment<6>(6 * frame_.members[member].from), u.segment<6>(6 * frame_.members[member].to);
    return d;
}

Assembly::Axial Assembly::axial(std::size_t m, const Eigen::VectorXd& u) const {
    const FrameMember& member = frame_.members[m];
    const Eigen::Vector3d from(frame_.nodes[index(member.from)].at.data());
    const Eigen::Vector3d to(frame_.nodes[index(member.to)].at.data());
    const Eigen::Vector3d drawn = to - from;
    const Eigen::Vector3d moved = u.segment<3>(6 * member.to) - u.segment<3>(6 * member.from);
    const Eigen::Vector3d chord = drawn + moved;
    Axial a;
    a.length = chord.norm();
    a.direction = a.length > 0 ? Eigen::Vector3d(chord / a.length) : Eigen::Vector3d(Eigen::Vector3d::Zero());
    // l - L0 by what the ends moved, not as a difference of two long lengths: a stiff member would drown in rounding.
    const double drawn_length = drawn.norm();
    const double stretch =
        (drawn_length - member.free_length) + moved.dot(2 * drawn + moved) / (a.length + drawn_length);
    a.active = member.kind == MemberKind::pole || (member.kind == MemberKind::strap ? stretch >= 0 : stretch <= 0);
    a.force = a.active ? member.axial_stiffness / member.free_length * stretch : 0;
    return a;
}

double Assembly::energy(const Eigen::VectorXd& u) const {
    double sum = 0;
    for (std::size_t m = 0; m < frame_.members.size(); ++m) {
        if (static_cast<int>(m) == left_out_) continue;
        const FrameMember& member = frame_.members[m];
        const double force = axial(m, u).force;
        sum += 0.5 * force * force * member.free_length / member.axial_stiffness;
        if (member.kind != MemberKind::pole) continue;
        const Vector12 d = ends(m, u);
        sum += 0.5 * d.dot(bending_[m] * d);
    }
    for (std::size_t n = 0; 3 * n < loads_.force.size(); ++n) {
        for (std::size_t d = 0; d < 3; ++d) sum -= loads_.force[3 * n + d] * u(static_cast<Eigen::Index>(6 * n + d));
    }
    for (const NodeLoads::Spring& spring : loads_.springs) {
        const Eigen::Vector3d moved = u.segment<3>(6 * spring.node) - Eigen::Vector3d(spring.u0.data());
        const Eigen::Matrix3d k(spring.stiffness.data());
        sum += 0.5 * moved.dot(k * moved) - Eigen::Vector3d(spring.force0.data()).dot(moved);
    }
    return sum;
}

void Assembly::add_block(State& state, int row, int column, const Eigen::Matrix3d& block) const {
    for (int i = 0; i < 3; ++i) {
        const int r = number_[index(row + i)];
        if (r < 0) continue;
        for (int j = 0; j < 3; ++j) {
            const int c = number_[index(column + j)];
            if (c >= 0) state.K.emplace_back(r, c, block(i, j));
        }
    }
}

void Assembly::add_members(const Eigen::VectorXd& u, State& state, bool geometric) const {
    for (std::size_t m = 0; m < frame_.members.size(); ++m) {
        if (static_cast<int>(m) == left_out_) continue;
        const FrameMember& member = frame_.members[m];
        const int from = 6 * member.from;
        const int to = 6 * member.to;
        const Axial a = axial(m, u);
        // A slack strap or a lifted upright adds zeros, so that the pattern of K stays what it was when it was
        // analysed.
        Eigen::Matrix3d k = Eigen::Matrix3d::Zero();
        if (a.active) {
            state.largest_force = std::max(state.largest_force, std::abs(a.force));
            const double reach =
                std::max(u.segment<3>(from).cwiseAbs().maxCoeff(), u.segment<3>(to).cwiseAbs().maxCoeff());
            state.rounding = std::max(state.rounding, member.axial_stiffness / member.free_length * reach * 1e-15);
            const Eigen::Vector3d pull = a.force * a.direction;
            state.gradient.segment<3>(to) += pull;
            state.gradient.segment<3>(from) -= pull;
            k = member.axial_stiffness / member.free_length * a.direction * a.direction.transpose();
            if (geometric && a.length > 0) {
                k += a.force / a.length * (Eigen::Matrix3d::Identity() - a.direction * a.direction.transpose());
            }
        }
        add_block(state, from, from, k);
        add_block(state, to, to, k);
        add_block(state, from, to, -k);
        add_block(state, to, from, -k);
        if (member.kind != MemberKind::pole) continue;
        const Vector12 force = bending_[m] * ends(m, u);
        state.rounding =
            std::max(state.rounding, 1e-15 * bending_[m].cwiseAbs().maxCoeff() * ends(m, u).cwiseAbs().maxCoeff());
        state.gradient.segment<6>(from) += force.head<6>();
        state.gradient.segment<6>(to) += force.tail<6>();
        const std::array<int, 4> start{from, from + 3, to, to + 3};
        for (int i = 0; i < 4; ++i) {
            for (int j = 0; j < 4; ++j) {
                add_block(state, start[index(i)], start[index(j)], bending_[m].block<3, 3>(3 * i, 3 * j));
            }
        }
    }
}

void Assembly::add_loads(const Eigen::VectorXd& u, State& state) const {
    for (std::size_t n = 0; 3 * n < loads_.force.size(); ++n) {
        for (std::size_t d = 0; d < 3; ++d) {
            const double force = loads_.force[3 * n + d];
            state.gradient(static_cast<Eigen::Index>(6 * n + d)) -= force;
            state.largest_force = std::max(state.largest_force, std::abs(force));
        }
    }
    for (const NodeLoads::Spring& spring : loads_.springs) {
        const Eigen::Matrix3d k(spring.stiffness.data());
        const Eigen::Vector3d force = Eigen::Vector3d(spring.force0.data()) -
                                      k * (u.segment<3>(6 * spring.node) - Eigen::Vector3d(spring.u0.data()));
        state.gradient.segment<3>(6 * spring.node) -= force;
        state.largest_force = std::max(state.largest_force, force.norm());
        add_block(state, 6 * spring.node, 6 * spring.node, k);
    }
}

void Assembly::evaluate(const Eigen::VectorXd& u, State& state, bool geometric) const {
    state.gradient.setZero(static_cast<Eigen::Index>(free_.size()));
    state.K.clear();
    state.largest_force = 0;
    state.rounding = 0;
    add_members(u, state, geometric);
    add_loads(u, state);
}

MemberForces Assembly::forces(std::size_t m, const Eigen::VectorXd& u) const {
    const FrameMember& member = frame_.members[m];
    const Axial a = axial(m, u);
    MemberForces f;
    f.axial = a.force;
    f.active = a.active;
    if (member.kind != MemberKind::pole) return f;
    const Eigen::Vector3d from(frame_.nodes[index(member.from)].at.data());
    const Eigen::Vector3d to(frame_.nodes[index(member.to)].at.data());
    const Eigen::Matrix3d axes = member_axes(from, to);
    const Vector12 global = bending_[m] * ends(m, u);
    const Eigen::Vector3d moment_from = axes * global.segment<3>(3);
    const Eigen::Vector3d moment_to = axes * global.segment<3>(9);
    const double length = (to - from).norm();
    f.moment_vertical_from = moment_from(1);
    f.moment_vertical_to = -moment_to(1);
    f.moment_level_from = moment_from(2);
    f.moment_level_to = -moment_to(2);
    f.shear_vertical = (f.moment_vertical_to - f.moment_vertical_from) / length;
    f.shear_level = (f.moment_level_to - f.moment_level_from) / length;
    f.twist = moment_to(0);
    return f;
}

}  // namespace coverframe::kernel
