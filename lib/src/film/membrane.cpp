// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/film/membrane.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "coverframe/base/error.hpp"
#include "film/kernel/filling.hpp"
#include "film/kernel/membrane.hpp"
#include "film/kernel/sparse_newton.hpp"
#include "film/kernel/sparse_tangent.hpp"
#include "film/kernel/wet.hpp"

namespace coverframe {

namespace {

using Eigen::Index;
using Eigen::Vector3d;
using Eigen::VectorXd;
using Places = std::vector<std::array<double, 3>>;

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

/// The energy of a membrane over the displacements of its free nodes.
class MembraneSystem {
public:
    MembraneSystem(const Membrane& membrane, const Places& forces, const Places& start)
        : m_(membrane),
          forces_(forces),
          sheet_{membrane.stiffness, membrane.poisson},
          number_(numbers_of(membrane.held, count_)),
          tangent_(count_, groups_of(membrane.mesh, number_)),
          unknowns(VectorXd::Zero(count_)) {
        for (std::size_t t = 0; t < m_.mesh.triangles.size(); ++t) {
            const auto& corner = m_.mesh.triangles[t];
            free_.push_back(kernel::free_triangle(drawn(corner[0]), drawn(corner[1]), drawn(corner[2]),
                                                  m_.stretch[m_.stretch.size() == 1 ? 0 : t]));
        }
        for (std::size_t n = 0; n < m_.mesh.nodes.size(); ++n) {
            size_ = std::max(size_, (drawn(static_cast<int>(n)) - drawn(0)).norm());
            for (std::size_t d = 0; d < 3 && !start.empty(); ++d) {
                if (number_[3 * n + d] >= 0) unknowns(number_[3 * n + d]) = start[n][d] - m_.mesh.nodes[n][d];
            }
        }
    }

    std::vector<double> level;  ///< of the water over each triangle, -infinity where dry; empty: no water [m]

    void follow() {}  // it rests on nothing

    void evaluate(const VectorXd& at_unknowns, bool with_tangent) {
        energy = 0;
        largest_force = 0;
        places_ = places_at(at_unknowns);
        full_.setZero(static_cast<Index>(number_.size()));
        if (with_tangent) tangent_.set_zero();
        for (std::size_t t = 0; t < m_.mesh.triangles.size(); ++t) {
            const kernel::Triangle one = triangle(t);
            const kernel::Vector9 g = one.gradient();
            energy += one.energy();
            largest_force = std::max(largest_force, g.cwiseAbs().maxCoeff());
            for (std::size_t k = 0; k < 3; ++k) {
                full_.segment<3>(3 * m_.mesh.triangles[t][k]) += g.segment<3>(static_cast<Index>(3 * k));
            }
            if (with_tangent) tangent_.add(t, one.tangent());
        }
        for (std::size_t t = 0; t < level.size(); ++t) {
            if (std::isfinite(level[t])) add_water(t, with_tangent);
        }
        for (std::size_t n = 0; n < forces_.size(); ++n) {
            const Vector3d force = vector_of(forces_[n]);
            const auto i = static_cast<Index>(3 * n);
            energy -= force.dot(places_.segment<3>(i) - drawn(static_cast<int>(n)));
            full_.segment<3>(i) -= force;
            largest_force = std::max(largest_force, force.cwiseAbs().maxCoeff());
        }
        gradient.resize(count_);
        for (std::size_t i = 0; i < number_.size(); ++i) {
            if (number_[i] >= 0) gradient(number_[i]) = full_(static_cast<Index>(i));
        }
    }

    [[nodiscard]] const Eigen::SparseMatrix<double>& tangent() const { return tangent_.matrix(); }
    [[nodiscard]] double longest_step() const { return 0.1 * size_; }

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

    /// Places, forces and reactions of the last evaluate.
    void fill(MembraneState& state) const {
        state.energy = energy;
        state.reaction.assign(m_.mesh.nodes.size(), {});
        for (std::size_t n = 0; n < m_.mesh.nodes.size(); ++n) {
            const auto i = static_cast<Index>(3 * n);
            state.places.push_back({places_(i), places_(i + 1), places_(i + 2)});
            if (m_.held[n]) state.reaction[n] = {full_(i), full_(i + 1), full_(i + 2)};
        }
        for (std::size_t t = 0; t < m_.mesh.triangles.size(); ++t) {
            const kernel::SheetStress s = triangle(t).stress();
            state.triangles.push_back({static_cast<FilmStretch>(s.stretch),
                                       s.first,
                                       s.second,
                                       {s.direction(0), s.direction(1), s.direction(2)}});
        }
    }

private:
    void add_water(std::size_t t, bool with_tangent) {
        const kernel::Vector9 x = corners(t);
        const kernel::WetTriangle wet =
            kernel::wet_triangle(Eigen::Map<const Eigen::Matrix3d>(x.data()), level[t], kernel::water_weight);
        energy += wet.energy;
        for (std::size_t k = 0; k < 3; ++k) {
            full_.segment<3>(3 * m_.mesh.triangles[t][k]) += wet.gradient.segment<3>(static_cast<Index>(3 * k));
        }
        if (with_tangent) tangent_.add(t, wet.tangent);
    }

    [[nodiscard]] Vector3d drawn(int node) const { return vector_of(m_.mesh.nodes[at(node)]); }

    [[nodiscard]] VectorXd places_at(const VectorXd& at_unknowns) const {
        VectorXd places(static_cast<Index>(number_.size()));
        for (std::size_t i = 0; i < number_.size(); ++i) {
            places(static_cast<Index>(i)) =
                m_.mesh.nodes[i / 3][i % 3] + (number_[i] >= 0 ? at_unknowns(number_[i]) : 0);
        }
        return places;
    }

    /// In the places of the last evaluate.
    [[nodiscard]] kernel::Vector9 corners(std::size_t t) const {
        kernel::Vector9 x;
        for (std::size_t k = 0; k < 3; ++k) {
            x.segment<3>(static_cast<Index>(3 * k)) = places_.segment<3>(3 * m_.mesh.triangles[t][k]);
        }
        return x;
    }

    [[nodiscard]] kernel::Triangle triangle(std::size_t t) const { return {free_[t], sheet_, corners(t)}; }

    const Membrane& m_;
    const Places& forces_;
    kernel::Sheet sheet_;
    int count_ = 0;
    std::vector<int> number_;
    kernel::SparseTangent tangent_;
    std::vector<kernel::FreeTriangle> free_;
    double size_ = 0;  ///< from the first node to the furthest [m]
    VectorXd places_;
    VectorXd full_;  ///< gradient, three a node

public:
    VectorXd unknowns;
    VectorXd gradient;
    double energy = 0;
    double largest_force = 0;
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
    return 1 / (1 - tension * (1 - poisson) / stiffness);
}

Membrane stretched_membrane(TriangleMesh mesh, double stiffness, double poisson, double tension) {
    Membrane m;
    m.held = border_of(mesh);
    m.mesh = std::move(mesh);
    m.stiffness = stiffness;
    m.poisson = poisson;
    m.stretch = {stretch_for_tension(stiffness, poisson, tension)};
    return m;
}

namespace {

MembraneState state_of(MembraneSystem& system, const kernel::NewtonEnd& end) {
    system.evaluate(system.unknowns, true);
    MembraneState state;
    state.iterations = end.iterations;
    state.unbalanced = end.unbalanced;
    system.fill(state);
    if (!end.balanced) {
        state.status = MembraneStatus::iteration_limit;
        state.message = end.reason;
    } else if (!end.stable) {
        state.status = MembraneStatus::loose;
        state.message =
            "node " + std::to_string(system.loosest_node()) + " of the film hangs loose: nothing stretches it";
    } else {
        state.status = MembraneStatus::converged;
        state.message.clear();
    }
    return state;
}

}  // namespace

MembraneState solve_membrane(const Membrane& membrane, const Places& forces, const MembraneOptions& options,
                             const Places& start) {
    require(membrane, forces, start);
    MembraneSystem system(membrane, forces, start);
    return state_of(system, kernel::SparseNewton(system).run(options.force_tolerance, options.max_iterations));
}

FilledMembrane fill_membrane(const Membrane& membrane, const Places& forces, const std::vector<bool>& outlet,
                             const Rain& rain, const MembraneOptions& options) {
    require(membrane, forces, {});
    MembraneSystem system(membrane, forces, {});
    kernel::SparseNewton newton(system);
    kernel::Filling filling(membrane.mesh, outlet, rain);
    FilledMembrane filled;
    TriangleMesh film = membrane.mesh;
    int iterations = 0;
    do {
        const kernel::NewtonEnd end = newton.run(options.force_tolerance, options.max_iterations);
        iterations += end.iterations;
        filled.state = state_of(system, end);
        if (!filled.state.usable()) break;
        film.nodes = filled.state.places;
        if (const int t = folded_triangle(membrane.mesh, film); t >= 0) {
            filled.state.status = MembraneStatus::loose;
            filled.state.message =
                "triangle " + std::to_string(t) + " of the film folds over; water on it cannot be told";
            break;
        }
        if (!filling.goes_on(film)) break;
        system.level = levels_over(film, filling.water());
    } while (true);
    filled.state.iterations = iterations;
    filled.water = filling.water();
    filled.settled = filled.state.usable() && filling.settled();
    filled.rounds = filling.rounds();
    return filled;
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
