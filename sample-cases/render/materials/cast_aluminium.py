"""Sand-cast aluminium skin of a housing: grainy, dull, stained."""
from studio.shader import Shader


def cast_aluminium(name='cast'):
    t = Shader(name)
    v = t.obj()
    grain, blot, mid = t.tex('noise', v, 0.22, box=True)
    speck = t.tex('marks', v, 0.10, box=True)[1]
    base = t.mix(blot, (0.34, 0.34, 0.335), (0.48, 0.48, 0.47))
    base = t.mix(t.m('MULTIPLY', t.lin(mid, 0.62, 1.0), 0.6), base, (0.20, 0.165, 0.12))
    base = t.mix(t.m('MULTIPLY', speck, 0.6), base, (0.06, 0.05, 0.04))
    height = t.m('ADD', grain, t.m('MULTIPLY', mid, 1.2))
    rough = t.mixf(grain, 0.42, 0.62)
    t.out(t('BsdfPrincipled', Base_Color=base, Metallic=0.85, Roughness=rough, Normal=t.bump(height, 0.8, 0.02)))
    return t.id
