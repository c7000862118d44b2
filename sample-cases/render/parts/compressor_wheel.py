"""Compressor wheel of the case, six full and six splitter blades, for a standard-rotation unit: clockwise seen from the
inlet. Every dent and curl pushes metal against the rotation."""
import numpy as np

from parts.blade import blade
from parts.bladed_wheel import Wheel, wheel_hub
from studio.meshes import TAU

FULL = 6
CLOCKWISE = -1  # seen from +z, the inlet
AGAINST = -1  # along the blade's normal, which points with a clockwise rotation (checked by `leans`)
BORE = 0.4


def dent(s, w, depth, push=0.08, lb=0.22):
    return dict(t='dent', s=s, w=w, depth=depth, push=AGAINST * push, lb=lb)


def curl(s, w, radius, lb, maxang=2.8, tip=0):
    return dict(t='curl', s=s, w=w, R=AGAINST * radius, lb=lb, maxang=maxang, tip=tip)


def tear(s, w, depth, jag=0.5):
    return dict(t='tear', s=s, w=w, depth=depth, jag=jag)


# blade number -> what the loose nut and the side rub left on its leading edge
STRUCK = {
    1: [tear(0.80, 0.24, 0.46, 0.7), curl(0.58, 0.14, 0.10, 0.26, 2.4), dent(0.30, 0.05, 0.05)],
    2: [curl(0.86, 0.20, 0.13, 0.50, 2.9, 1), dent(0.50, 0.06, 0.09, 0.10), dent(0.27, 0.035, 0.03)],
    3: [dent(0.80, 0.075, 0.14, 0.14, 0.3), dent(0.55, 0.05, 0.06, 0.06), curl(0.95, 0.08, 0.07, 0.2, 2.5, 1)],
    4: [dent(0.90, 0.06, 0.08, 0.08), dent(0.62, 0.05, 0.05, 0.06), dent(0.40, 0.03, 0.03, 0.04)],
    5: [dent(0.75, 0.05, 0.06, 0.07), dent(0.45, 0.04, 0.03), curl(0.92, 0.12, 0.09, 0.3, 2.2, 1)],
    6: [curl(0.80, 0.22, 0.12, 0.45, 2.6, 1), tear(0.52, 0.09, 0.13), dent(0.33, 0.05, 0.05, 0.05)],
}


def compressor_wheel(mat, struck=True):
    """Things, and for every full blade its mesh parts."""
    wheel = Wheel(rot=CLOCKWISE)
    rub = dict(m0=0.02, m1=1.02, depth=0.03, burr=0.075, side=AGAINST)
    blades = {}
    things = [wheel_hub(wheel, mat, bore=BORE)]
    for k in range(FULL):
        angle = k * TAU / FULL
        damage = STRUCK[k + 1] if struck else []
        blades[k + 1] = blade(wheel, angle, damage=damage, rub=rub, seed=k, mat=mat, name='full-%d' % (k + 1))
        splitter = [dent(0.9, 0.05, 0.04, 0.05)] if k % 2 and struck else []
        halfway = angle + TAU / FULL / 2
        things += blade(
            wheel, halfway, mstart=0.30, damage=splitter, rub=dict(rub, m0=0.34), seed=20 + k, mat=mat, name='splitter'
        )
        things += blades[k + 1]
    assert leans(wheel, AGAINST) == -CLOCKWISE, 'damage must lean against the rotation'
    return things, blades


def leans(wheel, push):
    """+1 where a push along the blade's normal moves its leading edge anticlockwise seen from +z, -1 where clockwise."""
    point, _, _, normal = wheel.frame(np.array(0.02), np.array(0.85), 0.0)
    moved = point + 0.05 * push * normal
    before, after = (np.arctan2(p[1], p[0]) for p in (point, moved))
    return int(np.sign(after - before))


def edge_middle(number):
    """Middle of a full blade's leading edge before it was struck, in the wheel's coordinates."""
    return tuple(Wheel(rot=CLOCKWISE).surf(np.array(0.0), np.array(0.5), (number - 1) * TAU / FULL))
