"""Floating journal bearing: a bronze bush with six oil holes. Worn: bore opened to one side and bell-mouthed, both
faces scored and smeared."""
import numpy as np

from studio.meshes import TAU, grid_obj
from studio.noise import n1, smoothstep, vnoise

BORE, OUTER, LENGTH = 0.512, 0.80, 1.35  # cm; radii of the new part
HOLES, HOLE = 6, 0.10


def journal_bearing(mat, wear=1.0, seed=0, around=1100):
    bevel = 0.035
    inner = [(BORE, z) for z in np.linspace(LENGTH - bevel, bevel, 170)]
    outer = [(OUTER, z) for z in np.linspace(bevel, LENGTH - bevel, 170)]
    lower = [(r, 0.0) for r in np.linspace(BORE + bevel, OUTER - bevel, 26)]
    upper = [(r, LENGTH) for r in np.linspace(OUTER - bevel, BORE + bevel, 26)]
    profile = np.array(lower + outer + upper + inner)
    face = np.array([2] * len(lower) + [0] * len(outer) + [2] * len(upper) + [1] * len(inner))
    T = np.repeat(np.linspace(0, TAU, around, endpoint=False)[None], len(profile), 0)
    R, Z = (np.repeat(profile[:, k : k + 1], around, 1) for k in (0, 1))
    F = np.repeat(face[:, None], around, 1)
    x, y = np.cos(T), np.sin(T)
    heavy = 0.55 + 0.45 * np.cos(T - 0.8)
    patch = vnoise(np.stack([1.5 * x, 1.5 * y, Z * 1.6], -1), seed + 1, 3)
    scores = n1(Z * 30 + 0.12 * vnoise(np.stack([x, y, Z], -1), seed + 2, 2), seed + 3, 4)
    broad = n1(Z * 9 + 0.1 * x, seed + 4, 2)
    mouth = np.exp(-Z / 0.16) + np.exp(-(LENGTH - Z) / 0.16)
    inside, outside, ends = F == 1, F == 0, F == 2
    bore_wear = wear * inside * (0.030 + 0.105 * heavy + 0.035 * mouth * heavy)
    R = R + bore_wear + wear * inside * (0.010 * scores + 0.012 * broad)
    R = R - wear * outside * np.clip(0.75 + 0.6 * patch, 0, 1.3) * (
        0.010 + 0.013 * np.clip(scores, -0.4, 1) + 0.012 * np.clip(broad, 0, 1)
    )
    rim = wear * (ends & (R < BORE + 0.16)) * smoothstep(BORE + 0.16, BORE + 0.02, R)
    R = R + rim * (0.030 + 0.105 * heavy) * 0.9
    # metal smeared over the upper edge of the bore
    lap = smoothstep(0.10, 0.5, n1(T * 2.6, seed + 6, 4) + 0.15) * wear
    Z = Z + np.where(ends & (profile[:, 1:2] > 1), 0.018 * lap * smoothstep(0.26, 0.03, R - BORE - 0.05), 0)
    hole = np.zeros_like(R)
    for k in range(HOLES):
        angle, height = (k + 0.5) * TAU / HOLES, LENGTH / 2
        away = np.hypot(((T - angle + np.pi) % TAU - np.pi) * np.where(inside, BORE, OUTER), Z - height)
        size = HOLE * (1 - 0.30 * wear * inside)
        drilled = smoothstep(size, size - 0.014, away) * ~ends
        R = np.where(inside, R + drilled * 0.16, R - drilled * 0.16)
        hole = np.maximum(hole, drilled)
    heat = wear * np.clip(0.25 + 0.65 * heavy * (inside + 0.55 * outside + 0.35 * ends) + 0.45 * patch, 0, 1)
    worn = wear * (inside * 1.0 + outside * np.clip(0.7 + 0.8 * patch, 0, 1) + ends * 0.25)
    smear = np.clip(
        wear * np.where(ends, lap * smoothstep(0.2, 0.05, R - BORE - 0.05), inside * smoothstep(0.0, 0.4, patch + 0.2)),
        0,
        1,
    )
    marks = dict(
        wear=worn,
        smear=smear,
        htint=heat,
        pad=1.0,
        hole=hole,
        groove=np.clip(-scores, 0, 1) * worn,
        boremark=inside * 1.0,
        outmark=outside * worn,
    )
    ends_u = np.where(ends, R * x, Z)
    marks.update(pu=ends_u + 0.4, pv=np.where(ends, R * y, T / TAU * 16 / 3.1))
    V = np.stack([R * x, R * y, Z], -1)
    return grid_obj('bush', V, ci=True, cj=True, mat=mat, attrs=marks, auto=45)
