/** The ring: an ellipse round what is meant, turned as it needs to be. */
import { classStyles, haloColour } from '#shared-types/class-style.ts';
import type { RingGeometry } from '#shared-types/mark.ts';
import type { ImagePoint } from '#shared-types/points.ts';
import { pointDigits, quarterCircle, stroked, type PlanePoint } from '../drawing-path.ts';
import { labelAround } from '../label-around.ts';
import { haloWidth, lineWidth } from '../mark-look.ts';
import { imagePoint, withinImage } from '../planes.ts';
import type { Bounds, Ground, MarkKindRules } from './mark-kind-rules.ts';
import { distanceToPolygon } from './segment.ts';

/** CSS pixels: no half axis is drawn or pulled shorter, since a ring of no width could not be taken hold of again. */
export const shortestHalfAxis = 3;
/** CSS pixels from the rim to the handle that turns the ring: beyond the label. */
const turnReach = 36;

export const ringRules: MarkKindRules<RingGeometry> = {
  body(ring, look) {
    const { colour, dash } = classStyles[look.class];
    const { unit } = look;
    const rim = ellipse(ring);
    const dashes = dash.map((part) => part * lineWidth * unit);
    return {
      halo: [stroked(rim, haloColour, (lineWidth + 2 * haloWidth) * unit, [])],
      ink: [stroked(rim, colour, lineWidth * unit, dashes)],
    };
  },

  labelBox(ring, look) {
    return labelAround(extremes(ring), look);
  },

  handles(ring, ground) {
    return [
      { name: 'first-axis', at: onRing(ring, ring.radiusX, 0) },
      { name: 'second-axis', at: onRing(ring, 0, ring.radiusY) },
      { name: 'turn', at: turnHandle(ring, ground) },
    ];
  },

  moveHandle(ring, name, to, ground) {
    const { centre, rotation } = ring;
    const dx = to.x - centre.x;
    const dy = to.y - centre.y;
    const [cos, sin] = [Math.cos(rotation), Math.sin(rotation)];
    const longEnough = (length: number, before: number) =>
      Math.max(Math.abs(length), Math.min(before, shortestHalfAxis * ground.unit));
    switch (name) {
      case 'first-axis':
        return { ...ring, radiusX: longEnough(dx * cos + dy * sin, ring.radiusX) };
      case 'second-axis':
        return { ...ring, radiusY: longEnough(dy * cos - dx * sin, ring.radiusY) };
      case 'turn': {
        const from = turnHandle(ring, ground);
        if (dx === 0 && dy === 0) return ring;
        const turned = Math.atan2(dy, dx) - Math.atan2(from.y - centre.y, from.x - centre.x);
        return { ...ring, rotation: turned === 0 ? rotation : halfTurn(rotation + turned) };
      }
      default:
        return ring;
    }
  },

  movedBy(ring, byX, byY) {
    return { ...ring, centre: imagePoint(ring.centre.x + byX, ring.centre.y + byY) };
  },

  bounds(ring) {
    const { top, bottom, left, right } = extremes(ring);
    return { left: left.x, top: top.y, right: right.x, bottom: bottom.y };
  },

  distance(ring, point) {
    return distanceToPolygon(point, chords(ring));
  },

  isMeant({ radiusX, radiusY }, unit) {
    return Math.min(radiusX, radiusY) >= shortestHalfAxis * unit;
  },
};

/** A point of the ring's own axes in image pixels. */
function onRing({ centre, rotation }: RingGeometry, along: number, across: number): ImagePoint {
  const [cos, sin] = [Math.cos(rotation), Math.sin(rotation)];
  return imagePoint(centre.x + along * cos - across * sin, centre.y + along * sin + across * cos);
}

/** Beyond the far end of the second half axis, or as near to that as the picture allows. */
function turnHandle(ring: RingGeometry, { image, unit }: Ground): ImagePoint {
  return withinImage(image, onRing(ring, 0, -ring.radiusY - turnReach * unit));
}

/** Four cubic curves, each a quarter of the ellipse to 0.03 % of its radius. */
function ellipse(ring: RingGeometry): string {
  const at = (x: number, y: number) => pointDigits(onRing(ring, x * ring.radiusX, y * ring.radiusY));
  const k = quarterCircle;
  return [
    `M${at(1, 0)}`,
    `C${at(1, k)} ${at(k, 1)} ${at(0, 1)}`,
    `C${at(-k, 1)} ${at(-1, k)} ${at(-1, 0)}`,
    `C${at(-1, -k)} ${at(-k, -1)} ${at(0, -1)}`,
    `C${at(k, -1)} ${at(1, -k)} ${at(1, 0)}`,
    'Z',
  ].join('');
}

/**
 * The points furthest up, down, left and right. With x(t) = a·cos t·cos φ − b·sin t·sin φ the furthest to the right is
 * √(a²cos²φ + b²sin²φ) from the centre, and y there is what the ellipse has at that t.
 */
function extremes(ring: RingGeometry): Readonly<Record<keyof Bounds, ImagePoint>> {
  const { radiusX: a, radiusY: b, rotation } = ring;
  const [cos, sin] = [Math.cos(rotation), Math.sin(rotation)];
  const atAngle = (t: number) => onRing(ring, a * Math.cos(t), b * Math.sin(t));
  const rightmost = Math.atan2(-b * sin, a * cos);
  const lowest = Math.atan2(b * cos, a * sin);
  return {
    right: atAngle(rightmost),
    left: atAngle(rightmost + Math.PI),
    bottom: atAngle(lowest),
    top: atAngle(lowest + Math.PI),
  };
}

/** Straight pieces of the rim: none leaves it further than 1 − cos(π/72), a thousandth of the radius. */
function chords(ring: RingGeometry): PlanePoint[] {
  return Array.from({ length: 72 }, (_, step) => {
    const t = (step * Math.PI) / 36;
    return onRing(ring, ring.radiusX * Math.cos(t), ring.radiusY * Math.sin(t));
  });
}

/** The same direction as an angle from −π to π. */
function halfTurn(angle: number): number {
  return Math.atan2(Math.sin(angle), Math.cos(angle));
}
