"""Tileable textures made with numpy, packed three to an image: a look-up costs a quarter of node noise."""
import math
import os

import bpy
import numpy as np
from scipy.special import erf
from PIL import Image, ImageDraw

from workplace import WORK


def uni(x):
    x = x - x.mean()
    x = x / (x.std() + 1e-9)
    return (0.5 + 0.5 * erf(x / math.sqrt(2))).astype(np.float32)  # uniform in 0..1: threshold = area fraction


def spec(n, beta, lo, hi, seed, ax=1.0, ay=1.0):
    """tileable 1/f^beta noise, band lo..hi cycles per tile; ax, ay stretch"""
    rng = np.random.default_rng(seed)
    F = np.fft.rfft2(rng.standard_normal((n, n)).astype(np.float32))
    ky = np.fft.fftfreq(n, 1 / n)[:, None] * ay
    kx = np.fft.rfftfreq(n, 1 / n)[None] * ax
    k = np.hypot(kx, ky)
    k[0, 0] = 1
    A = k ** (-beta) / (1 + (lo / k) ** 6) / (1 + (k / hi) ** 6)
    A[0, 0] = 0
    return uni(np.fft.irfft2(F * A, s=(n, n)))


def image(name, R, G, B):
    n, m = R.shape
    im = bpy.data.images.new(name, m, n, float_buffer=True, is_data=True)
    px = np.ones((n, m, 4), np.float32)
    px[..., 0] = R
    px[..., 1] = G
    px[..., 2] = B
    im.pixels.foreach_set(px.ravel())
    im.update()
    return im


def _channels(name):
    n = 2048
    if name == 'noise':
        return (spec(n, 0.6, 60, 500, 1), spec(n, 1.9, 1.5, 400, 2), spec(n, 1.1, 12, 500, 3))
    elif name == 'lines':
        return (spec(n, 0.4, 40, 700, 4, ax=90), spec(n, 0.9, 8, 300, 5, ax=40), spec(n, 0.5, 20, 900, 6, ax=400))
    elif name == 'marks':
        rng = np.random.default_rng(8)
        S = 2
        out = []
        a = Image.new('L', (n * S, n * S), 0)
        d = ImageDraw.Draw(a)
        for _ in range(420):  # thin random scratches
            x, y = rng.uniform(0, n * S, 2)
            an = rng.normal(0.5, 0.7) if rng.random() < 0.7 else rng.uniform(0, 6.28)
            l = rng.gamma(1.5, 160) * S
            c = rng.normal(0, 0.25)
            p = [(x + l * t * math.cos(an + c * t), y + l * t * math.sin(an + c * t)) for t in np.linspace(0, 1, 12)]
            v = int(rng.uniform(50, 255))
            wd = 1 if rng.random() < 0.7 else int(rng.uniform(2, 5))
            for ox in (-n * S, 0, n * S):
                for oy in (-n * S, 0, n * S):
                    d.line([(q[0] + ox, q[1] + oy) for q in p], fill=v, width=wd)
        out.append(np.asarray(a.resize((n, n), Image.BOX), np.float32) / 255)
        a = Image.new('L', (n * S, n * S), 0)
        d = ImageDraw.Draw(a)
        for _ in range(1500):  # specks of dust and grit
            x, y = rng.uniform(0, n * S, 2)
            r = rng.gamma(1.2, 1.6) * S
            k = rng.uniform(0.5, 1.2, 7)
            p = [(x + r * k[i] * math.cos(i * 0.9), y + r * k[i] * math.sin(i * 0.9)) for i in range(7)]
            d.polygon(p, fill=int(rng.uniform(90, 255)))
        out.append(np.asarray(a.resize((n, n), Image.BOX), np.float32) / 255)
        a = Image.new('L', (n * S, n * S), 0)
        d = ImageDraw.Draw(a)
        for _ in range(26):  # lint fibres
            x, y, an = *rng.uniform(0, n * S, 2), rng.uniform(0, 6.28)
            k = rng.normal(0, 0.06)
            p = []
            for _i in range(int(rng.uniform(15, 60))):
                p.append((x, y))
                x += 5 * S * math.cos(an)
                y += 5 * S * math.sin(an)
                an += k
                k += rng.normal(0, 0.03)
            d.line(p, fill=int(rng.uniform(120, 255)), width=2)
        out.append(np.asarray(a.resize((n, n), Image.BOX), np.float32) / 255)
        return out
    elif name == 'pebble':  # embossed rubber mat, tile = 4 cm
        rng = np.random.default_rng(9)
        m = 1024
        h = spec(m, 0.0, 55, 75, 10)
        h = np.clip((h - 0.35) * 2.2, 0, 1)
        return (np.kron(h, np.ones((1, 1), np.float32)), spec(m, 0.5, 60, 400, 11), spec(m, 1.6, 2, 200, 12))
    raise KeyError(name)


def get(name):
    """The texture of that name as a Blender image; its numbers are kept in the work folder between runs."""
    if name in bpy.data.images:
        return bpy.data.images[name]
    kept = os.path.join(WORK, 'texture-%s.npy' % name)
    if os.path.exists(kept):
        channels = np.load(kept)
    else:
        channels = np.stack(_channels(name)).astype(np.float32)
        part = kept + '.%d.npy' % os.getpid()
        np.save(part, channels)
        os.replace(part, kept)
    return image(name, *channels)


def room(strength=1.0, seed=0, warm=1.0):
    """procedural workshop as equirect: off-white ceiling, tubes, grey walls with shelves, one window; soft (low noise), HDR"""
    h, w = 256, 512
    el = (np.arange(h) + 0.5) / h * math.pi - math.pi / 2
    az = (np.arange(w) + 0.5) / w * 2 * math.pi - math.pi
    A, E = np.meshgrid(az, el)
    d = np.stack([np.cos(E) * np.cos(A), np.cos(E) * np.sin(A), np.sin(E)], -1)
    s = lambda a, b, x: np.clip((x - a) / (b - a), 0, 1) ** 2 * (3 - 2 * np.clip((x - a) / (b - a), 0, 1))
    wall = np.stack([0.30 + 0 * E, 0.29 + 0 * E, 0.27 + 0 * E], -1) * (0.55 + 0.45 * s(-0.3, 0.6, E))[..., None]
    rng = np.random.default_rng(seed)
    for _ in range(34):  # shelves, boxes, tools: blocks of varied tone
        a0 = rng.uniform(-3.1, 3.0)
        aw = rng.uniform(0.06, 0.4)
        e0 = rng.uniform(-0.25, 0.5)
        eh = rng.uniform(0.05, 0.3)
        k = (
            s(a0 - 0.02, a0 + 0.02, A)
            * (1 - s(a0 + aw - 0.02, a0 + aw + 0.02, A))
            * s(e0 - 0.02, e0 + 0.02, E)
            * (1 - s(e0 + eh - 0.02, e0 + eh + 0.02, E))
        )
        c = rng.uniform(0.02, 0.5) * np.array([1, 1, 1] + rng.normal(0, 0.12, 3))
        wall = wall * (1 - k[..., None]) + c * k[..., None]
    ceil = np.array([0.62, 0.61, 0.58])
    k = s(0.62, 0.75, E)[..., None]
    c = wall * (1 - k) + ceil * k
    floor = np.array([0.05, 0.048, 0.045])
    k = s(0.08, -0.15, E)[..., None]
    c = c * (1 - k) + floor * k
    zz = np.maximum(d[..., 2], 1e-3)
    px, py = d[..., 0] / zz, d[..., 1] / zz  # ceiling plane coords
    for y0 in (-1.15, 0.55, 1.9):
        k = (1 - s(0.07, 0.16, np.abs(py - y0))) * (1 - s(1.0, 1.15, np.abs(px))) * (E > 0.1)
        c = c + k[..., None] * np.array([9, 8.8, 8.2])
    k = s(-0.55, -0.5, A) * (1 - s(0.1, 0.15, A)) * s(0.1, 0.14, E) * (1 - s(0.62, 0.66, E))
    bars = 1 - 0.85 * (np.abs(((A + 0.55) * 4.6) % 1 - 0.5) > 0.45)
    c = c * (1 - k[..., None]) + (k * bars)[..., None] * np.array([3.6, 4.2, 5.0])
    im = bpy.data.images.new('room', w, h, float_buffer=True, is_data=False)
    px = np.ones((h, w, 4), np.float32)
    px[..., :3] = c * strength
    im.colorspace_settings.name = 'Linear'
    im.pixels.foreach_set(px.ravel())
    im.update()
    return im
