"""Zinc-plated, yellowish steel of pipe fittings, worn at the edges, oily."""
from studio.shader import Shader


def plated_steel(name='plated'):
    t = Shader(name)
    v = t.obj()
    flat = t('CombineXYZ', X=t.attr('pu'), Y=t.attr('pv'), Z=0.0)
    oil, bare = t.attr('oil'), t.attr('bare')
    grain, blot, mid = t.tex('noise', flat, 0.24)
    lines, bands, _ = t.tex('lines', t.cyl(v)[0], (1, 0.6, 1))
    scratch, speck, _ = t.tex('marks', flat, 0.22)
    base = t.mix(blot, (0.42, 0.34, 0.19), (0.50, 0.45, 0.30))
    base = t.mix(
        t.m('MULTIPLY', t.lin(t.m('ADD', bare, t.m('MULTIPLY', mid, 0.35)), 0.45, 0.8), 0.9), base, (0.60, 0.59, 0.575)
    )
    base = t.mix(t.m('MULTIPLY', scratch, 0.5), base, (0.72, 0.71, 0.69))
    dark = t.m('MULTIPLY', t.lin(t.m('ADD', oil, t.m('MULTIPLY', t.m('SUBTRACT', mid, 0.5), 0.8)), 0.35, 0.95), 0.85)
    base = t.mix(dark, base, (0.045, 0.030, 0.016))
    base = t.mix(t.m('MULTIPLY', speck, 0.6), base, (0.04, 0.03, 0.02))
    height = t.m('ADD', t.m('MULTIPLY', lines, 0.9), t.m('MULTIPLY', grain, 0.35))
    height = t.m('SUBTRACT', height, t.m('MULTIPLY', scratch, 0.5))
    rough = t.mixf(dark, t.mixf(blot, 0.26, 0.40), 0.22)
    t.out(
        t(
            'BsdfPrincipled',
            Base_Color=base,
            Metallic=t.mixf(dark, 1.0, 0.35),
            Roughness=rough,
            Normal=t.bump(height, 0.4, 0.006),
        )
    )
    return t.id
