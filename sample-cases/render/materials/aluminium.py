"""Cast and milled aluminium with a film of oil and dust; bare where it was struck or rubbed."""
from studio.shader import Shader


def aluminium(dirt=0.7, name='alu', turned_dirt=0.28):
    t = Shader(name)
    v = t.obj()
    s, m, dmg, rub, nose, back, fu, fv = (t.attr(k) for k in ('s', 'm', 'dmg', 'rub', 'nose', 'back', 'fu', 'fv'))
    puv = t('CombineXYZ', X=t.attr('pu'), Y=t.attr('pv'), Z=0.0)
    grain, blot, mid = t.tex('noise', puv, 0.36)
    flow = t('CombineXYZ', X=t.m('MULTIPLY', fu, 0.55), Y=t.m('MULTIPLY', fv, 1.0), Z=0.0)
    f1, f2, f3 = t.tex('noise', flow, (1, 2, 1))  # streaks of oil and dust that follow the flow
    cy = t.cyl(v)[0]
    l1, l2, l3 = t.tex('lines', cy, (1, 0.45, 1))
    sc, sp, li = t.tex('marks', puv, 0.12)
    turned = t.m('MAXIMUM', nose, back)
    hm = t.mix(turned, t.m('ADD', t.m('MULTIPLY', grain, 0.9), t.m('MULTIPLY', mid, 0.7)), t.m('MULTIPLY', l2, 1.5))
    hr = t.mix(t.m('MAXIMUM', rub, t.m('MULTIPLY', dmg, 0.35)), hm, t.m('MULTIPLY', l2, 1.8))
    nrm = t.bump(t.m('SUBTRACT', hr, t.m('MULTIPLY', sc, 0.5)), 0.5, 0.006)
    fil = t.ramp(s, [(0.0, 1.0), (0.06, 0.80), (0.16, 0.50), (0.5, 0.36), (1.0, 0.24)], 'EASE')
    dm = t.m(
        'MULTIPLY',
        fil,
        t.m('ADD', t.m('ADD', t.m('MULTIPLY', f2, 0.75), t.m('MULTIPLY', f3, 0.35)), t.m('MULTIPLY', mid, 0.25)),
    )
    dm = t.m('MULTIPLY', t.lin(dm, 0.20, 0.95), t.mixf(turned, dirt, turned_dirt), clamp=True)
    dm = t.m('MAXIMUM', dm, t.m('MULTIPLY', sp, 0.6 * dirt))
    fresh = t.m('MAXIMUM', rub, t.lin(t.m('ADD', dmg, t.m('MULTIPLY', t.m('SUBTRACT', mid, 0.5), 0.5)), 0.2, 0.55))
    dm = t.m('MULTIPLY', dm, t.m('SUBTRACT', 1.0, t.m('MULTIPLY', fresh, 0.95)))
    base = t.mix(blot, (0.56, 0.56, 0.55), (0.68, 0.68, 0.67))
    base = t.mix(t.m('MULTIPLY', turned, 0.6), base, (0.48, 0.48, 0.48))
    base = t.mix(fresh, base, (0.90, 0.90, 0.90))
    rough = t.m('ADD', t.mixf(blot, 0.27, 0.40), t.m('MULTIPLY', t.m('SUBTRACT', grain, 0.5), 0.12))
    rough = t.m('ADD', rough, t.m('MULTIPLY', turned, 0.06))
    rough = t.mixf(fresh, rough, 0.22)
    # dirt as a thin film: darkens/tints the metal and roughens it; the thick part becomes a dielectric
    film = t.mix(dm, (1, 1, 1), (0.30, 0.22, 0.13))
    base = t.mix(1.0, base, film, 'MULTIPLY')
    t.out(
        t(
            'BsdfPrincipled',
            Base_Color=base,
            Metallic=t.mixf(t.lin(dm, 0.45, 0.95), 1.0, 0.25),
            Roughness=t.m('ADD', rough, t.m('MULTIPLY', dm, 0.15)),
            Specular=0.5,
            Normal=nrm,
        )
    )
    return t.id
