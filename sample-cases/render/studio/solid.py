"""A closed surface out of a field that is negative inside, by surface nets: casts whose bodies run into one another."""
import numpy as np

from studio.meshes import mesh_obj


def blend(a, b, reach):
    """The lesser of two fields, rounded where they meet as a fillet of about that reach: cm."""
    near = np.clip(reach - np.abs(a - b), 0, None)
    return np.minimum(a, b) - near * near / (4 * reach + 1e-6)


def surface(field, low, high, step):
    """Points and quads of field(x, y, z) = 0 within a box; x, y, z are arrays that broadcast."""
    x, y, z = (np.arange(a, b, step) for a, b in zip(low, high))
    values = field(x[:, None, None], y[None, :, None], z[None, None, :]).astype(np.float32)
    inside = values < 0
    corners = [(i, j, k) for i in (0, 1) for j in (0, 1) for k in (0, 1)]
    cells = tuple(n - 1 for n in values.shape)
    part = lambda a, c: a[tuple(slice(o, o + n) for o, n in zip(c, cells))]  # noqa: E731
    count = sum(part(inside, c).astype(np.int8) for c in corners)
    at = np.argwhere((count > 0) & (count < 8))
    number = np.full(cells, -1, np.int64)
    number[tuple(at.T)] = np.arange(len(at))
    total, crossed = np.zeros((len(at), 3)), np.zeros(len(at))
    for c in corners:
        for axis in range(3):
            if c[axis]:
                continue
            d = tuple(o + (n == axis) for n, o in enumerate(c))
            a, b = values[tuple((at + c).T)], values[tuple((at + d).T)]
            cuts = (a < 0) != (b < 0)
            share = np.where(cuts, a / np.where(cuts, a - b, 1), 0)
            where = np.array(c) + share[:, None] * np.eye(3)[axis]
            total, crossed = total + where * cuts[:, None], crossed + cuts
    points = np.array(low) + step * (at + total / crossed[:, None])
    faces = []
    for axis in range(3):
        other, third = (axis + 1) % 3, (axis + 2) % 3
        first = np.moveaxis(inside, axis, 0)[:-1]
        second = np.moveaxis(inside, axis, 0)[1:]
        edges = np.argwhere(np.moveaxis(first != second, 0, axis))
        edges = edges[(edges[:, other] > 0) & (edges[:, third] > 0)]
        edges = edges[(edges[:, other] < cells[other]) & (edges[:, third] < cells[third])]
        u, v = np.eye(3, dtype=int)[other], np.eye(3, dtype=int)[third]
        quad = np.stack([number[tuple((edges - o).T)] for o in (u + v, v, 0 * u, u)], -1)
        out = inside[tuple(edges.T)]
        faces.append(np.where(out[:, None], quad, quad[:, ::-1]))
    return points, np.concatenate(faces)


def slope(field, points, step=0.01):
    """Unit normals of a field at points."""
    way = np.stack([field(*(points + e).T) - field(*(points - e).T) for e in step * np.eye(3)], -1)
    return way / (np.linalg.norm(way, axis=-1, keepdims=True) + 1e-9)


def solid(name, field, low, high, step, mat, attrs=None, uneven=None):
    """attrs: points to attributes; uneven: points to how far the skin stands out, cm."""
    points, faces = surface(field, low, high, step)
    for _ in range(2):
        points = points - np.clip(field(*points.T), -step, step)[:, None] * slope(field, points)
    marks = attrs(points) if attrs else {}
    if uneven:
        points = points + uneven(points)[:, None] * slope(field, points)
    return mesh_obj(name, points, faces, marks, mat, auto=42)
