"""Shaft in two pieces with the turbine wheel: the whole, and the wheel from the exhaust outlet."""
import math

from mathutils import Matrix

from materials.fracture_steel import fracture_steel
from materials.hot_alloy import hot_alloy
from materials.shaft_steel import shaft_steel
from parts.bench import bench_with_rule
from parts.shaft import BROKEN_AT, COMPRESSOR_JOURNAL, TURBINE_JOURNAL, threaded_stub, turbine_piece
from parts.turbine_wheel import BENT, BLADES, turbine_wheel
from studio.stage import COOL, PLAIN, WARM, camera, lamp, place, room
from studio.truth import Truth


def build(shot):
    whole = shot.view == 'over'
    truth = Truth(
        'shaft' if whole else 'turbine-wheel', 'across-axis' if whole else 'from-outlet', rotorTurnsFromOutlet='anticlockwise', blades=BLADES,
        bladesBent=[k + 1 for k in BENT], bent='against-rotation', bladesLeanFromOutlet='clockwise', nut='not present', pieces=2,
    )  # fmt: skip
    room(0.6, 0.2)
    steel, face = shaft_steel(), fracture_steel()
    things, blades = turbine_wheel(hot_alloy())
    shaft, break_ = turbine_piece(steel, face)
    tilt = math.atan((2.75 - 0.33) / 6.0)
    lying = (
        Matrix.Translation((-3.2, 0.6, 2.72))
        @ Matrix.Rotation(0.42, 4, 'Z')
        @ Matrix.Rotation(tilt - math.pi / 2, 4, 'Y')
        @ Matrix.Rotation(1.9, 4, 'Z')
    )
    rotor = place([*things, shaft, break_], matrix=lying)
    if whole:
        stub, other = threaded_stub(steel, face)
        beside = (
            Matrix.Translation((-4.6, -1.9, 0.33))
            @ Matrix.Rotation(0.08, 4, 'Z')
            @ Matrix.Rotation(-math.pi / 2, 4, 'Y')
            @ Matrix.Rotation(0.6, 4, 'Z')
        )
        place([stub, other], matrix=beside)
        truth.damage('torsion-fracture', 'stub', [break_], 'face', 0.5)
        truth.damage('torsion-fracture', 'stub', [other], 'face', 0.5)
        for zone, (low, high) in (
            ('journal-turbine-side', TURBINE_JOURNAL),
            ('journal-compressor-side', COMPRESSOR_JOURNAL),
        ):
            band = [
                (0.5 * math.cos(a), 0.5 * math.sin(a), z)
                for a in (k * math.pi / 8 for k in range(16))
                for z in (low, high)
            ]
            truth.patch('metal-transfer', zone, rotor, band)
            truth.patch('heat-tint', zone, rotor, band)
        truth.point('seal-boss', rotor, (0, 0, -0.72))
        truth.point('fracture-centre', rotor, (0, 0, BROKEN_AT))
        truth.scale('seal-boss', 'fracture-centre', 10 * (-0.72 - BROKEN_AT))
    for number, parts in blades.items():
        if number - 1 in BENT:
            truth.damage(
                'bent-against-rotation', 'exducer-sides', parts[:1], 'dmg', 0.4, part='turbine-wheel', blade=number
            )
        truth.damage('rub', 'contour-edge', parts, 'rub', 0.5, part='turbine-wheel', blade=number)
    bench_with_rule(truth, (-7.6, -6.2), 0.05, 2.1, 1.0, (30, 110))
    lamp('key', (-20, 16, 40), (0, 0, 1), 60, 20000, WARM, 14)
    lamp('window', (45, 10, 25), (0, 0, 1), 40, 10000, COOL, 40)
    lamp('front', (-6, -40, 30), (0, 0, 1), 30, 6000, PLAIN, 14)
    if whole:
        camera((-3, -25, 24), (0.3, -0.9, 1.0), lens=82, fstop=20, focus=(-2, -0.4, 2.2), roll=0.01)
    else:
        camera((-15.3, -12.9, 12.2), (-3.4, 0.2, 2.5), lens=96, fstop=32, focus=(-4.3, -0.3, 3.0), roll=0.02)
    return truth
