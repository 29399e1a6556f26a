# SPDX-License-Identifier: BSD-3-Clause
"""Solves the frame of a validation case with Kratos Multiphysics, a general-purpose finite-element framework.

The input is that of model "frame" (validation/frame_model.hpp), lengths in m and forces in N. What stands for what:

  pole      CrBeamElement3D2N: co-rotational beam, exact in the size of displacements and turns, with St Venant twist.
            A hinge is a second node at the same place that shares displacements and the twist of a pole along x.
  strap     CableElement3D2N: a bar that drops out when it is pressed
  upright   TrussElement3D2N, left out by this program when it is pulled and put back when its ends come closer again
  bar       TrussElement3D2N
  splice    a turning spring is SpringDamperElement3D between the twin nodes of a hinge
  boat      springs of a node against the boat are SpringDamperElement3D to a held twin
  arm       a beam a thousand times as stiff as a pole
  even load   forces by halves on the nodes of the finer mesh, with the couples q h2/12 of a fixed element at the ends
              of the run, where they do not cancel; moments read off an element get its fixed-end moment
  couple      PointMomentCondition3D1N

The bars of Kratos take Green-Lagrange strain. The law HyperElasticIsotropicOgden1D with the exponents 1 and 2 makes
their force E A (s - 1) with s the present length over the drawn one L: Hooke's law in the change of length. A free
length L0 becomes the prestress E (L/L0 - 1), for then the force is EA s + EA (L/L0 - 1) s - EA = EA (l/L0 - 1). Warmer
by the strain a it is to be EA (l/L0 - 1 - a): the stiffness is EA (1 + a) and the prestress E L/L0 - E (1 + a).
"""
import math

import KratosMultiphysics as KM
import KratosMultiphysics.StructuralMechanicsApplication as SMA

DIRECTIONS = {
    "ux": KM.DISPLACEMENT_X, "uy": KM.DISPLACEMENT_Y, "uz": KM.DISPLACEMENT_Z,
    "rx": KM.ROTATION_X, "ry": KM.ROTATION_Y, "rz": KM.ROTATION_Z,
}
REACTIONS = {
    "ux": KM.REACTION_X, "uy": KM.REACTION_Y, "uz": KM.REACTION_Z,
    "rx": KM.REACTION_MOMENT_X, "ry": KM.REACTION_MOMENT_Y, "rz": KM.REACTION_MOMENT_Z,
}


def number(text):
    """Number of a text in one of the units this folder uses, all of them SI."""
    value, unit = text.split(" ", 1)
    if unit not in ("m", "N", "Pa", "m2", "m4", "N/m", "N m", "kN m"):
        raise ValueError("unit " + unit)
    return float(value) * (1e3 if unit == "kN m" else 1.0)


def cross(a, b):
    return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]


class OtherFrame:
    """A case in Kratos. `refine` cuts every piece of a pole into that many more."""

    def __init__(self, case, refine=1, lifted=()):
        self.case = case
        self.refine = refine
        self.lifted = set(lifted)
        self.model = KM.Model()
        self.part = self.model.CreateModelPart("frame")
        self.part.SetBufferSize(2)
        self.part.ProcessInfo[KM.DOMAIN_SIZE] = 3
        for variable in (KM.DISPLACEMENT, KM.ROTATION, KM.REACTION, KM.REACTION_MOMENT, SMA.POINT_LOAD,
                         SMA.POINT_MOMENT, KM.VOLUME_ACCELERATION):
            self.part.AddNodalSolutionStepVariable(variable)
        self.nodes, self.loads, self.runs, self.kinds, self.springs = {}, {}, {}, {}, {}
        self.next_element = self.next_property = self.next_constraint = 1
        self.everywhere = case.get("held_everywhere", "").split()
        self.held = {}
        for name, at in case["nodes"].items():
            self.nodes[name] = self._node([number(t) for t in at])
            self.held[self.nodes[name].Id] = set(self.everywhere) | set(case["held"].get(name, "").split())
        self.beam_nodes = set()
        self.ties = []
        self.twins = []
        self.moments, self.given, self.fixed_end = {}, {}, {}
        for member in case["members"]:
            self._member(member)
        for name, force in case.get("forces", {}).items():
            self._load(self.nodes[name].Id, [number(t) for t in force])
        for name, moment in case.get("couples", {}).items():
            now = self.moments.setdefault(self.nodes[name].Id, [0.0, 0.0, 0.0])
            for i, t in enumerate(moment):
                now[i] += number(t)
        for name, moved in case.get("settled", {}).items():
            for key, value in zip(("ux", "uy", "uz"), moved):
                self.given[self.nodes[name].Id, key] = number(value)
        for name, turned in case.get("turned", {}).items():
            for key, value in zip(("rx", "ry", "rz"), turned):
                self.given[self.nodes[name].Id, key] = value
        for spring in case.get("boat_springs", []):
            node = self.nodes[spring["node"]]
            twin = self._node([node.X0, node.Y0, node.Z0])
            self.held[twin.Id] = set(DIRECTIONS)
            self.beam_nodes.add(node.Id)
            self._spring([twin.Id, node.Id], [number(t) for t in spring.get("along", ["0 N"] * 3)],
                         [number(t) for t in spring.get("about", ["0 N"] * 3)])
            self.springs[spring["node"]] = spring
        self._finish()

    def _node(self, at):
        return self.part.CreateNewNode(self.part.NumberOfNodes() + 1, *at)

    def _load(self, node, force):
        now = self.loads.setdefault(node, [0.0, 0.0, 0.0])
        for i in range(3):
            now[i] += force[i]

    def _beam_properties(self, member):
        p = self.part.CreateNewProperties(self.next_property)
        self.next_property += 1
        E, G = number(member["E"]), number(member["G"])
        p[KM.YOUNG_MODULUS], p[KM.POISSON_RATIO], p[KM.DENSITY] = E, E / (2 * G) - 1, 1.0
        p[SMA.CROSS_AREA] = number(member["A"]) if "A" in member else number(member["EA"]) / E
        p[SMA.TORSIONAL_INERTIA] = number(member["J"])
        p[SMA.I22] = number(member["I_vertical"])
        p[SMA.I33] = number(member.get("I_level", member["I_vertical"]))
        if "shear_area" in member:
            p[SMA.AREA_EFFECTIVE_Y] = p[SMA.AREA_EFFECTIVE_Z] = number(member["shear_area"])
        p[KM.CONSTITUTIVE_LAW] = SMA.BeamConstitutiveLaw()
        return p

    def _bar_properties(self, EA, share, warmth):
        p = self.part.CreateNewProperties(self.next_property)
        self.next_property += 1
        p[KM.YOUNG_MODULUS], p[SMA.CROSS_AREA], p[KM.DENSITY] = EA * (1 + warmth), 1.0, 1.0
        p[SMA.TRUSS_PRESTRESS_PK2] = EA / share - EA * (1 + warmth)
        p[KM.KratosGlobals.GetVariable("OGDEN_BETA_1")] = 2.0
        p[KM.KratosGlobals.GetVariable("OGDEN_BETA_2")] = 1.0
        p[KM.CONSTITUTIVE_LAW] = KM.KratosGlobals.Kernel.GetConstitutiveLaw("HyperElasticIsotropicOgden1D").Clone()
        return p

    def _spring(self, nodes, along, about):
        p = self.part.CreateNewProperties(self.next_property)
        self.next_property += 1
        element = self.part.CreateNewElement("SpringDamperElement3D", self.next_element, nodes, p)
        self.next_element += 1
        element.SetValue(KM.KratosGlobals.GetVariable("NODAL_DISPLACEMENT_STIFFNESS"), along)
        element.SetValue(KM.KratosGlobals.GetVariable("NODAL_ROTATIONAL_STIFFNESS"), about)

    def _arm(self, member, key, node):
        """The node at the end of an arm."""
        if key not in member:
            return node
        at = [number(t) for t in member[key]]
        end = self._node([node.X0 + at[0], node.Y0 + at[1], node.Z0 + at[2]])
        self.held[end.Id] = set(self.everywhere)
        stiff = self._beam_properties({"E": "2e11 Pa", "G": "1e11 Pa", "A": "0.01 m2", "J": "1e-4 m4",
                                       "I_vertical": "1e-4 m4"})
        self.part.CreateNewElement("CrBeamElement3D2N", self.next_element, [node.Id, end.Id], stiff)
        self.next_element += 1
        self.beam_nodes.update((node.Id, end.Id))
        return end

    def _member(self, member):
        name, kind = member["name"], member["kind"]
        a = self._arm(member, "arm_from", self.nodes[member["from"]])
        b = self._arm(member, "arm_to", self.nodes[member["to"]])
        A, B = (a.X0, a.Y0, a.Z0), (b.X0, b.Y0, b.Z0)
        drawn = math.dist(A, B)
        pole = kind == "pole"
        coarse = member.get("pieces", 1)
        pieces = coarse * (self.refine if pole else 1)
        EA = number(member["E"]) * number(member["A"]) if "E" in member and "A" in member else number(member["EA"])
        share = 1.0
        if "free_length" in member:
            share = number(member["free_length"]) / drawn
        elif "shortened_by" in member:
            share = 1 - number(member["shortened_by"]) / drawn
        elif "set_to" in member:
            share = 1 / (1 + number(member["set_to"]) / EA)
        warmth = member.get("expansion", 0.0) * member.get("warmer_by", 0.0)
        if pole and (share != 1.0 or warmth):
            raise ValueError("poles are free of stress as drawn")
        properties = self._beam_properties(member) if pole else self._bar_properties(EA, share, warmth)
        element = {"pole": "CrBeamElement3D2N", "strap": "CableElement3D2N"}.get(kind, "TrussElement3D2N")
        hinged = member.get("hinged", "")
        nodes = [a]
        for k in range(1, pieces):
            nodes.append(self._node([A[i] + k / pieces * (B[i] - A[i]) for i in range(3)]))
            self.held[nodes[-1].Id] = set(self.everywhere)
        nodes.append(b)
        self.runs[name], self.kinds[name] = [], kind
        ends = [nodes[0].Id, nodes[-1].Id]
        for k in range(pieces):
            ids = [nodes[k].Id, nodes[k + 1].Id]
            if pole:
                for end, here in ((0, k == 0 and (hinged in ("from", "both") or "spring_from" in member)),
                                  (1, k == pieces - 1 and (hinged in ("to", "both") or "spring_to" in member))):
                    if here:
                        ids[end] = self._hinge(ids[end], A, B, member.get(("spring_from", "spring_to")[end]))
                self.beam_nodes.update(ids)
                ends = [ids[0] if k == 0 else ends[0], ids[1] if k == pieces - 1 else ends[1]]
            if kind == "upright" and name in self.lifted:
                self.runs[name].append(None)
                continue
            self.runs[name].append(self.part.CreateNewElement(element, self.next_element, ids, properties))
            self.next_element += 1
        if "load" in member:  # by halves to the nodes of the pieces of the case, as the case has it
            per_length = [number(t) for t in member["load"]]
            for k in range(0, pieces, pieces // coarse):
                for node in (nodes[k], nodes[k + pieces // coarse]):
                    self._load(node.Id, [0.5 * drawn / coarse * w for w in per_length])
        if "even_load" in member:
            self._even_load(name, [number(t) for t in member["even_load"]], nodes, ends)
        self.upright_drawn = getattr(self, "upright_drawn", {})
        if kind == "upright":
            self.upright_drawn[name] = (a, b, drawn * share)

    def _even_load(self, name, q, nodes, ends):
        a, b = nodes[0], nodes[-1]
        line = [b.X0 - a.X0, b.Y0 - a.Y0, b.Z0 - a.Z0]
        length = math.hypot(*line)
        h = length / (len(nodes) - 1)
        for k in range(len(nodes) - 1):
            for node in (nodes[k], nodes[k + 1]):
                self._load(node.Id, [0.5 * h * w for w in q])
        along = [x / length for x in line]
        if self.kinds[name] == "pole":
            for node, sign in zip(ends, (1.0, -1.0)):
                now = self.moments.setdefault(node, [0.0, 0.0, 0.0])
                for i, c in enumerate(cross(along, q)):
                    now[i] += sign * h * h / 12 * c
        across = cross([0.0, 0.0, 1.0], along)
        size = math.hypot(*across)
        across = [x / size for x in across] if size > 1e-6 else [0.0, 1.0, 0.0]
        up = cross(along, across)
        self.fixed_end[name] = [h * h / 12 * sum(x * y for x, y in zip(up, q)),
                                -h * h / 12 * sum(x * y for x, y in zip(across, q))]

    def _hinge(self, node, A, B, spring=None):
        if abs(A[1] - B[1]) + abs(A[2] - B[2]) > 1e-12:
            raise ValueError("hinges are written for poles along x")
        at = self.part.GetNode(node)
        twin = self._node([at.X0, at.Y0, at.Z0])
        self.held[twin.Id] = set()
        self.ties.append((node, twin.Id))
        if spring:
            self._spring([node, twin.Id], [0.0] * 3, [0.0, number(spring), number(spring)])
        return twin.Id

    def _finish(self):
        utilities = KM.VariableUtils()
        for key in DIRECTIONS:
            utilities.AddDof(DIRECTIONS[key], REACTIONS[key], self.part)
        for node in self.part.Nodes:
            held = set(self.held[node.Id])
            if node.Id not in self.beam_nodes:
                held |= {"rx", "ry", "rz"}  # nothing turns there
            for key in held:
                node.Fix(DIRECTIONS[key])
        for master, slave in self.ties:
            for key in ("ux", "uy", "uz", "rx"):
                self.part.CreateNewMasterSlaveConstraint(
                    "LinearMasterSlaveConstraint", self.next_constraint, self.part.GetNode(master), DIRECTIONS[key],
                    self.part.GetNode(slave), DIRECTIONS[key], 1.0, 0.0)
                self.next_constraint += 1
        point = self.part.CreateNewProperties(self.next_property)
        self.conditions = []
        for i, node in enumerate(self.loads):
            self.part.CreateNewCondition("PointLoadCondition3D1N", i + 1, [node], point)
        for i, node in enumerate(self.moments):
            self.part.CreateNewCondition("PointMomentCondition3D1N", len(self.loads) + i + 1, [node], point)

    def solve(self, steps=20, tolerance=1e-8):
        """Load steps that grow as cubes, Newton in each; the forces keep their direction."""
        part = self.part
        builder = KM.ResidualBasedBlockBuilderAndSolver(KM.SkylineLUFactorizationSolver())
        scheme = KM.ResidualBasedIncrementalUpdateStaticScheme()
        criterion = KM.ResidualCriteria(tolerance, 1e-6)
        criterion.SetEchoLevel(0)
        strategy = KM.ResidualBasedNewtonRaphsonStrategy(part, scheme, criterion, builder, 300, True, False, True)
        strategy.SetEchoLevel(0)
        strategy.Check()
        strategy.Initialize()
        for step in range(1, steps + 1):
            part.ProcessInfo[KM.STEP] = step
            part.CloneTimeStep(float(step))
            for node, force in self.loads.items():
                part.GetNode(node).SetSolutionStepValue(SMA.POINT_LOAD, [(step / steps) ** 3 * f for f in force])
            for node, moment in self.moments.items():
                part.GetNode(node).SetSolutionStepValue(SMA.POINT_MOMENT, [(step / steps) ** 3 * m for m in moment])
            for (node, key), value in self.given.items():
                part.GetNode(node).SetSolutionStepValue(DIRECTIONS[key], (step / steps) ** 3 * value)
            strategy.InitializeSolutionStep()
            strategy.Predict()
            converged = strategy.SolveSolutionStep()
            strategy.FinalizeSolutionStep()
            if not converged:
                return False
        return True

    def displacement(self, node, direction):
        return self.nodes[node].GetSolutionStepValue(DIRECTIONS[direction])

    def reaction(self, node, direction):
        if node in self.springs and direction not in self.held[self.nodes[node].Id]:
            given = self.springs[node].get("along" if direction[0] == "u" else "about", ["0 N"] * 3)
            return -number(given["xyz".index(direction[1])]) * self.displacement(node, direction)
        return self.nodes[node].GetSolutionStepValue(REACTIONS[direction])

    def axial(self, run, last=False):
        element = self.runs[run][-1 if last else 0]
        if element is None:
            return 0.0
        return element.CalculateOnIntegrationPoints(KM.FORCE, self.part.ProcessInfo)[0][0]

    def moment(self, run, end, level=False):
        """Bending at an end of a run: linear along an element, which prints it at its quarters, with the other sign."""
        element = self.runs[run][0 if end == "from" else -1]
        m = [v[2 if level else 1] for v in element.CalculateOnIntegrationPoints(KM.MOMENT, self.part.ProcessInfo)]
        fixed = self.fixed_end.get(run, (0.0, 0.0))[1 if level else 0]
        return fixed + (m[1] - 2 * m[0] if end == "from" else m[1] - 2 * m[2])

    def moment_along(self, run, share):
        """Bending in the vertical plane where two elements meet."""
        elements = self.runs[run]
        k = round(share * len(elements))
        if abs(k - share * len(elements)) > 1e-9 or not 0 < k < len(elements):
            raise ValueError("no two elements meet there")
        m = [v[1] for v in elements[k].CalculateOnIntegrationPoints(KM.MOMENT, self.part.ProcessInfo)]
        return m[1] - 2 * m[0] + self.fixed_end.get(run, (0.0, 0.0))[0]

    def largest_turn(self):
        return max([math.hypot(*self.part.GetNode(i).GetSolutionStepValue(KM.ROTATION)) for i in self.beam_nodes],
                   default=0.0)

    def twist(self, run):
        return self.runs[run][0].CalculateOnIntegrationPoints(KM.MOMENT, self.part.ProcessInfo)[0][0]

    def now(self, node):
        return (node.X0 + node.GetSolutionStepValue(KM.DISPLACEMENT_X),
                node.Y0 + node.GetSolutionStepValue(KM.DISPLACEMENT_Y),
                node.Z0 + node.GetSolutionStepValue(KM.DISPLACEMENT_Z))

    def wrong_uprights(self):
        """Uprights that stand and are pulled, or are lifted and would be pressed."""
        wrong = set()
        for name, (a, b, free) in self.upright_drawn.items():
            pressed = math.dist(self.now(a), self.now(b)) < free
            if pressed == (name in self.lifted):
                wrong.add(name)
        return wrong


def solve(case, refine=1, steps=20, tolerance=1e-8):
    """The equilibrium, with the uprights that stand found by trial."""
    lifted = frozenset()
    tried = set()
    while lifted not in tried:
        tried.add(lifted)
        frame = OtherFrame(case, refine, lifted)
        if not frame.solve(steps, tolerance):
            raise RuntimeError("Kratos does not converge")
        wrong = frame.wrong_uprights()
        if not wrong:
            return frame
        lifted = frozenset(set(lifted) ^ wrong)
    raise RuntimeError("no set of standing uprights fits")


def answer(frame, what):
    if "displacement" in what:
        value = frame.displacement(*what["displacement"])
    elif "reaction" in what:
        value = frame.reaction(*what["reaction"])
    elif "axial" in what:
        value = frame.axial(what["axial"])
    elif "axial_to" in what:
        value = frame.axial(what["axial_to"], True)
    elif "moment" in what:
        value = frame.moment(*what["moment"])
    elif "moment_level" in what:
        value = frame.moment(*what["moment_level"], level=True)
    elif "moment_along" in what:
        value = frame.moment_along(what["moment_along"], what["share"])
    elif "twist" in what:
        value = frame.twist(what["twist"])
    else:
        raise ValueError(str(what))
    if what.get("size"):
        value = abs(value)
    return -value if what.get("turned") else value
