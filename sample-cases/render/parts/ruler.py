"""Steel rule, 150 mm, millimetres on one edge, half millimetres on the other."""
from parts.engraved_plate import engraved_plate

LENGTH, WIDTH = 16.0, 2.6
ZERO = 0.5  # cm from the end


def ruler(loc, rot):
    return engraved_plate('rule', _scales, loc, rot, LENGTH, WIDTH, hole=(LENGTH - 0.28, WIDTH / 2, 0.12), per_cm=360)


def edge_point(rule, millimetres):
    """Where the line of that many millimetres meets the edge of the rule, in its own coordinates (cm)."""
    return (ZERO + millimetres / 10, WIDTH, rule['thickness'] / 2)


def _scales(pen, per_cm, font):
    numbers = font(0.40)
    for mm in range(151):
        x = (ZERO + mm / 10) * per_cm
        long = 0.70 if mm % 10 == 0 else 0.52 if mm % 5 == 0 else 0.34
        pen.rectangle([x - 0.007 * per_cm, 0, x + 0.007 * per_cm, long * per_cm], fill=255)
        if mm % 10 == 0:
            pen.text((x, 0.92 * per_cm), str(mm), font=numbers, fill=255, anchor='mm')
    height = WIDTH * per_cm
    for half in range(301):
        x = (ZERO + half / 20) * per_cm
        long = 0.6 if half % 20 == 0 else 0.45 if half % 10 == 0 else 0.3 if half % 2 == 0 else 0.18
        pen.rectangle([x - 0.005 * per_cm, height - long * per_cm, x + 0.005 * per_cm, height], fill=255)
