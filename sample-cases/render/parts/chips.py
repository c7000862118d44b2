"""Torn chips of metal beside the part."""
import math

import numpy as np

from studio.meshes import TAU, grid_obj
from studio.noise import n1, vnoise


def chips(mat, n=12, r=(3.6, 6), seed=0, size=(0.03, 0.14), z=0.02, center=(0, 0)):
    """small torn metal fragments"""
    rng = np.random.default_rng(seed)
    out = []
    for k in range(n):
        a = rng.uniform(0, TAU)
        d = rng.uniform(*r)
        s = rng.uniform(*size)
        nu, nv = 14, 8
        u, v = np.meshgrid(np.linspace(-1, 1, nu), np.linspace(-1, 1, nv), indexing='ij')
        x = u * s * (1 + 0.3 * n1(v * 2 + k, k))
        y = v * s * 0.5 * (1 + 0.5 * n1(u * 3 + k, k + 1))
        zz = s * 0.5 * (u * u * rng.uniform(0.2, 1) + 0.4 * vnoise(np.stack([u * 1.5, v * 1.5 + k], -1), k))
        t = 0.012
        top = np.stack([x, y, zz], -1)
        V = np.concatenate([top, (top - [0, 0, t])[:, ::-1]], 1)
        o = grid_obj(
            'chip',
            V,
            cj=True,
            mat=mat,
            attrs=dict(dmg=1.0, s=1.0, pu=x[:, :1].repeat(2 * nv, 1) + k, pv=np.concatenate([y, y], 1)),
            auto=40,
        )
        zmin = V[..., 2].min()
        o.location = (center[0] + d * math.cos(a), center[1] + d * math.sin(a), -zmin + 0.002)
        o.rotation_euler = (0, 0, rng.uniform(0, TAU))
        out.append(o)
    return out
