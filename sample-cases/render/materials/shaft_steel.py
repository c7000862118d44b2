"""Ground shaft steel: heat tint, bearing metal picked up, soot."""
from studio.shader import Shader


def shaft_steel(name='shaft'):
    t = Shader(name)
    v = t.obj()
    puv = t('CombineXYZ', X=t.attr('pu'), Y=t.attr('pv'), Z=0.0)
    jr, heat, soot = (t.attr(k) for k in ('jr', 'htint', 'soot'))
    g, blot, mid = t.tex('noise', puv, 0.31)
    g2, b2, m2 = t.tex('noise', puv, (0.10, 0.31, 1), loc=(0.1, 0.7, 0))
    sc, sp, li = t.tex('marks', puv, 0.31)
    cy = t.cyl(v)[0]
    l1, l2, l3 = t.tex('lines', cy, (1, 0.6, 1))
    k1, k2, k3 = t.tex('lines', cy, (2, 0.25, 1), loc=(0.2, 0.4, 0))
    base = t.mix(blot, (0.56, 0.55, 0.54), (0.64, 0.635, 0.63))
    ht = t.m('MULTIPLY', heat, t.mixf(m2, 0.80, 1.15), clamp=True)
    tint = t.ramp(
        ht,
        [
            (0.0, (1, 1, 1)),
            (0.18, (1, 0.93, 0.72)),
            (0.34, (0.86, 0.62, 0.30)),
            (0.48, (0.50, 0.27, 0.25)),
            (0.60, (0.26, 0.18, 0.42)),
            (0.74, (0.13, 0.20, 0.48)),
            (0.88, (0.28, 0.38, 0.50)),
            (1.0, (0.20, 0.20, 0.21)),
        ],
    )
    base = t.mix(1.0, base, tint, 'MULTIPLY')
    br = t.m('MULTIPLY', t.lin(t.m('ADD', k2, t.m('MULTIPLY', m2, 0.25)), 0.82, 0.98), jr)
    base = t.mix(t.m('MULTIPLY', br, 0.85), base, (0.60, 0.37, 0.17))  # bronze picked up
    dk = t.m('MULTIPLY', t.lin(k1, 0.72, 0.92), jr)
    base = t.mix(t.m('MULTIPLY', dk, 0.6), base, (0.05, 0.045, 0.04))
    so = t.m('MULTIPLY', soot, t.mixf(mid, 0.55, 1.0))
    base = t.mix(so, base, (0.03, 0.026, 0.022))
    smear = t.attr('smear')
    base = t.mix(
        t.m('MULTIPLY', smear, 0.9), base, t.mix(k1, (0.60, 0.60, 0.59), (0.84, 0.84, 0.83))
    )  # the wheel's aluminium
    h = t.mix(jr, t.m('MULTIPLY', l3, 0.35), t.m('ADD', t.m('MULTIPLY', k1, 2.2), t.m('MULTIPLY', k2, 2.0)))
    h = t.m('SUBTRACT', h, t.m('MULTIPLY', sc, 0.3))
    rough = t.mixf(jr, t.mixf(blot, 0.16, 0.26), 0.34)
    rough = t.mixf(so, rough, 0.7)
    t.out(
        t(
            'BsdfPrincipled',
            Base_Color=base,
            Metallic=t.mixf(so, 1.0, 0.2),
            Roughness=rough,
            Normal=t.bump(h, 0.5, 0.006),
        )
    )
    return t.id
