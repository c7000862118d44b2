"""Embossed rubber bench mat: scuffs, oil, dust, lint."""
from studio.shader import Shader


def bench_mat(name='mat', col=(0.075, 0.082, 0.086), stains=1.0, seed=0.0):
    """embossed grey rubber bench mat: pebble emboss, scuffs, oil patches and drops, dust, lint"""
    t = Shader(name)
    v = t('Mapping', Vector=t.obj(), Location=(seed * 3.71, seed * 1.93, 0), Rotation=(0, 0, 0.4))
    pb, pf, pl = t.tex('pebble', v, 0.30)
    g, blot, mid = t.tex('noise', v, 0.021)
    g2, b2, m2 = t.tex('noise', v, 0.083, loc=(0.31, 0.17, 0))
    sc, sp, li = t.tex('marks', v, 0.075)
    edge = t.m('ADD', blot, t.m('MULTIPLY', t.m('SUBTRACT', b2, 0.5), 0.06))
    oil = t.m('MULTIPLY', t.lin(edge, 0.895, 0.91), stains)
    halo = t.m('MULTIPLY', t.lin(edge, 0.82, 0.90), 0.5 * stains)
    c = t.mix(blot, tuple(x * 0.85 for x in col), tuple(x * 1.12 for x in col))
    c = t.mix(t.m('MULTIPLY', t.lin(m2, 0.55, 1.0), 0.22), c, tuple(x * 2.0 for x in col))
    c = t.mix(t.m('MULTIPLY', t.lin(b2, 0.6, 1.0), 0.25), c, tuple(x * 1.7 for x in col))  # worn, chalky
    c = t.mix(t.m('MULTIPLY', sc, 0.40), c, tuple(x * 2.8 for x in col))
    c = t.mix(t.m('MAXIMUM', oil, halo), c, (0.014, 0.012, 0.009))
    c = t.mix(t.m('MULTIPLY', t.m('MAXIMUM', sp, li), 0.55), c, (0.40, 0.38, 0.35))
    r = t.mixf(oil, t.mixf(m2, 0.50, 0.68), 0.14)
    h = t.m('ADD', pb, t.m('MULTIPLY', pf, 0.22))  # one look-up only: the bump node asks three times
    t.out(
        t('BsdfPrincipled', Base_Color=c, Roughness=r, Specular=0.35, Normal=t.bump(h, t.mixf(oil, 0.55, 0.28), 0.012))
    )
    return t.id
