"""Thrust bearing on the bench: the worn front face, the worn rear face, a sound one of the same model."""
from materials.bronze import bronze
from parts.bench import bench_with_rule
from parts.chips import chips
from parts.thrust_bearing import thrust_bearing
from studio.stage import camera, lamp, place, room, PLAIN, WARM, COOL
from studio.truth import Truth

# seen from the inlet the rotor turns clockwise, from the turbine side anticlockwise: metal is dragged that way
VIEWS = dict(
    front=dict(wear=1.0, turns=-1, seed=4, angle=2.0, side='from-inlet', mat=1.3, cam=(1.2, -15, 25)),
    rear=dict(wear=0.8, turns=1, seed=9, angle=0.7, side='from-turbine-side', mat=2.9, cam=(-2.6, -16, 23)),
    sound=dict(wear=0.0, turns=-1, seed=4, angle=2.0, side='from-inlet', mat=0.4, cam=(1.2, -15, 25)),
)


def build(shot):
    v = VIEWS[shot.view]
    worn = v['wear'] > 0
    sense = 'clockwise' if v['turns'] < 0 else 'anticlockwise'
    truth = Truth('thrust-bearing', v['side'], rotorTurns=sense, pads=3, padsWorn=3 if worn else 0)
    room(0.55, 0.5)
    metal = bronze(dirt=0.75 if worn else 0.35)
    ring = thrust_bearing(metal, v['wear'], turns=v['turns'], seed=v['seed'])
    place([ring], (0, 0, 0), (0, 0, v['angle']))
    if worn:
        chips(metal, 7, (2.9, 4.2), v['seed'] + 7, (0.02, 0.09))
    bench_with_rule(truth, (-6.4, -5.9), 0.03, v['mat'], 1.0 if worn else 0.5, (30, 90))
    truth.point('outer-edge-0', ring, (2.52, 0, 0.42))
    truth.point('outer-edge-180', ring, (-2.52, 0, 0.42))
    truth.scale('outer-edge-0', 'outer-edge-180', 50.4)
    if worn:
        zone = '%s-pads' % shot.view
        truth.damage('worn-away', zone, [ring], 'wear', 0.6, of=3, affected=3)
        truth.damage('smearing', zone, [ring], 'smear', 0.5, draggedSeenHere=sense)
        truth.damage('heat-tint', zone, [ring], 'htint', 0.55)
    lamp('key', (-20, 20, 34), (0, 0, 0), 60, 22000, WARM, 14)
    lamp('window', (42, 8, 16), (0, 0, 0), 36, 8000, COOL, 36)
    lamp('front', (4, -38, 30), (0, 0, 0), 25, 1800, PLAIN, 10)
    camera(v['cam'], (0.1, -0.45, 0.3), lens=105, fstop=16, focus=(0, -0.5, 0.5), roll=-0.015)
    return truth
