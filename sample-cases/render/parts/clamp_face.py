"""Clamp faces: a turned ring on which one fresh tongue of metal was dragged, with no polish and no debris of long
fretting. Used for the wheel's back and for the collar."""
import numpy as np

from studio.meshes import TAU, grid_obj
from studio.noise import n1, smoothstep, vnoise


def clamp_face(mat, inner, outer, z, sense, start=0.4, sweep=1.5, seed=0, around=1500, rings=240):
    """A ring at height z, seen from +z; the tongue begins at `start` and was dragged by `sweep` rad; sense 1 is
    anticlockwise."""
    R, T = np.meshgrid(np.linspace(inner, outer, rings), np.linspace(0, TAU, around, endpoint=False), indexing='ij')
    share = (R - inner) / (outer - inner)
    height = 0.0012 * n1(R * 60, seed, 3) - 0.03 * smoothstep(0.03, 0.0, share) - 0.03 * smoothstep(0.97, 1.0, share)
    smear, bare = np.zeros_like(R), np.zeros_like(R)
    for k, (mid, half, at, long) in enumerate(
        ((0.60, 0.17, start, sweep), (0.33, 0.07, start + 0.25, 0.6 * sweep), (0.80, 0.06, start + 2.1, 0.45 * sweep))
    ):
        along = (sense * (T - at)) % TAU
        lane = (share - mid) / (half * (1 + 0.25 * n1(along * 3, seed + k, 2)))
        reach = long * (1 - 0.45 * lane**2) * (1 + 0.22 * n1(share * 34, seed + 5 + k, 3))
        within = smoothstep(1.0, 0.8, np.abs(lane))
        swept = (
            within
            * smoothstep(0.0, 0.10 + 0.05 * n1(share * 50, seed + 8, 2), along)
            * smoothstep(reach + 0.015, reach - 0.015, along)
        )
        front = within * np.exp(-(((along - reach + 0.05) / 0.055) ** 2)) * (along < reach + 0.03)
        lanes = n1(share * 70 + 0.2 * n1(along * 2, seed + 3, 2), seed + 9, 4)
        height = (
            height
            + swept * (0.009 * lanes - 0.010 * smoothstep(0.4, 0.0, along / long))
            + 0.042 * front * (0.75 + 0.5 * lanes)
        )
        smear, bare = np.maximum(smear, np.maximum(swept, front)), np.maximum(bare, swept)
    V = np.stack([R * np.cos(T), R * np.sin(T), z + height], -1)
    x, y = R * np.cos(T), R * np.sin(T)
    stain = np.clip(0.5 + 0.5 * vnoise(np.stack([x * 1.5, y * 1.5], -1), seed + 20, 3), 0, 1)
    marks = dict(
        smear=smear,
        rub=np.clip(smear, 0, 1),
        dmg=0.0,
        back=1.0,
        nose=0.0,
        s=0.10 - 0.08 * stain,
        m=0.2,
        fu=x * 0.2,
        fv=y * 0.2,
    )
    marks.update(pu=x + 3, pv=y + 2, jr=0.0, htint=0.22 + 0.14 * stain, soot=0.0)
    return grid_obj('clamp-face', V, cj=True, mat=mat, attrs=marks, auto=60)
