"""A flat plate with a scribed rectangle of known sides and a millimetre scale along two of them."""
from parts.engraved_plate import engraved_plate

LENGTH, WIDTH = 12.0, 8.0  # cm
RECTANGLE = (1.0, 1.0, 11.0, 7.0)  # 100 x 60 mm
CORNERS = {'upper-left': (1.0, 7.0), 'upper-right': (11.0, 7.0), 'lower-right': (11.0, 1.0), 'lower-left': (1.0, 1.0)}


def target_plate(loc, rot):
    return engraved_plate('target', _lines, loc, rot, LENGTH, WIDTH, thickness=0.3, hole=(0.5, 7.5, 0.2), per_cm=240)


def _lines(pen, per_cm, font):
    line = 0.024 * per_cm
    x0, y0, x1, y1 = (v * per_cm for v in RECTANGLE)
    for a, b, c, d in ((x0, y0, x1, y0), (x0, y1, x1, y1), (x0, y0, x0, y1), (x1, y0, x1, y1)):
        pen.rectangle([a - line, b - line, c + line, d + line], fill=255)
    numbers = font(0.26)
    for mm in range(101):
        long = (0.42 if mm % 10 == 0 else 0.30 if mm % 5 == 0 else 0.18) * per_cm
        x = x0 + mm * per_cm / 10
        pen.rectangle([x - line / 2.4, y1, x + line / 2.4, y1 + long], fill=255)
        if mm % 10 == 0:
            pen.text((x, y1 + 0.62 * per_cm), str(mm), font=numbers, fill=255, anchor='mm')
    for mm in range(61):
        long = (0.42 if mm % 10 == 0 else 0.30 if mm % 5 == 0 else 0.18) * per_cm
        y = y1 - mm * per_cm / 10
        pen.rectangle([x1, y - line / 2.4, x1 + long, y + line / 2.4], fill=255)
        if mm % 10 == 0:
            pen.text((x1 + 0.66 * per_cm, y), str(mm), font=numbers, fill=255, anchor='mm')
    cx, cy = (x0 + x1) / 2, (y0 + y1) / 2
    pen.rectangle([cx - 0.5 * per_cm, cy - line / 2, cx + 0.5 * per_cm, cy + line / 2], fill=255)
    pen.rectangle([cx - line / 2, cy - 0.5 * per_cm, cx + line / 2, cy + 0.5 * per_cm], fill=255)
    pen.text((x0 + 0.15 * per_cm, y0 + 0.35 * per_cm), '100 x 60 mm', font=font(0.30), fill=255, anchor='lm')
