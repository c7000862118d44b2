"""Oil feed union from above: the bore half closed by sealant. The camera is held upright."""
from materials.plated_steel import plated_steel
from materials.sealant import sealant
from parts.bench import bench_with_rule
from parts.feed_union import BORE, TOP, feed_union, sealant_in_bore
from studio.stage import COOL, PLAIN, WARM, camera, lamp, place, room
from studio.truth import Truth


def build(shot):
    truth = Truth('oil-feed', 'into-bore', boreDiameterMm=20 * BORE, shareClosed='about one half')
    room(0.6, 0.35)
    union, lump = feed_union(plated_steel()), sealant_in_bore(sealant(), 4)
    body = place([union, lump], (0, 0, 0), (0, 0, 2.35))
    bench_with_rule(truth, (-1.9, -2.9), 0.5, 8.3, 1.0, (10, 30))
    truth.point('bore-0', body, (BORE, 0, TOP - 0.32))
    truth.point('bore-180', body, (-BORE, 0, TOP - 0.32))
    truth.scale('bore-0', 'bore-180', 20 * BORE)
    truth.ring('narrowed', 'union', body, (BORE, TOP - 0.32), (0.64, TOP))
    truth.damage('sealant-left', 'union', [lump], 'plug', 0.5)
    truth.damage('sealant-left', 'union', [lump], 'all', 0.5, note='all of it, with what stuck to seat and thread')
    lamp('key', (-12, 10, 30), (0, 0, 2), 34, 9000, WARM, 10)
    lamp('window', (30, 8, 16), (0, 0, 2), 26, 4500, COOL, 26)
    lamp('front', (2, -22, 24), (0, 0, 2), 16, 1800, PLAIN, 8)
    camera((-1.6, -6.4, 14.5), (0.05, -0.55, 2.2), lens=112, fstop=32, focus=(0, -0.1, 2.95), roll=0.03)
    return truth
