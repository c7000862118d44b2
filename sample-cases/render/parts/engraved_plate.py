"""A brushed steel plate with engraved, blackened lines: the rule and the flat target."""
import os

import bpy
import numpy as np
from PIL import Image, ImageDraw, ImageFont

from studio.meshes import TAU, rounded
from studio.shader import Shader
from workplace import WORK

FONT = '/usr/share/fonts/truetype/dejavu/DejaVuSansCondensed.ttf'


def engraved_plate(name, draw, loc, rot, length, width, thickness=0.09, hole=None, per_cm=300):
    """`draw(pen, per_cm, font)` engraves on a canvas of length x width, origin upper left. Sizes in cm."""
    canvas = Image.new('L', (int(length * per_cm), int(width * per_cm)), 0)
    draw(ImageDraw.Draw(canvas), per_cm, lambda height: ImageFont.truetype(FONT, int(height * per_cm)))
    path = os.path.join(WORK, '%s.%d.png' % (name, os.getpid()))
    canvas.save(path)
    picture = bpy.data.images.load(path)
    picture.colorspace_settings.name = 'Non-Color'
    picture.pack()
    os.remove(path)
    plate = _plate(name, length, width, thickness, hole)
    plate.data.materials.append(_brushed(name, picture))
    plate.location = (loc[0], loc[1], thickness / 2 + (loc[2] if len(loc) > 2 else 0))
    plate.rotation_euler = (0, 0, rot)
    plate['length'], plate['width'], plate['thickness'] = length, width, thickness
    return plate


def _plate(name, length, width, thickness, hole):
    """A bevelled outline, filled; texture coordinates on its upper face only."""
    curve = bpy.data.curves.new(name, 'CURVE')
    curve.dimensions, curve.fill_mode = '2D', 'BOTH'
    curve.extrude, curve.bevel_depth, curve.bevel_resolution, curve.resolution_u = thickness / 2 - 0.012, 0.012, 2, 1
    outlines = [rounded([(0, 0), (length, 0), (length, width), (0, width)], 0.12, closed=True)]
    if hole:
        turn = np.linspace(0, TAU, 48, endpoint=False)
        outlines.append(np.stack([hole[0] + hole[2] * np.cos(turn), hole[1] + hole[2] * np.sin(turn)], -1))
    for outline in outlines:
        spline = curve.splines.new('POLY')
        spline.points.add(len(outline) - 1)
        spline.use_cyclic_u = True
        for point, (x, y) in zip(spline.points, outline):
            point.co = (x, y, 0, 1)
    drawn = bpy.data.objects.new(name, curve)
    bpy.context.scene.collection.objects.link(drawn)
    mesh = bpy.data.meshes.new_from_object(drawn.evaluated_get(bpy.context.evaluated_depsgraph_get()))
    bpy.data.objects.remove(drawn)
    plate = bpy.data.objects.new(name, mesh)
    bpy.context.scene.collection.objects.link(plate)
    co, corner = np.empty(len(mesh.vertices) * 3, np.float32), np.empty(len(mesh.loops), np.int32)
    mesh.vertices.foreach_get('co', co)
    mesh.loops.foreach_get('vertex_index', corner)
    co = co.reshape(-1, 3)
    for layer in list(mesh.uv_layers):
        mesh.uv_layers.remove(layer)
    uv = np.stack([co[corner, 0] / length, np.where(co[corner, 2] > 0, co[corner, 1] / width, 5)], -1)
    mesh.uv_layers.new(name='UVMap').data.foreach_set('uv', np.ascontiguousarray(uv, np.float32).ravel())
    mesh.materials.clear()
    return plate


def _brushed(name, picture):
    t = Shader(name)
    v = t.obj()
    line = t(
        'TexImage', Vector=t('TexCoord', out=2), props={'image': picture, 'interpolation': 'Cubic', 'extension': 'CLIP'}
    )
    brush = t.tex('lines', v, (0.05, 0.5, 1))[0]
    _, blot, mid = t.tex('noise', v, 0.09, loc=(0.2, 0.1, 0))
    scratch = t.tex('marks', v, 0.11)[0]
    line_left = t.m('MULTIPLY', line, t.m('SUBTRACT', 1.0, t.m('MULTIPLY', t.lin(mid, 0.86, 1.0), 0.55)))
    base = t.mix(blot, (0.58, 0.575, 0.56), (0.50, 0.49, 0.47))
    base = t.mix(t.m('MULTIPLY', scratch, 0.4), base, (0.75, 0.75, 0.75))
    rough = t.m('ADD', t.mixf(blot, 0.27, 0.42), t.m('MULTIPLY', t.m('SUBTRACT', brush, 0.5), 0.25))
    height = t.m('ADD', t.m('MULTIPLY', brush, 0.5), t.m('MULTIPLY', scratch, -0.6))
    height = t.m('SUBTRACT', height, t.m('MULTIPLY', line, 0.8))
    metal = t(
        'BsdfPrincipled',
        Base_Color=base,
        Metallic=1.0,
        Roughness=rough,
        Anisotropic=0.5,
        Normal=t.bump(height, 0.35, 0.004),
    )
    paint = t('BsdfPrincipled', Base_Color=(0.012, 0.012, 0.012), Roughness=0.45)
    t.out(t('MixShader', Fac=line_left, _1=metal, _2=paint))
    return t.id
