"""Turbine wheel of the case, eleven blades, for a standard-rotation unit: anticlockwise seen from the exhaust outlet.
Exducer tips are folded against the rotation; contour and sides are rubbed."""
import numpy as np

from parts.blade import blade
from parts.bladed_wheel import Wheel, wheel_hub
from parts.compressor_wheel import leans
from studio.meshes import TAU, resample, rounded
from studio.noise import smoothstep, vnoise

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
    things = [
        wheel_hub(
            wheel,
            mat,
            nblades=BLADES,
            back=back,
            prof_nose=_nose_profile(),
            nose_shape=_nose,
            scallop=(BLADES, 0.42, 0.0),
        )
    ]
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


def _nose_profile():
    """From the centre drilling over the hexagon and the shoulder down to the hub's end, which it meets axially."""
    outline = rounded(
        [
            (0.002, 2.60),
            (0.095, 2.70),
            (0.16, 2.715),
            (0.33, 2.715),
            (0.375, 2.665),
            (0.375, 2.335),
            (0.47, 2.285),
            (0.605, 2.235),
            (0.62, 2.10),
        ],
        [0, 0.02, 0.02, 0.03, 0.03, 0.07, 0.08, 0.07, 0],
        n=8,
    )
    return resample(outline, 0.012)


def _nose(R, Z, T):
    """The cast hexagon by which the wheel is held when it is balanced; its corners are rounded, its skin is uneven."""
    towards = np.stack([np.abs(np.cos(T - k * TAU / 6 - 0.25)) for k in range(3)])
    hexagon = (towards**26).sum(0) ** (-1 / 26)
    share = smoothstep(2.275, 2.325, Z) * smoothstep(0.20, 0.32, R)
    where = np.stack([R * np.cos(T), R * np.sin(T), Z], -1)
    cast = 0.007 * vnoise(where * 5, 9, 3) * smoothstep(0.05, 0.2, R) * smoothstep(2.10, 2.16, Z)
    return R * (1 + share * (hexagon * 0.985 - 1)) + cast, Z + 0.006 * vnoise(where * 6, 4, 3) * smoothstep(
        2.10, 2.2, Z
    )
