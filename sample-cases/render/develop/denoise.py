"""Guided non-local means over two half renders: their difference tells the noise, base colour and normal guard edges."""
import subprocess

import numpy as np
from scipy.ndimage import gaussian_filter, uniform_filter


def read_png(path):
    """A 16-bit PNG as floats 0..1, height x width x 3."""
    width, height = map(int, subprocess.check_output(['identify', '-format', '%w %h', path]).split())
    raw = subprocess.check_output(['convert', path, '-depth', '16', '-endian', 'LSB', 'rgb:-'])
    return np.frombuffer(raw, '<u2').reshape(height, width, 3).astype(np.float32) / 65535


def denoise(a, b, colour, normal, reach=5, strength=0.8, kept=0.08):
    """`kept` is the share of the noise that stays: without it, surfaces look painted."""
    mean = (a + b) / 2
    height, width, _ = mean.shape
    noise = gaussian_filter(((a - b) ** 2).mean(-1) / 4, 3) + 1e-6
    total, weights = np.zeros_like(mean), np.zeros((height, width), np.float32)

    def padded(x):
        return np.pad(x, [(reach, reach), (reach, reach)] + [(0, 0)] * (x.ndim - 2), 'reflect')

    means, noises, colours, normals = map(padded, (mean, noise, colour, normal))
    for dy in range(-reach, reach + 1):
        for dx in range(-reach, reach + 1):
            part = slice(reach + dy, reach + dy + height), slice(reach + dx, reach + dx + width)
            if (dy, dx) == (0, 0):
                total += mean
                weights += 1
                continue
            other, its_noise = means[part], noises[part]
            apart = ((other - mean) ** 2).mean(-1) - (noise + np.minimum(its_noise, noise))
            apart /= 1e-5 + strength**2 * (noise + its_noise)
            apart = np.maximum(uniform_filter(apart, 3), 0)
            apart += ((colours[part] - colour) ** 2).sum(-1) / 0.02 + ((normals[part] - normal) ** 2).sum(-1) / 0.012
            weight = np.exp(-apart).astype(np.float32)
            total += other * weight[..., None]
            weights += weight
    return kept * mean + (1 - kept) * total / weights[..., None]
