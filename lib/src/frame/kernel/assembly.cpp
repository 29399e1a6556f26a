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

Vec<double> vec(const Vector3d& v) { return {v(0), v(1), v(2)}; }

Vector3d eigen(const Vec<double>& v) { return {v.x, v.y, v.z}; }

/// Adds the lower triangle of a member's block.
template <int size>
void add_block(const Eigen::Matrix<double, size, size>& block, const std::vector<int>& places, Eigen::VectorXd& K) {
    const int* place = places.data();
    for (int i = 0; i < size; ++i) {
        for (int j = 0; j <= i; ++j, ++place) {
            K(*place) += block(i, j);
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

Assembly::Assembly(const Frame& frame, int left_out) : frame_(&frame), left_out_(left_out), feet_(frame) {
    const std::size_t count = frame.nodes.size();
    free_.assign(6 * count, false);
    for (std::size_t n = 0; n < count; ++n) {
        for (std::size_t d = 0; d < 3; ++d) free_[6 * n + d] = !frame.nodes[n].held[d];
    }
    for (const FrameMember& member : frame.members) {
        parts_.push_back(part_of(member));
        if (parts_.back().pole || Vector3d(member.arm_from.data()).any()) free_rotations(member.from);
        if (parts_.back().pole || Vector3d(member.arm_to.data()).any()) free_rotations(member.to);
        if (!parts_.back().pole) continue;
        turning_.push_back(member.from);
        turning_.push_back(member.to);
    }
    std::sort(turning_.begin(), turning_.end());
    turning_.erase(std::unique(turning_.begin(), turning_.end()), turning_.end());
    for (const NodeSpring& spring : frame.springs) {
        if (spring.stiffness[3] > 0 || spring.stiffness[4] > 0 || spring.stiffness[5] > 0) free_rotations(spring.node);
    }
    number_unknowns();
}

Assembly::Part Assembly::part_of(const FrameMember& member) const {
    const Vector3d arm_from(member.arm_from.data());
    const Vector3d arm_to(member.arm_to.data());
    const Vector3d from = Vector3d(frame_->nodes[index(member.from)].at.data()) + arm_from;
    const Vector3d to = Vector3d(frame_->nodes[index(member.to)].at.data()) + arm_to;
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

void Assembly::take(const Frame& frame) {
    frame_ = &frame;
    for (std::size_t m = 0; m < parts_.size(); ++m) {
        std::vector<int> places = std::move(parts_[m].places);
        parts_[m] = part_of(frame.members[m]);
        parts_[m].places = std::move(places);
    }
    feet_ = Feet(frame);
}

void Assembly::free_rotations(int node) {
    for (std::size_t d = 3; d < 6; ++d) free_[6 * index(node) + d] = !frame_->nodes[index(node)].held[d];
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
    for (const FrameMember& member : frame_->members) {
        if (moves(member.from) && moves(member.to)) links.push_back({member.from, member.to});
    }
    return reverse_cuthill_mckee(static_cast<int>(frame_->nodes.size()), links);
}

int Assembly::place_of(int row, int column) const {
    return static_cast<int>(row < 0 || column < 0 ? band_.length() : band_.at(row, column));
}

void Assembly::number_unknowns() {
    std::vector<int> drawn(frame_->nodes.size());
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
                parts_[m].places.push_back(place_of(row, column));
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

double Assembly::warmth(std::size_t m, const FrameLoads& loads) const {
    return loads.temperature.empty() ? 0 : frame_->members[m].expansion * loads.temperature[m];
}

TieProperties Assembly::tie(std::size_t m, const FrameLoads& loads) const {
    const FrameMember& member = frame_->members[m];
    const Part& part = parts_[m];
    return {.drawn = vec(part.drawn),
            .drawn_length = part.drawn_length,
            .pulls = member.kind != MemberKind::upright,
            .pushes = member.kind != MemberKind::strap,
            .free_length = member.free_length,
            .stiffness = member.axial_stiffness / member.free_length,
            .longer = warmth(m, loads) * member.free_length};
}

TieState<double> Assembly::tie_state(std::size_t m, const Eigen::VectorXd& u, const FrameLoads& loads) const {
    const Vector12 d = ends(parts_[m], u);
    return state_of(tie(m, loads), vec(d.segment<3>(6) - d.segment<3>(0)));
}

/// A strap that carries a load along its length; nothing for other members.
std::optional<Catenary> Assembly::hung_strap(std::size_t m, const TieState<double>& a, const FrameLoads& loads) const {
    const FrameMember& member = frame_->members[m];
    if (loads.member_load.empty() || member.kind != MemberKind::strap) return std::nullopt;
    const Vector3d load = parts_[m].drawn_length * Vector3d(loads.member_load.data() + 3 * m);
    if (load.isZero(0)) return std::nullopt;
    // Warm, it is that much longer and as stiff as it was.
    const double longer = 1 + warmth(m, loads);
    const double free = longer * member.free_length;
    return catenary(eigen(a.chord), a.stretch, longer * member.axial_stiffness, free, load / free);
}

void Assembly::add_pole(std::size_t m, const Eigen::VectorXd& u, const FrameLoads& loads, State& state,
                        bool geometric) const {
    const FrameMember& member = frame_->members[m];
    const Part& part = parts_[m];
    const Vector12 d = ends(part, u);
    Pole::State own = part.pole->evaluate(d, geometric);
    state.rounding = std::max(state.rounding, 1e-15 * own.tangent.diagonal().maxCoeff() * d.cwiseAbs().maxCoeff());
    if (const double warm = warmth(m, loads); warm != 0) {
        const Vector3d chord = part.drawn + d.segment<3>(6) - d.segment<3>(0);
        add_warmth(member.axial_stiffness, member.free_length, warm, chord, geometric, own);
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
    const Part& part = parts_[m];
    const TieState<double> a = tie_state(m, u, loads);
    Vector3d half = Vector3d::Zero();
    if (!loads.member_load.empty()) {
        half = 0.5 * part.drawn_length * Vector3d(loads.member_load.data() + 3 * m);
        const Vector12 d = ends(part, u);
        state.energy -= half.dot(d.segment<3>(0) + d.segment<3>(6));
        state.largest_force = std::max(state.largest_force, 2 * half.norm());
    }
    const Vector3d direction = eigen(a.direction);
    Vector3d pull = a.force * direction;
    Eigen::Matrix3d k = Eigen::Matrix3d::Zero();
    if (const std::optional<Catenary> hung = hung_strap(m, a, loads)) {
        pull = hung->middle;
        k = hung->tangent;
        if (!geometric) k -= hung->turning * (Eigen::Matrix3d::Identity() - direction * direction.transpose());
        state.energy += hung->energy;
        state.largest_force = std::max({state.largest_force, hung->tension_from, hung->tension_to});
    } else if (a.stiffness > 0) {
        state.energy += 0.5 * a.force * a.force / a.stiffness;
        state.largest_force = std::max(state.largest_force, std::abs(a.force));
        k = a.stiffness * direction * direction.transpose();
        if (geometric) {
            k += a.force * a.inverse * (Eigen::Matrix3d::Identity() - direction * direction.transpose());
        }
    }
    if (a.stiffness > 0) {
        const double reach =
            std::max(u.segment<3>(part.from).cwiseAbs().maxCoeff(), u.segment<3>(part.to).cwiseAbs().maxCoeff());
        state.rounding = std::max(state.rounding, a.stiffness * reach * 1e-15);
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

COVERFRAME_INLINE void Assembly::add_plain(const double* u, Turned<double>* turns, Terms terms,
                                           Sums<double>& sums) const {
    for (const int node : turning_) turns[node] = turned(vec_at<double>(u, 6 * node + 3));
    const FrameLoads none;
    for (std::size_t m = 0; m < parts_.size(); ++m) {
        const Part& part = parts_[m];
        if (static_cast<int>(m) == left_out_ || part.arms) continue;
        if (part.pole) {
            kernel::add_pole(part.pole->properties(), part.from, part.to, part.places.data(), u, turns, terms, sums);
        } else {
            add_tie(tie(m, none), part.from, part.to, part.places.data(), u, terms, sums);
        }
    }
}

void Assembly::add_plain_anywhere(const double* u, Turned<double>* turns, Terms terms, Sums<double>& sums) const {
    add_plain(u, turns, terms, sums);
}

#ifdef COVERFRAME_AVX2
COVERFRAME_AVX2 void Assembly::add_plain_avx2(const double* u, Turned<double>* turns, Terms terms,
                                              Sums<double>& sums) const {
    add_plain(u, turns, terms, sums);
}
#endif

/// Members that have neither arms nor loads of their own, by the kernels for whatever the machine has.
void Assembly::add_plain_members(const Eigen::VectorXd& u, State& state, Terms terms, Sums<double>& sums) const {
    state.turns.resize(frame_->nodes.size());
    if (has_avx2()) {
#ifdef COVERFRAME_AVX2
        add_plain_avx2(u.data(), state.turns.data(), terms, sums);
#endif
    } else {
        add_plain_anywhere(u.data(), state.turns.data(), terms, sums);
    }
    if (sums.least_fold > fold_margin) return;
    for (const Part& part : parts_) {  // says which way it is folded
        if (part.pole && !part.arms) (void)part.pole->energy(nodes(part, u));
    }
}

bool Assembly::plain(const FrameLoads& loads) const { return loads.member_load.empty() && loads.temperature.empty(); }

void Assembly::add_special_members(const Eigen::VectorXd& u, const FrameLoads& loads, State& state,
                                   bool geometric) const {
    const bool loaded = !plain(loads);
    for (std::size_t m = 0; m < parts_.size(); ++m) {
        if (static_cast<int>(m) == left_out_ || !(loaded || parts_[m].arms)) continue;
        if (parts_[m].pole)
            add_pole(m, u, loads, state, geometric);
        else
            add_axial(m, u, loads, state, geometric);
    }
}

Vector6 Assembly::spring_force(const NodeSpring& spring, const Eigen::VectorXd& u) {
    return -Vector6(spring.stiffness.data()).cwiseProduct(u.segment<6>(6 * spring.node));
}

void Assembly::add_node_springs(const Eigen::VectorXd& u, Terms terms, Sums<double>& sums) const {
    for (const NodeSpring& spring : frame_->springs) {
        const int first = 6 * spring.node;
        const Vector6 force = spring_force(spring, u);
        sums.energy -= 0.5 * force.dot(u.segment<6>(first));
        sums.largest_force = std::max(sums.largest_force, force.head<3>().norm());
        if (terms == Terms::energy) continue;
        for (int d = 0; d < 6; ++d) {
            const int row = number_[index(first + d)];
            add_at(sums.gradient, first + d, -force(d));
            add_at(sums.K, place_of(row, row), spring.stiffness[index(d)]);
        }
    }
}

void Assembly::add_forces(const Eigen::VectorXd& u, const FrameLoads& loads, Terms terms, Sums<double>& sums) const {
    const auto add = [&](const std::vector<double>& forces, int first) {
        for (std::size_t i = 0; i < forces.size(); i += 3) {
            const double* force = &forces[i];
            add_force(Vec<double>{force[0], force[1], force[2]}, 2 * static_cast<int>(i) + first, u.data(), terms,
                      sums);
        }
    };
    add(loads.force, 0);
    add(loads.couple, 3);
}

std::array<int, 6> Assembly::places_of_support(int node) const {
    std::array<int, 6> places{};
    int* place = places.data();
    for (int i = 6 * node; i < 6 * node + 3; ++i) {
        for (int j = 6 * node; j <= i; ++j) *place++ = place_of(number_[index(i)], number_[index(j)]);
    }
    return places;
}

void Assembly::add_springs(const Eigen::VectorXd& u, const std::vector<FrameLoads::Spring>& springs, Terms terms,
                           Sums<double>& sums) const {
    for (const FrameLoads::Spring& spring : springs) {
        const int first = 6 * spring.node;
        const std::array<double, 9>& k = spring.stiffness;
        const Support<double> support{.k = {k[0], k[3], k[4], k[6], k[7], k[8]},
                                      .u0 = vec(Vector3d(spring.u0.data())),
                                      .force0 = vec(Vector3d(spring.force0.data()))};
        add_support(support, first, places_of_support(spring.node).data(), u.data(), terms, sums);
    }
}

void Assembly::add_feet(const Eigen::VectorXd& u, State& state) const {
    for (std::size_t f = 0; f < frame_->feet.size(); ++f) {
        const int node = frame_->feet[f].node;
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
            state.K(place_of(row, column)) += k(i, j);
        }
    }
}

void Assembly::evaluate_without_springs(const Eigen::VectorXd& u, const FrameLoads& loads, State& state,
                                        bool geometric) const {
    state.gradient.setZero(static_cast<Eigen::Index>(free_.size()));
    state.K.setZero(band_.length() + 1);
    Sums<double> sums{.gradient = state.gradient.data(), .K = state.K.data()};
    const Terms terms = geometric ? Terms::tangent : Terms::elastic;
    if (plain(loads)) add_plain_members(u, state, terms, sums);
    add_node_springs(u, terms, sums);
    add_forces(u, loads, terms, sums);
    state.energy = sums.energy;
    state.largest_force = sums.largest_force;
    state.rounding = sums.rounding;
    add_special_members(u, loads, state, geometric);
    add_feet(u, state);
}

void Assembly::add_springs(const Eigen::VectorXd& u, const std::vector<FrameLoads::Spring>& springs,
                           State& state) const {
    Sums<double> sums{.gradient = state.gradient.data(), .K = state.K.data()};
    add_springs(u, springs, Terms::tangent, sums);
    state.energy += sums.energy;
    state.largest_force = std::max(state.largest_force, sums.largest_force);
}

double Assembly::energy_of_springs(const Eigen::VectorXd& u, const std::vector<FrameLoads::Spring>& springs) const {
    Sums<double> sums{.gradient = nullptr, .K = nullptr};
    add_springs(u, springs, Terms::energy, sums);
    return sums.energy;
}

void Assembly::evaluate(const Eigen::VectorXd& u, const FrameLoads& loads, State& state, bool geometric) const {
    evaluate_without_springs(u, loads, state, geometric);
    add_springs(u, loads.springs, state);
}

double Assembly::energy(const Eigen::VectorXd& u, const FrameLoads& loads, State& state) const {
    const bool arms = std::any_of(parts_.begin(), parts_.end(), [](const Part& part) { return part.arms; });
    if (arms || !frame_->feet.empty() || !plain(loads)) {
        evaluate(u, loads, state);
        return state.energy;
    }
    Sums<double> sums{.gradient = nullptr, .K = nullptr};
    add_plain_members(u, state, Terms::energy, sums);
    add_node_springs(u, Terms::energy, sums);
    add_forces(u, loads, Terms::energy, sums);
    return sums.energy + energy_of_springs(u, loads.springs);
}

}  // namespace coverframe::kernel
