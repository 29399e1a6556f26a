// SPDX-License-Identifier: BSD-3-Clause
#include <doctest/doctest.h>

#include <Eigen/Dense>
#include <cmath>

#include "close.hpp"
#include "coverframe/film/surface.hpp"
#include "coverframe/plan/read.hpp"
#include "film/kernel/relaxation.hpp"
#include "film/kernel/surface_system.hpp"

using namespace coverframe;

namespace {

Eigen::Vector3d vector_of(const std::array<double, 3>& a) { return {a[0], a[1], a[2]}; }

}  // namespace

TEST_CASE("Relaxation and Newton find the same equilibrium of film and frame, wrinkles and all") {
    const Plan plan = read_plan_file(std::string(COVERFRAME_SOURCE_FOLDER) + "/examples/plans/open_boat.json");
    const CoverSurface s = rig_surface(plan, 200, {.spacing = 0.5, .rows = 4});
    REQUIRE(s.state.usable());
    const kernel::Sheet sheet{s.stiffness, s.poisson};
    std::vector<kernel::FreeTriangle> free;
    const double stretch = stretch_for_tension(s.stiffness, s.poisson, s.tension);
    for (const auto& t : s.shape.triangles) {
        const auto corner = [&](std::size_t k) { return vector_of(s.shape.nodes[static_cast<std::size_t>(t[k])]); };
        free.push_back(kernel::free_triangle(corner(0), corner(1), corner(2), stretch));
    }
    const std::vector<bool> fixed(s.cover.mesh.nodes.size(), false);  // none of them loose
    const auto system = [&] {
        kernel::SurfaceSystem one(s.layout.frame, s.cover.mesh, s.cover.frame_node, fixed, s.cover.held, sheet, {},
                                  false);
        one.let_stretch(free);
        one.frame_loads = self_weight(s.layout.frame, 1.0);
        const auto loads = forces_of_plan_load(s.cover.mesh, {400.0});
        for (std::size_t n = 0; n < loads.size(); ++n) {
            one.film_force(static_cast<Eigen::Index>(3 * n + 2)) = loads[n][2];
        }
        one.start_from(s.state.displacement, s.state.film.nodes);
        return one;
    };
    kernel::SurfaceSystem by_newton = system();
    const kernel::NewtonEnd newton = kernel::SparseNewton(by_newton).run(1e-9, 200);
    REQUIRE(newton.balanced);
    CHECK(newton.stable);
    kernel::SurfaceSystem by_relaxation = system();
    const kernel::NewtonEnd relaxed = kernel::Relaxation(by_relaxation).run(1e-7, 200000);
    CAPTURE(relaxed.iterations);
    CAPTURE(relaxed.unbalanced);
    REQUIRE(relaxed.balanced);
    CHECK((by_newton.unknowns - by_relaxation.unknowns).cwiseAbs().maxCoeff() < 1e-5);
    by_newton.evaluate(by_newton.unknowns, false);
    CHECK(close(by_relaxation.energy, by_newton.energy, 1e-9));
}
