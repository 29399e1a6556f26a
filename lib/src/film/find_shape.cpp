// SPDX-License-Identifier: BSD-3-Clause
#include <Eigen/Dense>
#include <Eigen/SparseCholesky>
#include <algorithm>
#include <cmath>
#include <string>

#include "coverframe/base/error.hpp"
#include "coverframe/film/membrane.hpp"
#include "film/kernel/sparse_tangent.hpp"

namespace coverframe {

namespace {

using Eigen::Index;
using Eigen::Matrix3d;
using Eigen::Vector3d;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

Vector3d place(const TriangleMesh& mesh, int node) { return Vector3d(mesh.nodes[at(node)].data()); }

/// A unit stress in a triangle as it lies: the matrix of its corners' shape functions, area times gradient by gradient.
Matrix3d pull_of(const TriangleMesh& mesh, const std::array<int, 3>& t) {
    Eigen::Matrix3d opposite;  // columns: the side opposite each corner
    for (int k = 0; k < 3; ++k) {
        opposite.col(k) = place(mesh, t[at((k + 2) % 3)]) - place(mesh, t[at((k + 1) % 3)]);
    }
    const double twice = opposite.col(0).cross(opposite.col(1)).norm();
    return opposite.transpose() * opposite / (2 * twice);
}

/// A triangle that has shrunk to less than this share of its drawn area has closed up.
constexpr double closed_up = 1e-6;

double area_of(const TriangleMesh& mesh, std::size_t triangle) {
    const auto& t = mesh.triangles[triangle];
    const Vector3d a = place(mesh, t[0]);
    return 0.5 * (place(mesh, t[1]) - a).cross(place(mesh, t[2]) - a).norm();
}

double area_of(const TriangleMesh& mesh) {
    double area = 0;
    for (std::size_t t = 0; t < mesh.triangles.size(); ++t) area += area_of(mesh, t);
    return area;
}

bool has_closed_up(const TriangleMesh& mesh, const TriangleMesh& drawn) {
    for (std::size_t t = 0; t < mesh.triangles.size(); ++t) {
        if (!(area_of(mesh, t) > closed_up * area_of(drawn, t))) return true;
    }
    return false;
}

class ShapeFinder {
public:
    ShapeFinder(const TriangleMesh& mesh, const std::vector<bool>& held)
        : mesh_(mesh), number_(numbers_of(held, unknowns_)), pull_(unknowns_, groups_of(mesh, number_)) {
        factor_.analyzePattern(pull_.matrix());
    }

    /// Solves for the places in balance under the stress of the present shape; false if there are none.
    bool round() {
        pull_.set_zero();
        side_.setZero(unknowns_, 3);
        for (std::size_t t = 0; t < mesh_.triangles.size(); ++t) {
            const Matrix3d k = pull_of(mesh_, mesh_.triangles[t]);
            if (!k.allFinite()) return false;
            pull_.add(t, k);
            add_held(mesh_.triangles[t], k);
        }
        factor_.factorize(pull_.matrix());
        if (factor_.info() != Eigen::Success || !(factor_.vectorD().minCoeff() > 0)) return false;
        side_ = factor_.solve(side_).eval();
        for (std::size_t n = 0; n < number_.size(); ++n) {
            for (std::size_t d = 0; d < 3 && number_[n] >= 0; ++d) {
                mesh_.nodes[n][d] = side_(number_[n], static_cast<Index>(d));
            }
        }
        return true;
    }

    [[nodiscard]] const TriangleMesh& mesh() const { return mesh_; }

private:
    static std::vector<int> numbers_of(const std::vector<bool>& held, int& count) {
        std::vector<int> number(held.size(), -1);
        for (std::size_t n = 0; n < held.size(); ++n) {
            if (!held[n]) number[n] = count++;
        }
        return number;
    }

    static std::vector<std::vector<int>> groups_of(const TriangleMesh& mesh, const std::vector<int>& number) {
        std::vector<std::vector<int>> groups;
        groups.reserve(mesh.triangles.size());
        for (const auto& t : mesh.triangles) groups.push_back({number[at(t[0])], number[at(t[1])], number[at(t[2])]});
        return groups;
    }

    /// The pull of held corners on free ones.
    void add_held(const std::array<int, 3>& corner, const Matrix3d& k) {
        for (int i = 0; i < 3; ++i) {
            const int row = number_[at(corner[at(i)])];
            for (int j = 0; j < 3 && row >= 0; ++j) {
                if (number_[at(corner[at(j)])] < 0) side_.row(row) -= k(i, j) * place(mesh_, corner[at(j)]).transpose();
            }
        }
    }

    TriangleMesh mesh_;
    int unknowns_ = 0;
    std::vector<int> number_;
    kernel::SparseTangent pull_;
    Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>> factor_;
    Eigen::MatrixXd side_;
};

}  // namespace

FoundShape find_shape(const TriangleMesh& mesh, const std::vector<bool>& held, double tolerance, int max_rounds) {
    for (const auto& t : mesh.triangles) {
        if (std::all_of(t.begin(), t.end(), [&](int n) { return n >= 0 && at(n) < mesh.nodes.size(); })) continue;
        throw InputError("film.mesh.node", "/mesh/triangles", "", "a triangle has a corner that is no node");
    }
    if (held.size() != mesh.nodes.size()) {
        throw InputError("film.membrane.size", "/held", std::to_string(held.size()), "give one for each node");
    }
    ShapeFinder finder(mesh, held);
    FoundShape shape;
    double before = area_of(mesh);
    for (shape.rounds = 1; shape.rounds <= max_rounds; ++shape.rounds) {
        if (!finder.round() || has_closed_up(finder.mesh(), mesh)) {
            shape.message = "the film closes up on itself: no shape of even pull spans these edges";
            return shape;
        }
        const double area = area_of(finder.mesh());
        if (before - area <= tolerance * area) {
            shape.found = true;
            shape.mesh = finder.mesh();
            return shape;
        }
        before = area;
    }
    shape.message = "the shape is still shrinking after " + std::to_string(max_rounds) + " rounds";
    return shape;
}

}  // namespace coverframe
