/** Marks of every kind at random, within a picture. */
import fc from 'fast-check';
import { imagePoint } from '#analysis/marks/planes.ts';
import type { MarkGeometry, MarkKind } from '#shared-types/mark.ts';

export const image = { width: 4000, height: 3000 };
/** As a photo of this size lies in a well of 1000 pixels. */
export const ground = { image, unit: 4 };

/** Evenly spread, in sixteenths: a generator of doubles draws mostly the very small and the very large. */
const even = (least: number, most: number) =>
  fc.integer({ min: Math.ceil(least * 16), max: Math.floor(most * 16) }).map((sixteenths) => sixteenths / 16);

export const pointInside = fc
  .tuple(even(0, image.width), even(0, image.height))
  .map(([x, y]) => imagePoint(x, y));

const ring = fc
  .tuple(even(20, image.width - 20), even(20, image.height - 20), even(-3, 3))
  .chain(([x, y, rotation]) => {
    const room = Math.min(x, y, image.width - x, image.height - y);
    return fc.tuple(even(1, room), even(1, room)).map(([radiusX, radiusY]): MarkGeometry => ({
      kind: 'ring',
      v: 1,
      centre: imagePoint(x, y),
      radiusX,
      radiusY,
      rotation,
    }));
  });

const words = fc.constantFrom('scored', 'heat tint to here', '0.3 mm', 'Riefen über den halben Umfang');

const knownLength = fc.record({ mm: even(1, 500), expandedMm: even(0, 1) });

export const anyOfKind: Readonly<Record<MarkKind, fc.Arbitrary<MarkGeometry>>> = {
  arrow: fc.tuple(pointInside, pointInside).map(([tail, tip]) => ({ kind: 'arrow', v: 1, tail, tip })),
  ring,
  outline: fc
    .array(pointInside, { minLength: 3, maxLength: 12 })
    .map((corners) => ({ kind: 'outline', v: 1, corners })),
  line: fc.tuple(pointInside, pointInside).map(([from, to]) => ({ kind: 'line', v: 1, from, to })),
  text: fc.tuple(pointInside, words).map(([at, said]) => ({ kind: 'text', v: 1, at, words: said })),
  dimension: fc.tuple(pointInside, pointInside).map(([from, to]) => ({ kind: 'dimension', v: 1, from, to })),
  scale: fc
    .tuple(pointInside, pointInside, fc.option(knownLength))
    .map(([from, to, known]) => ({ kind: 'scale', v: 1, from, to, known, greatestTilt: 10 })),
  rectangle: fc
    .tuple(
      fc.array(pointInside, { minLength: 4, maxLength: 4 }),
      fc.option(fc.tuple(knownLength, knownLength)),
    )
    .map(([corners, sides]) => ({ kind: 'rectangle', v: 1, corners, sides })),
};

export const anyMark = fc.oneof(...Object.values(anyOfKind));
export const kinds = Object.keys(anyOfKind) as MarkKind[];
