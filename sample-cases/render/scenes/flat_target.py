"""Flat target with a shim ring on it, seen at a known tilt: for measuring in a plane."""
import math

import numpy as np

from materials.shaft_steel import shaft_steel
from parts.bench import bench_with_rule
from parts.target_plate import CORNERS, target_plate
from studio.meshes import lathe, resample, rounded
from studio.stage import camera, lamps, place, room
from studio.truth import Truth

FACE = 0.15
SHIM = (0.85, 1.30)  # inner and outer radius, cm


def build(shot):
    tilt = int(shot.view)
    truth = Truth(
        'flat-target',
        'slanting',
        tiltDegrees=tilt,
        note='Tilt: between the line of sight and the normal of the plate. The shim is 0.5 mm thick.',
    )
    room(0.55, 0.3)
    plate = target_plate((-6.2, -3.4), 0.06 if tilt < 40 else -0.11)
    for name, (x, y) in CORNERS.items():
        truth.point(name, plate, (x, y, FACE))
    for first, second, mm in (
        ('upper-left', 'upper-right', 100),
        ('upper-right', 'lower-right', 60),
        ('lower-left', 'lower-right', 100),
        ('upper-left', 'lower-left', 60),
    ):
        truth.scale(first, second, mm)
    truth.scale('upper-left', 'lower-right', math.hypot(100, 60))
    edge = resample(rounded([(SHIM[0], 0), (SHIM[0], 0.05), (SHIM[1], 0.05), (SHIM[1], 0)], 0.006), 0.03)
    shim = lathe('shim', edge, seg=512, mat=shaft_steel(), attrs=_blued, auto=25)
    where = (-2.3, 1.5, 0.3) if tilt < 40 else (2.0, 0.6, 0.3)
    place([shim], where)
    for name, angle in (
        ('shim-left', math.pi),
        ('shim-right', 0.0),
        ('shim-near', -math.pi / 2),
        ('shim-far', math.pi / 2),
    ):
        truth.point(name, shim, (SHIM[1] * math.cos(angle), SHIM[1] * math.sin(angle), 0.047))
    truth.scale('shim-left', 'shim-right', 20 * SHIM[1])
    truth.scale('shim-near', 'shim-far', 20 * SHIM[1])
    bench_with_rule(truth, (-7.6, -7.3 if tilt < 40 else -8.0), 0.02, 3.3 + tilt, 0.8, (30, 120))
    lamps(26000, 9000, 2500)
    away, up = 30 * math.sin(math.radians(tilt)), 30 * math.cos(math.radians(tilt))
    side = 0.10 if tilt < 40 else -0.28
    target = (-0.2, -0.9, 0.3)
    camera(
        (target[0] + away * math.sin(side), target[1] - away * math.cos(side), target[2] + up),
        target,
        lens=72,
        fstop=22,
        focus=target,
        roll=0.02,
    )
    return truth


def _blued(R, Z, T):
    """Spring-steel shim stock, straw to blue."""
    return dict(htint=0.42 + 0.10 * np.cos(T - 1.0), jr=0 * R, soot=0 * R, pu=R * np.cos(T), pv=R * np.sin(T))
