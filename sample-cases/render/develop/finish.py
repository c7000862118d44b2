"""What a camera does to a picture: slight colour fringes, glare, vignette, sharpening, grain; then JPEG."""
import os

import numpy as np
from PIL import Image, ImageDraw, ImageFont
from scipy.ndimage import gaussian_filter, map_coordinates

NOTICE = 'computer-generated sample'
FONT = '/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf'


def enlarge(picture, size):
    bands = [np.asarray(Image.fromarray(picture[..., i]).resize(size, Image.BICUBIC)) for i in range(3)]
    return np.stack(bands, -1)


def through_the_lens(picture, seed, grain=0.012, vignette=0.16, fringe=0.6, sharpen=0.4):
    rng = np.random.default_rng(seed)
    height, width, _ = picture.shape
    yy, xx = np.mgrid[0:height, 0:width].astype(np.float32)
    half = max(width, height) / 2
    for band, sign in ((0, 1), (2, -1)):  # green stays where it is: the truth's pixels hold for it
        k = 1 + sign * fringe / half
        at = [(yy - height / 2) * k + height / 2, (xx - width / 2) * k + width / 2]
        picture[..., band] = map_coordinates(picture[..., band], at, order=1, mode='nearest')
    picture = np.clip(picture, 0, 1)
    bright = np.clip(picture - 0.80, 0, 1)
    picture = picture + gaussian_filter(bright, (14, 14, 0)) * 0.5 + gaussian_filter(bright, (50, 50, 0)) * 0.35
    picture *= (1 - vignette * (((xx - width / 2) / half) ** 2 + ((yy - height / 2) / half) ** 2))[..., None]
    light = picture.mean(-1, keepdims=True)
    picture = picture + sharpen * (picture - gaussian_filter(picture, (1.3, 1.3, 0)))
    fine = gaussian_filter(rng.standard_normal((height, width, 1)).astype(np.float32), (0.6, 0.6, 0)) * 1.9
    coarse = gaussian_filter(rng.standard_normal((height, width, 3)).astype(np.float32), (1.2, 1.2, 0)) * 3.2
    amount = grain * (0.5 + 1.2 * np.sqrt(np.clip(1 - light, 0, 1))) * (0.4 + 0.6 * np.sqrt(np.clip(light, 0, 1)))
    return np.clip(picture + amount * (0.8 * fine + 0.45 * coarse), 0, 1)


def with_notice(image):
    """The notice, small, in the lower right corner."""
    pen = ImageDraw.Draw(image, 'RGBA')
    font = ImageFont.truetype(FONT, 26)
    _, _, width, height = pen.textbbox((0, 0), NOTICE, font=font)
    x, y = image.width - width - 22, image.height - height - 18
    pen.text((x + 1, y + 1), NOTICE, font=font, fill=(0, 0, 0, 150))
    pen.text((x, y), NOTICE, font=font, fill=(255, 255, 255, 190))
    return image


def save_jpeg(image, path, at_most=430_000):
    for quality in (90, 88, 86, 84, 82, 80, 78, 76, 74, 72, 70, 68, 66, 64, 62, 60, 57, 54, 50):
        image.save(path, quality=quality, subsampling=2, optimize=True)
        if os.path.getsize(path) <= at_most:
            return quality
    return quality
