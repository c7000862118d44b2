"""Shaft, parted by twist beside the compressor-side journal: the piece on the turbine wheel and the threaded stub.
The axis is z, the turbine at the top; a left-hand thread, as on a standard-rotation unit."""
import numpy as np

from parts.twist_fracture import twist_fracture
from studio.meshes import TAU, lathe, resample, rounded
from studio.noise import n1, smoothstep, vnoise

BROKEN_AT = -6.12
THIN = 0.33
PITCH = 0.10
SEAL_AND_JOURNALS = [
    (0.86, -0.20), (0.86, -0.34), (0.72, -0.34), (0.72, -0.50), (0.86, -0.50), (0.86, -0.72), (0.50, -0.80), (0.50, -2.35),
    (0.455, -2.40), (0.455, -3.95), (0.50, -4.0), (0.50, -5.55), (THIN, -5.62), (THIN, BROKEN_AT),
]  # fmt: skip
STUB = [(THIN, BROKEN_AT), (THIN, -8.7), (0.30, -8.75), (0.30, -10.15), (0.26, -10.22), (0.0, -10.22)]
FILLETS = [0, 0.015, 0.01, 0.01, 0.015, 0.03, 0.05, 0.02, 0.02, 0.02, 0.02, 0.03, 0.03, 0]
TURBINE_JOURNAL, COMPRESSOR_JOURNAL = (-2.3, -0.85), (-5.5, -4.05)


def turbine_piece(mat, fracture_mat):
    profile = resample(rounded(SEAL_AND_JOURNALS, FILLETS, n=4), 0.012)
    body = lathe('shaft', profile, seg=256, mat=mat, fn=_worn, attrs=_colours, auto=30)
    return body, twist_fracture(THIN, BROKEN_AT, -1, fracture_mat, seed=3)


def threaded_stub(mat, fracture_mat):
    profile = resample(rounded(STUB, [0, 0.02, 0.02, 0.03, 0.03, 0], n=4), 0.012)
    body = lathe('stub', profile, seg=256, mat=mat, fn=_threaded, attrs=_colours, auto=30)
    return body, twist_fracture(THIN, BROKEN_AT, 1, fracture_mat, seed=5)


def _threaded(R, Z, T):
    wave = np.clip(0.5 + 0.5 * np.cos(Z / PITCH * TAU + T), 0, 1)  # z falls as the angle grows: left-hand
    depth = 0.028 * wave * smoothstep(-10.1, -10.0, Z) * (1 - smoothstep(-8.95, -8.85, Z))
    return _twisted(R - depth * (R > 0.2), Z, T), Z


def _worn(R, Z, T):
    for (low, high), seed, share in ((TURBINE_JOURNAL, 1, 1.0), (COMPRESSOR_JOURNAL, 2, 0.6)):
        there = smoothstep(low, low + 0.1, Z) * (1 - smoothstep(high - 0.1, high, Z))
        fine, broad = n1(Z * 30, seed, 4), n1(Z * 8, seed + 5, 2)
        patchy = np.clip(0.7 + 0.5 * vnoise(np.stack([Z * 2, np.cos(T), np.sin(T)], -1), seed, 2), 0, 1.2)
        R = R - share * there * (0.010 * np.clip(fine - 0.15, 0, 1) + 0.016 * np.clip(broad - 0.3, 0, 1)) * patchy
    return _twisted(R, Z, T), Z


def _twisted(R, Z, T):
    """Necked a little where it parted."""
    near = np.exp(-(((Z - BROKEN_AT) / 0.16) ** 2))
    return R * (1 - near * (0.035 + 0.02 * n1(T * 1.3, 8, 2)))


def _colours(R, Z, T):
    turbine = smoothstep(-2.3, -2.2, Z) * (1 - smoothstep(-0.95, -0.85, Z))
    compressor = 0.75 * smoothstep(-5.5, -5.4, Z) * (1 - smoothstep(-4.15, -4.05, Z))
    round_ = [1.5 * np.cos(T), 1.5 * np.sin(T)]
    heat = np.exp(-(((Z + 1.35) / 0.95) ** 2)) * 1.05 + 0.40 * np.exp(-(((Z + 4.6) / 0.8) ** 2))
    heat = (
        heat + 0.62 * np.exp(-(((Z - BROKEN_AT) / 0.30) ** 2)) + 0.10 * vnoise(np.stack([Z * 2.4, *round_], -1), 5, 3)
    )
    return dict(
        jr=np.maximum(turbine, compressor),
        htint=np.clip(heat, 0, 1),
        soot=smoothstep(-0.95, -0.3, Z),
        pu=Z,
        pv=T / TAU / 0.31,
    )
