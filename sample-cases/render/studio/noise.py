"""Value noise with numpy: for the shapes of damage, not for shading."""
import numpy as np


def smoothstep(a, b, x):
    t = np.clip((np.asarray(x, float) - a) / (b - a), 0, 1)
    return t * t * (3 - 2 * t)


def vnoise(p, seed=0, octaves=1, gain=0.5):
    """value noise in [-1,1]; p: (...,k) k=1..3"""
    p = np.asarray(p, float)
    if p.ndim == 0:
        p = p[None]
    k = p.shape[-1]
    out = np.zeros(p.shape[:-1])
    amp = 1.0
    tot = 0
    for o in range(octaves):
        q = p * (2**o) + 17.13 * o
        i = np.floor(q).astype(np.int64)
        f = q - i
        f = f * f * f * (f * (f * 6 - 15) + 10)
        acc = 0
        for c in range(2**k):
            w = 1
            h = np.full(p.shape[:-1], (seed * 7919 + o * 104729 + 1013) & 0x7FFFFFFF, dtype=np.int64)
            for d in range(k):
                b = (c >> d) & 1
                w = w * (f[..., d] if b else 1 - f[..., d])
                h = (h * 1103515245 + (i[..., d] + b) * 12345789 + 12345) & 0x7FFFFFFF
                h = (h ^ (h >> 13)) * 1274126177 & 0x7FFFFFFF
            h = (h ^ (h >> 16)) & 0xFFFF
            acc = acc + w * (h / 32767.5 - 1)
        out += amp * acc
        tot += amp
        amp *= gain
    return out / tot


def n1(x, seed=0, octaves=3):
    return vnoise(np.asarray(x, float)[..., None], seed, octaves)
