"""Bearing bronze: tarnish, heat tint, smears, coke in the scores."""
from studio.shader import Shader


def bronze(name='bronze', dirt=0.5):
    t = Shader(name)
    v = t.obj()
    wear, smear, heat, pad, hole, gr = (t.attr(k) for k in ('wear', 'smear', 'htint', 'pad', 'hole', 'groove'))
    puv = t('CombineXYZ', X=t.attr('pu'), Y=t.attr('pv'), Z=0.0)
    g, blot, mid = t.tex('noise', puv, 0.31)
    g2, b2, m2 = t.tex('noise', puv, 0.11, loc=(0.4, 0.2, 0))
    sc, sp, li = t.tex('marks', puv, 0.17)
    cy, r, th, z = t.cyl(v)
    l1, l2, l3 = t.tex('lines', cy, (1, 0.5, 1))
    k1, k2, k3 = t.tex('lines', cy, (3, 0.22, 1), loc=(0.1, 0.3, 0))
    used = t.m('MAXIMUM', wear, smear)
    base = t.mix(blot, (0.60, 0.36, 0.15), (0.70, 0.44, 0.20))
    tarn = t.m(
        'MULTIPLY',
        t.lin(t.m('ADD', b2, t.m('MULTIPLY', mid, 0.3)), 0.55, 1.2),
        t.m('SUBTRACT', 1.0, t.m('MULTIPLY', pad, 0.55)),
    )
    base = t.mix(t.m('MULTIPLY', tarn, dirt), base, (0.26, 0.15, 0.075))  # tarnish off the pads
    base = t.mix(
        t.m('MULTIPLY', used, 0.8), base, t.mix(k1, (0.72, 0.42, 0.20), (0.80, 0.52, 0.29))
    )  # fresh copper-bright smeared metal
    ht = t.m('MULTIPLY', heat, t.mixf(m2, 0.55, 1.25), clamp=True)
    tint = t.ramp(
        ht,
        [
            (0.0, (1, 1, 1)),
            (0.30, (1.0, 0.86, 0.62)),
            (0.52, (0.72, 0.40, 0.28)),
            (0.66, (0.42, 0.28, 0.42)),
            (0.78, (0.22, 0.26, 0.44)),
            (1.0, (0.10, 0.09, 0.09)),
        ],
    )
    base = t.mix(1.0, base, tint, 'MULTIPLY')
    base = t.mix(
        t.m('MULTIPLY', t.lin(t.m('MULTIPLY', t.m('ADD', k2, 0.0), used), 0.72, 0.9), 0.6), base, (0.05, 0.04, 0.035)
    )  # soot / coke in the scores
    base = t.mix(t.m('MULTIPLY', sp, dirt), base, (0.04, 0.03, 0.02))
    base = t.mix(hole, base, (0.03, 0.02, 0.012))
    h = t.mix(
        used,
        t.m('ADD', t.m('MULTIPLY', l3, 0.8), t.m('MULTIPLY', g, 0.2)),
        t.m('ADD', t.m('MULTIPLY', k1, 1.6), t.m('MULTIPLY', k2, 2.2)),
    )
    h = t.m('SUBTRACT', h, t.m('MULTIPLY', sc, 0.4))
    rough = t.mixf(used, t.mixf(blot, 0.24, 0.36), t.mixf(k2, 0.22, 0.45))
    rough = t.m('ADD', rough, t.m('MULTIPLY', tarn, 0.15))
    t.out(
        t(
            'BsdfPrincipled',
            Base_Color=base,
            Metallic=t.mixf(hole, 1.0, 0.0),
            Roughness=rough,
            Normal=t.bump(h, 0.5, 0.006),
        )
    )
    return t.id
