/** The outline: a closed polygon round an area, corner by corner. */
import { classStyles, haloColour } from '#shared-types/class-style.ts';
import type { OutlineGeometry } from '#shared-types/mark.ts';
import type { ImagePoint } from '#shared-types/points.ts';
import { polygon, stroked } from '../drawing-path.ts';
import { labelAround } from '../label-around.ts';
import { haloWidth, lineWidth } from '../mark-look.ts';
import { imagePoint, withinImage } from '../planes.ts';
import type { HandleName, MarkKindRules } from './mark-kind-rules.ts';
import { boundsOfPoints, distanceToPolygon, shortestMeant } from './segment.ts';

export const fewestCorners = 3;
/** As many as the stored geometry may have. */
export const mostCorners = 400;

export const outlineRules: MarkKindRules<OutlineGeometry> = {
  body({ corners }, look) {
    const { colour, dash } = classStyles[look.class];
    const { unit } = look;
    const closed = polygon(corners);
    return {
      halo: [stroked(closed, haloColour, (lineWidth + 2 * haloWidth) * unit, [])],
      ink: [
        stroked(
          closed,
          colour,
          lineWidth * unit,
          dash.map((part) => part * lineWidth * unit),
        ),
      ],
    };
  },

  labelBox({ corners }, look) {
    const furthest = (of: (corner: ImagePoint) => number) =>
      corners.reduce((best, corner) => (of(corner) > of(best) ? corner : best));
    const extremes = {
      top: furthest(({ y }) => -y),
      bottom: furthest(({ y }) => y),
      right: furthest(({ x }) => x),
      left: furthest(({ x }) => -x),
    };
    return labelAround(extremes, look);
  },

  handles({ corners }) {
    return corners.map((at, index) => ({ name: `corner-${index}` as const, at }));
  },

  moveHandle(outline, name, to, { image }) {
    const index = cornerIndex(name);
    if (index === null || index >= outline.corners.length) return outline;
    return { ...outline, corners: outline.corners.with(index, withinImage(image, to)) };
  },

  movedBy(outline, byX, byY) {
    return { ...outline, corners: outline.corners.map(({ x, y }) => imagePoint(x + byX, y + byY)) };
  },

  bounds({ corners }) {
    return boundsOfPoints(corners);
  },

  distance({ corners }, point) {
    return distanceToPolygon(point, corners);
  },

  isMeant({ corners }, unit) {
    const { left, top, right, bottom } = boundsOfPoints(corners);
    return corners.length >= fewestCorners && Math.hypot(right - left, bottom - top) >= shortestMeant * unit;
  },
};

/** Which corner a handle is, counted from 0; null for any other handle. */
export function cornerIndex(name: HandleName): number | null {
  const digits = /^corner-(\d+)$/.exec(name)?.[1];
  return digits === undefined ? null : Number(digits);
}
