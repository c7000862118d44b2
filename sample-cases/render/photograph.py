"""Runs inside Blender: builds a photo's scene, writes its truth, renders it.
blender -b --factory-startup -P photograph.py -- NAME [SHARE SAMPLES]; SHARE 0: the truth only"""
import importlib
import json
import os
import sys

HERE = os.path.dirname(os.path.abspath(__file__))
sys.dont_write_bytecode = True
sys.path.insert(0, HERE)
from photo_list import photo  # noqa: E402
from studio.exposure import expose  # noqa: E402
from studio.stage import empty_scene  # noqa: E402
from workplace import WORK  # noqa: E402


def main(name, share=None, samples=None):
    shot = photo(name)
    empty_scene()
    truth = importlib.import_module('scenes.' + shot.scene).build(shot)
    width, height = shot.size
    known = dict(file=shot.file, **truth.read(width, height))
    with open(os.path.join(WORK, shot.file + '.truth.json'), 'w') as out:
        json.dump(known, out, indent=2)
    share = float(shot.share if share is None else share)
    if share == 0:
        return
    size = round(width * share), round(height * share)
    expose(os.path.join(WORK, shot.file), *size, int(samples or shot.samples), shot.exposure)


try:
    main(*sys.argv[sys.argv.index('--') + 1 :])
    print('DONE')
except BaseException:
    import traceback

    traceback.print_exc()
    sys.exit(1)
