"""A bladed wheel: contours of hub and shroud, the camber of its blades, its hub. The axial end (inlet of a compressor,
outlet of a turbine) is at +z. Lengths in cm."""
import math

import numpy as np

from studio.meshes import TAU, lathe, rounded
from studio.noise import smoothstep


def contour(r0, r1, z0, z1, n=200, p=1.0, q=1.0):
    """Quarter of a super-ellipse in (r, z) from the axial to the radial end: points, their share of its length, length."""
    f = np.linspace(0, 1, n) * math.pi / 2
    P = np.stack([r0 + (r1 - r0) * (1 - np.cos(f) ** p), z0 + (z1 - z0) * (np.sin(f) ** q)], -1)
    d = np.r_[0, np.cumsum(np.hypot(*np.diff(P, axis=0).T))]
    return P, d / d[-1], d[-1]


class Wheel:
    """R2: outer radius; rh, rs: radii of hub and shroud at the axial end; H: its height; zb, b2: height of the hub and
    width of the blades at R2; wrap: angle of a blade; rot: +1 turns anticlockwise seen from +z; tt, th: thickness at tip
    and hub. kind 'comp': swept back at R2; 'turb': radial there, swept back at the axial end."""

    def __init__(
        w, R2=3.4, rh=0.95, rs=2.42, H=3.05, zb=0.30, b2=0.42, wrap=1.25, rot=1, tt=0.055, th=0.12, kind='comp'
    ):
        w.hub = contour(rh, R2, H - 0.05, zb, p=0.92, q=0.95)
        w.shr = contour(rs, R2, H, zb + b2, p=1.0, q=0.9)
        w.R2, w.rh, w.H, w.zb = R2, rh, H, zb
        w.wrap, w.rot, w.tt, w.th, w.kind = wrap, rot, tt, th, kind

    def theta(w, m):
        if w.kind == 'turb':
            return w.rot * w.wrap * -((1 - m) ** 2.3)
        a, b = 1.75, 0.62
        return -w.rot * w.wrap * (a * m + (b - a) * m * m / 2 + 0.25 * m**3 / 3) / (a + (b - a) / 2 + 0.25 / 3)

    def surf(w, m, s, t0=0.0):
        """Points of the camber sheet: m from the axial end (0) to R2 (1), s from hub (0) to tip (1)."""
        m = np.asarray(m, float)
        inside = np.clip(m, 0, 1)
        at_hub, at_tip = (
            np.stack([np.interp(inside, share, curve[:, k]) for k in (0, 1)], -1) for curve, share, _ in (w.hub, w.shr)
        )
        rz = at_hub + (at_tip - at_hub) * np.asarray(s)[..., None]
        th = w.theta(m) + t0
        return np.stack([rz[..., 0] * np.cos(th), rz[..., 0] * np.sin(th), rz[..., 1]], -1)

    def frame(w, m, s, t0):
        """Points, and the unit directions along the chord, along the span and of the normal."""
        e = 1e-3
        dm = w.surf(np.minimum(m + e, 1), s, t0) - w.surf(np.maximum(m - e, 0), s, t0)
        ds = w.surf(m, s + e, t0) - w.surf(m, s - e, t0)
        return w.surf(m, s, t0), *(
            a / (np.linalg.norm(a, axis=-1, keepdims=True) + 1e-12) for a in (dm, ds, np.cross(dm, ds))
        )


def wheel_hub(w, mat, bore=0.4, nose=0.32, nblades=12, back=None, prof_nose=None, nose_shape=None, scallop=None):
    """Hub, nose and back in one body. prof_nose: profile of a closed nose, from the axis to the hub's end; nose_shape: what
    the nose is beyond a turned one, (R, Z, T) to (R, Z). scallop: number, depth and phase of the cut-outs at the rim.
    """
    rim = w.H + nose
    bored = [
        (bore, -0.12),
        (bore, rim - 0.05),
        (bore + 0.05, rim),
        (w.rh - 0.13, rim),
        (w.rh - 0.03, rim - 0.10),
        (w.rh, w.H - 0.05),
    ]
    front = rounded(bored, [0, 0.01, 0.01, 0.05, 0.05, 0]) if prof_nose is None else prof_nose
    if back is None:
        behind = [
            (w.R2, w.zb),
            (w.R2, w.zb - 0.14),
            (w.R2 - 0.25, w.zb - 0.20),
            (1.3, -0.05),
            (1.2, -0.12),
            (bore, -0.12),
        ]
        back = rounded(behind, [0, 0.03, 0.1, 0.05, 0.02, 0])
    hub = w.hub[0][::2]
    profile = np.concatenate([front[:-1], hub, back[1:]])
    row = np.arange(len(profile))
    first, last = len(front) - 1, len(front) - 1 + len(hub)
    m = np.interp(row, [first, last - 1], [0, 1])
    arc = np.r_[0, np.cumsum(np.hypot(*np.diff(profile, axis=0).T))]

    def attributes(R, Z, T):
        wide = lambda x: np.repeat(np.asarray(x, float)[:, None], R.shape[1], 1)  # noqa: E731
        turn = T - w.theta(wide(m))
        share = (turn / TAU * nblades) % 1
        to_blade = np.minimum(share, 1 - share) * TAU / nblades * R
        near = 1 - np.clip(to_blade / np.minimum(0.35, 0.30 * TAU / nblades * R + 1e-4), 0, 1)
        root = np.where(wide((row >= first) & (row < last)) > 0, near, 0)
        lid = wide(row < first) * (prof_nose is not None) > 0
        marks = dict(
            nose=wide(row <= first),
            back=wide(row >= last),
            s=0.16 * (1 - root),
            dmg=0 * R,
            rub=0 * R,
            m=wide(m),
            fu=wide(m),
        )
        marks.update(fv=turn / TAU * 2, pu=wide(arc), pv=T / TAU * 6 / 0.36)
        x, y = R * np.cos(T), R * np.sin(T)  # laid flat over a closed nose, so that nothing converges
        flat = dict(
            pu=x + 0.25 * Z + 1.7, pv=y + 0.31 * Z + 0.9, fu=x * 0.25 + 0.3, fv=y * 0.25 + 0.6, s=0.24, nose=0.0
        )
        marks.update({name: np.where(lid, laid, marks[name]) for name, laid in flat.items()})
        return marks

    def shape(R, Z, T):
        if nose_shape:
            R, Z = (
                np.where(row[:, None] < first, shaped, turned) for shaped, turned in zip(nose_shape(R, Z, T), (R, Z))
            )
        if scallop:
            number, depth, phase = scallop
            behind = np.repeat(np.asarray(row >= first + len(hub) * 0.5, float)[:, None], R.shape[1], 1)
            share = smoothstep(w.R2 * 0.45, w.R2, R) * behind
            R = R - share * depth * (0.5 - 0.5 * np.cos((T - phase) * number)) ** 0.8 * (R / w.R2)
        return R, Z

    return lathe('hub', profile, seg=480, mat=mat, attrs=attributes, fn=shape, auto=30)
