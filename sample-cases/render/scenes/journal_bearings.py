"""Both journal bearings as stripped: compressor side standing, turbine side lying."""
import math

from mathutils import Matrix

from materials.bronze import bronze
from parts.bench import bench_with_rule
from parts.chips import chips
from parts.journal_bearing import LENGTH, OUTER, journal_bearing
from studio.stage import camera, lamps, place, room
from studio.truth import Truth


def build(shot):
    truth = Truth(
        'journal-bearing', 'slanting', bearings=2, bearingsWorn=2, positions=['compressor-side', 'turbine-side']
    )
    room(0.55, 0.4)
    metal = bronze(dirt=0.9)
    standing, leaning = journal_bearing(metal, 0.85, 3), journal_bearing(metal, 1.0, 21)
    first = place([standing], (-1.25, 0.35, 0), (0, 0, 0.7))
    lying = (
        Matrix.Translation((1.35, -0.1, OUTER - 0.01))
        @ Matrix.Rotation(-0.62, 4, 'Z')
        @ Matrix.Rotation(math.pi / 2, 4, 'X')
        @ Matrix.Rotation(2.2, 4, 'Z')
    )
    second = place([leaning], matrix=lying)
    chips(metal, 8, (1.9, 3.0), 3, (0.015, 0.06))
    bench_with_rule(truth, (-4.6, -4.35), 0.05, 5.2, 1.0, (30, 70))
    for name, thing, group in (('compressor-side', standing, first), ('turbine-side', leaning, second)):
        truth.point(name + '-end-0', group, (0, 0, 0))
        truth.point(name + '-end-1', group, (0, 0, LENGTH))
        truth.scale(name + '-end-0', name + '-end-1', 10 * LENGTH)
        truth.damage('worn-open', 'bore', [thing], 'boremark', 0.5, position=name)
        truth.damage('scoring', 'outside', [thing], 'outmark', 0.6, position=name)
        truth.damage('smearing', 'bore', [thing], 'smear', 0.5, position=name)
    lamps(24000, 9000, 3000)
    camera((0.6, -10.5, 13.5), (0.0, -0.45, 0.5), lens=100, fstop=32, focus=(-0.3, -0.3, 1.1), roll=0.015)
    return truth
