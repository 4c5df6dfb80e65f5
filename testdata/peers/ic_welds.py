"""Solves weld groups for their instantaneous centre with scipy.optimize.root (hybr) on a vectorised numpy residual, and prints
one JSON list: for each group the factor on its load, the centre, what is left of the residual, and the seconds of one solve.

Usage: ic_welds.py FILE, a JSON list of {"segments": [[x1, y1, x2, y2], ...], "elements": [n of each segment], "load": [Fx, Fy, M]},
M about the centroid, load not a pure moment. Each fillet resists 1 N/mm along its axis. Nothing of the project takes part.

Source: AISC Steel Construction Manual, Part 8. The scale is set by the least D_u/r of the segments' ends, the limit of ever finer
elements.
"""

import json
import sys
import time

import numpy as np
from scipy.optimize import root

DEGREES = 180 / np.pi
REPEATS = 200


def points(segments, elements):
    """Centres, unit directions and lengths of the elements; then the same of the ends."""
    mids, ends = [], []
    for (x1, y1, x2, y2), n in zip(segments, elements):
        length = np.hypot(x2 - x1, y2 - y1)
        t = ((x2 - x1) / length, (y2 - y1) / length)
        for k in (np.arange(n) + 0.5) / n:
            mids.append((x1 + k * (x2 - x1), y1 + k * (y2 - y1), *t, length / n))
        ends += [(x1, y1, *t, 0), (x2, y2, *t, 0)]
    return np.array(mids).T, np.array(ends).T


class Group:
    def __init__(self, segments, elements, load):
        self.mids, self.ends = points(segments, elements)
        x, y, _, _, dl = self.mids
        self.centroid = np.array([x @ dl, y @ dl]) / dl.sum()
        for p in (self.mids, self.ends):
            p[0] -= self.centroid[0]
            p[1] -= self.centroid[1]
        x, y = self.mids[:2]
        self.polar = (x * x + y * y) @ dl
        self.length = dl.sum()
        self.size = np.sqrt(self.polar / self.length)
        self.load = np.array(load)

    def start(self):
        """The elastic centre: where P/L and M r/I_p cancel."""
        fx, fy, m = self.load
        k = self.polar / (self.length * m)
        return np.array([-fy * k, fx * k])

    def resistance(self, c):
        """Two forces and the moment about the centroid when the group turns as the load's moment does about c."""
        turn = np.sign(self.load[2])
        x, y, tx, ty, _ = self.ends
        _, angle, r = self.at(c, x, y, tx, ty, turn)
        scale = np.min(np.minimum(1.087 * (angle + 6) ** -0.65, 0.17) / r)
        x, y, tx, ty, dl = self.mids
        (ux, uy), angle, r = self.at(c, x, y, tx, ty, turn)
        p = scale * r / (0.209 * (angle + 2) ** -0.32)
        force = (1 + 0.5 * np.sin(angle / DEGREES) ** 1.5) * (p * (1.9 - 0.9 * p)) ** 0.3 * dl
        fx, fy = force * ux, force * uy
        return np.array([fx.sum(), fy.sum(), (x * fy - y * fx).sum()])

    @staticmethod
    def at(c, x, y, tx, ty, turn):
        rx, ry = x - c[0], y - c[1]
        r = np.hypot(rx, ry)
        ux, uy = -turn * ry / r, turn * rx / r
        return (ux, uy), np.arctan2(np.abs(tx * uy - ty * ux), np.abs(tx * ux + ty * uy)) * DEGREES, r

    def residual(self, c):
        """The resistance square to the load, and its moment about a point of the load's line."""
        fx, fy, m = self.resistance(c)
        px, py, pm = self.load
        p = np.hypot(px, py)
        along = (fx * px + fy * py) / p
        return [(fx * py - fy * px) / (p * self.length), (m - along * pm / p) / (self.length * self.size)]

    def solve(self):
        return root(self.residual, self.start(), method="hybr", tol=1e-10)

    def report(self):
        found = self.solve()
        begin = time.perf_counter()
        for _ in range(REPEATS):
            self.solve()
        seconds = (time.perf_counter() - begin) / REPEATS
        f = self.resistance(found.x)
        factor = (f[0] * self.load[0] + f[1] * self.load[1]) / (self.load[0] ** 2 + self.load[1] ** 2)
        return {
            "factor": factor, "centre": list(found.x + self.centroid), "residual": float(np.max(np.abs(found.fun))),
            "evaluations": int(found.nfev), "seconds": seconds,
        }


with open(sys.argv[1], encoding="utf-8") as f:
    print(json.dumps([Group(**g).report() for g in json.load(f)]))
