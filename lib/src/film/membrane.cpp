// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/film/membrane.hpp"

#include <Eigen/SparseCholesky>
#include <algorithm>
#include <cmath>
#include <utility>

#include "coverframe/base/error.hpp"
#include "film/kernel/membrane.hpp"
#include "film/kernel/sparse_tangent.hpp"

namespace coverframe {

namespace {

using Eigen::Index;
using Eigen::Vector3d;
using Eigen::VectorXd;
using Places = std::vector<std::array<double, 3>>;

/// A pivot below this share of the largest is no resistance at all.
constexpr double singular_pivot = 1e-12;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

Vector3d vector_of(const std::array<double, 3>& a) { return {a[0], a[1], a[2]}; }

bool all_finite(const Places& places) {
    return std::all_of(places.begin(), places.end(), [](const std::array<double, 3>& p) {
        return std::isfinite(p[0]) && std::isfinite(p[1]) && std::isfinite(p[2]);
    });
}

void require(const Membrane& m, const Places& forces, const Places& start) {
    require_sound(m.mesh);
    const std::size_t nodes = m.mesh.nodes.size();
    std::vector<Problem> problems;
    const auto wrong_size = [&](const char* where, std::size_t size) {
        problems.push_back({"film.membrane.size", where, std::to_string(size), "give one for each node or triangle"});
    };
    if (m.held.size() != nodes) wrong_size("/held", m.held.size());
    if (m.stretch.size() != 1 && m.stretch.size() != m.mesh.triangles.size()) wrong_size("/stretch", m.stretch.size());
    if (forces.size() != nodes) wrong_size("/forces", forces.size());
    if (!start.empty() && start.size() != nodes) wrong_size("/start", start.size());
    const auto out_of_range = [&](const char* where, const char* advice) {
        problems.push_back({"film.membrane.range", where, "", advice});
    };
    if (!(std::isfinite(m.stiffness) && m.stiffness > 0)) out_of_range("/stiffness", "E t must be over zero");
    if (!(m.poisson >= 0 && m.poisson < 0.5)) out_of_range("/poisson", "Poisson's ratio must be 0 to under 0.5");
    if (!std::all_of(m.stretch.begin(), m.stretch.end(), [](double s) { return std::isfinite(s) && s > 0; })) {
        out_of_range("/stretch", "stretch must be over zero; 1 is film as drawn");
    }
    if (!all_finite(forces)) out_of_range("/forces", "forces must be finite numbers");
    if (!all_finite(start)) out_of_range("/start", "places must be finite numbers");
    if (!problems.empty()) throw InputError(std::move(problems));
}

/// Numbers the unknowns of the free nodes, three each; -1 where held.
std::vector<int> numbers_of(const std::vector<bool>& held, int& count) {
    std::vector<int> number(3 * held.size(), -1);
    count = 0;
    for (std::size_t n = 0; n < held.size(); ++n) {
        for (std::size_t d = 0; d < 3 && !held[n]; ++d) number[3 * n + d] = count++;
    }
    return number;
}

std::vector<std::vector<int>> groups_of(const TriangleMesh& mesh, const std::vector<int>& number) {
    std::vector<std::vector<int>> groups;
    groups.reserve(mesh.triangles.size());
    for (const auto& t : mesh.triangles) {
        std::vector<int>& group = groups.emplace_back();
        for (const int node : t) {
            for (std::size_t d = 0; d < 3; ++d) group.push_back(number[3 * at(node) + d]);
        }
    }
    return groups;
}

class MembraneSolver {
public:
    MembraneSolver(const Membrane& membrane, const Places& forces)
        : m_(membrane),
          forces_(forces),
          sheet_{membrane.stiffness, membrane.poisson},
          number_(numbers_of(membrane.held, unknowns_)),
          tangent_(unknowns_, groups_of(membrane.mesh, number_)) {
        for (std::size_t t = 0; t < m_.mesh.triangles.size(); ++t) {
            const auto& corner = m_.mesh.triangles[t];
            free_.push_back(kernel::free_triangle(vector_of(m_.mesh.nodes[at(corner[0])]),
                                                  vector_of(m_.mesh.nodes[at(corner[1])]),
                                                  vector_of(m_.mesh.nodes[at(corner[2])]),
                                                  m_.stretch[m_.stretch.size() == 1 ? 0 : t]));
        }
        factor_.analyzePattern(tangent_.matrix());
    }

    MembraneState solve(const MembraneOptions& options, const Places& start) {
        x_.resize(static_cast<Index>(3 * m_.mesh.nodes.size()));
        const Places& from = start.empty() ? m_.mesh.nodes : start;
        for (std::size_t n = 0; n < from.size(); ++n) {
            const Vector3d place = vector_of(m_.held[n] ? m_.mesh.nodes[n] : from[n]);
            x_.segment<3>(static_cast<Index>(3 * n)) = place;
        }
        MembraneState state;
        walk(options, state);
        fill(state);
        return state;
    }

private:
    /// Energy, gradient and, if wanted, tangent.
    struct Value {
        double energy = 0;
        VectorXd gradient;  ///< three a node
        double largest_force = 0;
    };

    [[nodiscard]] kernel::Triangle triangle(std::size_t t, const VectorXd& x) const {
        kernel::Vector9 corners;
        for (std::size_t k = 0; k < 3; ++k) {
            corners.segment<3>(static_cast<Index>(3 * k)) = x.segment<3>(3 * m_.mesh.triangles[t][k]);
        }
        return {free_[t], sheet_, corners};
    }

    void evaluate(const VectorXd& x, bool with_tangent, Value& value) {
        value.energy = 0;
        value.largest_force = 0;
        value.gradient.setZero(x.size());
        if (with_tangent) tangent_.set_zero();
        for (std::size_t t = 0; t < m_.mesh.triangles.size(); ++t) {
            const kernel::Triangle one = triangle(t, x);
            const kernel::Vector9 g = one.gradient();
            value.energy += one.energy();
            value.largest_force = std::max(value.largest_force, g.cwiseAbs().maxCoeff());
            for (std::size_t k = 0; k < 3; ++k) {
                value.gradient.segment<3>(3 * m_.mesh.triangles[t][k]) += g.segment<3>(static_cast<Index>(3 * k));
            }
            if (with_tangent) tangent_.add(t, one.tangent());
        }
        for (std::size_t n = 0; n < forces_.size(); ++n) {
            const Vector3d force = vector_of(forces_[n]);
            const auto i = static_cast<Index>(3 * n);
            value.energy -= force.dot(x.segment<3>(i) - vector_of(m_.mesh.nodes[n]));
            value.gradient.segment<3>(i) -= force;
            value.largest_force = std::max(value.largest_force, force.cwiseAbs().maxCoeff());
        }
    }

    /// Over the unknowns.
    [[nodiscard]] VectorXd of_unknowns(const VectorXd& full) const {
        VectorXd some(unknowns_);
        for (std::size_t i = 0; i < number_.size(); ++i) {
            if (number_[i] >= 0) some(number_[i]) = full(static_cast<Index>(i));
        }
        return some;
    }

    /// True if the tangent with `shift` on its diagonal is positive definite by a margin.
    bool factorise(double shift) {
        if (unknowns_ == 0) return true;
        factor_.setShift(shift);
        factor_.factorize(tangent_.matrix());
        if (factor_.info() != Eigen::Success) return false;
        const VectorXd pivots = factor_.vectorD();
        return pivots.minCoeff() > singular_pivot * pivots.maxCoeff();
    }

    bool find_step(const VectorXd& gradient, VectorXd& step) {
        const double size = std::max(tangent_.matrix().diagonal().cwiseAbs().maxCoeff(), 1e-9);
        for (double shift = 0; shift < 1e6; shift = std::max(10 * shift, 1e-9)) {
            if (!factorise(shift * size)) continue;
            step = factor_.solve(-gradient);
            if (step.allFinite()) return true;
        }
        return false;
    }

    bool take_step(const VectorXd& step, double descent) {
        const double noise = 1e-13 * (std::abs(value_.energy) + value_.largest_force * 1e-3);
        VectorXd tried;
        Value trial;
        double share = std::min(1.0, size_ / std::max(step.cwiseAbs().maxCoeff(), 1e-300));
        for (int halvings = 0; halvings < 60; ++halvings, share /= 2) {
            tried = x_;
            for (std::size_t i = 0; i < number_.size(); ++i) {
                if (number_[i] >= 0) tried(static_cast<Index>(i)) += share * step(number_[i]);
            }
            evaluate(tried, false, trial);
            if (trial.energy > value_.energy + 1e-4 * share * descent + noise) continue;
            x_ = std::move(tried);
            return true;
        }
        return false;
    }

    void walk(const MembraneOptions& options, MembraneState& state) {
        size_ = 0;
        for (const auto& place : m_.mesh.nodes) size_ = std::max(size_, 0.1 * (vector_of(place) - x_.head<3>()).norm());
        state.status = MembraneStatus::iteration_limit;
        VectorXd step;
        for (state.iterations = 0; state.iterations <= options.max_iterations; ++state.iterations) {
            evaluate(x_, true, value_);
            const VectorXd gradient = of_unknowns(value_.gradient);
            state.unbalanced = unknowns_ > 0 ? gradient.cwiseAbs().maxCoeff() : 0;
            if (state.unbalanced <= options.force_tolerance * value_.largest_force) return judge(state);
            if (!find_step(gradient, step)) {
                state.message = "the stiffness of the film cannot be solved";
                return;
            }
            if (!take_step(step, gradient.dot(step))) {
                state.message = "the energy stops falling before the forces balance";
                return;
            }
        }
        state.message = "no balance after " + std::to_string(options.max_iterations) + " steps";
    }

    /// Whether the shape is one that holds itself.
    void judge(MembraneState& state) {
        if (factorise(0)) {
            state.status = MembraneStatus::converged;
            state.message.clear();
            return;
        }
        state.status = MembraneStatus::loose;
        state.message = "node " + std::to_string(loosest_node()) + " of the film hangs loose: nothing stretches it";
    }

    /// The node with the least resistance of its own.
    [[nodiscard]] int loosest_node() const {
        const VectorXd diagonal = tangent_.matrix().diagonal();
        int loosest = 0;
        double least = std::numeric_limits<double>::infinity();
        for (std::size_t i = 0; i < number_.size(); ++i) {
            if (number_[i] < 0 || !(diagonal(number_[i]) < least)) continue;
            least = diagonal(number_[i]);
            loosest = static_cast<int>(i / 3);
        }
        return loosest;
    }

    void fill(MembraneState& state) const {
        const std::size_t nodes = m_.mesh.nodes.size();
        state.energy = value_.energy;
        state.places.resize(nodes);
        state.reaction.assign(nodes, {});
        for (std::size_t n = 0; n < nodes; ++n) {
            for (std::size_t d = 0; d < 3; ++d) {
                const auto i = static_cast<Index>(3 * n + d);
                state.places[n][d] = x_(i);
                if (m_.held[n]) state.reaction[n][d] = value_.gradient(i);
            }
        }
        for (std::size_t t = 0; t < m_.mesh.triangles.size(); ++t) {
            const kernel::SheetStress s = triangle(t, x_).stress();
            state.triangles.push_back({static_cast<FilmStretch>(s.stretch), s.first, s.second,
                                       {s.direction(0), s.direction(1), s.direction(2)}});
        }
    }

    const Membrane& m_;
    const Places& forces_;
    kernel::Sheet sheet_;
    int unknowns_ = 0;
    std::vector<int> number_;
    kernel::SparseTangent tangent_;
    std::vector<kernel::FreeTriangle> free_;
    Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>> factor_;
    double size_ = 0;  ///< how far a node may go in one step [m]
    VectorXd x_;
    Value value_;
};

}  // namespace

const char* name_of(MembraneStatus status) {
    switch (status) {
        case MembraneStatus::not_run: return "not run";
        case MembraneStatus::converged: return "converged";
        case MembraneStatus::loose: return "loose";
        case MembraneStatus::iteration_limit: return "iteration limit";
    }
    return "";
}

double stretch_for_tension(double stiffness, double poisson, double tension) {
    return std::sqrt(1 + 2 * tension * (1 - poisson) / stiffness);
}

MembraneState solve_membrane(const Membrane& membrane, const Places& forces, const MembraneOptions& options,
                             const Places& start) {
    require(membrane, forces, start);
    return MembraneSolver(membrane, forces).solve(options, start);
}

Places forces_of_plan_load(const TriangleMesh& mesh, const std::vector<double>& load) {
    require_sound(mesh);
    if (load.size() != 1 && load.size() != mesh.triangles.size()) {
        throw InputError("film.membrane.size", "/load", std::to_string(load.size()), "give one load for each triangle");
    }
    Places forces(mesh.nodes.size());
    for (std::size_t t = 0; t < mesh.triangles.size(); ++t) {
        const double whole = plan_area(mesh, t) * load[load.size() == 1 ? 0 : t];
        for (const int node : mesh.triangles[t]) forces[at(node)][2] -= whole / 3;
    }
    return forces;
}

}  // namespace coverframe
