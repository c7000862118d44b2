/**
 * How far round a rub goes on the wheel beside how far round it goes on its housing. What turned with the rotor touched
 * with one side of the wheel all round the housing; what stood still touched the whole wheel at one place.
 * Common practice of the trade, without a published source.
 */

/** A part of the way round, or all of it. */
export type RubExtent = 'arc' | 'full';

/**
 * - turned-with-rotor: unbalance or a bent shaft, which carries the contact round with it;
 * - stood-still: worn bearings or a distorted housing, which keep the contact in one place;
 * - whirl-or-float: the rotor went round in its play, or along its axis;
 * - not-decided: an arc on each fits several.
 */
export type RubPairing = 'turned-with-rotor' | 'stood-still' | 'whirl-or-float' | 'not-decided';

const pairings: Readonly<Record<RubExtent, Readonly<Record<RubExtent, RubPairing>>>> = {
  arc: { full: 'turned-with-rotor', arc: 'not-decided' },
  full: { full: 'whirl-or-float', arc: 'stood-still' },
};

export function rubPairing(onWheel: RubExtent, onHousing: RubExtent): RubPairing {
  return pairings[onWheel][onHousing];
}
