"""Fracture face of the threaded stub, standing on its end: parted by twist."""
import math

from materials.bench_mat import bench_mat
from materials.fracture_steel import fracture_steel
from materials.shaft_steel import shaft_steel
from parts.bench import bench
from parts.ruler import edge_point, ruler
from parts.shaft import BROKEN_AT, THIN, threaded_stub
from studio.stage import COOL, PLAIN, WARM, camera, lamp, place, room
from studio.truth import Truth


def build(shot):
    truth = Truth('shaft', 'on-fracture', piece='threaded stub', beachMarks=False, mode='twist')
    room(0.6, 0.6)
    stub, face = threaded_stub(shaft_steel(), fracture_steel())
    body = place([stub, face], (0, 0, 10.22), (0, 0, 0.4))
    bench(bench_mat(seed=7.7))
    top = 10.22 + BROKEN_AT
    rule = ruler((-2.9, -3.09, top - 0.12), 0.03)  # packed up to the height of the face
    truth.point('rule-20-mm', rule, edge_point(rule, 20))
    truth.point('rule-30-mm', rule, edge_point(rule, 30))
    truth.scale('rule-20-mm', 'rule-30-mm', 10)
    for name, angle in (('face-0', 0.0), ('face-180', math.pi)):
        truth.point(name, body, (THIN * 0.965 * math.cos(angle), THIN * 0.965 * math.sin(angle), BROKEN_AT))
    truth.scale('face-0', 'face-180', 20 * THIN * 0.965)
    truth.damage('torsion-fracture', 'stub', [face], 'face', 0.5, beachMarks=False)
    truth.damage('smearing', 'stub', [face], 'smear', 0.55, draggedSeenHere='clockwise')
    lamp('key', (-14, 10, 22), (0, 0, top), 26, 9000, WARM, 6)
    lamp('window', (26, 6, 12), (0, 0, top), 24, 4200, COOL, 24)
    lamp('front', (3, -22, 18), (0, 0, top), 14, 900, PLAIN, 6)
    camera((0.4, -3.5, top + 5.9), (0.0, -0.10, top), lens=180, fstop=45, focus=(0, 0, top + 0.01), roll=-0.05)
    return truth
