"""The photos of the set: file, scene, view, and what the camera wrote. Plain data, read by Blender and by the shell."""
from dataclasses import dataclass


@dataclass(frozen=True)
class Photo:
    file: str
    scene: str
    view: str
    taken: str
    lens: int
    fstop: float
    shutter: str
    iso: int
    seed: int
    upright: bool = False  # held upright: stored turned, EXIF orientation 6
    place: bool = False  # with coordinates (open sea, 54.5 N 17.9 W)
    heic: bool = False  # delivered a second time as HEIC
    samples: int = 10
    exposure: float = 0.0
    lift: float = 1.0  # of the shadows, when developed
    share: float = 0.5  # of 2400 x 1800, enlarged afterwards

    @property
    def size(self):
        return (1800, 2400) if self.upright else (2400, 1800)


PHOTOS = [
    Photo('BRN_2041', 'thrust_bearing', 'front', '2026:02:10 10:42:18', 105, 16, '1/40', 400, 2),
    Photo('BRN_2044', 'thrust_bearing', 'rear', '2026:02:10 10:49:02', 105, 16, '1/40', 400, 12),
    Photo('BRN_2046', 'thrust_bearing', 'sound', '2026:02:10 11:05:30', 105, 16, '1/50', 400, 6, samples=8),
    Photo(
        'BRN_2052', 'compressor_wheel', 'over', '2026:02:10 11:31:09', 98, 16, '1/50', 400, 1, exposure=0.1, share=0.56
    ),
    Photo(
        'BRN_2055',
        'compressor_wheel',
        'close',
        '2026:02:10 11:38:44',
        105,
        32,
        '1/13',
        400,
        4,
        exposure=0.1,
        share=0.56,
    ),
    Photo('BRN_2063', 'turbine_shaft', 'over', '2026:02:10 14:06:57', 82, 20, '1/25', 400, 3, exposure=0.35),
    Photo(
        'BRN_2066', 'turbine_shaft', 'close', '2026:02:10 14:15:23', 96, 32, '1/10', 400, 5, exposure=0.65, share=0.54
    ),
    Photo('BRN_2058', 'clamp_faces', 'wheel-and-collar', '2026:02:10 13:22:40', 105, 32, '1/13', 400, 7),
    Photo(
        'BRN_2071',
        'shaft_fracture',
        'stub',
        '2026:02:10 15:02:11',
        180,
        45,
        '1/6',
        640,
        8,
        heic=True,
    ),
    Photo('BRN_2074', 'journal_bearings', 'pair', '2026:02:10 15:20:36', 100, 32, '1/13', 400, 9),
    Photo(
        'BRN_2082', 'compressor_housing', 'tract', '2026:02:11 08:37:05', 55, 18, '1/30', 400, 10, lift=1.2, share=0.56
    ),
    Photo('BRN_2083', 'compressor_housing', 'imprint', '2026:02:11 08:41:52', 105, 32, '1/10', 640, 11, lift=1.45),
    Photo('BRN_2087', 'compressor_housing', 'contour', '2026:02:11 08:58:19', 92, 22, '1/25', 400, 13),
    Photo('BRN_2091', 'heat_shield', 'back', '2026:02:11 09:26:47', 96, 18, '1/30', 400, 14),
    Photo('BRN_2098', 'feed_union', 'bore', '2026:02:11 10:14:33', 112, 32, '1/15', 400, 15, upright=True, place=True),
    Photo(
        'BRN_2103',
        'flat_target',
        '30',
        '2026:02:11 10:52:08',
        72,
        22,
        '1/30',
        400,
        16,
        share=0.6,
        samples=6,
        exposure=-0.55,
    ),
    Photo(
        'BRN_2104',
        'flat_target',
        '45',
        '2026:02:11 10:54:26',
        72,
        22,
        '1/30',
        400,
        17,
        share=0.6,
        samples=6,
        exposure=-0.55,
    ),
]


def photo(name):
    found = [p for p in PHOTOS if p.file == name or '%s-%s' % (p.scene, p.view) == name]
    if len(found) != 1:
        raise SystemExit(
            'no photo %s; there are: %s' % (name, ', '.join('%s (%s-%s)' % (p.file, p.scene, p.view) for p in PHOTOS))
        )
    return found[0]
