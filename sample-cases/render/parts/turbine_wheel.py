"""Turbine wheel of the case, eleven blades, for a standard-rotation unit: anticlockwise seen from the exhaust outlet.
Exducer tips are folded against the rotation; contour and sides are rubbed."""
import math

import numpy as np

from parts.blade import blade
from parts.bladed_wheel import Wheel, wheel_hub
from parts.compressor_wheel import leans
from studio.meshes import TAU, lathe, resample, rounded
from studio.noise import n1

BLADES = 11
ANTICLOCKWISE = 1  # seen from +z, the exhaust outlet
AGAINST = 1  # along the blade's normal
BENT = (2, 3, 4, 7)  # counted from 0


def turbine_wheel(mat, seed=6):
    """Things, and for every blade its mesh parts."""
    wheel = Wheel(
        R2=2.75,
        rh=0.62,
        rs=2.10,
        H=2.15,
        zb=0.10,
        b2=0.62,
        wrap=0.95,
        rot=ANTICLOCKWISE,
        tt=0.075,
        th=0.17,
        kind='turb',
    )
    back = rounded([(2.75, 0.10), (2.75, 0.0), (2.0, -0.10), (1.0, -0.22), (0.86, -0.24)], [0, 0.03, 0.1, 0.05, 0])
    lid = np.array([(0.0, 2.02), (0.60, 2.06), (0.62, 2.10)])
    things = [wheel_hub(wheel, mat, nblades=BLADES, back=back, prof_nose=lid, scallop=(BLADES, 0.42, 0.0)), _nose(mat)]
    rng = np.random.default_rng(seed)
    blades = {}
    for k in range(BLADES):
        bent = k in BENT
        fold = (
            dict(m0=rng.uniform(0.30, 0.48), s0=rng.uniform(0.42, 0.60), ang=AGAINST * rng.uniform(0.35, 0.8))
            if bent
            else None
        )
        damage = []
        if bent or rng.random() < 0.3:
            damage.append(
                dict(
                    t='dent',
                    s=rng.uniform(0.6, 0.9),
                    w=rng.uniform(0.03, 0.09),
                    depth=rng.uniform(0.03, 0.14),
                    push=AGAINST * rng.uniform(0.03, 0.12),
                    lb=0.25,
                )
            )
        if bent and rng.random() < 0.6:
            damage.append(dict(t='tear', s=0.93, w=rng.uniform(0.12, 0.24), depth=rng.uniform(0.15, 0.36), jag=0.7))
        rub = dict(m0=-0.08, m1=rng.uniform(0.62, 0.80), depth=0.018, burr=0.045, side=AGAINST)
        blades[k + 1] = blade(
            wheel,
            k * TAU / BLADES,
            damage=damage,
            rub=rub,
            seed=100 + k,
            mat=mat,
            bend_tip=fold,
            name='turbine-%d' % (k + 1),
        )
        things += blades[k + 1]
    assert leans(wheel, AGAINST) == -ANTICLOCKWISE, 'damage must lean against the rotation'
    return things, blades


def _nose(mat):
    """A cast hexagon on its own mesh, sunk a little into the hub; texture laid flat over it, so that nothing converges."""
    outline = rounded(
        [
            (0.60, 1.88),
            (0.628, 1.99),
            (0.630, 2.08),
            (0.55, 2.20),
            (0.49, 2.30),
            (0.46, 2.62),
            (0.38, 2.70),
            (0.0, 2.715),
        ],
        [0, 0.05, 0.1, 0.12, 0.06, 0.05, 0.08, 0],
        n=8,
    )
    outline = resample(outline[:-1], 0.02)
    centre = np.linspace(1, 0.002, 24)[:, None] * np.array([[outline[-1][0], 0]]) + np.array([[0, 1]]) * outline[-1][1]
    profile = np.concatenate([outline, centre[1:]])

    def shape(R, Z, T):
        hexagon = math.cos(math.pi / 6) / np.cos((T % (TAU / 6)) - math.pi / 6)
        share = np.clip((Z - 2.24) / 0.06, 0, 1)
        cast = 0.006 * n1(T * 3 + Z * 5, 9, 2) * np.clip(R / 0.3, 0, 1)
        return R * (1 + share * (np.clip(hexagon, 0, 1.12) * 1.03 - 1)) + cast, Z + 0.006 * n1(R * 9, 4, 2)

    def attributes(R, Z, T):
        x, y = R * np.cos(T), R * np.sin(T)
        return dict(
            pu=x + 0.25 * Z + 1.7,
            pv=y + 0.31 * Z + 0.9,
            fu=x * 0.25 + 0.3,
            fv=y * 0.25 + 0.6,
            s=0.30 + 0 * R,
            m=0 * R,
            dmg=0 * R,
            rub=0 * R,
        )

    return lathe('nose', profile, seg=240, mat=mat, fn=shape, attrs=attributes, auto=35)
