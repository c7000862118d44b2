"""Draws a photo's truth over it, to be looked at: /usr/bin/python3 -m develop.check_truth NAME... (into the work folder)."""
import json
import os
import sys

from PIL import Image, ImageDraw, ImageFont, ImageOps

from develop.finish import FONT
from photo_list import photo
from workplace import CASE, WORK

COLOURS = ['#ff4040', '#40ff60', '#40a0ff', '#ffe040', '#ff60ff', '#60ffff']


def draw(shot, preview=False):
    if preview:
        image = Image.open(os.path.join(WORK, shot.file + '.preview.jpg')).resize(shot.size)
        path = os.path.join(WORK, shot.file + '.truth.json')
    else:
        image = ImageOps.exif_transpose(Image.open(os.path.join(CASE, 'photos', shot.file + '.jpg')))
        path = os.path.join(CASE, 'truth', shot.file + '.json')
    with open(path) as known:
        truth = json.load(known)
    assert image.size == (truth['picture']['width'], truth['picture']['height'])
    pen = ImageDraw.Draw(image)
    font = ImageFont.truetype(FONT, 26)
    for i, damage in enumerate(truth['damage']):
        colour = COLOURS[i % len(COLOURS)]
        for region in damage['regions']:
            for line in [region['px']] if region['shape'] == 'polygon' else [region['inner'], region['outer']]:
                pen.line([tuple(p) for p in line + line[:1]], fill=colour, width=3)
            corner = (region.get('px') or region['outer'])[0]
            pen.text(corner, '%s %s' % (damage['kind'], damage.get('blade', '')), fill=colour, font=font)
    for name, point in truth['points'].items():
        x, y = point['px']
        pen.line([x - 12, y, x + 12, y], fill='#ffffff' if point['visible'] else '#ff8000', width=2)
        pen.line([x, y - 12, x, y + 12], fill='#ffffff' if point['visible'] else '#ff8000', width=2)
        pen.text((x + 8, y + 4), name, fill='#ffffff', font=font)
    out = os.path.join(WORK, shot.file + '.checked.jpg')
    image.save(out, quality=85)
    return out


if __name__ == '__main__':
    for name in sys.argv[1:]:
        if not name.startswith('--'):
            print(draw(photo(name), '--preview' in sys.argv))
