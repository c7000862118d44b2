"""Cured red-brown silicone sealant, a little dusty and oily."""
from studio.shader import Shader


def sealant(name='sealant'):
    t = Shader(name)
    v = t.obj()
    grain, blot, mid = t.tex('noise', v, 0.5, box=True)
    speck = t.tex('marks', v, 0.35, box=True)[1]
    base = t.mix(blot, (0.115, 0.013, 0.009), (0.20, 0.028, 0.016))
    base = t.mix(t.m('MULTIPLY', t.lin(mid, 0.55, 1.0), 0.5), base, (0.035, 0.010, 0.007))
    base = t.mix(t.m('MULTIPLY', speck, 0.5), base, (0.03, 0.02, 0.015))
    rough = t.mixf(mid, 0.22, 0.44)
    height = t.m('ADD', t.m('MULTIPLY', grain, 0.3), mid)
    t.out(
        t(
            'BsdfPrincipled',
            Base_Color=base,
            Roughness=rough,
            Specular=0.45,
            Subsurface=0.03,
            Subsurface_Radius=(0.05, 0.015, 0.01),
            Subsurface_Color=(0.5, 0.1, 0.05),
            Normal=t.bump(height, 0.25, 0.006),
        )
    )
    return t.id
