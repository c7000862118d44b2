"""Heat shield, back up, on the bench."""
from materials.heat_shield_steel import heat_shield_steel
from parts.bench import bench_with_rule
from parts.heat_shield import FACE, RIM, SCORED, heat_shield
from studio.stage import camera, lamps, place, room
from studio.truth import Truth


def build(shot):
    truth = Truth('heat-shield', 'from-turbine-side', rotorTurnsSeenHere='anticlockwise')
    room(0.6, 0.1)
    shield = heat_shield(heat_shield_steel())
    body = place([shield], (0, 0, 0), (0, 0, 0.6))
    bench_with_rule(truth, (-7.4, -6.4), -0.04, 6.1, 1.0, (20, 120))
    truth.point('rim-0', body, (RIM, 0, 0.08))
    truth.point('rim-180', body, (-RIM, 0, 0.08))
    truth.scale('rim-0', 'rim-180', 20 * RIM)
    truth.damage('scoring', 'back', [shield], 'rub', 0.5)
    truth.ring('scoring', 'back', body, (SCORED[0], FACE), (SCORED[1], FACE), note='the band that the wheel swept')
    lamps(24000, 9000, 2500)
    camera((-3.0, -20, 26), (0.0, -0.75, 0.6), lens=96, fstop=18, focus=(0, -0.5, 1.0), roll=-0.01)
    return truth
