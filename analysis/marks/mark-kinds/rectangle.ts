/** The rectangle of known sides: its four corners, in plain ink, with its sides beside the first of them. */
import { haloColour } from '#shared-types/class-style.ts';
import type { OutlineGeometry, RectangleGeometry } from '#shared-types/mark.ts';
import { pointDigits, polygon, stroked, type PlanePoint } from '../drawing-path.ts';
import { haloWidth, lineWidth, noteColour } from '../mark-look.ts';
import { bandBeside } from '../words-band.ts';
import type { MarkKindRules } from './mark-kind-rules.ts';
import { outlineRules } from './outline.ts';
import { courseOf } from './segment.ts';

/** Corners of a rectangle. */
export const rectangleCorners = 4;

/** Measures in drawing points: how far the sides run on past a corner, so that it can be seen exactly. */
const past = 9;
const dash = [5, 3] as const;

const asOutline = ({ corners }: RectangleGeometry): OutlineGeometry => ({
  kind: 'outline',
  v: 1,
  corners: [...corners],
});

export const rectangleRules: MarkKindRules<RectangleGeometry> = {
  body({ corners }, { unit, reading = '' }) {
    const sides = polygon(corners);
    const crosses = corners.map((corner, at) => cross(corners, corner, at, unit)).join('');
    const [first, second] = corners;
    const band =
      reading === '' || first === undefined || second === undefined
        ? null
        : bandBeside(reading, { from: first, to: second }, { unit, colour: noteColour });
    const dashes = dash.map((part) => part * lineWidth * unit);
    return {
      halo: [
        stroked(sides + crosses, haloColour, (lineWidth + 2 * haloWidth) * unit, []),
        ...(band === null ? [] : [band.halo]),
      ],
      ink: [
        stroked(sides, noteColour, (lineWidth / 2) * unit, dashes),
        stroked(crosses, noteColour, lineWidth * unit, []),
        ...(band === null ? [] : [band.ink]),
      ],
    };
  },

  labelBox: (rectangle, look) => outlineRules.labelBox(asOutline(rectangle), look),
  handles: (rectangle, ground) => outlineRules.handles(asOutline(rectangle), ground),
  moveHandle: (rectangle, name, to, ground) => ({
    ...rectangle,
    corners: outlineRules.moveHandle(asOutline(rectangle), name, to, ground).corners,
  }),
  movedBy: (rectangle, byX, byY) => ({
    ...rectangle,
    corners: outlineRules.movedBy(asOutline(rectangle), byX, byY).corners,
  }),
  bounds: (rectangle) => outlineRules.bounds(asOutline(rectangle)),
  distance: (rectangle, point, look) => outlineRules.distance(asOutline(rectangle), point, look),
  isMeant: (rectangle, unit) =>
    rectangle.corners.length === rectangleCorners && outlineRules.isMeant(asOutline(rectangle), unit),
};

/** Both sides a little past the corner where they meet. */
function cross(corners: readonly PlanePoint[], corner: PlanePoint, at: number, unit: number): string {
  const neighbours = [corners.at(at - 1), corners[(at + 1) % corners.length]];
  return neighbours
    .flatMap((neighbour) => {
      if (neighbour === undefined) return [];
      const { direction } = courseOf(neighbour, corner);
      const end = (by: number) =>
        pointDigits({ x: corner.x + direction.x * by * unit, y: corner.y + direction.y * by * unit });
      return [`M${end(-past)}L${end(past)}`];
    })
    .join('');
}
