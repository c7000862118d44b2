"""Fracture face of a shaft parted by twist while it turned: flat, smeared in rings near the edge, swirling inwards to a
small torn spot beside the centre. No beach marks, no single origin."""
import numpy as np

from studio.meshes import TAU, grid_obj
from studio.noise import n1, smoothstep, vnoise


def twist_fracture(radius, z, facing, mat, seed=0, rings=260, around=1100):
    """A polar grid at height z whose face looks along +z (facing 1) or -z (-1); metal is dragged clockwise seen from
    the inlet on the stub, and its mate shows the mirror of it."""
    T, share = np.meshgrid(np.linspace(0, TAU, around, endpoint=False), np.linspace(1.0, 0.004, rings))
    T, share = T.copy(), share.copy()
    x, y = share * np.cos(T), share * np.sin(T)
    centre = np.array([0.10, -0.06])
    dx, dy = x - centre[0], y - centre[1]
    r, a = np.hypot(dx, dy), np.arctan2(dy, dx)
    swirl = a * facing + 1.9 * np.log(r + 0.12)
    along = lambda k, s, o: vnoise(
        np.stack([k * np.cos(swirl), k * np.sin(swirl), r * 2.2], -1), seed + s, o
    )  # noqa: E731
    outer = smoothstep(0.42, 0.75, r + 0.10 * along(1.2, 1, 2))
    core = 1 - smoothstep(0.10, 0.24, r + 0.06 * vnoise(np.stack([x * 6, y * 6], -1), seed + 2, 3))
    lanes = n1(r * 16 + 0.35 * along(1.0, 3, 2), seed + 4, 4)
    fine = n1(r * 55 + 0.25 * along(1.5, 5, 2), seed + 6, 3)
    ridges = along(3.2, 7, 3)
    grain = vnoise(np.stack([x * 26, y * 26], -1), seed + 8, 4)
    height = 0.012 * ridges * (1 - outer) * (1 - core) + outer * (0.0075 * lanes + 0.0035 * fine)
    height = (
        height
        + core * (0.020 * grain - 0.006)
        + 0.0025 * vnoise(np.stack([x * 40, y * 40], -1), seed + 9, 3) * (1 - outer)
    )
    height = height + 0.020 * vnoise(np.stack([x * 1.1, y * 1.1], -1), seed + 10, 2)
    # tongues of smeared metal that end abruptly, and a burr rolled over the edge on one side
    tongue = (
        smoothstep(0.10, 0.22, along(1.6, 11, 3) - 0.25) * smoothstep(0.25, 0.45, r) * (1 - smoothstep(0.86, 0.98, r))
    )
    height = height + 0.011 * tongue * (0.7 + 0.4 * lanes)
    lip = smoothstep(0.90, 1.0, share) * np.clip(
        0.35 + 0.8 * n1(np.cos(T) * 1.3 + np.sin(T) * 0.9 + 3, seed + 12, 2) + 0.3 * n1(T * 5, seed + 13, 2), 0, 1.2
    )
    height = height + 0.035 * lip
    neck = 1 - 0.035 - 0.02 * n1(T * 1.3, 8, 2)
    spread = radius * neck * (1 + 0.05 * lip)
    V = np.stack(
        [
            share * spread * np.cos(T),
            share * spread * np.sin(T),
            z + facing * (height - 0.002 * smoothstep(0.97, 1, share)),
        ],
        -1,
    )
    wall = V[:1].copy()
    wall[..., :2] = np.stack([radius * neck[:1] * 0.995 * np.cos(T[:1]), radius * neck[:1] * 0.995 * np.sin(T[:1])], -1)
    wall[..., 2] = z - facing * 0.03
    V = np.concatenate([wall, V], 0)
    top = lambda A: np.concatenate([A[:1], A], 0)  # noqa: E731
    heat = 0.55 * smoothstep(0.55, 1.0, share) + 0.18 * along(0.8, 14, 2)
    marks = dict(
        smear=np.maximum(outer * 0.8, tongue), core=core, htint=np.clip(heat, 0, 1), lane=outer, face=1.0 + 0 * x
    )
    marks.update(pu=x * radius + 0.7, pv=y * radius + 0.4)
    return grid_obj(
        'fracture', V, cj=True, mat=mat, attrs={k: top(v) for k, v in marks.items()}, auto=60, flip=facing < 0
    )
