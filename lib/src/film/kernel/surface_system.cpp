// SPDX-License-Identifier: BSD-3-Clause
#include "film/kernel/surface_system.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <limits>

#include "film/kernel/wet.hpp"

namespace coverframe::kernel {

using Eigen::Index;
using Eigen::Vector3d;
using Eigen::VectorXd;

namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

/// Numbers the film's unknowns after those of the frame.
std::vector<int> numbers_of(const Assembly& assembly, const std::vector<int>& frame_node,
                            const std::vector<bool>& loose, const std::vector<bool>& held, bool upright, int& count) {
    std::vector<int> number(3 * held.size(), -1);
    count = assembly.unknowns();
    for (std::size_t n = 0; n < held.size(); ++n) {
        for (int d = 0; d < 3; ++d) {
            int& own = number[3 * n + at(d)];
            if (frame_node[n] >= 0 && !(loose[n] && d == 2)) {
                own = assembly.unknown_at(6 * frame_node[n] + d);
            } else if (!held[n] && (d == 2 || !upright)) {
                own = count++;
            }
        }
    }
    return number;
}

constexpr double drift_limit = 0.001;  ///< of film over a fixed point before it is looked at again [m]

/// Unknowns that a bearing pushes at: heights of the corners over it, and of the frame under it; -1 where held.
std::array<int, 4> pushed_by(const Bearing& b, const TriangleMesh& film, const std::vector<int>& number,
                             const Assembly& assembly) {
    const std::array<int, 3>& t = film.triangles[at(b.film->triangle)];
    const auto height_of = [&](int node) { return number[at(3 * node + 2)]; };
    return {height_of(t[0]), height_of(t[1]), height_of(t[2]),
            b.frame_node < 0 ? -1 : assembly.unknown_at(6 * b.frame_node + 2)};
}

/// Groups of coupled unknowns: triangles, then bearings on the frame, then each entry of the frame's band.
std::vector<std::vector<int>> groups_of(const TriangleMesh& film, const std::vector<int>& number,
                                        const std::vector<Bearing>& bearings, const Assembly& assembly) {
    std::vector<std::vector<int>> groups;
    for (const auto& t : film.triangles) {
        std::vector<int>& group = groups.emplace_back();
        for (const int node : t) group.insert(group.end(), number.begin() + 3 * node, number.begin() + 3 * node + 3);
    }
    for (const Bearing& b : bearings) {
        if (b.frame_node < 0 || !b.film) continue;
        const std::array<int, 4> pushed = pushed_by(b, film, number, assembly);
        groups.emplace_back(pushed.begin(), pushed.end());
    }
    const Band& band = assembly.band();
    for (int column = 0; column < band.size(); ++column) {
        for (int row = column; row <= band.reach(column); ++row) groups.push_back({row, column});
    }
    return groups;
}

double size_of(const TriangleMesh& film) {
    double size = 0;
    const Vector3d first(film.nodes.front().data());
    for (const auto& node : film.nodes) size = std::max(size, (Vector3d(node.data()) - first).norm());
    return size;
}

}  // namespace

SurfaceSystem::SurfaceSystem(const Frame& frame, const TriangleMesh& film, const std::vector<int>& frame_node,
                             const std::vector<bool>& loose, const std::vector<bool>& held, const Sheet& sheet,
                             std::vector<Bearing> bearings, bool upright)
    : film_force(VectorXd::Zero(static_cast<Index>(3 * film.nodes.size()))),
      frame_(frame),
      film_(film),
      sheet_(sheet),
      bearings_(std::move(bearings)),
      assembly_(frame),
      number_(numbers_of(assembly_, frame_node, loose, held, upright, count_)),
      tangent_(count_, groups_of(film, number_, bearings_, assembly_)),
      size_(size_of(film)),
      frame_u_(VectorXd::Zero(static_cast<Index>(6 * frame.nodes.size()))) {
    unknowns = VectorXd::Zero(count_);
    frame_loads.force.assign(3 * frame.nodes.size(), 0.0);
}

void SurfaceSystem::let_stretch(std::vector<FreeTriangle> free) {
    free_ = std::move(free);
    even_ = false;
}

void SurfaceSystem::pull_evenly(double tension, bool secant) {
    tension_ = tension;
    even_ = true;
    secant_ = secant;
}

void SurfaceSystem::start_from(const std::vector<double>& frame,
                               const std::vector<std::array<double, 3>>& film_places) {
    for (int i = 0; i < assembly_.unknowns(); ++i) unknowns(i) = frame[at(assembly_.full_of(i))];
    for (std::size_t n = 0; n < film_.nodes.size(); ++n) {
        for (std::size_t d = 0; d < 3; ++d) {
            if (number_[3 * n + d] >= assembly_.unknowns())
                unknowns(number_[3 * n + d]) = film_places[n][d] - film_.nodes[n][d];
        }
    }
}

void SurfaceSystem::place_all(const VectorXd& at_unknowns) {
    for (int i = 0; i < assembly_.unknowns(); ++i) frame_u_(assembly_.full_of(i)) = at_unknowns(i);
    places_.resize(static_cast<Index>(number_.size()));
    for (std::size_t i = 0; i < number_.size(); ++i) {
        places_(static_cast<Index>(i)) = film_.nodes[i / 3][i % 3] + (number_[i] >= 0 ? at_unknowns(number_[i]) : 0);
    }
}

void SurfaceSystem::evaluate(const VectorXd& at_unknowns, bool with_tangent) {
    place_all(at_unknowns);
    film_gradient_.setZero(places_.size());
    if (with_tangent) tangent_.set_zero();
    add_frame(with_tangent);
    add_film(with_tangent);
    add_water(with_tangent);
    add_bearings(with_tangent);
    add_loads();
    gradient.resize(count_);
    gradient.setZero();
    for (int i = 0; i < assembly_.unknowns(); ++i) gradient(i) = frame_gradient_(assembly_.full_of(i));
    for (std::size_t i = 0; i < number_.size(); ++i) {
        if (number_[i] >= 0) gradient(number_[i]) += film_gradient_(static_cast<Index>(i));
    }
}

void SurfaceSystem::add_frame(bool with_tangent) {
    assembly_.evaluate(frame_u_, frame_loads, frame_state_);
    energy = frame_state_.energy;
    largest_force = frame_state_.largest_force;
    frame_gradient_ = frame_state_.gradient;
    if (!with_tangent) return;
    const Band& band = assembly_.band();
    for (int column = 0; column < band.size(); ++column) {
        for (int row = column; row <= band.reach(column); ++row) {
            tangent_.add(row, column, frame_state_.K(band.at(row, column)));
        }
    }
}

Vector9 SurfaceSystem::corners(std::size_t t) const {
    Vector9 corners;
    for (int k = 0; k < 3; ++k) corners.segment<3>(3 * k) = places_.segment<3>(3 * film_.triangles[t][at(k)]);
    return corners;
}

Triangle SurfaceSystem::triangle(std::size_t t) const { return {free_[t], sheet_, corners(t)}; }

void SurfaceSystem::add_film(bool with_tangent) {
    for (std::size_t t = 0; t < film_.triangles.size(); ++t) {
        if (even_) {
            const EvenTriangle one(corners(t), tension_);
            add_triangle(t, one.energy(), one.gradient());
            if (with_tangent) tangent_.add(t, secant_ ? one.secant() : one.tangent());
        } else {
            const Triangle one = triangle(t);
            add_triangle(t, one.energy(), one.gradient());
            if (with_tangent) tangent_.add(t, one.tangent());
        }
    }
}

void SurfaceSystem::add_triangle(std::size_t t, double its_energy, const Vector9& its_gradient) {
    energy += its_energy;
    largest_force = std::max(largest_force, its_gradient.cwiseAbs().maxCoeff());
    for (int k = 0; k < 3; ++k) add_to_film(film_.triangles[t][at(k)], its_gradient.segment<3>(3 * k));
}

void SurfaceSystem::add_water(bool with_tangent) {
    for (std::size_t t = 0; t < level.size(); ++t) {
        if (!std::isfinite(level[t])) continue;
        const Vector9 x = corners(t);
        const WetTriangle w = wet_triangle(Eigen::Map<const Eigen::Matrix3d>(x.data()), level[t], water_weight);
        energy += w.energy;
        for (int k = 0; k < 3; ++k) add_to_film(film_.triangles[t][at(k)], w.gradient.segment<3>(3 * k));
        if (with_tangent) tangent_.add(t, w.tangent);
    }
}

double SurfaceSystem::gap(const Bearing& b) const {
    if (!b.film) return std::numeric_limits<double>::infinity();
    double over = -b.place[2];
    if (b.frame_node >= 0) over = -(frame_.nodes[at(b.frame_node)].at[2] + frame_u_(6 * b.frame_node + 2));
    for (std::size_t k = 0; k < 3; ++k) {
        over += b.film->share[k] * places_(3 * film_.triangles[at(b.film->triangle)][k] + 2);
    }
    return over;
}

std::vector<double> SurfaceSystem::gaps() const {
    std::vector<double> gaps;
    for (const Bearing& b : bearings_) gaps.push_back(gap(b));
    return gaps;
}

/// How far the point of the film has moved from over the fixed point, seen from above.
double SurfaceSystem::drift(const Bearing& b) const {
    if (!b.film) return std::numeric_limits<double>::infinity();
    Vector3d point = Vector3d::Zero();
    for (std::size_t k = 0; k < 3; ++k) {
        point += b.film->share[k] * places_.segment<3>(3 * film_.triangles[at(b.film->triangle)][k]);
    }
    return std::hypot(point(0) - b.place[0], point(1) - b.place[1]);
}

void SurfaceSystem::follow() {
    place_all(unknowns);
    const auto left = [&](const Bearing& b) { return b.frame_node < 0 && drift(b) > drift_limit; };
    if (std::none_of(bearings_.begin(), bearings_.end(), left)) return;
    const TriangleMesh now = film();
    const Locator locator(now);
    for (Bearing& b : bearings_) {
        if (left(b)) b.film = locator.at(b.place[0], b.place[1]);
    }
}

void SurfaceSystem::add_bearings(bool with_tangent) {
    for (const Bearing& b : bearings_) {
        const double g = gap(b), k = b.stiffness;
        if (g >= 0) continue;
        const std::array<double, 4> share{b.film->share[0], b.film->share[1], b.film->share[2], -1};
        energy += 0.5 * k * g * g;
        largest_force = std::max(largest_force, b.force(g));
        for (std::size_t i = 0; i < 3; ++i) {
            film_gradient_(3 * film_.triangles[at(b.film->triangle)][i] + 2) += k * g * share[i];
        }
        if (b.frame_node >= 0) frame_gradient_(6 * b.frame_node + 2) -= k * g;
        if (!with_tangent) continue;
        const std::array<int, 4> pushed = pushed_by(b, film_, number_, assembly_);
        for (std::size_t i = 0; i < 4; ++i) {
            for (std::size_t j = 0; j <= i; ++j) {
                if (pushed[i] >= 0 && pushed[j] >= 0) tangent_.add(pushed[i], pushed[j], k * share[i] * share[j]);
            }
        }
    }
}

void SurfaceSystem::add_loads() {
    for (std::size_t n = 0; n < film_.nodes.size(); ++n) {
        const auto i = static_cast<Index>(3 * n);
        energy -= film_force.segment<3>(i).dot(places_.segment<3>(i) - Vector3d(film_.nodes[n].data()));
        film_gradient_.segment<3>(i) -= film_force.segment<3>(i);
    }
    largest_force = std::max(largest_force, film_force.size() > 0 ? film_force.cwiseAbs().maxCoeff() : 0.0);
}

TriangleMesh SurfaceSystem::film() const {
    TriangleMesh mesh;
    mesh.triangles = film_.triangles;
    for (Index i = 0; i < places_.size(); i += 3) mesh.nodes.push_back({places_(i), places_(i + 1), places_(i + 2)});
    return mesh;
}

Vector3d SurfaceSystem::film_reaction(std::size_t node) const {
    Vector3d reaction = Vector3d::Zero();
    for (int d = 0; d < 3; ++d) {
        const Index i = static_cast<Index>(3 * node) + d;
        if (number_[at(static_cast<int>(i))] < 0) reaction(d) = film_gradient_(i);
    }
    return reaction;
}

int SurfaceSystem::loosest() const {
    Index unknown = 0;
    tangent_.matrix().diagonal().minCoeff(&unknown);
    return node_of(unknown);
}

int SurfaceSystem::least_balanced() const {
    Index unknown = 0;
    gradient.cwiseAbs().maxCoeff(&unknown);
    return node_of(unknown);
}

int SurfaceSystem::node_of(Index unknown) const {
    if (unknown < assembly_.unknowns()) return -1 - assembly_.full_of(static_cast<int>(unknown)) / 6;
    for (std::size_t i = 0; i < number_.size(); ++i) {
        if (number_[i] == unknown) return static_cast<int>(i / 3);
    }
    return 0;
}

}  // namespace coverframe::kernel
