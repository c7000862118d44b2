"""Heat shield, pressed from sheet; the back, which the turbine wheel passes, at the top. The wheel came forward and
scored it in rings, deeper on one side."""
import numpy as np

from studio.meshes import TAU, lathe, resample, rounded
from studio.noise import n1, smoothstep, vnoise

HOLE, RIM = 0.98, 3.45  # radii, cm
SCORED = (1.30, 2.45)  # from radius to radius
FACE = 1.02  # height of the scored face


def heat_shield(mat):
    sheet = 0.08
    upper = [
        (HOLE, 0.80),
        (HOLE, 0.93),
        (1.12, FACE),
        (2.50, FACE + 0.03),
        (2.72, 0.86),
        (2.84, 0.22),
        (3.0, sheet),
        (RIM, sheet),
    ]
    lower = [
        (RIM, 0.0),
        (2.95, 0.0),
        (2.76, 0.20),
        (2.64, 0.80),
        (2.48, FACE - 0.05),
        (1.14, FACE - 0.08),
        (HOLE + 0.02, 0.80),
    ]
    profile = np.concatenate([rounded(upper, [0, 0.05, 0.09, 0.12, 0.12, 0.10, 0.06, 0.02], n=8), rounded(lower, 0.06)])
    profile = resample(profile, 0.011)

    def scored(R, Z, T):
        x, y = np.cos(T), np.sin(T)
        band = (
            smoothstep(SCORED[0] - 0.06, SCORED[0] + 0.10, R)
            * smoothstep(SCORED[1] + 0.05, SCORED[1] - 0.12, R)
            * (Z > FACE - 0.04)
        )
        heavy = np.clip(0.50 + 0.55 * np.cos(T - 2.4), 0, 1)
        ragged = heavy + 0.45 * vnoise(np.stack([1.6 * x, 1.6 * y, R * 2.4], -1), 3, 3) + 0.40 * n1(R * 9, 4, 3)
        return band * smoothstep(0.28, 0.55, ragged), heavy

    def shape(R, Z, T):
        rub, heavy = scored(R, Z, T)
        groove = 0.020 * np.clip(n1(R * 13 + 0.05 * n1(T * 2, 6, 2), 5, 3), -0.3, 1) + 0.007 * n1(R * 48, 7, 3)
        pressed = 0.012 * vnoise(np.stack([R * np.cos(T), R * np.sin(T)], -1), 8, 2)
        return R, Z + pressed * (Z > 0.3) - rub * (0.004 + groove * (0.4 + 0.9 * heavy))

    def attributes(R, Z, T):
        rub, heavy = scored(R, Z, T)
        x, y = R * np.cos(T), R * np.sin(T)
        heat = (
            0.92
            - 0.30 * smoothstep(1.0, 2.3, R)
            - 0.32 * smoothstep(2.5, 3.3, R)
            + 0.16 * vnoise(np.stack([x * 0.8, y * 0.8], -1), 9, 3)
        )
        soot = (
            smoothstep(1.5, 1.0, R) * 0.9
            + smoothstep(2.55, 2.80, R) * smoothstep(3.25, 2.9, R) * 0.6
            + 0.25 * np.clip(vnoise(np.stack([x, y], -1), 10, 3), 0, 1)
        )
        wall = (Z > 0.15) & (Z < 0.86) & (R > 2.6)
        side = T / TAU * 18
        pu, pv = np.where(wall, Z + 11, x), np.where(wall, side, y)
        return dict(rub=rub, deep=rub * heavy, htint=np.clip(heat, 0, 1), soot=np.clip(soot, 0, 1), pu=pu, pv=pv)

    return lathe('heat-shield', profile, seg=1200, mat=mat, fn=shape, attrs=attributes, auto=40)
