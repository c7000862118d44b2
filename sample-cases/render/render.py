#!/usr/bin/python3
"""Makes the photos of the sample case again.
/usr/bin/python3 render.py NAME...            delivered (NAME is a file such as BRN_2041, or scene-view)
/usr/bin/python3 render.py all                every photo
/usr/bin/python3 render.py --preview NAME...  small and grainy, into the work folder only
/usr/bin/python3 render.py --develop NAME...  from renders that are there already
/usr/bin/python3 render.py --truth NAME...    the truth only"""
import subprocess
import sys
import time

sys.dont_write_bytecode = True
from develop.develop import deliver_truth, develop  # noqa: E402
from photo_list import PHOTOS, photo  # noqa: E402

BLENDER = 'nice -n 19 blender -b --factory-startup -t 2 -P photograph.py --'.split()
HOW = {'--preview': ['0.3', '16'], '--truth': ['0', '0'], None: []}


def build(shot, mode):
    ran = subprocess.run([*BLENDER, shot.file, *HOW[mode]], stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True)
    if ran.returncode or 'DONE' not in ran.stdout:
        raise SystemExit(ran.stdout[-3000:])


def main(words):
    modes = [w for w in words if w.startswith('--')]
    names = [w for w in words if not w.startswith('--')]
    mode = modes[0] if modes else None
    if not names or len(modes) > 1 or mode not in (*HOW, '--develop'):
        raise SystemExit(__doc__)
    for shot in PHOTOS if names == ['all'] else [photo(name) for name in names]:
        began = time.time()
        if mode != '--develop':
            build(shot, mode)
        built = time.time()
        path = deliver_truth(shot) if mode == '--truth' else develop(shot, preview=mode == '--preview')
        print('%s  render %.0f s, finish %.0f s' % (path, built - began, time.time() - built), flush=True)


if __name__ == '__main__':
    main(sys.argv[1:])
