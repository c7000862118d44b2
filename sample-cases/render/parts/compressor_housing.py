"""Compressor housing: inlet tract with dents and the nut's imprints, contour with a rub ring, diffuser face, volute.
The axis is z, the inlet at the top; radii and heights follow the compressor wheel of the case."""
import numpy as np

from parts.bladed_wheel import contour
from studio.meshes import TAU, grid_obj, lathe, resample, rounded
from studio.noise import n1, smoothstep, vnoise

INLET = 6.0  # height of the inlet's lip
BORE = 2.47  # at the inducer
INDUCER = 3.10  # height at which the tract begins
NUT = dict(across_flats=1.0, height=0.6)  # cm
CORNER_TO_CORNER = NUT['across_flats'] / np.sqrt(3)
# where the nut left its mark: angle, height, turn on the wall, depth
IMPRINTS = [
    dict(at=1.50, z=4.55, turn=0.35, depth=0.075),
    dict(at=1.98, z=3.95, turn=-0.55, depth=0.055),
    dict(at=1.10, z=5.10, turn=1.0, depth=0.05),
]


def wall_radius(z):
    return BORE + 0.055 * (np.asarray(z, float) - INDUCER)


def housing(machined, cast):
    """Things by name: tract, contour, outside."""
    return dict(
        tract=_tract(machined), contour=_contour(machined), volute=_volute(cast, machined), outside=_outside(cast)
    )


def _tract(mat, around=2000, up=420):
    z, T = np.meshgrid(
        np.linspace(INDUCER - 0.12, INLET, up), np.linspace(0, TAU, around, endpoint=False), indexing='ij'
    )
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
        deep, fresh = np.where(cut > 0, np.maximum(deep, 0) * 0.2 + cut, deep + cut), np.maximum(fresh, bright)
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
        back=1.0,
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
    """Two corners of the hexagon and the flat between them, pressed in slanting: depth and how fresh."""
    u, v = _on_wall(T, z, mark['at'], mark['z'], mark['turn'])
    half = NUT['height'] / 2
    tip = np.clip(0.35 + 0.65 * (v / (2 * half) + 0.5), 0, 1)
    within = smoothstep(-half - 0.004, -half + 0.012, v) * (1 - smoothstep(half - 0.012, half + 0.004, v))
    cut, bright = np.zeros_like(u), np.zeros_like(u)
    for shift, share in ((-CORNER_TO_CORNER / 2, 1.0), (CORNER_TO_CORNER / 2, 0.62)):
        depth = mark['depth'] * share * tip
        wedge = depth - np.abs(u - shift) * np.tan(np.radians(30))  # the hexagon's corner: 120 degrees between flats
        groove = np.clip(wedge, 0, None) * within
        reach = depth / np.tan(np.radians(30))
        lip = 0.16 * mark['depth'] * share * np.exp(-(((np.abs(u - shift) - reach - 0.018) / 0.020) ** 2)) * within
        cut = cut + groove - lip * (groove <= 0)
        bright = np.maximum(
            bright, np.maximum(smoothstep(0.0, 0.004, groove), 0.8 * (lip > 0.3 * 0.16 * mark['depth']))
        )
    end = 0.014 * np.exp(-(((v - half - 0.02) / 0.02) ** 2)) * (np.abs(u) < CORNER_TO_CORNER / 2 + 0.05)
    flat = within * (np.abs(u) < CORNER_TO_CORNER / 2) * 0.12
    return cut - end, np.maximum(bright, flat)


def _near(T, z, mark):
    u, v = _on_wall(T, z, mark['at'], mark['z'], mark['turn'])
    return ((np.abs(v) < NUT['height'] / 2 + 0.03) & (np.abs(u) < CORNER_TO_CORNER / 2 + 0.14)).astype(float)


def imprint_corners(mark):
    """The deep ends of the two corner grooves, in the housing's coordinates."""
    half, ends = NUT['height'] / 2 - 0.02, []
    for shift, share in ((-CORNER_TO_CORNER / 2, 1.0), (CORNER_TO_CORNER / 2, 0.62)):
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
        grows = 0.35 + 0.65 * ((T - 0.4) % TAU) / TAU
        grows = grows + (1 - smoothstep(0.0, 0.12, ((T - 0.4) % TAU))) * 0.65
        return R, 0.70 + (Z - 0.70) * np.where(Z > 0.70, grows, 1)

    scroll = lathe('scroll', resample(floor, 0.04), seg=512, mat=cast, fn=deeper, attrs=lambda R, Z, T: {}, auto=40)
    edge = resample(rounded([(6.62, -0.30), (6.66, -0.36), (7.5, -0.36), (7.55, -0.30), (7.55, 0.5)], 0.02), 0.02)

    def drilled(R, Z, T):
        turn = ((T + 0.2) % (TAU / 8)) - TAU / 16
        hole = np.hypot(turn * 7.1, R - 7.1) < 0.22
        return R, np.where(hole & (Z < -0.3), Z + 0.6, Z)

    def flat(R, Z, T):
        return dict(
            rub=0 * R,
            dmg=0 * R,
            back=1.0 + 0 * R,
            nose=0 * R,
            s=0.2 + 0 * R,
            m=0 * R,
            fu=R * 0.2,
            fv=T / TAU,
            pu=R,
            pv=T / TAU * 44 / 2.7778,
        )

    return [scroll, lathe('rim', edge, seg=1024, mat=machined, fn=drilled, attrs=flat, auto=40)]


def _outside(cast):
    line = [(2.90, INLET), (3.02, INLET + 0.03), (3.14, INLET - 0.08), (3.14, 5.55), (3.04, 5.45), (3.02, 4.4)]
    line += [(3.3, 3.9), (4.5, 3.5), (6.0, 3.3), (7.3, 2.4), (7.5, 1.0), (7.55, 0.5)]
    skin = resample(rounded(line, [0, 0.04, 0.05, 0.06, 0.06, 0.3, 0.3, 0.5, 0.8, 0.8, 0.3, 0], n=8), 0.05)
    profile = np.concatenate([[(wall_radius(INLET) + 0.215, INLET - 0.005)], skin])

    def scroll(R, Z, T):
        grows = 0.55 + 0.45 * ((T + 2.0) % TAU) / TAU
        return R, Z - smoothstep(4.4, 6.5, R) * (1 - grows) * 1.2

    return lathe('outside', profile, seg=384, mat=cast, fn=scroll, attrs=lambda R, Z, T: {}, auto=40)
