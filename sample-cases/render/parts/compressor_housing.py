"""Compressor housing: inlet tract with dents and the nut's imprints, contour with a rub ring, diffuser face, volute.
The axis is z, the inlet at the top; radii and heights follow the compressor wheel of the case."""
import numpy as np

from parts.bladed_wheel import contour
from parts.housing_casting import LAND, OUTLET, casting, grown
from studio.meshes import TAU, grid_obj, lathe, resample, rounded
from studio.noise import n1, smoothstep, vnoise

INLET = 6.0  # height of the inlet's lip
BORE = 2.47  # at the inducer
INDUCER = 3.10  # height at which the tract begins
NUT = dict(across_flats=1.0, height=0.6)  # cm
CORNER_TO_CORNER = NUT['across_flats'] / np.sqrt(3)
IMPRINTED = (0.75, 2.35)  # angles between which the mesh is fine
# where the nut left its mark: angle, height, turn on the wall, depth; how deep each of the two corners went, of that; how
# deep the shallow end is, of the deep one; how strongly the nut's end face is printed; how far the corners slid, cm
IMPRINTS = [
    dict(at=1.50, z=4.55, turn=0.35, depth=0.088, shares=(1.0, 0.72), tip=0.45, end=0.9, skid=0.10),
    dict(at=1.98, z=3.95, turn=-0.55, depth=0.066, shares=(0.55, 1.0), tip=0.05, end=0.15, skid=0.22),
    dict(at=1.10, z=5.10, turn=1.0, depth=0.046, shares=(1.0, 0.35), tip=0.25, end=0.45, skid=0.05),
]


def wall_radius(z):
    return BORE + 0.055 * (np.asarray(z, float) - INDUCER)


def housing(machined, cast):
    """Things by name: tract, contour, outside."""
    return dict(
        tract=_tract(machined),
        contour=_contour(machined),
        volute=_volute(cast, machined),
        outside=[*casting(cast, _hollow), _land(machined)],
    )


def _tract(mat, around=1000, about_imprints=1500, up=560):
    turn = np.concatenate(
        [
            np.linspace(*IMPRINTED, about_imprints, endpoint=False),
            np.linspace(IMPRINTED[1], IMPRINTED[0] + TAU, around, endpoint=False),
        ]
    )
    z, T = np.meshgrid(np.linspace(INDUCER - 0.12, INLET, up), turn, indexing='ij')
    R = wall_radius(z) + 0.22 * smoothstep(INLET - 0.3, INLET, z) ** 2
    deep, fresh = np.zeros_like(R), np.zeros_like(R)
    rng = np.random.default_rng(11)
    for _ in range(46):
        a, h = rng.uniform(0, TAU), INDUCER + 0.15 + rng.beta(1.3, 2.0) * 2.6
        u, v = _on_wall(T, z, a, h, rng.normal(0.55, 0.45))
        long, wide, depth = rng.uniform(0.06, 0.30), rng.uniform(0.035, 0.11), rng.uniform(0.010, 0.050)
        ragged = 1 + 0.22 * n1(np.arctan2(v / wide, u / long) * 1.5 + a, 3, 2)
        rho = np.hypot(u / long, v / wide) * ragged
        deep += depth * np.clip(1 - rho**2, 0, 1) ** 0.8 - 0.35 * depth * np.exp(
            -(((rho - 1.15) / 0.16) ** 2)
        ) * np.clip(u / long, -0.2, 1)
        fresh = np.maximum(fresh, 1 - smoothstep(0.85, 1.2, rho))
    dents = fresh.copy()
    for mark in IMPRINTS:
        cut, bright = _nut_imprint(T, z, mark)
        struck = smoothstep(0.0, 0.02, np.abs(cut))
        deep, fresh = deep * (1 - 0.8 * struck) + cut, np.maximum(fresh, bright)
    side = (1 - smoothstep(INDUCER + 0.02, INDUCER + 0.16 + 0.05 * n1(T * 2, 4, 2), z)) * np.clip(
        0.75 + 0.35 * np.cos(T - 1.2), 0, 1
    )
    R = R + deep + side * (0.006 * n1(z * 45 + 0.15 * n1(T * 2, 5, 1), 6, 3))
    V = np.stack([R * np.cos(T), R * np.sin(T), z], -1)
    nut = np.max([_near(T, z, m) for m in IMPRINTS], 0)
    dents = dents * (1 - nut)
    marks = dict(
        dmg=fresh,
        rub=side,
        nut=nut,
        dent=dents,
        back=1.0 - 0.9 * np.maximum(nut, dents) * fresh,  # no lathe lines in metal that was displaced
        nose=0.0,
        s=0.14,
        m=0.2,
        fu=z * 0.3,
        fv=T / TAU,
        pu=z,
        pv=T / TAU * 44 / 2.7778,
    )
    return grid_obj('tract', V, cj=True, mat=mat, attrs=marks, auto=50)


def _on_wall(T, z, angle, height, turn):
    """Coordinates on the wall about a place, turned by an angle: cm, cm."""
    a = ((T - angle + np.pi) % TAU - np.pi) * wall_radius(height)
    b = z - height
    return a * np.cos(turn) + b * np.sin(turn), -a * np.sin(turn) + b * np.cos(turn)


def _nut_imprint(T, z, mark):
    """Two corners of the hexagon and the edge of its end face, pressed in slanting: depth and how fresh. No two alike: a
    corner slides before it bites, metal rises beside it on the side it slides to, its flanks are torn."""
    u, v = _on_wall(T, z, mark['at'], mark['z'], mark['turn'])
    seed = int(mark['at'] * 100)
    place = np.stack([u * 9, v * 9], -1)
    ragged = vnoise(place, seed, 3)
    u = u + 0.016 * vnoise(place * 0.6, seed + 1, 2)
    v = v + 0.020 * vnoise(place * 0.8, seed + 2, 2)
    half = NUT['height'] / 2
    tip = mark['tip'] + (1 - mark['tip']) * np.clip(v / (2 * half) + 0.5, 0, 1) ** 1.2
    cut, bright = np.zeros_like(u), np.zeros_like(u)
    for k, (shift, share) in enumerate(zip((-CORNER_TO_CORNER / 2, CORNER_TO_CORNER / 2), mark['shares'])):
        starts = -half + 0.25 * (1 - share) * (1 + k)
        within = smoothstep(starts - 0.02, starts + 0.05, v) * (1 - smoothstep(half - 0.016, half + 0.008, v))
        depth = mark['depth'] * share * tip * (1 + 0.18 * ragged)
        slid = np.where(u < shift, np.clip(shift - u - mark['skid'] * (v + half), 0, None), (u - shift) * 1.25)
        wedge = depth - slid * np.tan(np.radians(30))  # the hexagon's corner: 120 degrees between flats
        groove = np.logaddexp(0, wedge / 0.004) * 0.004 * within * (wedge > -0.03)
        reach = 0.8 * depth / np.tan(np.radians(30)) + 0.014
        beside = np.exp(-(((u - shift - reach) / (0.022 + 0.012 * ragged)) ** 2))
        before = np.exp(-(((shift - u - mark['skid'] * (v + half) - reach - 0.01) / 0.018) ** 2))
        lip = 0.34 * depth * np.clip(1 + 0.8 * ragged, 0, 2) * within * (beside + 0.35 * before)
        torn = 0.006 * vnoise(np.stack([u * 60, v * 14], -1), seed + 3 + k, 2) * smoothstep(0.01, 0.03, groove)
        cut = np.maximum(cut, groove) + torn - lip * smoothstep(0.012, 0.0, groove)
        bright = np.maximum(
            bright,
            np.maximum(smoothstep(0.004, 0.012, groove), 0.9 * smoothstep(0.25, 0.6, lip / (0.34 * mark['depth']))),
        )
    across = (np.abs(u) < CORNER_TO_CORNER / 2 + 0.03) * np.clip(
        mark['end'] + 0.5 * vnoise(u[..., None] * 7, seed, 2), 0, 1
    )
    end = 0.020 * np.exp(-(((v - half - 0.022) / 0.022) ** 2)) * across
    print_ = 0.010 * np.exp(-(((v - half + 0.012) / 0.016) ** 2)) * across
    flat = (np.abs(u) < CORNER_TO_CORNER / 2) * (np.abs(v) < half) * np.clip(0.10 + 0.22 * ragged, 0, 0.4)
    return cut + print_ - end, np.maximum(bright, np.maximum(flat, 0.7 * smoothstep(0.006, 0.014, end)))


def _near(T, z, mark):
    u, v = _on_wall(T, z, mark['at'], mark['z'], mark['turn'])
    return ((np.abs(v) < NUT['height'] / 2 + 0.03) & (np.abs(u) < CORNER_TO_CORNER / 2 + 0.14)).astype(float)


def imprint_corners(mark):
    """The deep ends of the two corner grooves, in the housing's coordinates."""
    half, ends = NUT['height'] / 2 - 0.02, []
    for shift, share in zip((-CORNER_TO_CORNER / 2, CORNER_TO_CORNER / 2), mark['shares']):
        u, v, turn = shift, half, mark['turn']
        a, b = u * np.cos(turn) - v * np.sin(turn), u * np.sin(turn) + v * np.cos(turn)
        angle, height = mark['at'] + a / wall_radius(mark['z']), mark['z'] + b
        r = wall_radius(height) + 0.85 * mark['depth'] * share
        ends.append((r * np.cos(angle), r * np.sin(angle), height))
    return ends


def _contour(mat):
    curve = contour(2.42, 3.4, 3.05, 0.72, p=1.0, q=0.9, n=420)[0] + [0.045, 0.0]
    profile = np.concatenate(
        [[(BORE + 0.0, INDUCER - 0.115)], curve[2:], resample(np.array([(3.46, 0.70), (5.0, 0.70)]), 0.02)]
    )
    step = np.r_[0, np.cumsum(np.hypot(*np.diff(profile, axis=0).T))]

    def rub(R, Z, T):
        band = smoothstep(3.02, 2.80, Z) * smoothstep(0.80, 1.05, Z) * (R < 3.5)
        heavy = 0.62 + 0.38 * np.cos(T - 0.9)
        ragged = band * smoothstep(
            0.20,
            0.45,
            heavy + 0.55 * vnoise(np.stack([Z * 5, 2 * np.cos(T), 2 * np.sin(T)], -1), 7, 3) + 0.35 * n1(Z * 16, 8, 3),
        )
        return ragged, heavy * band

    def shape(R, Z, T):
        ragged, heavy = rub(R, Z, T)
        scores = 0.011 * n1(Z * 22 + 0.10 * n1(T * 3, 2, 1), 9, 4) + 0.006 * n1(Z * 70, 10, 2)
        return R + ragged * (0.012 * heavy + scores), Z

    def attributes(R, Z, T):
        ragged, _ = rub(R, Z, T)
        arc = np.repeat(step[:, None], R.shape[1], 1)
        return dict(
            rub=ragged,
            dmg=0 * R,
            back=1.0 + 0 * R,
            nose=0 * R,
            s=0.12 + 0 * R,
            m=0.4 + 0 * R,
            fu=arc * 0.3,
            fv=T / TAU * 2,
            pu=arc + 7,
            pv=T / TAU * 44 / 2.7778,
        )

    return lathe('contour', profile, seg=1400, mat=mat, fn=shape, attrs=attributes, auto=50)


def _volute(cast, machined):
    """The open scroll beyond the diffuser, and the rim with its bolt holes."""
    floor = rounded(
        [(5.0, 0.70), (5.03, 0.9), (5.15, 1.9), (5.8, 2.35), (6.5, 1.9), (6.62, 0.6), (6.62, -0.32)],
        [0, 0.1, 0.5, 0.6, 0.5, 0.2, 0],
        n=8,
    )

    def deeper(R, Z, T):
        p = grown(T)
        grows = 0.35 + 0.65 * p * (1 - smoothstep(0.985, 1.0, p))  # the tongue stands where the scroll leaves
        return R, 0.70 + (Z - 0.70) * np.where(Z > 0.70, grows, 1)

    scroll = lathe('scroll', resample(floor, 0.04), seg=512, mat=cast, fn=deeper, attrs=lambda R, Z, T: {}, auto=40)
    edge = resample(
        rounded(
            [(6.62, -0.30), (6.66, -0.36), (7.5, -0.36), (7.55, -0.30), (7.55, 0.46), (7.50, 0.505), (7.44, 0.505)],
            0.02,
        ),
        0.02,
    )

    def drilled(R, Z, T):
        turn = ((T + 0.2) % (TAU / 8)) - TAU / 16
        hole = np.hypot(turn * 7.1, R - 7.1) < 0.22
        return R, np.where(hole & (Z < -0.3), Z + 0.6, Z)

    return [scroll, lathe('rim', edge, seg=1024, mat=machined, fn=drilled, attrs=_turned, auto=40)]


def _turned(R, Z, T):
    marks = dict(rub=0 * R, dmg=0 * R, back=1.0 + 0 * R, nose=0 * R, s=0.2 + 0 * R, m=0 * R)
    return dict(**marks, fu=R * 0.2, fv=T / TAU, pu=R + 1.3 * Z, pv=T / TAU * 44 / 2.7778)


def _land(mat):
    """The lip and the hose's land, turned on the inlet pipe."""
    line = [(2.845, INLET - 0.004), (2.99, INLET), (3.04, 5.95), (3.05, 5.86), (3.13, 5.78), (3.13, 5.64), (3.04, 5.54)]
    line += [(3.035, LAND + 0.03), (3.02, LAND - 0.03)]
    profile = resample(rounded(line, [0, 0.02, 0.03, 0.04, 0.05, 0.05, 0.04, 0.02, 0], n=5), 0.02)

    def knocked(R, Z, T):
        round_ = np.stack([3 * np.cos(T), 3 * np.sin(T), Z], -1)
        nick = smoothstep(0.62, 0.86, vnoise(round_ * 2.2, 4, 2)) * smoothstep(INLET - 0.12, INLET - 0.02, Z)
        return R - 0.03 * nick * (R > 2.9), Z - 0.025 * nick * (R > 2.9)

    return lathe('land', profile, seg=1400, mat=mat, fn=knocked, attrs=_turned, auto=40)


def _hollow(r, z, T):
    """A field, positive where the machined insides and the scroll lie, for the casting to leave free."""
    p = grown(T)
    grows = 0.35 + 0.65 * p
    inside = np.interp(
        r, [2.5, 2.75, 3.4, 4.95, 5.05, 5.2, 5.8, 6.5, 6.66, 6.70], [3.1, 1.9, 0.8, 0.75, 1.2, 2.0, 2.4, 2.0, 0.9, -9]
    )
    ceiling = np.where(inside > 0.8, 0.70 + (inside - 0.70) * np.where(r > 4.95, grows, 1), inside) + 0.06
    bore = np.where(z > INDUCER - 0.2, wall_radius(z) + 0.17, 2.6) - r
    return np.maximum(bore, np.where(z < 3.2, ceiling - z, -9))
