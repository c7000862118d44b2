/** Where the camera of a sample photo stood, by its lens and by the rule in it. */
import { expect, test } from 'vitest';

import { cameraByLens } from '#analysis/measure/camera-by-lens.ts';

import { cameraOver, truthOf } from './sample-truth.ts';

// The focal lengths are those in the photos' EXIF, for film of 24 by 36 mm.
test.each([
  ['BRN_2041', 'rule-30-mm', 'rule-90-mm', 60, 105],
  ['BRN_2103', 'rule-30-mm', 'rule-120-mm', 90, 72],
] as const)('%s, from %s to %s', (photo, from, to, mm, focalLength) => {
  const truth = truthOf(photo);
  const ends = [truth.pixelOf(from), truth.pixelOf(to)] as const;
  const { distanceMm, middle } = cameraByLens(truth.picture, focalLength, {
    ends,
    length: { mm, expandedMm: 0.1 },
  });
  const camera = cameraOver(truth, 0.9);
  // Along the line of sight it is further than square to the bench.
  const along = camera.distanceMm / Math.cos((camera.tilt * Math.PI) / 180);
  expect(Math.abs(distanceMm / along - 1)).toBeLessThan(0.1);
  expect(middle).toEqual({ x: 1200, y: 900 });
});
