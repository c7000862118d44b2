"""Sand-cast aluminium skin of a housing: the grain of the sand, pores, the parting line's flash, oil in the fillets,
scratches of handling; bright where `bare` says that a tool took the skin off."""
from studio.shader import Shader


def cast_aluminium(name='cast'):
    t = Shader(name)
    v = t.obj()
    grime, flash, bare = (t.attr(k) for k in ('grime', 'flash', 'bare'))
    grain, broad, mid = t.tex('noise', v, 0.14, box=True)
    sand, patch, _ = t.tex('noise', v, (0.055, 0.055, 0.055), box=True, loc=(0.3, 0.6, 0.1))
    scratch, speck, lint = t.tex('marks', v, 0.085, box=True)
    pore = t.lin(t.m('ADD', t.m('MULTIPLY', mid, 0.7), t.m('MULTIPLY', grain, 0.3)), 0.86, 0.92)
    base = t.mix(
        t.m('ADD', t.m('MULTIPLY', grain, 0.6), t.m('MULTIPLY', sand, 0.4)), (0.26, 0.26, 0.255), (0.50, 0.50, 0.49)
    )
    base = t.mix(t.m('MULTIPLY', pore, 0.7), base, (0.12, 0.11, 0.10))
    oily = t.m('MULTIPLY', grime, t.lin(t.m('ADD', patch, t.m('MULTIPLY', mid, 0.5)), 0.25, 1.1))
    oily = t.m('MAXIMUM', oily, t.m('MULTIPLY', t.lin(patch, 0.72, 0.95), 0.45))
    base = t.mix(t.m('MULTIPLY', oily, 0.75), base, (0.13, 0.105, 0.075))
    base = t.mix(t.m('MULTIPLY', t.m('MAXIMUM', speck, lint), 0.35), base, (0.30, 0.28, 0.25))
    worn = t.m('MAXIMUM', t.m('MULTIPLY', scratch, 0.8), t.m('MULTIPLY', flash, 0.35))
    worn = t.m('MAXIMUM', worn, bare)
    base = t.mix(worn, base, (0.74, 0.74, 0.73))
    height = t.m('ADD', t.m('MULTIPLY', grain, 0.8), t.m('ADD', t.m('MULTIPLY', sand, 0.7), t.m('MULTIPLY', mid, 0.5)))
    height = t.m('SUBTRACT', height, t.m('ADD', t.m('MULTIPLY', pore, 0.9), t.m('MULTIPLY', scratch, 0.6)))
    lines = t.tex('lines', v, (0.02, 0.9, 1), box=True)[1]
    height = t.mix(bare, height, t.m('MULTIPLY', lines, 0.25))
    rough = t.mixf(worn, t.mixf(grain, 0.46, 0.62), 0.30)
    rough = t.m('SUBTRACT', rough, t.m('MULTIPLY', oily, 0.14))
    t.out(t('BsdfPrincipled', Base_Color=base, Metallic=0.8, Roughness=rough, Normal=t.bump(height, 0.6, 0.02)))
    return t.id
