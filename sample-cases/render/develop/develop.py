"""From the half renders in the work folder to the delivered photo and its truth."""
import glob
import json
import os
import subprocess

import numpy as np
from PIL import Image

from develop.denoise import denoise, read_png
from develop.finish import enlarge, save_jpeg, through_the_lens, with_notice
from develop.metadata import stamp
from workplace import CASE, WORK


def develop(shot, preview=False):
    base = os.path.join(WORK, shot.file)
    halves = [read_png('%s_%s.png' % (base, half)) for half in 'ab']
    guides = [read_png(sorted(glob.glob('%s_%s*.png' % (base, guide)))[0]) for guide in ('alb', 'nrm')]
    picture = denoise(*halves, *guides, reach=2 if preview else 5)
    picture = 1 - (1 - np.clip(picture, 0, 1)) ** shot.lift
    size = (picture.shape[1], picture.shape[0]) if preview else shot.size
    picture = through_the_lens(enlarge(picture, size), shot.seed)
    image = Image.fromarray((picture * 255 + 0.5).astype(np.uint8))
    if preview:
        path = base + '.preview.jpg'
        image.save(path, quality=90)
        return path
    with_notice(image)
    if shot.upright:  # the sensor's rows run across the upright picture; orientation 6 turns them back
        image = image.transpose(Image.ROTATE_90)
    folder = os.path.join(CASE, 'photos')
    os.makedirs(folder, exist_ok=True)
    path = os.path.join(folder, shot.file + '.jpg')
    save_jpeg(image, path)
    stamp(path, shot)
    if shot.heic:
        subprocess.run(['heif-enc', '-q', '48', path, '-o', path[:-4] + '.heic'], check=True, stdout=subprocess.DEVNULL)
    deliver_truth(shot)
    return path


def deliver_truth(shot):
    folder = os.path.join(CASE, 'truth')
    os.makedirs(folder, exist_ok=True)
    with open(os.path.join(WORK, shot.file + '.truth.json')) as known:
        truth = json.load(known)
    path = os.path.join(folder, shot.file + '.json')
    with open(path, 'w') as out:
        json.dump(truth, out, indent=2)
        out.write('\n')
    return path
