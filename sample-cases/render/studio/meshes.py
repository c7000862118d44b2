"""Meshes from numpy grids, with float attributes at the points that the materials read. One unit is one centimetre."""
import math

import bpy
import numpy as np

TAU = 2 * math.pi


def mesh_obj(name, V, F4, attrs=None, mat=None, smooth=True, auto=35, uv=None):
    V = np.ascontiguousarray(V, np.float32)
    F = np.ascontiguousarray(F4, np.int32)
    me = bpy.data.meshes.new(name)
    k = F.shape[1]
    me.vertices.add(len(V))
    me.vertices.foreach_set('co', V.ravel())
    me.loops.add(F.size)
    me.loops.foreach_set('vertex_index', F.ravel())
    me.polygons.add(len(F))
    me.polygons.foreach_set('loop_start', np.arange(0, F.size, k, dtype=np.int32))
    me.polygons.foreach_set('loop_total', np.full(len(F), k, np.int32))
    me.polygons.foreach_set('use_smooth', np.full(len(F), smooth))
    for n, a in (attrs or {}).items():
        at = me.attributes.new(n, 'FLOAT', 'POINT')
        at.data.foreach_set('value', np.ascontiguousarray(a, np.float32).ravel())
    if uv is not None:
        l = me.uv_layers.new(name='UVMap')
        l.data.foreach_set('uv', np.ascontiguousarray(uv[F.ravel()], np.float32).ravel())
    me.update()
    me.validate()
    if auto:
        me.use_auto_smooth = True
        me.auto_smooth_angle = math.radians(auto)
    ob = bpy.data.objects.new(name, me)
    bpy.context.scene.collection.objects.link(ob)
    if mat:
        me.materials.append(mat)
    return ob


def grid_faces(ni, nj, ci=False, cj=False, flip=False, base=0):
    i = np.arange(ni if ci else ni - 1)
    j = np.arange(nj if cj else nj - 1)
    I, J = np.meshgrid(i, j, indexing='ij')
    I2 = (I + 1) % ni
    J2 = (J + 1) % nj
    q = np.stack([I * nj + J, I2 * nj + J, I2 * nj + J2, I * nj + J2], -1).reshape(-1, 4)
    return (q[:, ::-1] if flip else q) + base


def grid_obj(name, V, ci=False, cj=False, attrs=None, mat=None, flip=False, **k):
    ni, nj = V.shape[:2]
    uv = k.pop('uv', None)
    return mesh_obj(
        name,
        V.reshape(-1, 3),
        grid_faces(ni, nj, ci, cj, flip),
        {n: np.broadcast_to(a, (ni, nj)) for n, a in (attrs or {}).items()},
        mat,
        uv=None if uv is None else uv.reshape(-1, 2),
        **k
    )


def rounded(pts, rad, n=6, closed=False):
    """polyline -> polyline with filleted corners. rad scalar or list"""
    P = [np.array(p, float) for p in pts]
    out = []
    N = len(P)
    for i, p in enumerate(P):
        r = rad[i] if hasattr(rad, '__len__') else rad
        if (not closed and i in (0, N - 1)) or r <= 0:
            out.append(p)
            continue
        a, b = P[i - 1] - p, P[(i + 1) % N] - p
        la, lb = np.linalg.norm(a), np.linalg.norm(b)
        if la < 1e-9 or lb < 1e-9:
            continue
        a, b = a / la, b / lb
        ang = math.acos(np.clip(a @ b, -1, 1))
        if ang > 3.1:
            out.append(p)
            continue
        t = min(r / math.tan(ang / 2), la * 0.49, lb * 0.49)
        r = t * math.tan(ang / 2)
        bis = a + b
        bis /= np.linalg.norm(bis)
        c = p + bis * (r / math.sin(ang / 2))
        s, e = p + a * t - c, p + b * t - c
        om = math.acos(np.clip(s @ e / (np.linalg.norm(s) * np.linalg.norm(e)), -1, 1))
        for k in range(n + 1):
            f = k / n
            out.append(c + (math.sin((1 - f) * om) * s + math.sin(f * om) * e) / math.sin(om) if om > 1e-4 else p)
    return np.array(out)


def resample(P, step):
    out = [P[0]]
    for a, b in zip(P[:-1], P[1:]):
        n = max(1, int(np.linalg.norm(b - a) / step))
        for k in range(1, n + 1):
            out.append(a + (b - a) * k / n)
    return np.array(out)


def lathe(name, prof, seg=256, mat=None, fn=None, attrs=None, flip=False, auto=40, step=None):
    """prof: (n,2) r,z. fn(R,Z,T)->(R,Z) displaces; attrs: fn(R,Z,T)->dict"""
    prof = np.array(prof, float)
    if step:
        prof = resample(prof, step)
    T = np.linspace(0, TAU, seg, endpoint=False)
    R = np.repeat(prof[:, 0:1], seg, 1)
    Z = np.repeat(prof[:, 1:2], seg, 1)
    TT = np.repeat(T[None], len(prof), 0)
    at = attrs(R, Z, TT) if attrs else {}
    if fn:
        R, Z = fn(R, Z, TT)
    V = np.stack([R * np.cos(TT), R * np.sin(TT), Z], -1)
    return grid_obj(name, V, cj=True, mat=mat, attrs=at, flip=flip, auto=auto)
