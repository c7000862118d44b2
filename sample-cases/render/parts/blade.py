"""One blade: its camber sheet is damaged, thickened, closed at the tip, and given the burr that a contour rub rolls."""
import numpy as np

from parts.camber_sheet import CamberSheet, unit
from studio.meshes import grid_faces, grid_obj, mesh_obj
from studio.noise import n1, smoothstep, vnoise

ACROSS_TIP = 5  # points across the tip's face


def blade(wheel, angle, mstart=0.0, damage=(), rub=None, seed=0, mat=None, name='blade', bend_tip=None):
    """Meshes: the blade, and its burr where it was rubbed. `damage` and `rub` as CamberSheet says; bend_tip: m0, s0,
    ang (rad, along the normal)."""
    sheet = CamberSheet(wheel, angle, mstart, damage, rub, seed)
    sheet.strike()
    if bend_tip:
        sheet.fold(**bend_tip)
    _, normal = sheet.frame()
    half = _half_thickness(sheet)
    skin = 0.003 * vnoise(np.stack([sheet.M * 14, sheet.S * 8 + seed * 5], -1), seed + 3, 2)
    front, back = sheet.P + normal * (half + skin)[..., None], sheet.P - normal * half[..., None]
    things = [_body(sheet, front, back, mat, name)]
    if rub:
        things.append(_burr(sheet, rub, (front if rub['side'] > 0 else back)[:, -1], normal[:, -1], mat, name))
    return things


def _half_thickness(sheet):
    S, dist, w = sheet.S, sheet.dist, sheet.wheel
    full = (w.tt + (w.th - w.tt) * (1 - S) ** 1.3) * (1 - 0.2 * smoothstep(0.75, 1, sheet.U))
    leading = np.sqrt(np.clip(1 - (1 - np.clip(dist / (0.6 * full), 0, 1)) ** 2, 0, 1))
    left = np.max(dist, 0, keepdims=True) - dist
    trailing = np.sqrt(np.clip(1 - (1 - np.clip(left / (0.3 * full), 0, 1)) ** 2, 0.10, 1))
    root = 0.085 * np.exp(-S * 1.3 / 0.055) * np.clip(dist / 0.05, 0.15, 1)
    mushroom = sheet.mushroom * np.sqrt(np.clip(dist / 0.02, 0, 1))
    return 0.5 * full * leading * trailing + mushroom + root + 0.010 * sheet.rubbed


def _body(sheet, front, back, mat, name):
    S, M, dist, seed = sheet.S, sheet.M, sheet.dist, sheet.seed
    round_ = lambda a: np.concatenate([a[::-1], a[1:]], 0)  # noqa: E731
    skin = np.concatenate([front[::-1], back[1:]], 0)
    height = np.linalg.norm(sheet.P[:, -1:] - sheet.P[:, :1], axis=-1)
    marks = dict(m=round_(M), s=round_(S), dmg=round_(sheet.marked), rub=round_(sheet.rubbed), fu=round_(M))
    marks.update(fv=round_(S * 0.5 + seed * 0.137), pv=round_(S * height))
    marks['pu'] = np.concatenate([dist[::-1] + 5 * seed, 3.3 - dist[1:] + 5 * seed], 0)
    marks = {k: a.reshape(-1) for k, a in marks.items()}
    # the tip's face: its own texture coordinate runs across, or it would show stripes
    steps = np.linspace(0, 1, ACROSS_TIP)
    tip = np.stack([front[:, -1] + (back[:, -1] - front[:, -1]) * k for k in steps], 1)
    across = np.linalg.norm(tip - tip[:, :1], axis=-1) + 2.7 + seed
    for k, a in dict(m=M, s=S, dmg=sheet.marked, rub=sheet.rubbed, fu=M, fv=S * 0.5, pu=dist).items():
        marks[k] = np.r_[marks[k], np.repeat(a[:, -1:], ACROSS_TIP, 1).reshape(-1)]
    marks['pv'] = np.r_[marks['pv'], across.reshape(-1)]
    points = np.concatenate([skin.reshape(-1, 3), tip.reshape(-1, 3)])
    faces = [grid_faces(*skin.shape[:2], ci=True), grid_faces(len(tip), ACROSS_TIP, base=skin.shape[0] * skin.shape[1])]
    return mesh_obj(name, points, np.concatenate(faces), marks, mat, auto=50)


def _burr(sheet, rub, edge, normal, mat, name):
    """A thin lip out of one edge of the tip's face, rolled back over the blade's side."""
    m, up, seed = sheet.M[:, -1], sheet.B[:, -1], sheet.seed
    side = normal * rub['side']
    share = np.linspace(0, 1, 16)
    uneven = 0.45 + 0.75 * n1(m * 9 + seed, seed + 41, 3) + 0.30 * n1(m * 31 + seed, seed + 42, 2)
    width = rub['burr'] * sheet.window[:, -1] * np.clip(uneven, 0.0, 1.9)
    radius = np.maximum(0.026 + 0.014 * n1(m * 12, seed + 43), 0.010)[:, None]
    turn = np.minimum(share[None] * width[:, None] / radius, 4.2)
    lip = (edge - side * 0.008)[:, None] + side[:, None] * (radius * np.sin(turn) * 1.2)[..., None]
    lip = lip - up[:, None] * (radius * (1 - np.cos(turn)))[..., None]
    out = unit(np.cross(np.gradient(lip, axis=0), np.gradient(lip, axis=1)))
    thick = 0.008 * (1 - 0.75 * share)[None, :, None]
    both = np.concatenate([lip + out * thick, (lip - out * thick)[:, ::-1]], 1)
    m = m[:, None]
    marks = dict(m=m, s=1.0, dmg=0.0, rub=1.0, fu=m, fv=0.5, pu=m * 4, pv=0.3)
    return grid_obj(name + '_burr', both, mat=mat, cj=True, attrs=marks, auto=60)
