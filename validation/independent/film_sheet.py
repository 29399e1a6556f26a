# SPDX-License-Identifier: BSD-3-Clause
"""Film that lies on a cross strap, as an elastic sheet over a cable: the least of their energy, by finite elements.

The sheet is drawn at x from -a/2 to a/2 along the boat, s from 0 (ridge) to l (rail), with the leg at x = 0. Square to
its chords it is drawn z down, where it has the strain e along s and the tension T_0, and sags by w beyond that. Foeppl:
    e_x = u_x + w_x2/2 + w_x z_x,   e_s = e + v_s + w_s2/2 + w_s z_s,   g = u_s + v_x + w_x w_s + z_x w_s + z_s w_x
    N_x = T_0 + D (e_x + nu e_s),   N_s = T_0 + D (e_s + nu e_x),   N_xs = D (1 - nu)/2 g,   D = E t/(1 - nu2)
Ridge and rail: u = v = w = 0. Middles of the bays, x = +-a/2: u = 0, the rest mirrored. The leg hangs by W(s) under
film that may lie on it or not, and film slides on it both ways:
    T_s = max(0, T_s0 + EA mean over s of W_s2/2);   W >= w at x = 0, and where they touch they press
Bilinear quadrilaterals with 2 x 2 points of Gauss, straight pieces of cable, Newton with the exact tangent. No shape of
a sag is assumed, film shears, and bays end where they end: all that the library's film_on_strap leaves out.
"""
import numpy as np
from scipy import sparse
from scipy.sparse.linalg import spsolve

POINTS = [(a, b) for a in (-3 ** -0.5, 3 ** -0.5) for b in (-3 ** -0.5, 3 ** -0.5)]


def graded(half, count, finest):
    """From 0 to `half` in `count` pieces, each wider than the one before by the same factor; the first is `finest`."""
    if finest * count >= half:
        return np.linspace(0, half, count + 1)
    low, high = 1.0, 10.0
    for _ in range(200):
        ratio = 0.5 * (low + high)
        low, high = (ratio, high) if finest * (ratio ** count - 1) / (ratio - 1) < half else (low, ratio)
    x = np.concatenate([[0.0], np.cumsum(finest * ratio ** np.arange(count))])
    return x * half / x[-1]


class Sheet:
    """`leg`: chord, initial, EA, Et, nu, shrunk; `sides`: two of dict(bay, load, strain, ridge_falls, rail_falls), fore
    and aft. A chord falls away from the leg by falls (x - x2/a), level in the middle of the bay."""

    def __init__(self, leg, sides, columns=40, rows=40):
        self.leg, self.sides = leg, sides
        l = leg["chord"]
        fore = graded(sides[0]["bay"] / 2, columns, 0.5 * l / rows)
        aft = graded(sides[1]["bay"] / 2, columns, 0.5 * l / rows)
        self.x = np.concatenate([-fore[:0:-1], aft])
        self.s = np.linspace(0, l, rows + 1)
        self.middle = columns
        nx, ns = len(self.x), len(self.s)
        self.count = nx * ns
        number = np.arange(self.count).reshape(nx, ns)
        self.over_leg = number[columns]
        corners = [number[:-1, :-1], number[1:, :-1], number[1:, 1:], number[:-1, 1:]]
        self.cells = np.stack([c.ravel() for c in corners], axis=1)
        self.w_leg = 3 * self.count + np.arange(ns)
        self.size = 3 * self.count + ns
        self.make_cells()
        held = np.zeros(self.size, bool)
        for edge in (number[:, 0], number[:, -1]):
            for d in range(3):
                held[3 * edge + d] = True
        for edge in (number[0, :], number[-1, :]):
            held[3 * edge] = True
        held[self.w_leg[[0, -1]]] = True
        self.held = held
        self.touches = np.ones(ns, bool)
        self.q = np.zeros(self.size)

    def make_cells(self):
        place = np.stack(np.meshgrid(self.x, self.s, indexing="ij"), axis=-1).reshape(-1, 2)
        of = place[self.cells]
        self.hx, self.hs = of[:, 1, 0] - of[:, 0, 0], of[:, 2, 1] - of[:, 1, 1]
        middle = of.mean(axis=1)
        fore = middle[:, 0] < 0
        self.load, self.strain, self.bay, self.ridge_falls, self.rail_falls = (
            np.where(fore, self.sides[0][key], self.sides[1][key])
            for key in ("load", "strain", "bay", "ridge_falls", "rail_falls"))
        self.centre = middle
        self.dofs = (3 * self.cells[:, :, None] + np.arange(3)).reshape(len(self.cells), 12)

    def shape(self, a, b):
        """Of each cell at a point: values N, slopes along x and s, weight, and the drawn slopes z_x, z_s."""
        xi, eta = np.array([-1, 1, 1, -1]), np.array([-1, -1, 1, 1])
        n = 0.25 * (1 + a * xi) * (1 + b * eta)
        n_x = (0.25 * xi * (1 + b * eta))[None] * (2 / self.hx)[:, None]
        n_s = (0.25 * eta * (1 + a * xi))[None] * (2 / self.hs)[:, None]
        x = self.centre[:, 0] + 0.5 * a * self.hx
        part = (self.centre[:, 1] + 0.5 * b * self.hs) / self.leg["chord"]
        falls = self.ridge_falls * (1 - part) + self.rail_falls * part
        d = np.abs(x)
        # Sag w is down, and so is z, the fall.
        z_x = falls * (1 - 2 * d / self.bay) * np.sign(x)
        z_s = (self.rail_falls - self.ridge_falls) * (d - d * d / self.bay) / self.leg["chord"]
        return n, n_x, n_s, 0.25 * self.hx * self.hs, z_x, z_s

    def pulls(self, q):
        """For each point of Gauss: the three pulls, the strain's derivatives, shape slopes and weight."""
        D = self.leg["Et"] / (1 - self.leg["nu"] ** 2)
        nu, T0 = self.leg["nu"], self.leg["shrunk"]
        u = q[self.dofs].reshape(-1, 4, 3)
        for a, b in POINTS:
            n, n_x, n_s, weight, z_x, z_s = self.shape(a, b)
            d_x, d_s = np.einsum("ck,ckd->cd", n_x, u), np.einsum("ck,ckd->cd", n_s, u)
            w_x, w_s = d_x[:, 2] + z_x, d_s[:, 2] + z_s
            e_x = d_x[:, 0] + 0.5 * (w_x ** 2 - z_x ** 2)
            e_s = self.strain + d_s[:, 1] + 0.5 * (w_s ** 2 - z_s ** 2)
            g = d_s[:, 0] + d_x[:, 1] + w_x * w_s - z_x * z_s
            N = np.stack([T0 + D * (e_x + nu * e_s), T0 + D * (e_s + nu * e_x), D * (1 - nu) / 2 * g])
            B = np.zeros((3, len(weight), 4, 3))
            B[0, :, :, 0] = B[2, :, :, 1] = n_x
            B[1, :, :, 1] = B[2, :, :, 0] = n_s
            B[0, :, :, 2] = w_x[:, None] * n_x
            B[1, :, :, 2] = w_s[:, None] * n_s
            B[2, :, :, 2] = w_x[:, None] * n_s + w_s[:, None] * n_x
            yield n, n_x, n_s, weight, N, B.reshape(3, -1, 12)

    def forces(self, q):
        """Out of balance."""
        f = np.zeros((len(self.cells), 12))
        for n, _, _, weight, N, B in self.pulls(q):
            f += np.einsum("c,ic,icj->cj", weight, N, B)
            f.reshape(-1, 4, 3)[:, :, 2] -= (weight * self.load)[:, None] * n
        total = np.bincount(self.dofs.ravel(), f.ravel(), self.size)
        total[self.w_leg] += self.cable(q)[0] * self.bend(q)
        return total

    def tangent(self, q):
        D, nu = self.leg["Et"] / (1 - self.leg["nu"] ** 2), self.leg["nu"]
        law = D * np.array([[1, nu, 0], [nu, 1, 0], [0, 0, (1 - nu) / 2]])
        K = np.zeros((len(self.cells), 12, 12))
        for _, n_x, n_s, weight, N, B in self.pulls(q):
            stretched = np.einsum("ij,jcq->ciq", law, B) * weight[:, None, None]
            K += np.swapaxes(B.transpose(1, 0, 2), 1, 2) @ stretched
            bent = (N[0][:, None, None] * n_x[:, :, None] * n_x[:, None, :] +
                    N[1][:, None, None] * n_s[:, :, None] * n_s[:, None, :] +
                    N[2][:, None, None] * (n_x[:, :, None] * n_s[:, None, :] + n_s[:, :, None] * n_x[:, None, :]))
            K.reshape(-1, 4, 3, 4, 3)[:, :, 2, :, 2] += weight[:, None, None] * bent
        rows, columns = np.repeat(self.dofs, 12, axis=1).ravel(), np.tile(self.dofs, (1, 12)).ravel()
        T, slope = self.cable(q)
        bend, count = self.bend(q), len(self.w_leg)
        h = self.s[1] - self.s[0]
        one = (np.diag(np.full(count, 2 / h)) - np.diag(np.full(count - 1, 1 / h), 1) -
               np.diag(np.full(count - 1, 1 / h), -1))
        # A slack leg still needs a place: the stiffness of a hundredth of a newton.
        leg = max(T, 1e-2) * one + slope * np.outer(bend, bend)
        rows = np.concatenate([rows, np.repeat(self.w_leg, count)])
        columns = np.concatenate([columns, np.tile(self.w_leg, count)])
        values = np.concatenate([K.ravel(), leg.ravel()])
        return sparse.coo_matrix((values, (rows, columns)), (self.size, self.size)).tocsr()

    def bend(self, q):
        """What a leg that pulls with 1 N asks of each of its nodes."""
        rise = np.diff(q[self.w_leg]) / (self.s[1] - self.s[0])
        return np.concatenate([[0], rise]) - np.concatenate([rise, [0]])

    def cable(self, q):
        w = q[self.w_leg]
        h, l = self.s[1] - self.s[0], self.leg["chord"]
        T = self.leg["initial"] + self.leg["EA"] * np.sum((w[1:] - w[:-1]) ** 2) / (2 * h * l)
        return (T, self.leg["EA"] / l) if T > 0 else (0.0, 0.0)

    def map(self):
        """Free unknowns: where film and leg touch they share w."""
        to = np.arange(self.size)
        film = 3 * self.over_leg + 2
        to[self.w_leg[self.touches]] = film[self.touches]
        free = np.unique(to[~self.held])
        index = np.full(self.size, -1)
        index[free] = np.arange(len(free))
        rows = np.nonzero(~self.held)[0]
        return sparse.coo_matrix((np.ones(len(rows)), (rows, index[to[rows]])), (self.size, len(free))).tocsr()

    def newton(self):
        P = self.map()
        scale = np.abs(self.load).max() * self.leg["chord"] ** 2 + self.leg["shrunk"]
        film = 3 * self.over_leg + 2
        self.q[self.w_leg[self.touches]] = self.q[film[self.touches]]
        for _ in range(60):
            r = P.T @ self.forces(self.q)
            if np.abs(r).max() < 1e-9 * scale:
                return
            K = self.tangent(self.q)
            step = spsolve((P.T @ K @ P).tocsc(), -r)
            share = 1.0
            base = np.linalg.norm(r)
            for _ in range(12):
                trial = self.q + share * (P @ step)
                if np.linalg.norm(P.T @ self.forces(trial)) < (1 - 0.1 * share) * base or base < 1e-6 * scale:
                    break
                share *= 0.5
            self.q = trial
        raise RuntimeError("no balance")

    def start(self):
        """A sag with which Newton begins: film and leg under a parabola of a fiftieth of the chord."""
        part = self.s / self.leg["chord"]
        parabola = 4 * part * (1 - part) * self.leg["chord"] / 50
        slack = max(0.0, -self.leg["initial"])
        self.q[2:3 * self.count:3] = np.tile(parabola, len(self.x))
        lowest = self.leg["chord"] * (0.375 * slack / self.leg["EA"]) ** 0.5
        self.q[self.w_leg] = np.maximum(parabola, 4 * part * (1 - part) * lowest)

    def solve(self):
        self.start()
        for _ in range(20):
            self.newton()
            pressed = self.pressed()
            film = self.q[3 * self.over_leg + 2]
            inner = np.arange(1, len(self.s) - 1)
            touches = self.touches.copy()
            lets_go = inner[self.touches[inner] & (pressed[inner] < -1e-6)]
            meets = inner[~self.touches[inner] & (film[inner] > self.q[self.w_leg][inner] + 1e-12)]
            touches[lets_go] = False
            touches[meets] = True
            if (touches == self.touches).all():
                return self
            self.touches = touches
        raise RuntimeError("film and leg do not agree where they touch")

    def pressed(self):
        """What film presses down on the leg at each of its nodes [N]; at its ends half a piece of the next node's."""
        pressed = -self.forces(self.q)[3 * self.over_leg + 2]
        pressed[~self.touches] = 0
        pressed[0], pressed[-1] = 0.5 * pressed[1], 0.5 * pressed[-2]
        return pressed

    def answers(self):
        pressed = self.pressed()
        part = self.s / self.leg["chord"]
        least = min(float((0.5 * (N[0] + N[1]) - np.hypot(0.5 * (N[0] - N[1]), N[2])).min())
                    for *_, N, _ in self.pulls(self.q))
        return {
            "tension": float(self.cable(self.q)[0]),
            "sag": float(self.q[self.w_leg][len(self.s) // 2]),
            # The even load with the same work on a parabola.
            "load": 1.5 * float(np.sum(pressed * 4 * part * (1 - part))) / self.leg["chord"],
            "least_pull": least,
            "touches": int(self.touches[1:-1].sum()), "of": len(self.s) - 2,
        }
