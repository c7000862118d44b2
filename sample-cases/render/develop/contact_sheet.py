"""All photos small on one sheet, for the eye."""
import os
import subprocess

from develop.finish import FONT
from photo_list import PHOTOS
from workplace import CASE


def main():
    photos = [os.path.join(CASE, 'photos', shot.file + '.jpg') for shot in PHOTOS]
    made = [path for path in photos if os.path.exists(path)]
    sheet = os.path.join(CASE, 'contact-sheet.jpg')
    look = [
        '-font',
        FONT,
        '-auto-orient',
        '-geometry',
        '420x420+6+6',
        '-tile',
        '4x',
        '-background',
        '#202224',
        '-fill',
        '#e8e8e8',
    ]
    subprocess.run(
        ['montage', *look[:2], '-label', '%t', *made, *look[2:], '-quality', '80', '-strip', sheet], check=True
    )
    print(sheet, os.path.getsize(sheet) // 1000, 'kB', len(made), 'photos')


if __name__ == '__main__':
    main()
