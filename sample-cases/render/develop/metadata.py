"""What the invented camera writes, and the notice in ImageDescription and XMP dc:description."""
import subprocess

from develop.finish import NOTICE


def stamp(path, shot):
    taken = shot.taken
    tags = {
        'IFD0:Make': 'Brennholt',
        'IFD0:Model': 'Brennholt B2',
        'IFD0:Software': 'B2 1.4',
        'IFD0:ImageDescription': NOTICE,
        'XMP-dc:Description': NOTICE,
        'XMP-iptcExt:DigitalSourceType': 'http://cv.iptc.org/newscodes/digitalsourcetype/algorithmicMedia',
        'IFD0:ModifyDate': taken,
        'ExifIFD:DateTimeOriginal': taken,
        'ExifIFD:CreateDate': taken,
        'ExifIFD:OffsetTimeOriginal': '+01:00',
        'ExifIFD:ExposureTime': shot.shutter,
        'ExifIFD:FNumber': shot.fstop,
        'ExifIFD:ISO': shot.iso,
        'ExifIFD:FocalLength': shot.lens,
        'ExifIFD:FocalLengthIn35mmFormat': shot.lens,
        'ExifIFD:ColorSpace#': 1,
        'IFD0:Orientation#': 6 if shot.upright else 1,
    }
    if shot.place:
        tags.update(
            {'GPS:GPSLatitude': 54.5, 'GPS:GPSLatitudeRef': 'N', 'GPS:GPSLongitude': 17.9, 'GPS:GPSLongitudeRef': 'W'}
        )
    subprocess.run(
        ['exiftool', '-q', '-overwrite_original', '-all='] + ['-%s=%s' % pair for pair in tags.items()] + [path],
        check=True,
    )
