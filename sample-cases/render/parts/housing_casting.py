"""The casting of the compressor housing: inlet pipe, front wall, the scroll that grows with the flow and leaves as the
outlet pipe, a tapped boss, the pad with the cast number. The axis is z, the inlet at the top; lengths in cm.
The flow turns with the rotor, clockwise seen from the inlet: the scroll grows as the angle falls."""
import math

import bpy
import numpy as np

from develop.finish import FONT
from parts.compressor_wheel import CLOCKWISE
from studio.meshes import TAU
from studio.noise import smoothstep, vnoise
from studio.solid import blend, solid

OUTLET = 0.52  # angle at which the scroll leaves as a pipe
PIPE_LENGTH = 7.1
PIPE_AT = np.array([6.1 * math.cos(OUTLET), 6.1 * math.sin(OUTLET), 1.45])
ALONG = np.array([math.sin(OUTLET), -math.cos(OUTLET), 0.0])
ASIDE = np.array([math.cos(OUTLET), math.sin(OUTLET), 0.0])
BOSS = PIPE_AT + 2.3 * ALONG - 0.25 * ASIDE
BOSS_TOP = 3.86
LAND = 5.18  # height at which the machined hose land ends
NUMBER, PAD_AT = '0762-31 B', -1.78
GROUND_AT = 2.55  # angle of the spot where the runner was cut off and ground
PART_LINE = 0.5  # height of the parting line over the scroll's middle, of its radius


def grown(T):
    """How far the scroll has grown at an angle: 0 behind the tongue, 1 where it leaves."""
    return ((OUTLET - T) % TAU) / TAU


def scroll_section(T):
    """Radius of the tube, and radius and height of its middle, at an angle."""
    p = grown(T)
    return 1.10 + 0.90 * p, 5.80 + 0.30 * p, 0.75 + 0.70 * p


def casting(mat, hollow):
    """Things: the body and its number. hollow(r, z, T): where the machined insides lie, a field as `solid` takes."""
    body = solid(
        'casting',
        lambda x, y, z: np.maximum(_outer(x, y, z)[0], hollow(np.hypot(x, y), z, np.arctan2(y, x))),
        (-8.6, -8.6, -0.45),
        (11.2, 8.6, 5.4),
        0.07,
        mat,
        attrs=_marks,
        uneven=lambda P: 0.014 * vnoise(P * 1.1, 5, 2) + 0.006 * vnoise(P * 5, 6, 2),
    )
    return [body, _number(mat)]


def _scroll(x, y, z):
    T, r = np.arctan2(y, x), np.hypot(x, y)
    tube, middle, height = scroll_section(T)
    return np.hypot(r - middle, z - height) - tube, np.where(r > middle, z - height - PART_LINE * tube, 9)


def _pipe(x, y, z):
    """Outlet: field, distance along it, its radius there, distance from the parting line."""
    dx, dy = x - PIPE_AT[0], y - PIPE_AT[1]
    t, side = dx * ALONG[0] + dy * ALONG[1], dx * ASIDE[0] + dy * ASIDE[1]
    up = z - PIPE_AT[2] - 0.55 * smoothstep(0.3, PIPE_LENGTH - 1, t)
    radius = 2.0 - 0.26 * smoothstep(0.5, 4.2, t)
    off = np.hypot(side, up)
    field = np.maximum(np.maximum(off - radius, t - PIPE_LENGTH), -t - 0.2)
    bead = np.hypot(off - radius - 0.01, t - PIPE_LENGTH + 0.5) - 0.15
    field = blend(field, bead, 0.12)
    bore = np.maximum(off - (radius - 0.33), -1.5 - t)
    return field, bore, t, up - PART_LINE * radius


def _outer(x, y, z):
    """Field of the casting's outside, how deep a fillet is there, the parting line, and where it is machined."""
    r = np.hypot(x, y)
    p = grown(np.arctan2(y, x))
    scroll, scroll_line = _scroll(x, y, z)
    pipe, bore, t, pipe_line = _pipe(x, y, z)
    inlet = np.maximum(r - 3.10 - 0.045 * (LAND - z), z - LAND)
    wall = np.maximum(np.maximum(r - 5.6, z - 1.70 + 0.20 * (r - 3.2)), -0.28 - z)
    rim = np.maximum(r - 7.52, np.abs(z - 0.1) - 0.39)
    boss = np.hypot(x - BOSS[0], y - BOSS[1])
    boss_body = np.maximum(np.maximum(boss - 0.56 - 0.06 * (BOSS_TOP - z), z - BOSS_TOP), 1.5 - z)
    hard = np.minimum(np.minimum(np.minimum(scroll, pipe), np.minimum(inlet, wall)), np.minimum(rim, boss_body))
    tongue = 0.55 * (1 - smoothstep(0.80, 0.90, p))
    body = blend(blend(scroll, wall, 0.5), rim, 0.22)
    body = blend(body, inlet, 0.9)
    body = blend(body, pipe, tongue)
    body = blend(body, boss_body, 0.35)
    fillet = np.clip((hard - body) / 0.12, 0, 1)
    line = np.where(pipe < scroll, pipe_line, scroll_line)
    body = body - 0.045 * np.exp(-((line / 0.06) ** 2)) - 0.022 * smoothstep(-0.02, 0.02, line)
    body = blend(body, _pad(x, y, z), 0.14)
    ground, away = _ground(x, y, z)
    body = np.maximum(body, np.where(away < 2.4, ground, -9))
    body = np.maximum(body, -0.28 - z)
    body = np.maximum(body, -bore)
    body = np.maximum(body, -np.maximum(boss - 0.29, BOSS_TOP - 1.0 - z))
    bare = np.maximum(
        smoothstep(PIPE_LENGTH - 0.05, PIPE_LENGTH - 0.03, t) * (pipe < 0.08),
        smoothstep(BOSS_TOP - 0.05, BOSS_TOP - 0.03, z) * (boss < 0.62),
    )
    bare = np.maximum(bare, smoothstep(-0.035, -0.012, ground) * (away < 2.3))
    return body, fillet, line, bare


def _frame(angle, lift):
    """A place on the scroll's skin that looks outwards and up: middle of the tube, to the right, upwards, out."""
    tube, middle, height = scroll_section(angle)
    radial = np.array([math.cos(angle), math.sin(angle), 0])
    out = math.cos(lift) * radial + math.sin(lift) * np.array([0, 0, 1])
    right = np.array([-math.sin(angle), math.cos(angle), 0])
    return middle * radial + np.array([0, 0, height]), tube, right, np.cross(out, right), out


def _pad(x, y, z):
    centre, tube, *axes = _frame(PAD_AT, 1.12)
    local = [sum(a * (v - c) for a, v, c in zip(axis, (x, y, z), centre)) for axis in axes]
    gaps = [np.abs(local[0]) - 1.42, np.abs(local[1]) - 0.36, np.abs(local[2] - tube) - 0.10]
    return np.sqrt(sum(np.clip(g, 0, None) ** 2 for g in gaps)) + np.minimum(np.maximum(*gaps[:2]), 0) * 0.2 - 0.06


def _ground(x, y, z):
    centre, tube, _, _, out = _frame(GROUND_AT, 0.95)
    height = sum(a * (v - c) for a, v, c in zip(out, (x, y, z), centre)) - tube + 0.09
    away = np.sqrt(sum((v - c - a * tube) ** 2 for a, v, c in zip(out, (x, y, z), centre)))
    return height, away


def _marks(P):
    _, fillet, line, bare = _outer(*P.T)
    flash = np.exp(-((line / 0.05) ** 2)) * np.clip(0.7 + 0.6 * vnoise(P * 2.5, 3, 2), 0, 1)
    low = 1 - smoothstep(-0.2, 1.3, P[:, 2] + 0.35 * vnoise(P * 0.8, 2, 2))
    pad = 0.75 * smoothstep(0.05, 0.0, np.abs(_pad(*P.T)))
    return dict(grime=np.clip(fillet * 0.8 + 0.6 * low + pad, 0, 1), flash=flash, bare=bare)


def _number(mat):
    """Raised figures on the pad, in the housing's coordinates."""
    curve = bpy.data.curves.new('number', 'FONT')
    curve.body, curve.size, curve.align_x, curve.align_y = NUMBER, 0.62, 'CENTER', 'CENTER'
    curve.font = bpy.data.fonts.load(FONT)
    curve.extrude, curve.bevel_depth, curve.bevel_resolution, curve.offset = 0.06, 0.022, 2, 0.006
    drawn = bpy.data.objects.new('number', curve)
    bpy.context.scene.collection.objects.link(drawn)
    mesh = bpy.data.meshes.new_from_object(drawn.evaluated_get(bpy.context.evaluated_depsgraph_get()))
    bpy.data.objects.remove(drawn)
    flat = np.empty(len(mesh.vertices) * 3, np.float32)
    mesh.vertices.foreach_get('co', flat)
    centre, tube, right, up, out = _frame(PAD_AT, 1.12)
    local = flat.reshape(-1, 3) + (0, 0, 0.16)
    local[:, :2] += 0.006 * vnoise(local * 6, 4, 2)[:, None]
    placed = centre + local[:, :1] * right + local[:, 1:2] * up + (tube + local[:, 2:3]) * out
    mesh.vertices.foreach_set('co', np.ascontiguousarray(placed, np.float32).ravel())
    worn = mesh.attributes.new('bare', 'FLOAT', 'POINT')  # the figures' tops are rubbed bright
    worn.data.foreach_set('value', (0.55 * (local[:, 2] > 0.2)).astype(np.float32))
    mesh.materials.clear()
    mesh.materials.append(mat)
    mesh.update()
    thing = bpy.data.objects.new('number', mesh)
    bpy.context.scene.collection.objects.link(thing)
    return thing


assert CLOCKWISE < 0 and grown(OUTLET - 1) < grown(OUTLET - 2), 'the scroll must grow with the rotation'
