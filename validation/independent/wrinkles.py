# SPDX-License-Identifier: BSD-3-Clause
"""Solves membranes that wrinkle with Kratos Multiphysics and writes them as validation cases FM-05 to FM-07.

Element MembraneElement3D3N with WrinklingLinear2DLaw over plane stress: taut, wrinkled or slack by the least principal
stress and the greatest principal strain, as in the library, but in Green strain and with a tangent that leaves out how
wrinkles turn. That law adds its prestress to wrinkled film across the wrinkles too, so prestress is not used: film that
is stretched in the drawn places is put in as smaller film, the drawn places over the stretch, and pulled to them.
"""
import json
import math

import KratosMultiphysics as KM
import KratosMultiphysics.ConstitutiveLawsApplication  # noqa: F401  registers its laws
import KratosMultiphysics.StructuralMechanicsApplication as SMA

from membranes import CASES, grid

THICKNESS = 1e-4


def stretch_for(problem):
    """What coverframe::stretch_for_tension gives: tension per present width, T = D/(1 - nu) (s - 1)/s."""
    return 1 / (1 - problem["tension"] * (1 - problem["nu"]) / problem["Et"])


class Film:
    def __init__(self, problem):
        self.problem = problem
        length, width = problem["length"], problem["width"]
        rise = problem["rise"]
        self.nodes, self.triangles = grid(length, width, *problem["cells"],
                                          lambda x, y: rise * (2 * x / length - 1) * (2 * y / width - 1))
        self.stretch = stretch_for(problem)
        self.free = [[c / self.stretch for c in place] for place in self.nodes]
        self.pulled = problem["up"] != 0
        self.held = [self.is_held(x, y) for x, y, _ in self.nodes]
        self.first = self.edge_loads(problem["up"], 0, problem["out"])
        self.then = [[a + b for a, b in zip(*both)]
                     for both in zip(self.plan_loads(), self.edge_loads(0, problem["along"], 0))]
        self.part = self.make_part()

    def is_held(self, x, y):
        length, width = self.problem["length"], self.problem["width"]
        if self.problem["hold"] == "bottom":
            return on(y, 0)
        border = on(x, 0) or on(x, length) or on(y, 0) or on(y, width)
        if self.problem["hold"] == "edges":
            return border
        reach = self.problem["reach"] + 1e-9
        return border and min(x, length - x) < reach and min(y, width - y) < reach

    def plan_loads(self):
        forces = [[0.0, 0.0, 0.0] for _ in self.nodes]
        for t in self.triangles:
            (xa, ya, _), (xb, yb, _), (xc, yc, _) = (self.nodes[k] for k in t)
            area = abs((xb - xa) * (yc - ya) - (xc - xa) * (yb - ya)) / 2
            for k in t:
                forces[k][2] -= self.problem["load"] * area / 3
        return forces

    def edge_loads(self, up, along, out):
        """Forces per length: `up` and `along` on the edge y = width, `out` on the edges at both ends of x."""
        length, width = self.problem["length"], self.problem["width"]
        nx, ny = self.problem["cells"]
        forces = [[0.0, 0.0, 0.0] for _ in self.nodes]
        for n, (x, y, _) in enumerate(self.nodes):
            side, top = on(x, 0) or on(x, length), on(y, width)
            if top:
                piece = length / nx * (0.5 if side else 1.0)
                forces[n][0] += along * piece
                forces[n][1] += up * piece
            if side:
                piece = width / ny * (0.5 if top or on(y, 0) else 1.0)
                forces[n][0] += (out if on(x, length) else -out) * piece
        return forces

    def make_part(self):
        self.model = KM.Model()
        part = self.model.CreateModelPart("film")
        part.SetBufferSize(2)
        part.ProcessInfo[KM.DOMAIN_SIZE] = 3
        for variable in (KM.DISPLACEMENT, KM.REACTION, SMA.POINT_LOAD, KM.VOLUME_ACCELERATION):
            part.AddNodalSolutionStepVariable(variable)
        for n, place in enumerate(self.free):
            part.CreateNewNode(n + 1, *place)
        laws = KM.KratosGlobals.Kernel
        p = part.CreateNewProperties(1)
        p[KM.CONSTITUTIVE_LAW] = laws.GetConstitutiveLaw("WrinklingLinear2DLaw").Clone()
        base = part.CreateNewProperties(2)
        base[KM.CONSTITUTIVE_LAW] = laws.GetConstitutiveLaw("LinearElasticPlaneStress2DLaw").Clone()
        p.AddSubProperties(base)
        p[KM.YOUNG_MODULUS] = self.problem["Et"] / THICKNESS
        p[KM.POISSON_RATIO] = self.problem["nu"]
        p[KM.THICKNESS] = THICKNESS
        p[KM.DENSITY] = 0.0
        for t, corners in enumerate(self.triangles):
            part.CreateNewElement("MembraneElement3D3N", t + 1, [c + 1 for c in corners], p)
        KM.VariableUtils().AddDof(KM.DISPLACEMENT_X, KM.REACTION_X, part)
        KM.VariableUtils().AddDof(KM.DISPLACEMENT_Y, KM.REACTION_Y, part)
        KM.VariableUtils().AddDof(KM.DISPLACEMENT_Z, KM.REACTION_Z, part)
        for n in range(len(self.nodes)):
            part.CreateNewCondition("PointLoadCondition3D1N", n + 1, [n + 1], p)
        return part

    def solve(self, steps=40):
        scheme = KM.ResidualBasedIncrementalUpdateStaticScheme()
        criterion = KM.ResidualCriteria(1e-9, 1e-9)
        strategy = KM.ResidualBasedNewtonRaphsonStrategy(
            self.part, scheme, criterion, KM.ResidualBasedBlockBuilderAndSolver(KM.SkylineLUFactorizationSolver()),
            300, True, False, True)
        strategy.SetEchoLevel(0)
        strategy.Initialize()
        for step in range(1, steps + 1):
            self.part.CloneTimeStep(float(step))
            for n, node in enumerate(self.part.Nodes):
                if step == 1:
                    move = [a - b for a, b in zip(self.nodes[n], self.free[n])]
                    node.SetSolutionStepValue(KM.DISPLACEMENT, 0, move)
                    node.X, node.Y, node.Z = self.nodes[n]
                    for d in (KM.DISPLACEMENT_X, KM.DISPLACEMENT_Y, KM.DISPLACEMENT_Z):
                        if self.held[n] or (self.problem["load"] == 0 and d == KM.DISPLACEMENT_Z):
                            node.Fix(d)
                # Pulls at the edges over the first half of the steps, the rest over the second.
                first, then = min(1.0, 2 * step / steps), max(0.0, 2 * step / steps - 1)
                if not self.pulled:
                    first, then = 0.0, step / steps
                force = [first * a + then * b for a, b in zip(self.first[n], self.then[n])]
                node.SetSolutionStepValue(SMA.POINT_LOAD, 0, force)
            strategy.Solve()
            if not strategy.IsConverged():
                raise RuntimeError(f"no balance at step {step}")
        self.places = [tuple(f + u for f, u in zip(self.free[n], node.GetSolutionStepValue(KM.DISPLACEMENT)))
                       for n, node in enumerate(self.part.Nodes)]

    def reaction(self, held):
        """Of what holds the nodes for whose places `held` is true."""
        total = [0.0, 0.0, 0.0]
        for n, place in enumerate(self.nodes):
            if self.held[n] and held(*place):
                total = [t + r for t, r in zip(total, self.part.Nodes[n + 1].GetSolutionStepValue(KM.REACTION))]
        return total

    def moved(self, x, y):
        n = min(range(len(self.nodes)), key=lambda k: abs(self.nodes[k][0] - x) + abs(self.nodes[k][1] - y))
        return [a - b for a, b in zip(self.places[n], self.nodes[n])]

    def states(self):
        """Share of the film that is wrinkled, share that is slack, and the greatest stretch less 1."""
        areas = {"taut": 0.0, "wrinkled": 0.0, "slack": 0.0}
        most = 0.0
        nu = self.problem["nu"]
        for t in self.triangles:
            A, B, C = (self.free[k] for k in t)
            a, b, c = (self.places[k] for k in t)
            ab, ac = sub(B, A), sub(C, A)
            one = scale(ab, 1 / norm(ab))
            two = sub(ac, scale(one, dot(ac, one)))
            two = scale(two, 1 / norm(two))
            p, q, r = dot(ab, one), dot(ac, one), dot(ac, two)
            f1 = scale(sub(b, a), 1 / p)
            f2 = scale(sub(sub(c, a), scale(f1, q)), 1 / r)
            e11, e22, e12 = (dot(f1, f1) - 1) / 2, (dot(f2, f2) - 1) / 2, dot(f1, f2) / 2
            radius = math.hypot((e11 - e22) / 2, e12)
            e1, e2 = (e11 + e22) / 2 + radius, (e11 + e22) / 2 - radius
            state = "taut" if e2 + nu * e1 >= 0 else "wrinkled" if e1 > 0 else "slack"
            areas[state] += p * r / 2
            most = max(most, math.sqrt(1 + 2 * e1) - 1)
        whole = sum(areas.values())
        return areas["wrinkled"] / whole, areas["slack"] / whole, most


def sub(a, b):
    return [x - y for x, y in zip(a, b)]


def dot(a, b):
    return sum(x * y for x, y in zip(a, b))


def scale(a, s):
    return [s * x for x in a]


def norm(a):
    return math.sqrt(dot(a, a))


def on(value, end):
    return abs(value - end) < 1e-9


NONE = dict(rise=0.0, tension=0.0, load=0.0, up=0.0, along=0.0, out=0.0, reach=0.0, Et=400e3, nu=0.4, cells=[16, 16])
PROBLEMS = {
    "FM-05": ("saddle under an even load, wrinkled across what would be its arches",
              NONE | dict(length=1.5, width=1.5, rise=0.3, tension=100.0, load=300.0, hold="edges")),
    "FM-06": ("square held at its corners under an even load",
              NONE | dict(length=1.6, width=1.6, tension=50.0, load=100.0, hold="corners", reach=0.1)),
    "FM-07": ("square panel held below, pulled and sheared along its top",
              NONE | dict(length=1.0, width=1.0, up=600.0, along=170.0, out=100.0, hold="bottom")),
}


def answers(film):
    length, width = film.problem["length"], film.problem["width"]
    wrinkled, slack, _ = film.states()
    found = {"wrinkled": (wrinkled, "-"), "slack": (slack, "-")}
    if film.pulled:
        top, middle = film.moved(length / 2, width), film.moved(length / 2, width / 2)
        below = film.reaction(lambda x, y, z: x < length / 2 - 1e-9)
        return found | {"along_top": (top[0], "m"), "across_top": (top[1], "m"), "along_middle": (middle[0], "m"),
                        "across_middle": (middle[1], "m"), "left_x": (-below[0], "N"), "left_y": (-below[1], "N")}
    pull = film.reaction(lambda x, y, z: x < length / 2)
    return found | {"sag_middle": (-film.moved(length / 2, width / 2)[2], "m"),
                    "sag_quarter": (-film.moved(length / 4, width / 4)[2], "m"),
                    "left_x": (-pull[0], "N"), "left_z": (pull[2], "N")}


def expected(quantity, value, unit):
    row = {"quantity": quantity, "printed": None, "value": value, "unrounded": value, "unit": unit}
    if unit == "-":
        return row | {"absolute": 0.01, "reason": "share of the film; a triangle at the edge of the wrinkles may fall "
                                                  "to either side"}
    return row | {"relative": 0.01, "reason": "same triangles; Green strain there, strain of engineering here: they "
                                              "differ by one and a half times the stretch"}


def main():
    for name, (title, problem) in PROBLEMS.items():
        film = Film(problem)
        film.solve()
        units = {"length": "m", "width": "m", "rise": "m", "tension": "N/m", "load": "Pa", "Et": "N/m", "up": "N/m",
                 "along": "N/m", "out": "N/m", "reach": "m"}
        given = {key: f"{problem[key]} {unit}" for key, unit in units.items() if problem[key] or key == "tension"}
        case = {
            "id": name,
            "title": title,
            "kind": "independent",
            "source": {"key": "kratos", "place": "MembraneElement3D3N with WrinklingLinear2DLaw, version 10.4.4"},
            "how_read": "independent program",
            "quality": "F: numerical, not published",
            "note": f"Our own example, written by validation/independent/wrinkles.py. The same triangles: "
                    f"{len(film.triangles)}; 40 steps of load; stretch up to {100 * film.states()[2]:.2g} %.",
            "model": "wrinkled_grid",
            "input": given | {"nu": problem["nu"], "hold": problem["hold"], "columns": problem["cells"][0],
                              "rows": problem["cells"][1]},
            "expected": [expected(q, *v) for q, v in answers(film).items()],
            "status": "agrees",
        }
        (CASES / f"{name}.json").write_text(json.dumps(case, indent=1) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
