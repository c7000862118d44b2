"""Back of the compressor wheel and the collar that it was clamped on: both clamp faces up."""
import math

from mathutils import Matrix, Vector

from materials.aluminium import aluminium
from materials.bench_mat import bench_mat
from materials.shaft_steel import shaft_steel
from parts.bench import bench
from parts.clamp_face import clamp_face
from parts.compressor_wheel import BORE, compressor_wheel
from studio.meshes import lathe, rounded
from studio.stage import camera, lamps, place, room
from studio.truth import Truth

BOSS = 1.2  # outer radius of the wheel's clamp face, cm
COLLAR = dict(bore=0.345, face=0.80, outer=0.94, length=0.60)


def build(shot):
    # the shaft was braked and the wheel went on, clockwise seen from the inlet: on the collar (seen from the inlet) metal was
    # dragged clockwise; on the wheel's back (seen from the turbine side) the collar dragged it backwards: clockwise too
    truth = Truth(
        'compressor-wheel',
        'from-turbine-side',
        other='collar, face seen from the compressor side',
        smear='wheel-led',
        fretting='none',
        draggedSeenHere='clockwise',
    )
    room(0.5, 0.7)
    metal, steel = aluminium(0.7, turned_dirt=1.0), shaft_steel()
    things, _ = compressor_wheel(metal)
    boss = clamp_face(metal, BORE, BOSS, -0.13, 1, seed=3)  # built seen from +z, turned over below
    boss.scale = (1, 1, -1)
    boss.location = (0, 0, -0.26)
    wheel = place([*things, boss], (0, 0, 3.44), (math.pi, 0, 0.5))
    body = rounded(
        [
            (COLLAR['bore'], COLLAR['length'] - 0.03),
            (COLLAR['bore'], 0),
            (COLLAR['outer'], 0),
            (COLLAR['outer'], 0.34),
            (COLLAR['face'], 0.38),
            (COLLAR['face'], COLLAR['length'] - 0.03),
        ],
        0.02,
    )
    ring = lathe('collar', body, seg=256, mat=steel, attrs=_plain)
    face = clamp_face(steel, COLLAR['bore'], COLLAR['face'], COLLAR['length'], -1, start=2.0, seed=11)
    # laid on the wheel's back, which falls away outwards
    aside, falls = Vector((0.80, -0.60, 0)), math.radians(4.6)
    lying = (
        Matrix.Translation(aside * 2.28 + Vector((0, 0, 3.42)))
        @ Matrix.Rotation(falls, 4, Vector((-aside.y, aside.x, 0)))
        @ Matrix.Rotation(0.3, 4, 'Z')
    )
    packed = place([ring, face], matrix=lying)
    bench(bench_mat(seed=9.4))
    truth.point('boss-0', wheel, (BOSS, 0, -0.12))
    truth.point('boss-180', wheel, (-BOSS, 0, -0.12))
    truth.scale('boss-0', 'boss-180', 20 * BOSS)
    truth.damage('smear-wheel-led', 'back-clamp-face', [boss], 'smear', 0.5, draggedSeenHere='clockwise')
    truth.damage(
        'smear-wheel-led', 'clamp-faces', [face], 'smear', 0.5, part='thrust-collar', draggedSeenHere='clockwise'
    )
    truth.point('collar-face-centre', packed, (0, 0, COLLAR['length']))
    lamps(15000, 8000, 2000, at=(0, 0, 3))
    camera((1.5, -7.6, 17.6), (0.78, -0.55, 3.55), lens=105, fstop=32, focus=(0.6, -0.4, 3.6), roll=0.02)
    return truth


def _plain(R, Z, T):
    return dict(jr=0 * R, htint=0.30 + 0 * Z, soot=0 * R, pu=Z + R, pv=T * 2)
