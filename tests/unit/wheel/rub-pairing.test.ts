/** The rub on the wheel beside the rub on its housing. Common practice, no source. */
import { expect, test } from 'vitest';

import { rubPairing } from '#analysis/wheel/rub-pairing.ts';

test.each([
  ['arc', 'full', 'turned-with-rotor'],
  ['full', 'arc', 'stood-still'],
  ['full', 'full', 'whirl-or-float'],
  ['arc', 'arc', 'not-decided'],
] as const)('%s on the wheel and %s on the housing: %s', (onWheel, onHousing, expected) => {
  expect(rubPairing(onWheel, onHousing)).toBe(expected);
});
