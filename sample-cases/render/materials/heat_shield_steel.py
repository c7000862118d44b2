"""Stainless sheet of the heat shield: oxide colours and soot, bare and bright where the wheel scored it."""
from studio.shader import Shader


def heat_shield_steel(name='shield'):
    t = Shader(name)
    v = t.obj()
    flat = t('CombineXYZ', X=t.attr('pu'), Y=t.attr('pv'), Z=0.0)
    heat, rub, soot, deep = (t.attr(k) for k in ('htint', 'rub', 'soot', 'deep'))
    grain, blot, mid = t.tex('noise', flat, 0.17)
    fine, broad, middle = t.tex('noise', flat, 0.06, loc=(0.2, 0.4, 0))
    lines, bands, thin = t.tex('lines', t.cyl(v)[0], (1, 0.35, 1))
    scratch, speck, _ = t.tex('marks', flat, 0.09)
    hot = t.m('MULTIPLY', heat, t.mixf(broad, 0.72, 1.22), clamp=True)
    oxide = t.ramp(
        hot,
        [
            (0.0, (0.52, 0.50, 0.47)),
            (0.22, (0.55, 0.44, 0.26)),
            (0.40, (0.40, 0.24, 0.13)),
            (0.54, (0.26, 0.15, 0.19)),
            (0.66, (0.12, 0.14, 0.27)),
            (0.80, (0.17, 0.19, 0.22)),
            (1.0, (0.13, 0.115, 0.10)),
        ],
    )
    base = t.mix(t.m('MULTIPLY', t.lin(mid, 0.5, 1.0), 0.45), oxide, (0.10, 0.085, 0.07))
    black = t.m('MULTIPLY', soot, t.mixf(middle, 0.3, 1.25), clamp=True)
    base = t.mix(black, base, (0.022, 0.019, 0.017))
    bare = t.m('MULTIPLY', rub, t.lin(t.m('ADD', lines, t.m('MULTIPLY', deep, 0.7)), 0.30, 0.62), clamp=True)
    base = t.mix(bare, base, t.mix(bands, (0.42, 0.40, 0.37), (0.66, 0.64, 0.60)))
    base = t.mix(t.m('MULTIPLY', speck, 0.5), base, (0.03, 0.025, 0.02))
    height = t.mix(
        rub,
        t.m('ADD', t.m('MULTIPLY', grain, 0.7), t.m('MULTIPLY', mid, 0.8)),
        t.m('ADD', t.m('MULTIPLY', lines, 2.0), t.m('MULTIPLY', thin, 0.7)),
    )
    height = t.m('SUBTRACT', height, t.m('MULTIPLY', scratch, 0.4))
    rough = t.mixf(black, t.mixf(blot, 0.36, 0.52), 0.8)
    rough = t.mixf(bare, rough, 0.27)
    metal = t.m('SUBTRACT', 1.0, t.m('MULTIPLY', black, t.m('SUBTRACT', 1.0, bare)))
    t.out(
        t(
            'BsdfPrincipled',
            Base_Color=base,
            Metallic=metal,
            Roughness=rough,
            Specular=0.3,
            Normal=t.bump(height, 0.55, 0.007),
        )
    )
    return t.id
