"""Instantaneous centre of bolt groups in a plane, by scipy.optimize.root (hybr) on a vectorised numpy residual.

Usage: ic_bolts.py FILE, where FILE is a JSON list of {"bolts": [[x, y], ...], "load": [Fx, Fy, moment about the centroid]}; the
answers are printed as JSON, with the mean time of a solve in seconds. Nothing of the project takes part.

Source: AISC Steel Construction Manual, Part 7: R = R_ult (1 - exp(-10 D))^0.55, D = 0.34 in at the furthest bolt.
"""

import json
import sys
import time

import numpy as np
from scipy.optimize import root

REPEATS = 200


class Group:
    def __init__(self, bolts, load):
        self.at = np.array(bolts, dtype=float).T
        self.centroid = self.at.mean(axis=1)
        self.x, self.y = self.at - self.centroid[:, None]
        self.n = len(bolts)
        self.polar = float(self.x @ self.x + self.y @ self.y)
        self.size = float(np.sqrt(self.polar / self.n))
        self.load = [float(v) for v in load]
        self.turn = np.sign(self.load[2])

    def start(self):
        """The elastic centre: where P/n and M r/I_p cancel."""
        fx, fy, m = self.load
        k = self.polar / (self.n * m)
        return np.array([-fy * k, fx * k])

    def resistance(self, c):
        """Two forces and the moment about the centroid when the group turns as the load's moment does about c."""
        rx, ry = self.x - c[0], self.y - c[1]
        r = np.sqrt(rx * rx + ry * ry)
        w = self.turn * (1 - np.exp(r * (-3.4 / r.max()))) ** 0.55 / r
        fx, fy = -w * ry, w * rx
        return fx.sum(), fy.sum(), self.x @ fy - self.y @ fx

    def residual(self, c):
        """The resistance square to the load, and its moment about a point of the load's line."""
        fx, fy, m = self.resistance(c)
        px, py, pm = self.load
        p2 = px * px + py * py
        along = (fx * px + fy * py) / p2
        return [(fx * py - fy * px) / (p2**0.5 * self.n), (m - along * pm) / (self.n * self.size)]

    def solve(self):
        return root(self.residual, self.start(), method="hybr", tol=1e-8)

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
