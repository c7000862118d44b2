"""Thrust bearing: one polar grid whose face is a height field of pads, grooves, holes and wear. Lengths in cm."""
import math

import numpy as np

from studio.meshes import TAU, grid_obj
from studio.noise import n1, smoothstep, vnoise

BORE, PADS_END, OUTER, HEIGHT = 0.92, 1.74, 2.55, 0.42
PADS = 3
SECTOR = TAU / PADS
GROOVE = 0.115  # of a sector, at its beginning
EDGE = 0.03  # rounding


class _Face:
    def __init__(self, rings, around):
        r = np.linspace(BORE + EDGE, OUTER - EDGE, rings)
        self.T = np.linspace(0, TAU, around, endpoint=False)
        self.R, self.TT = np.meshgrid(r, self.T, indexing='ij')
        self.X, self.Y = self.R * np.cos(self.TT), self.R * np.sin(self.TT)
        self.share = (self.TT % SECTOR) / SECTOR  # of the sector, in the sense of rotation
        k = 0.06  # soft minimum: rounds the pads' corners
        sides = ((self.share - GROOVE) * SECTOR * self.R, (0.98 - self.share) * SECTOR * self.R, PADS_END - self.R)
        self.inside = -k * np.log(sum(np.exp(-d / k) for d in sides))  # distance inside a pad's outline
        self.H = 0.11 * smoothstep(-0.03, 0.035, self.inside)
        wedge = 0.022 * (1 - smoothstep(0.0, 0.55, (self.share - GROOVE) / (1 - GROOVE)))  # where the oil is drawn in
        self.H -= wedge * smoothstep(0.0, 0.03, self.inside)
        lengthwise = smoothstep(-0.02, 0.03, 0.10 - np.abs((self.share - 0.045) * SECTOR * self.R))
        self.H -= 0.05 * lengthwise * smoothstep(-0.02, 0.02, PADS_END + 0.02 - self.R)
        self.wear, self.smear, self.heat, self.scored, self.hole = (np.zeros_like(self.R) for _ in range(5))

    def wear_down(self, wear, seed):
        R, X, Y = self.R, self.X, self.Y
        pad = (self.TT // SECTOR).astype(int)
        amount = np.choose(pad % 3, [1.0, 0.85, 0.65]) * wear
        on_pad = smoothstep(-0.02, 0.05, self.inside)
        patchy = vnoise(np.stack([X * 0.9, Y * 0.9], -1), seed + 2, 2)
        local = np.clip(0.62 + 0.55 * patchy + 0.3 * (self.share - 0.3), 0.0, 1.1)
        depth = 0.115 * amount * (0.75 + 0.25 * n1(R * 4, seed + 1, 2)) * local * on_pad
        fine = n1(R * 34, seed + 3, 4)
        broad = n1(R * 11 + 0.15 * n1(self.TT * 2.0, seed), seed + 4, 2)
        scores = (0.016 * np.clip(fine, -1, 0.6) - 0.022 * np.clip(broad - 0.25, -0.4, 1)) * on_pad
        scores = scores * np.clip(amount * 1.3 * local, 0, 1)
        self.H = self.H - depth + scores
        self.wear, self.scored = np.clip(depth / 0.055, 0, 1), np.clip(-scores / 0.016, 0, 1)
        self._drag(amount, pad, seed)
        plates = vnoise(np.stack([R * 16, self.TT * R * 3.2], -1), seed + 11, 3)
        self.H += 0.010 * np.clip(plates, -0.3, 1) * np.clip(self.wear * 1.2, 0, 1) * on_pad
        blotches = 0.7 + 0.4 * vnoise(np.stack([X * 1.7, Y * 1.7], -1), seed + 12, 2)
        self.heat = np.clip(amount * on_pad * (0.35 + 0.75 * local * (0.4 + self.share)), 0, 1) * blotches

    def _drag(self, amount, pad, seed):
        """Metal dragged over each pad's trailing edge into the next groove, and outwards over the flange."""
        R = self.R
        into_groove = ((self.TT + 0.02 * n1(R * 14, seed + 6, 3)) % SECTOR) * R
        reach = (0.10 + 0.16 * np.clip(n1(R * 9 + pad * 3.3, seed + 7, 3) + 0.35, 0, 1.4)) * amount
        reach = reach * smoothstep(-0.03, 0.08, PADS_END - R)
        tongue = smoothstep(-0.01, 0.07, reach - into_groove) * (into_groove < 0.6)
        height = 0.045 * tongue * (0.7 + 0.5 * n1(R * 22, seed + 8, 3))
        outwards = R - PADS_END
        reach = (0.02 + 0.10 * np.clip(n1(self.TT * 7, seed + 9, 3) + 0.1, 0, 1)) * amount
        reach = reach * smoothstep(GROOVE * 1.1, GROOVE * 1.7, self.share)
        lap = smoothstep(-0.01, 0.05, reach - outwards) * (outwards > -0.05)
        self.H = np.maximum(self.H, np.where(tongue > 0.02, height, -1) - 0.02)
        lap_height = 0.035 * lap * (0.8 + 0.4 * n1(self.TT * 30, seed + 10, 2))
        self.H = np.where(lap > 0.02, np.maximum(self.H, lap_height), self.H)
        self.smear = np.maximum(tongue, lap)

    def drill(self, x, y, radius, chamfer=0.03, deep=0.40, clogged=False):
        d = np.hypot(self.X - x, self.Y - y)
        if clogged:
            d = d * (1 + 0.15 * n1(np.arctan2(self.Y - y, self.X - x) * 2, 3))
        within = d < radius + chamfer
        sloped = np.minimum(self.H, np.where(d < radius, -9, (d - radius - chamfer) * 0.9 + self.H))
        H = np.where(within, sloped, self.H)
        k = smoothstep(-0.004, 0.012, radius - d)
        floor = -deep * k - (1 - k) * 0.03 + np.where(d >= radius, H + 0.03, 0) * (1 - k)
        self.H = np.where(within, np.maximum(H, floor), H)
        self.hole = np.maximum(self.hole, k)


def thrust_bearing(mat, wear=0.0, turns=1, around=1536, rings=300, seed=0):
    """wear 0..1; turns: +1 where the rotor turns anticlockwise over the face shown, -1 clockwise."""
    face = _Face(rings, around)
    if wear > 0:
        face.wear_down(wear, seed)
    for i in range(PADS):
        a = SECTOR * (i + 0.045)
        face.drill(1.36 * math.cos(a), 1.36 * math.sin(a), 0.085 * (1 - 0.35 * wear * (i != 2)), clogged=wear > 0)
    for a in (SECTOR * 0.62, SECTOR * 2.2, SECTOR * 1.4):
        face.drill(2.16 * math.cos(a), 2.16 * math.sin(a), 0.15, 0.025)
    T, top = face.T, np.stack([face.X, face.Y, HEIGHT + face.H], -1)
    ring = lambda r, z: np.stack([r * np.cos(T), r * np.sin(T), z + 0 * T], -1)[None]  # noqa: E731
    bevel = [(EDGE * (1 - math.cos(f)), EDGE * (1 - math.sin(f))) for f in np.linspace(0, 1.4, 5)]
    inner = [ring(BORE, 0.02), ring(BORE, 0.2)] + [ring(BORE + a, top[0, :, 2] - b) for a, b in bevel]
    outer = [ring(OUTER - a, top[-1, :, 2] - b) for a, b in reversed(bevel)] + [
        ring(OUTER, 0.02),
        ring(OUTER - 0.02, 0.0),
    ]
    V = np.concatenate([*inner, top, *outer], 0)
    V[..., 1] *= turns

    def whole(values, inside=0.0, outside=0.0):
        at_edge = np.zeros((len(inner), around))
        return np.concatenate([at_edge + inside, values, at_edge + outside], 0)

    marks = dict(wear=face.wear, smear=face.smear, htint=face.heat, hole=face.hole, groove=face.scored)
    marks = {k: whole(a) for k, a in marks.items()}
    marks['pad'] = whole(smoothstep(-0.01, 0.04, face.inside))
    marks['pu'], marks['pv'] = whole(face.X, 3.0, 3.0), whole(face.Y, 1.0 + T * BORE, 1.0 + T * OUTER)
    return grid_obj('thrust', V, cj=True, mat=mat, auto=45, flip=turns < 0, attrs=marks)
