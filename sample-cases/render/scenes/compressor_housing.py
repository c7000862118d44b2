"""Compressor housing: into the inlet, the nut's imprints close, and from the wheel's side onto the contour."""
import math

from materials.aluminium import aluminium
from materials.cast_aluminium import cast_aluminium
from parts.bench import bench, bench_with_rule
from parts.compressor_housing import BORE, IMPRINTS, INDUCER, housing, imprint_corners
from materials.bench_mat import bench_mat
from studio.stage import COOL, PLAIN, WARM, camera, lamp, place, room
from studio.truth import Truth


def build(shot):
    from_wheel = shot.view == 'contour'
    side = {'contour': 'from-turbine-side', 'tract': 'slanting', 'imprint': 'into-bore'}[shot.view]
    truth = Truth('compressor-housing', side, rotorTurnsFromInlet='clockwise')
    room(0.6, 0.9)
    parts = housing(aluminium(0.8, name='machined', turned_dirt=0.8), cast_aluminium())
    things = [parts['tract'], parts['contour'], *parts['volute'], *parts['outside']]
    body = place(things, (0, 0, 6.1), (math.pi, 0, 2.2)) if from_wheel else place(things, (0, 0, 0.4))
    truth.point('inducer-bore-0', body, (BORE, 0, INDUCER))
    truth.point('inducer-bore-180', body, (-BORE, 0, INDUCER))
    truth.scale('inducer-bore-0', 'inducer-bore-180', 20 * BORE)
    if from_wheel:
        truth.ring('rub-full-ring', 'contour', body, (2.475, 2.95), (2.955, 1.0))
        truth.damage('dent', 'inlet-tract', [parts['tract']], 'dent', 0.8)
    else:
        truth.damage('dent', 'inlet-tract', [parts['tract']], 'dent', 0.8)
        truth.ring('rub', 'inlet-bore', body, (BORE, INDUCER - 0.1), (BORE, INDUCER + 0.12))
        for number, mark in enumerate(IMPRINTS, 1):
            corners = imprint_corners(mark)
            names = ['imprint-%d-corner-%d' % (number, k) for k in (1, 2)]
            for name, corner in zip(names, corners):
                truth.point(name, body, corner)
            truth.scale(*names, 10 * math.dist(*corners))
        truth.damage(
            'nut-imprint',
            'inlet-tract',
            [parts['tract']],
            'nut',
            0.5,
            imprints=len(IMPRINTS),
            angleBetweenFlats=120,
            nutAcrossFlatsMm=10,
        )
    if shot.view == 'tract':
        bench_with_rule(truth, (-8.0, -10.5), 0.04, 4.4, 0.3, (40, 110))
    else:
        bench(bench_mat(seed=4.4))
    if from_wheel:
        lamp('key', (-20, 18, 40), (0, 0, 4), 50, 17000, WARM, 14)
        lamp('window', (40, 10, 25), (0, 0, 4), 36, 9000, COOL, 36)
        lamp('front', (6, -36, 34), (0, 0, 4), 25, 3000, PLAIN, 10)
        camera((2.5, -17, 31), (0.2, -0.2, 4.6), lens=92, fstop=22, focus=(0, 1.0, 4.6), roll=-0.02)
        return truth
    lamp('key', (-9, -27, 36), (0, 0, 5), 40, 17000, WARM, 14)
    lamp('window', (36, 6, 34), (0, 0, 5), 36, 9000, COOL, 36)
    lamp('front', (2, -30, 36), (0, 0, 5), 22, 5000, PLAIN, 10)
    if shot.view == 'tract':
        camera((1.5, -19, 31), (1.15, -1.2, 2.7), lens=55, fstop=18, focus=(0, 1.0, 4.9), roll=0.02)
    else:
        camera((0.4, -9.5, 17.5), (0.05, 2.2, 4.75), lens=105, fstop=32, focus=(0, 2.4, 4.8), roll=-0.02)
    return truth
