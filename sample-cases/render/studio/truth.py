"""What is true in a photo: named points, lengths and damage, carried through the camera to pixels of the upright picture."""
import bpy
import numpy as np
from bpy_extras.object_utils import world_to_camera_view
from mathutils import Vector
from scipy.cluster.hierarchy import fclusterdata
from scipy.spatial import ConvexHull

MM = 10.0  # one unit of the scene is one centimetre


class Truth:
    """Collects while the scene is built; `read` projects once the camera stands. Pixels: origin at the upper left
    corner of the upright picture, x to the right, y down. Points in space: millimetres, z up from the bench."""

    def __init__(self, part, seen_from, **facts):
        self.facts = dict(part=part, seenFrom=seen_from, **facts)
        self._points, self._scales, self._damage = [], [], []

    def point(self, name, thing, local):
        """A point of a placed thing (its own coordinates, cm)."""
        self._points.append((name, thing, Vector(local)))

    def scale(self, first, second, millimetres):
        self._scales.append((first, second, millimetres))

    def damage(self, kind, zone, things, attribute, above=0.5, **facts):
        """The region where a point attribute of the meshes is above a threshold."""
        self._damage.append(('mesh', kind, zone, things, (attribute, above), facts))

    def ring(self, kind, zone, thing, inner, outer, **facts):
        """A ring between two circles, each (radius, z) about the thing's own axis, cm."""
        self._damage.append(('ring', kind, zone, thing, (inner, outer), facts))

    def patch(self, kind, zone, thing, corners, **facts):
        """The region spanned by points of a thing (its own coordinates, cm)."""
        self._damage.append(('patch', kind, zone, thing, corners, facts))

    def read(self, width, height):
        bpy.context.view_layer.update()
        lens = _Lens(width, height)
        points = {}
        for name, thing, local in self._points:
            world = thing.matrix_world @ local
            points[name] = dict(
                mm=_round([v * MM for v in world], 3), px=_round(lens.pixel(world), 2), visible=lens.sees(world)
            )
        scales = [_length(points, *row) for row in self._scales]
        return dict(
            **self.facts,
            picture=dict(width=width, height=height, upright=True),
            camera=dict(
                matrix=[_round(row, 8) for row in lens.matrix_mm.tolist()],
                note='3x4, millimetres to pixels (homogeneous)',
            ),
            points=points,
            lengths=scales,
            damage=[_seen(lens, *row) for row in self._damage],
        )


def _length(points, first, second, millimetres):
    a, b = (np.array(points[n]['mm']) for n in (first, second))
    assert abs(np.linalg.norm(a - b) - millimetres) < 0.01, (first, second, np.linalg.norm(a - b), millimetres)
    return {'from': first, 'to': second, 'mm': millimetres}


def _seen(lens, form, kind, zone, things, how, facts):
    entry = dict(kind=kind, zone=zone, **facts)
    if form == 'mesh':
        world = np.concatenate([_above(thing, *how) for thing in things])
        if not len(world):
            raise ValueError('no vertex carries %s for %s' % (how[0], kind))
        rng = np.random.default_rng(0)
        some = world if len(world) <= 2500 else world[rng.choice(len(world), 2500, replace=False)]
        shown = [lens.sees(Vector(p)) for p in some]
        entry['visibleShare'] = round(float(np.mean(shown)), 2)
        seen = lens.pixels(some[np.array(shown)]) if sum(shown) >= 3 else lens.pixels(some)
        entry['regions'] = [dict(shape='polygon', px=_hull(part)) for part in _patches(seen, lens.size[0] / 40)]
    elif form == 'ring':
        entry['regions'] = [
            dict(shape='ring', **{n: _circle(lens, things, r, z) for n, (r, z) in zip(('inner', 'outer'), how)})
        ]
    else:
        corners = np.array([things.matrix_world @ Vector(c) for c in how])
        entry['regions'] = [dict(shape='polygon', px=_hull(lens.pixels(corners)))]
    return entry


def _above(thing, attribute, above):
    mesh = thing.data
    n = len(mesh.vertices)
    if attribute not in mesh.attributes:
        return np.zeros((0, 3))
    values, co = np.empty(n, np.float32), np.empty(n * 3, np.float32)
    mesh.attributes[attribute].data.foreach_get('value', values)
    mesh.vertices.foreach_get('co', co)
    matrix = np.array(thing.matrix_world)
    return co.reshape(-1, 3)[values > above] @ matrix[:3, :3].T + matrix[:3, 3]


def _circle(lens, thing, radius, z):
    turn = np.linspace(0, 2 * np.pi, 49)[:-1]
    return [
        _round(lens.pixel(thing.matrix_world @ Vector((radius * np.cos(a), radius * np.sin(a), z))), 1) for a in turn
    ]


def _patches(pixels, apart):
    """Points that hang together in the picture; crumbs are left out."""
    label = fclusterdata(pixels, apart, criterion='distance', method='single')
    parts = [pixels[label == k] for k in np.unique(label)]
    return [p for p in parts if len(p) >= max(3, 0.008 * len(pixels))] or [pixels]


def _hull(pixels):
    hull = pixels[ConvexHull(pixels, qhull_options='QJ').vertices]
    return [_round(p, 1) for p in hull]


def _round(values, places):
    return [round(float(v), places) for v in values]


class _Lens:
    def __init__(self, width, height):
        self.scene, self.camera, self.size = bpy.context.scene, bpy.context.scene.camera, (width, height)
        data = self.camera.data
        f = data.lens / data.sensor_width * max(width, height)
        inner = np.array([[f, 0, width / 2], [0, f, height / 2], [0, 0, 1]])
        to_camera = np.diag([1, -1, -1]) @ np.array(self.camera.matrix_world.normalized().inverted())[:3]
        self.matrix = inner @ to_camera
        self.matrix_mm = self.matrix @ np.diag([1 / MM, 1 / MM, 1 / MM, 1])
        self.graph = bpy.context.evaluated_depsgraph_get()
        self.eye = self.camera.matrix_world.translation
        self._agrees()

    def _agrees(self):
        """The matrix against Blender's own projection."""
        scene = self.scene
        kept = scene.render.resolution_x, scene.render.resolution_y
        scene.render.resolution_x, scene.render.resolution_y = self.size
        scene.render.resolution_percentage = 100
        for p in ((0, 0, 0), (3, -2, 1), (-4, 5, 2)):
            v = world_to_camera_view(scene, self.camera, Vector(p))
            theirs = (v.x * self.size[0], (1 - v.y) * self.size[1])
            assert np.allclose(self.pixel(p), theirs, atol=0.02), (self.pixel(p), theirs)
        scene.render.resolution_x, scene.render.resolution_y = kept

    def pixels(self, world):
        h = np.c_[world, np.ones(len(world))] @ self.matrix.T
        return h[:, :2] / h[:, 2:]

    def pixel(self, world):
        return self.pixels(np.array([tuple(world)], float))[0]

    def sees(self, world):
        """Whether nothing stands before the point and it lies within the picture."""
        x, y = self.pixel(world)
        if not (0 <= x <= self.size[0] and 0 <= y <= self.size[1]):
            return False
        way = Vector(world) - self.eye
        hit, where, *_ = self.scene.ray_cast(self.graph, self.eye, way.normalized())
        return bool(not hit or (where - self.eye).length > way.length - 0.03)
