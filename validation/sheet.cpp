// SPDX-License-Identifier: BSD-3-Clause
#include "sheet.hpp"

#include <utility>

#include "values.hpp"

namespace coverframe::validation {

TriangleMesh rectangle(double length, double width, int nx, int ny) {
    TriangleMesh mesh;
    for (int j = 0; j <= ny; ++j) {
        for (int i = 0; i <= nx; ++i) mesh.nodes.push_back({length * i / nx, width * j / ny, 0});
    }
    for (int j = 0; j < ny; ++j) {
        for (int i = 0; i < nx; ++i) {
            const int a = j * (nx + 1) + i, b = a + 1, c = a + nx + 2, d = a + nx + 1;
            const int middle = static_cast<int>(mesh.nodes.size());
            mesh.nodes.push_back({length * (i + 0.5) / nx, width * (j + 0.5) / ny, 0});
            mesh.triangles.insert(mesh.triangles.end(),
                                  {{a, b, middle}, {b, c, middle}, {c, d, middle}, {d, a, middle}});
        }
    }
    return mesh;
}

const MembraneState& usable(const MembraneState& state) {
    if (!state.usable()) throw CaseError("the membrane ends as " + std::string(name_of(state.status)));
    return state;
}

}  // namespace coverframe::validation
