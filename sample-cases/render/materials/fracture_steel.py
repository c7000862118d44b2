"""Fresh fracture of steel: bright where smeared, dull and grainy where torn, tinted at the rim."""
from studio.shader import Shader


def fracture_steel(name='fracture'):
    t = Shader(name)
    flat = t('CombineXYZ', X=t.attr('pu'), Y=t.attr('pv'), Z=0.0)
    smear, core, heat = t.attr('smear'), t.attr('core'), t.attr('htint')
    grain, blot, mid = t.tex('noise', flat, 1.1)
    fine, _, middle = t.tex('noise', flat, 0.45, loc=(0.3, 0.6, 0))
    lines, broad, _ = t.tex('lines', t.cyl(t.obj())[0], (1, 1.1, 1))
    base = t.mix(
        smear,
        t.mix(mid, (0.20, 0.195, 0.19), (0.36, 0.355, 0.35)),
        t.mix(broad, (0.46, 0.455, 0.45), (0.66, 0.655, 0.65)),
    )
    base = t.mix(core, base, t.mix(grain, (0.22, 0.215, 0.21), (0.42, 0.415, 0.41)))
    hot = t.m('MULTIPLY', heat, t.mixf(middle, 0.6, 1.2), clamp=True)
    tint = t.ramp(
        hot,
        [
            (0.0, (1, 1, 1)),
            (0.22, (1, 0.93, 0.74)),
            (0.40, (0.86, 0.64, 0.38)),
            (0.56, (0.55, 0.36, 0.34)),
            (0.72, (0.32, 0.28, 0.46)),
            (1.0, (0.2, 0.26, 0.45)),
        ],
    )
    base = t.mix(1.0, base, tint, 'MULTIPLY')
    base = t.mix(
        t.m('MULTIPLY', t.lin(t.m('ADD', blot, t.m('MULTIPLY', fine, 0.2)), 0.86, 1.05), 0.8),
        base,
        (0.03, 0.024, 0.016),
    )
    height = t.m(
        'ADD', t.m('MULTIPLY', grain, t.mixf(smear, 1.0, 0.25)), t.m('MULTIPLY', t.m('MULTIPLY', lines, smear), 0.6)
    )
    rough = t.mixf(smear, t.mixf(mid, 0.42, 0.60), t.mixf(lines, 0.22, 0.36))
    t.out(t('BsdfPrincipled', Base_Color=base, Metallic=1.0, Roughness=rough, Normal=t.bump(height, 0.45, 0.004)))
    return t.id
