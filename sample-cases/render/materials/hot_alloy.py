"""Cast nickel alloy of the turbine wheel: scale and soot."""
from studio.shader import Shader


def hot_alloy(name='inconel', soot=0.8):
    t = Shader(name)
    puv = t('CombineXYZ', X=t.attr('pu'), Y=t.attr('pv'), Z=0.0)
    s, dmg, m, fu, fv, rub = (t.attr(k) for k in ('s', 'dmg', 'm', 'fu', 'fv', 'rub'))
    g, blot, mid = t.tex('noise', puv, 0.34)
    g2, b2, m2 = t.tex('noise', puv, 0.12, loc=(0.1, 0.7, 0))
    flow = t('CombineXYZ', X=t.m('MULTIPLY', fu, 0.6), Y=fv, Z=0.0)
    f1, f2, f3 = t.tex('noise', flow, (1, 2, 1))
    base = t.ramp(
        t.m('ADD', t.m('MULTIPLY', m, 0.45), t.m('MULTIPLY', b2, 0.55)),
        [(0.1, (0.30, 0.25, 0.20)), (0.45, (0.36, 0.27, 0.20)), (0.7, (0.26, 0.20, 0.17)), (0.95, (0.21, 0.20, 0.21))],
    )
    so = t.m(
        'MULTIPLY',
        t.lin(
            t.m(
                'ADD',
                t.m('MULTIPLY', t.m('SUBTRACT', 1.0, s), 0.55),
                t.m('ADD', t.m('MULTIPLY', f2, 0.45), t.m('MULTIPLY', mid, 0.35)),
            ),
            0.42,
            1.05,
        ),
        soot,
    )
    worn = t.m('MULTIPLY', rub, t.lin(t.m('ADD', mid, b2), 0.6, 1.4))
    fresh = t.lin(t.m('ADD', t.m('MAXIMUM', dmg, worn), t.m('MULTIPLY', t.m('SUBTRACT', mid, 0.5), 0.4)), 0.45, 0.8)
    so = t.m('MULTIPLY', so, t.m('SUBTRACT', 1.0, fresh))
    base = t.mix(so, base, (0.018, 0.016, 0.015))
    base = t.mix(t.m('MULTIPLY', fresh, 0.8), base, (0.55, 0.53, 0.50))
    lines = t.tex('lines', t.cyl(t.obj())[0], (1, 0.45, 1))[1]
    h = t.m('ADD', t.m('MULTIPLY', g, 1.0), t.m('MULTIPLY', mid, 0.9))
    h = t.mix(rub, h, t.m('MULTIPLY', lines, 1.5))
    rough = t.mixf(so, t.mixf(blot, 0.34, 0.48), 0.85)
    rough = t.mixf(fresh, rough, 0.28)
    t.out(
        t(
            'BsdfPrincipled',
            Base_Color=base,
            Metallic=t.mixf(so, 1.0, 0.0),
            Roughness=rough,
            Specular=0.3,
            Normal=t.bump(h, 0.55, 0.008),
        )
    )
    return t.id
