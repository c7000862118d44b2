"""Oil feed union: hexagon, thread, cone seat and bore; sealant squeezed into the bore closes about half of it."""
import math

import bpy
import numpy as np

from studio.meshes import TAU, lathe, resample, rounded
from studio.noise import n1, smoothstep, vnoise

BORE, FLATS, TOP = 0.38, 2.2, 3.1  # radius, across flats, height of the seat's rim, cm
PITCH = 0.15


def feed_union(mat):
    """Standing on its hexagon's far side, the cone seat upwards."""
    line = [
        (BORE, 0.3),
        (BORE, TOP - 0.32),
        (0.64, TOP),
        (0.80, TOP),
        (0.88, TOP - 0.09),
        (0.88, TOP - 1.25),
        (0.76, TOP - 1.30),
        (0.76, TOP - 1.48),
        (1.12, TOP - 1.50),
        (1.30, TOP - 1.60),
        (1.30, TOP - 2.50),
        (1.12, TOP - 2.62),
        (0.70, TOP - 2.64),
        (0.70, 0.0),
        (0.2, 0.0),
    ]
    profile = resample(
        rounded(line, [0, 0.015, 0.02, 0.015, 0.02, 0.03, 0.03, 0.03, 0.03, 0.02, 0.02, 0.03, 0.03, 0.02, 0]), 0.016
    )
    step = np.r_[0, np.cumsum(np.hypot(*np.diff(profile, axis=0).T))]

    def shape(R, Z, T):
        wave = 0.5 + 0.5 * np.cos(TAU * Z / PITCH + T)
        length = smoothstep(TOP - 1.30, TOP - 1.20, Z) * smoothstep(TOP - 0.06, TOP - 0.18, Z)
        thread = 0.075 * wave * (R > 0.7) * length * (1 + 0.10 * n1(T * 2 + Z * 3, 5, 2))
        flat = FLATS / 2 / np.cos(((T + 0.3) % (TAU / 6)) - math.pi / 6)
        hexagon = (R > 0.9) & (Z < TOP - 1.45) & (Z > TOP - 2.65)
        rounded_off = 0.010 * np.clip(n1(T * 4, 3, 2), -1, 0.4)
        return np.where(hexagon, np.minimum(R, flat + rounded_off), R) - thread, Z

    def attributes(R, Z, T):
        arc = np.repeat(step[:, None], R.shape[1], 1)
        flat = FLATS / 2 / np.cos(((T + 0.3) % (TAU / 6)) - math.pi / 6)
        corner = smoothstep(1.16, 1.24, flat) * (R > 1.0)
        inside = (R < 0.66) & (Z > 0.2)
        seat = inside * (Z > TOP - 0.33)
        oil = 0.95 * inside * (1 - seat) + 0.35 * seat + 0.45 * smoothstep(TOP - 1.0, TOP - 1.6, Z) * (R < 0.9) + 0.30
        return dict(
            oil=oil,
            bare=np.maximum(0.30 * corner, np.maximum(seat * 0.45, (R > 0.60) * (R < 0.82) * (Z > TOP - 0.1))),
            pu=arc,
            pv=T / TAU * 24 / 4.1667,
        )

    return lathe('union', profile, seg=720, mat=mat, fn=shape, attrs=attributes, auto=75)


def sealant_in_bore(mat, seed=0):
    """A lump across half of the bore, a bead round the seat, strings on the thread: soft balls grown together."""
    rng = np.random.default_rng(seed)
    balls = bpy.data.metaballs.new('sealant')
    balls.resolution = balls.render_resolution = 0.016
    balls.threshold = 0.45

    def ball(x, y, z, radius):
        element = balls.elements.new()
        element.co, element.radius = (x, y, z), radius

    for _ in range(230):  # the plug: everything on one side of a wavy chord
        x, y = rng.uniform(-BORE, BORE, 2)
        if math.hypot(x, y) > BORE + 0.02 or x < -0.005 + 0.07 * math.sin(5.5 * y + 0.6) + 0.05 * math.sin(13 * y):
            continue
        ball(x, y, TOP - 0.34 - rng.gamma(1.2, 0.05) + 0.10 * x, rng.uniform(0.075, 0.14))
    for angle in np.linspace(-1.9, 1.75, 46):  # a bead squeezed up on the seat
        r = 0.50 + 0.035 * math.sin(3.1 * angle) + rng.normal(0, 0.012)
        ball(r * math.cos(angle), r * math.sin(angle), TOP - 0.17 + rng.normal(0, 0.008), rng.uniform(0.055, 0.105))
    for angle, down in zip(rng.uniform(-1.9, 0.4, 26), rng.uniform(0.03, 0.35, 26)):  # smeared on rim and thread
        ball(0.815 * math.cos(angle), 0.815 * math.sin(angle), TOP - down, rng.uniform(0.05, 0.10))
    x, y = -0.02, 0.10
    for k in range(16):  # a string hanging into the free half
        ball(x - 0.017 * k, y + 0.010 * k + 0.05 * math.sin(k / 4), TOP - 0.38 - 0.004 * k * k / 4, 0.048 - 0.0012 * k)
    drawn = bpy.data.objects.new('sealant', balls)
    bpy.context.scene.collection.objects.link(drawn)
    bpy.context.view_layer.update()
    mesh = bpy.data.meshes.new_from_object(drawn.evaluated_get(bpy.context.evaluated_depsgraph_get()))
    bpy.data.objects.remove(drawn)
    lump = bpy.data.objects.new('sealant', mesh)
    bpy.context.scene.collection.objects.link(lump)
    mesh.materials.clear()
    mesh.materials.append(mat)
    mesh.polygons.foreach_set('use_smooth', np.ones(len(mesh.polygons), bool))
    _ripple(mesh)
    return lump


def _ripple(mesh):
    """Uneven skin, and an attribute for the part that stands in the bore."""
    n = len(mesh.vertices)
    co, normal = np.empty(n * 3, np.float32), np.empty(n * 3, np.float32)
    mesh.vertices.foreach_get('co', co)
    mesh.vertices.foreach_get('normal', normal)
    co, normal = co.reshape(-1, 3), normal.reshape(-1, 3)
    co = co + normal * (0.012 * vnoise(co * 9, 3, 3))[:, None].astype(np.float32)
    mesh.vertices.foreach_set('co', np.ascontiguousarray(co, np.float32).ravel())
    inside = (np.hypot(co[:, 0], co[:, 1]) < BORE) & (co[:, 2] < TOP - 0.2)
    mesh.attributes.new('plug', 'FLOAT', 'POINT').data.foreach_set('value', inside.astype(np.float32))
    mesh.attributes.new('all', 'FLOAT', 'POINT').data.foreach_set('value', np.ones(n, np.float32))
    mesh.update()
