"""The camber sheet of a blade as a grid (m along the chord from the leading edge, s along the span), and the damage done
to it before it is thickened: what is cut away, what is pushed, rolled, folded. Lengths in cm."""
import math

import numpy as np

from studio.noise import n1, smoothstep, vnoise


def unit(a):
    return a / (np.linalg.norm(a, axis=-1, keepdims=True) + 1e-12)


class CamberSheet:
    """damage: dicts at the leading edge, s = place along the span 0..1:
    dent: s, w, depth, push (along the normal), lb    an impact: edge recessed, pushed aside, mushroomed
    curl: s, w, R (its sign is the side), lb[, maxang, tip]    edge rolled over; tip: the corner folds
    tear: s, w, depth, jag    torn away, ragged
    rub: m0, m1, depth, burr, side    contour rub at the blade's tip"""

    def __init__(self, wheel, angle, start, damage, rub, seed, chord=170, span=110):
        self.wheel, self.seed, self.damage = wheel, seed, damage
        u = np.linspace(0, 1, chord)
        v = np.linspace(0, 1, span)
        self.along_span = 0.5 * v + 0.5 * (0.5 - 0.5 * np.cos(math.pi * v))
        self.U, self.S = np.meshgrid(0.5 * u + 0.5 * u**2.8, self.along_span, indexing='ij')
        self.marked, self.mushroom = np.zeros_like(self.S), np.zeros_like(self.S)
        length = wheel.hub[2] + (wheel.shr[2] - wheel.hub[2]) * self.S
        first = start + self._cut_away() / length * 1.35
        self.M = first + (1 - first) * self.U
        tip = self._rubbed(rub) if rub else self.S
        if not rub:
            self.rubbed = np.zeros_like(self.S)
        self.P, _, self.B, self.N = wheel.frame(self.M, tip, angle)
        steps = np.linalg.norm(np.diff(self.P, axis=0), axis=-1)
        self.dist = np.r_[np.zeros((1, span)), np.cumsum(steps, axis=0)]

    def strike(self):
        for d in self.damage:
            dict(dent=self._dent, curl=self._curl, tear=self._tear_edge)[d['t']](d, (self.S - d['s']) / d['w'])
        self._buckle([d for d in self.damage if d['w'] > 0.08])

    def fold(self, m0, s0, ang):
        """Turns the tip part of the blade sideways about the line s = s0, for m < m0."""
        share = 1 - smoothstep(m0 - 0.25, m0, self.M)
        line = int(np.argmin(np.abs(self.along_span - s0)))
        beyond = self.S > s0
        hinge, up, side = (a[:, line : line + 1] for a in (self.P, self.B, self.N))
        away = self.P - hinge
        reach = np.linalg.norm(away, axis=-1) * beyond
        turn = ang * share * np.clip(reach / 0.35, 0, 1) * (1 + 0.15 * n1(self.M * 5, self.seed + 3))
        turn = turn * 0.5 + turn * 0.5 * np.clip(reach / 0.6, 0, 1)
        a, b = (away * up).sum(-1), (away * side).sum(-1)
        rest = away - a[..., None] * up - b[..., None] * side
        turned = up * (a * np.cos(turn) - b * np.sin(turn))[..., None]
        turned = turned + side * (a * np.sin(turn) + b * np.cos(turn))[..., None]
        self.P = np.where(beyond[..., None], hinge + rest + turned, self.P)
        self.marked = np.maximum(self.marked, 0.5 * np.exp(-(((reach - 0.15) / 0.12) ** 2)) * share * beyond)

    def frame(self):
        along, across = np.gradient(self.P, axis=0), np.gradient(self.P, axis=1)
        return unit(along), unit(np.cross(along, across))

    def _cut_away(self):
        S, seed = self.S, self.seed
        cut = np.zeros_like(S)
        for d in self.damage:
            x = (S - d['s']) / d['w']
            if d['t'] == 'dent':
                uneven = 1 + 0.10 * n1(S * 25 + seed, seed, 2)
                cut = np.maximum(cut, d['depth'] * np.clip(1 - x * x, 0, 1) ** 0.75 * uneven)
            if d['t'] == 'tear':
                jag = n1(S * 13 + seed * 3.1, seed + 5, 5)
                near = np.clip(x, -1.6, 1.6)
                skew = near * (1 + 0.15 * near) + 0.15 * n1(S * 8 + seed, seed + 6, 2)
                notch = np.clip(1 - np.abs(skew) ** 1.35, 0, 1) ** 0.9
                cut = np.maximum(cut, d['depth'] * notch * np.clip(1 + d['jag'] * jag, 0.15, 2.2))
        return cut + 0.003 * (1 + n1(S * 26, seed + 1))  # every edge is a little eroded

    def _rubbed(self, rub):
        M, seed = self.M, self.seed
        self.window = smoothstep(rub['m0'], rub['m0'] + 0.10, M) * (1 - smoothstep(rub['m1'] - 0.10, rub['m1'], M))
        uneven = 0.8 + 0.3 * n1(M * 7, seed + 31) + 0.06 * n1(M * 60, seed + 32, 3)
        height = np.linalg.norm(self.wheel.surf(M, 1 + 0 * M) - self.wheel.surf(M, 0 * M), axis=-1)
        self.rubbed = self.window * smoothstep(0.955, 0.985, self.S)
        return self.S * (1 - np.clip(rub['depth'] * self.window * uneven, 0, 1) / height)

    def _dent(self, d, x):
        pushed = np.clip(1 - self.dist / d['lb'], 0, 1) ** 1.8 * np.clip(1 - (x / 1.5) ** 2, 0, 1) ** 1.5
        self.P = self.P + self.N * (d['push'] * pushed)[..., None]
        edge = np.clip(1 - self.dist / 0.10, 0, 1) * np.clip(1 - (x / 1.25) ** 4, 0, 1)
        self.mushroom = np.maximum(self.mushroom, edge * 0.035)
        self.marked = np.maximum(self.marked, np.clip(edge * 1.5, 0, 1))

    def _curl(self, d, x):
        if d.get('tip'):
            share = smoothstep(d['s'] - d['w'], d['s'] + d['w'], self.S)
        else:
            share = np.clip(1 - x * x, 0, 1) ** 0.8
        rolled = d['lb'] * (share + 1e-4) * (1 + 0.12 * n1(self.S * 9 + self.seed, self.seed + 8, 2))
        along, normal = self.frame()
        self.P, over = roll(self.P, along, normal, self.dist, rolled, d['R'], d['maxang'])
        self.marked = np.maximum(self.marked, np.clip(over / 0.15 - 0.3, 0, 1) * 0.8)

    def _tear_edge(self, d, x):
        edge = np.clip(1 - self.dist / 0.05, 0, 1) * smoothstep(0, 0.3, np.clip(1 - x * x, 0, 1))
        self.marked = np.maximum(self.marked, edge)
        self.mushroom = np.maximum(self.mushroom, 0.018 * edge * (0.5 + 0.5 * n1(self.S * 40, self.seed + 2)))

    def _buckle(self, heavy):
        """The sheet behind heavy damage is not flat any more."""
        if not heavy:
            return
        near = sum(np.clip(1.5 - np.abs((self.S - d['s']) / d['w']), 0, 1) for d in heavy)
        near = np.clip(1 - self.dist / 0.7, 0, 1) * np.clip(near, 0, 1)
        waves = vnoise(np.stack([self.dist * 1.8, self.S * 3.5 + self.seed], -1), self.seed + 77, 2)
        self.P = self.P + self.N * (0.045 * near * waves)[..., None]


def roll(P, along, normal, dist, rolled, radius, most):
    """Rolls the first `rolled` cm of each chord line about a cylinder; the radius's sign is the side, `most` the angle
    (rad) after which the metal runs on straight. Gives the points, and how far each was rolled."""
    r, side = abs(radius), np.sign(radius)
    over = np.clip(rolled - dist, 0, None)
    base, D, N = np.empty_like(P), np.empty_like(P), np.empty_like(P)
    for j in range(P.shape[1]):
        for k in range(3):
            for there, source in ((base, P), (D, along), (N, normal)):
                there[:, j, k] = np.interp(rolled[0, j], dist[:, j], source[:, j, k])
    turn = np.minimum(over / r, most)
    straight = np.clip(over - r * most, 0, None)
    onward = -D * np.cos(turn)[..., None] + N * (side * np.sin(turn))[..., None]
    moved = base - D * (r * np.sin(turn))[..., None] + N * (side * r * (1 - np.cos(turn)))[..., None]
    return np.where((over > 0)[..., None], moved + onward * straight[..., None], P), over
