// SPDX-License-Identifier: BSD-3-Clause
#include "film/kernel/sparse_newton.hpp"

#include <doctest/doctest.h>

#include "close.hpp"

using namespace coverframe;

namespace {

/// What two springs in a line do that are pushed together and whose joint x may go aside, y held by a spring of its
/// own: x^4/4 - a x^2/2 + y^2/2. Upright, x = 0, is in balance, and lasts while a < 0; beyond, x = +-sqrt(a).
struct PushedTogether {
    explicit PushedTogether(double push) : a(push) {}

    double a = 0;
    Eigen::VectorXd unknowns = Eigen::VectorXd::Zero(2);
    Eigen::VectorXd gradient = Eigen::VectorXd::Zero(2);
    double energy = 0;
    double largest_force = 1;

    void follow() {}
    void evaluate(const Eigen::VectorXd& at, bool with_tangent) {
        const double x = at(0), y = at(1);
        energy = x * x * x * x / 4 - a * x * x / 2 + y * y / 2;
        gradient << x * x * x - a * x, y;
        if (with_tangent) fill(3 * x * x - a);
    }
    [[nodiscard]] const Eigen::SparseMatrix<double>& tangent() {
        if (matrix_.size() == 0) fill(0);
        return matrix_;
    }
    [[nodiscard]] double longest_step() const { return 1; }

private:
    void fill(double stiffness) {
        matrix_.resize(2, 2);
        matrix_.setZero();
        matrix_.insert(0, 0) = stiffness;
        matrix_.insert(1, 1) = 1;
        matrix_.makeCompressed();
    }

    Eigen::SparseMatrix<double> matrix_;
};

}  // namespace

TEST_CASE("A balance that would not last is left for one that does; one that lasts is kept") {
    for (const double push : {1e-6, 0.01, 0.5, 4.0}) {
        CAPTURE(push);
        PushedTogether column(push);
        kernel::SparseNewton<PushedTogether> newton(column);
        const kernel::NewtonEnd end = newton.run(1e-12, 100);
        CHECK(end.balanced);
        CHECK(end.stable);
        CHECK(end.departed == 0);
        CHECK(close(std::abs(column.unknowns(0)), std::sqrt(push), 1e-5));
        CHECK(std::abs(column.unknowns(1)) < 1e-12);
    }
    PushedTogether pulled(-0.5);
    pulled.unknowns << 0.3, 0.2;
    kernel::SparseNewton<PushedTogether> newton(pulled);
    const kernel::NewtonEnd end = newton.run(1e-12, 100);
    CHECK(end.stable);
    CHECK(end.departed == -1);
    CHECK(std::abs(pulled.unknowns(0)) < 1e-6);
}

TEST_CASE("What nothing holds is told, not left: it falls nowhere") {
    PushedTogether slack(0);
    kernel::SparseNewton<PushedTogether> newton(slack);
    const kernel::NewtonEnd end = newton.run(1e-12, 100);
    CHECK(end.balanced);
    CHECK_FALSE(end.stable);
    CHECK(end.departed == -1);
    CHECK(slack.unknowns(0) == 0);
}
