"""Compressor wheel on the bench: the whole, and the leading edges close."""
from materials.aluminium import aluminium
from parts.bench import bench_with_rule
from parts.chips import chips
from parts.compressor_wheel import FULL, compressor_wheel, edge_middle
from studio.stage import camera, lamps, place, room
from studio.truth import Truth

ZONES = dict(dent='leading-edges', rub='contour-edge')


def build(shot):
    truth = Truth(
        'compressor-wheel', 'slanting', rotorTurnsFromInlet='clockwise', bladesLeanFromInlet='anticlockwise', bent='against-rotation',
        bladesFull=FULL, bladesSplitter=FULL, bladesDented=list(range(1, FULL + 1)), nut='not present',
    )  # fmt: skip
    room(0.55, 0.0)
    metal = aluminium(0.7)
    things, blades = compressor_wheel(metal)
    turn = 0.3 if shot.view == 'over' else 0.75
    wheel = place(things, (0, 0, 0.12), (0, 0, turn))
    chips(metal, 9, (3.9, 6.0), 5)
    bench_with_rule(truth, (-7.2, -6.6), 0.06, 0.0, 1.0, (30, 110) if shot.view == 'over' else (50, 90))
    for number, parts in blades.items():
        truth.point('blade-%d-leading-edge' % number, wheel, edge_middle(number))
        truth.damage('dent', 'leading-edges', parts[:1], 'dmg', 0.5, blade=number)
        truth.damage('rub', 'contour-edge', parts, 'rub', 0.5, blade=number)
    lamps(26000, 9000, 2500)
    if shot.view == 'over':
        camera((3.5, -24, 25), (0.2, -0.9, 1.2), lens=98, fstop=16, focus=(0, -1.5, 2.9), roll=0.02)
    else:
        camera((4.5, -12.4, 14.6), (0.25, -0.55, 2.6), lens=105, fstop=32, focus=(0.3, -1.3, 3.1), roll=-0.03)
    return truth
