"""A short notation for shader nodes: each call adds a node and gives its output."""
import math

import bpy

from studio import textures

TAU = 2 * math.pi


class Shader:
    def __init__(s, name, world=None):
        if world:
            s.id = world
            world.use_nodes = True
        else:
            s.id = bpy.data.materials.new(name)
            s.id.use_nodes = True
        s.t = s.id.node_tree
        s.t.nodes.clear()

    def __call__(s, typ, out=0, props=None, **inp):
        n = s.t.nodes.new('ShaderNode' + typ)
        for k, v in (props or {}).items():
            setattr(n, k, v)
        for k, v in inp.items():
            key = int(k[1:]) if k[0] == '_' else k.replace('_', ' ')
            s.set(n.inputs[key], v)
        s.last = n
        return n.outputs[out]

    def set(s, sock, v):
        if isinstance(v, bpy.types.NodeSocket):
            s.t.links.new(v, sock)
        else:
            if hasattr(sock, 'default_value') and hasattr(sock.default_value, '__len__') and not isinstance(v, str):
                v = tuple(v)
                v = v + (1,) if len(sock.default_value) == 4 and len(v) == 3 else v
            sock.default_value = v

    def m(s, op, a, b=0.5, c=None, clamp=False):
        k = dict(_0=a, _1=b)
        if c is not None:
            k['_2'] = c
        return s('Math', props={'operation': op, 'use_clamp': clamp}, **k)

    def mix(s, f, a, b, t='MIX'):
        return s('MixRGB', props={'blend_type': t}, Fac=f, Color1=a, Color2=b)

    def ramp(s, f, stops, interp='LINEAR'):
        o = s('ValToRGB', Fac=f)
        r = s.last.color_ramp
        r.interpolation = interp
        while len(r.elements) < len(stops):
            r.elements.new(0.5)
        for e, (p, c) in zip(r.elements, stops):
            e.position = p
            e.color = (c, c, c, 1) if not hasattr(c, '__len__') else tuple(c) + (1,) * (4 - len(c))
        return o

    def lin(s, f, a, b):  # clamp((f-a)/(b-a))
        return s('MapRange', Value=f, _1=a, _2=b, _3=0.0, _4=1.0)

    def mixf(s, f, a, b):  # a+(b-a)*f
        return s('MapRange', Value=f, _1=0.0, _2=1.0, _3=a, _4=b)

    def attr(s, n):
        return s('Attribute', out=2, props={'attribute_name': n})

    def obj(s):
        return s('TexCoord', out=3)

    def noise(s, vec, scale, detail=4, rough=0.55, dist=0.0, out=0):
        return s('TexNoise', out=out, Vector=vec, Scale=scale, Detail=detail, Roughness=rough, Distortion=dist)

    def vscale(s, v, k):
        return s('VectorMath', props={'operation': 'MULTIPLY'}, _0=v, _1=k)

    def polar(s, v, kr, kt, kz):
        """vector (r*kr, theta*kt, z*kz) from object coords - for circumferential lathe marks/scores.
        theta is mapped onto a circle (cos,sin) so that there is no seam."""
        s('SeparateXYZ', Vector=v)
        x, y, z = s.last.outputs
        r = s.m('SQRT', s.m('ADD', s.m('MULTIPLY', x, x), s.m('MULTIPLY', y, y)))
        ri = s.m('MAXIMUM', r, 1e-4)
        # 4D-ish: pack z and r in one axis
        rz = s.m('ADD', s.m('MULTIPLY', r, kr), s.m('MULTIPLY', z, kz))
        return s(
            'CombineXYZ', X=rz, Y=s.m('MULTIPLY', s.m('DIVIDE', x, ri), kt), Z=s.m('MULTIPLY', s.m('DIVIDE', y, ri), kt)
        )

    def bump(s, h, strength=1.0, dist=0.01, nrm=None):
        k = dict(Height=h, Strength=strength, Distance=dist)
        if nrm is not None:
            k['Normal'] = nrm
        return s('Bump', **k)

    def out(s, bsdf):
        isw = not isinstance(s.id, bpy.types.Material)
        n = s.t.nodes.new('ShaderNodeOutputWorld' if isw else 'ShaderNodeOutputMaterial')
        s.t.links.new(bsdf, n.inputs[0])
        if not isw:  # base colour into an AOV: guide for the denoiser (GlossCol is plain white for Principled)
            p = bsdf.node
            if p.type == 'MIX_SHADER':
                k = next((l.from_node for l in p.inputs[1].links), None)
                f = p.inputs[0]
            else:
                k, f = p, None
            a = s.t.nodes.new('ShaderNodeOutputAOV')
            a.name = 'guide'
            c = k.inputs['Base Color']
            c = c.links[0].from_socket if c.is_linked else tuple(c.default_value)
            if f is not None and f.is_linked:
                c = s.mix(f.links[0].from_socket, c, (0.02, 0.02, 0.02))
            s.set(a.inputs['Color'], c)
        return s.id

    def tex(s, img, vec, scale=1.0, box=False, loc=(0, 0, 0), rot=(0, 0, 0)):
        """3 channels of a packed texture; scale = tiles per cm"""
        if not hasattr(scale, '__len__'):
            scale = (scale,) * 3
        v = s('Mapping', Vector=vec, Scale=scale, Location=loc, Rotation=rot)
        p = {'image': textures.get(img), 'interpolation': 'Linear'}
        if box:
            p.update(projection='BOX', projection_blend=0.25)
        s('SeparateColor', Color=s('TexImage', Vector=v, props=p))
        return list(s.last.outputs)

    def cyl(s, v):
        """(theta/2pi, r+z) - both tileable, for lathe marks and circumferential scores"""
        s('SeparateXYZ', Vector=v)
        x, y, z = s.last.outputs
        r = s.m('SQRT', s.m('ADD', s.m('MULTIPLY', x, x), s.m('MULTIPLY', y, y)))
        th = s.m('DIVIDE', s.m('ARCTAN2', y, x), TAU)
        return s('CombineXYZ', X=th, Y=s.m('ADD', r, z), Z=0.0), r, th, z
