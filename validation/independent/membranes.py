# SPDX-License-Identifier: BSD-3-Clause
"""Solves membranes with Kratos Multiphysics and writes them as validation cases FM-01 to FM-04.

Element MembraneElement3D3N, plane stress, Green-Lagrange strain, on the very triangles the library has: a grid of nx by ny
cells, each cut into four at its middle. The library's film is linear in the strain of engineering, so the stretch of the
cases is kept small; what it is at most goes into each case's note.
"""
import json
import math
import pathlib

import KratosMultiphysics as KM
import KratosMultiphysics.ConstitutiveLawsApplication  # noqa: F401  registers its laws
import KratosMultiphysics.StructuralMechanicsApplication as SMA

CASES = pathlib.Path(__file__).resolve().parent.parent / "cases" / "membranes"


def grid(length, width, nx, ny, height):
    nodes = [(length * i / nx, width * j / ny) for j in range(ny + 1) for i in range(nx + 1)]
    triangles = []
    for j in range(ny):
        for i in range(nx):
            a, b, c, d = j * (nx + 1) + i, j * (nx + 1) + i + 1, (j + 1) * (nx + 1) + i + 1, (j + 1) * (nx + 1) + i
            middle = len(nodes)
            nodes.append((length * (i + 0.5) / nx, width * (j + 0.5) / ny))
            triangles += [(a, b, middle), (b, c, middle), (c, d, middle), (d, a, middle)]
    return [(x, y, height(x, y)) for x, y in nodes], triangles


class Membrane:
    def __init__(self, case):
        self.case = case
        length, width = case["length"], case["width"]
        shape = {
            "flat": lambda x, y: 0.0,
            "saddle": lambda x, y: case["rise"] * (2 * x / length - 1) * (2 * y / width - 1),
            "slope": lambda x, y: -case["rise"] * y / width,
        }[case["shape"]]
        self.nodes, self.triangles = grid(length, width, *case["cells"], shape)
        self.model = KM.Model()
        part = self.part = self.model.CreateModelPart("film")
        part.SetBufferSize(2)
        part.ProcessInfo[KM.DOMAIN_SIZE] = 3
        for variable in (KM.DISPLACEMENT, KM.REACTION, SMA.POINT_LOAD, KM.VOLUME_ACCELERATION):
            part.AddNodalSolutionStepVariable(variable)
        for n, place in enumerate(self.nodes):
            part.CreateNewNode(n + 1, *place)
        p = part.CreateNewProperties(1)
        thickness = 1e-4
        p[KM.CONSTITUTIVE_LAW] = KM.KratosGlobals.Kernel.GetConstitutiveLaw("LinearElasticPlaneStress2DLaw").Clone()
        p[KM.YOUNG_MODULUS] = case["Et"] / thickness
        p[KM.POISSON_RATIO] = case["nu"]
        p[KM.THICKNESS] = thickness
        p[KM.DENSITY] = 0.0
        prestress = KM.Vector(3)
        prestress[0] = prestress[1] = case["tension"] / thickness
        prestress[2] = 0.0
        p[SMA.PRESTRESS_VECTOR] = prestress
        for t, corners in enumerate(self.triangles):
            part.CreateNewElement("MembraneElement3D3N", t + 1, [c + 1 for c in corners], p)
        KM.VariableUtils().AddDof(KM.DISPLACEMENT_X, KM.REACTION_X, part)
        KM.VariableUtils().AddDof(KM.DISPLACEMENT_Y, KM.REACTION_Y, part)
        KM.VariableUtils().AddDof(KM.DISPLACEMENT_Z, KM.REACTION_Z, part)
        loads = [0.0] * len(self.nodes)
        for a, b, c in self.triangles:
            (xa, ya, _), (xb, yb, _), (xc, yc, _) = (self.nodes[k] for k in (a, b, c))
            area = abs((xb - xa) * (yc - ya) - (xc - xa) * (yb - ya)) / 2
            for k in (a, b, c):
                loads[k] -= case["load"] * area / 3
        self.held = set()
        for n, (x, y, _) in enumerate(self.nodes):
            node = part.Nodes[n + 1]
            if x == 0 or y == 0 or self._on(x, length) or self._on(y, width):
                self.held.add(n)
                for d in (KM.DISPLACEMENT_X, KM.DISPLACEMENT_Y, KM.DISPLACEMENT_Z):
                    node.Fix(d)
            part.CreateNewCondition("PointLoadCondition3D1N", n + 1, [n + 1], p)
        self.loads = loads

    @staticmethod
    def _on(value, end):
        return abs(value - end) < 1e-12

    def solve(self, steps=20):
        part = self.part
        scheme = KM.ResidualBasedIncrementalUpdateStaticScheme()
        criterion = KM.ResidualCriteria(1e-12, 1e-10)
        strategy = KM.ResidualBasedNewtonRaphsonStrategy(
            part, scheme, criterion, KM.ResidualBasedBlockBuilderAndSolver(KM.SkylineLUFactorizationSolver()),
            100, True, False, True)
        strategy.SetEchoLevel(0)
        strategy.Initialize()
        for step in range(1, steps + 1):
            share = step / steps
            part.CloneTimeStep(float(step))
            for n, load in enumerate(self.loads):
                part.Nodes[n + 1].SetSolutionStepValue(SMA.POINT_LOAD, 0, [0.0, 0.0, share * load])
            strategy.Solve()
        return [tuple(part.Nodes[n + 1].GetSolutionStepValue(KM.DISPLACEMENT)) for n in range(len(self.nodes))]

    def reaction(self):
        """Of the edge x = 0."""
        total = [0.0, 0.0, 0.0]
        for n in self.held:
            if self.nodes[n][0] == 0:
                r = self.part.Nodes[n + 1].GetSolutionStepValue(KM.REACTION)
                total = [t + v for t, v in zip(total, r)]
        return total

    def strain(self, moved):
        most = 0.0
        for t in self.triangles:
            for i in range(3):
                a, b = t[i], t[(i + 1) % 3]
                A, B = self.nodes[a], self.nodes[b]
                before = math.dist(A, B)
                after = math.dist([x + u for x, u in zip(A, moved[a])], [x + u for x, u in zip(B, moved[b])])
                most = max(most, abs(after / before - 1))
        return most


def nearest(membrane, x, y):
    return min(range(len(membrane.nodes)),
               key=lambda n: abs(membrane.nodes[n][0] - x) + abs(membrane.nodes[n][1] - y))


PROBLEMS = {
    "FM-01": ("taut square under an even load",
              dict(shape="flat", length=1.0, width=1.0, cells=[16, 16], rise=0.0, Et=400e3, nu=0.4, tension=300.0,
                   load=400.0)),
    "FM-02": ("rectangle of 2 m by 1 m, hardly stretched at first, under an even load",
              dict(shape="flat", length=2.0, width=1.0, cells=[24, 12], rise=0.0, Et=40e3, nu=0.4, tension=1.0,
                   load=60.0)),
    "FM-03": ("saddle between straight edges under an even load",
              dict(shape="saddle", length=1.5, width=1.5, cells=[16, 16], rise=0.3, Et=400e3, nu=0.4, tension=1500.0,
                   load=300.0)),
    "FM-04": ("one side of a cover: film on a slope of 35 degrees between ridge and rail",
              dict(shape="slope", length=3.0, width=1.2, cells=[24, 10], rise=0.84, Et=360e3, nu=0.4, tension=150.0,
                   load=600.0)),
}


def answers(problem):
    membrane = Membrane(problem)
    moved = membrane.solve()
    length, width = problem["length"], problem["width"]
    middle = moved[nearest(membrane, length / 2, width / 2)]
    quarter = moved[nearest(membrane, length / 4, width / 4)]
    reaction = membrane.reaction()
    return {"sag_middle": (-middle[2], "m"), "across_middle": (middle[1], "m"), "sag_quarter": (-quarter[2], "m"),
            "pull_x": (-reaction[0], "N"), "hold_z": (reaction[2], "N")}, membrane.strain(moved)


def expected(quantity, value, unit):
    small = abs(value) < 1e-9
    row = {"quantity": quantity, "printed": None, "value": 0.0 if small else value,
           "unrounded": 0.0 if small else value, "unit": unit}
    if small:
        row |= {"absolute": 1e-6, "reason": "nothing at all is expected, by symmetry"}
    else:
        row |= {"relative": 0.01, "reason": "same triangles; Green strain there, strain of engineering here: they differ "
                                            "by one and a half times the stretch"}
    return row


def main():
    for name, (title, problem) in PROBLEMS.items():
        found, strain = answers(problem)
        case = {
            "id": name,
            "title": title,
            "kind": "independent",
            "source": {"key": "kratos", "place": "MembraneElement3D3N, version 10.4.4"},
            "how_read": "independent program",
            "quality": "F: numerical, not published",
            "note": f"Our own example, written by validation/independent/membranes.py. The same triangles: "
                    f"{len(membrane_triangles(problem))}; 20 steps of load; stretch of a side up to {100 * strain:.2g} %.",
            "model": "membrane_grid",
            "input": {
                "shape": problem["shape"], "length": f"{problem['length']} m", "width": f"{problem['width']} m",
                "rise": f"{problem['rise']} m", "columns": problem["cells"][0], "rows": problem["cells"][1],
                "Et": f"{problem['Et']} N/m", "nu": problem["nu"], "tension": f"{problem['tension']} N/m",
                "load": f"{problem['load']} Pa",
            },
            "expected": [expected(q, *v) for q, v in found.items()],
            "status": "agrees",
        }
        CASES.mkdir(exist_ok=True)
        (CASES / f"{name}.json").write_text(json.dumps(case, indent=1) + "\n", encoding="utf-8")


def membrane_triangles(problem):
    return grid(problem["length"], problem["width"], *problem["cells"], lambda x, y: 0.0)[1]


if __name__ == "__main__":
    main()
