/** Words of what is measured on photos. */
const warnings = {
  'no-scale': 'The photo has no scale: this says nothing in millimetres.',
  'tilt-not-corrected':
    'Tilt is not corrected: two points of known length cannot show how the camera was held. It is counted in the uncertainty up to the angle entered. A rectangle of known sides corrects it.',
  'fall-off-not-counted':
    'That a leaning plane looks smaller further away is not counted: keep what is measured near the scale.',
  'lens-not-corrected': 'What the lens bends is not corrected.',
  'plane-offset-entered': 'What is measured lies off the plane of the scale, by the distance entered.',
  'beyond-scale-area': 'A point lies outside of what the scale was set on.',
  'short-arc': 'The points cover less than a quarter of the circle.',
  'off-the-circle': 'The points lie further off the circle than clicks explain.',
} as const;

const parts = {
  clicks: 'the clicks on it',
  scale: 'the scale',
  offset: 'the plane offset',
  tilt: 'tilt',
} as const;

export const measureTexts = {
  warnings,
  parts,
  units: { mm: 'mm', mm2: 'mm²', deg: '°', px: 'px', px2: 'px²' },
  result: (value: string, expanded: string, unit: string) => `${value} ± ${expanded}\u00a0${unit}`,
  pixels: (value: string) => `${value} px, no scale`,
  known: (mm: string) => `${mm}\u00a0mm`,
  sides: (along: string, across: string) => `${along} × ${across}\u00a0mm`,
  notMeasured: 'not measurable',
  title: 'Measured',
  coverage: 'k = 2: about 95 of 100 such results hold the true value, if what is said below holds.',
  byScale: (scale: string) => `By the scale of ${scale} on this photo.`,
  byRectangle: (sides: string) => `By the rectangle of ${sides} on this photo.`,
  shares: (list: string) => `Of its uncertainty: ${list}.`,
  share: (percent: string, source: string) => `${percent} % from ${source}`,
  setScale:
    'Set a scale first: B between two points a known length apart, or P at the four corners of a rectangle of known sides.',
  scale: {
    title: 'Scale',
    rectangleTitle: 'Rectangle of known sides',
    length: 'Known length, mm',
    along: 'Side from the first corner to the second, mm',
    across: 'Side from the second corner to the third, mm',
    lengthHint: 'As marked on the rule or measured on the part',
    expanded: 'Its uncertainty, ± mm',
    expandedHint: 'k = 2; of a steel rule 0.2 mm, common practice',
    tilt: 'Tilted by at most, degrees',
    tiltHint: 'From square to what is measured; 10 unless you know better',
    within: (least: string, most: string) => `Between ${least} and ${most}.`,
    aboveZero: 'More than nothing.',
    missing: 'Nothing is measured by it until the length is entered.',
    missingSides: 'Nothing is measured by it until both sides are entered.',
    used: 'Lengths on this photo are measured by it.',
    other: 'Another scale on this photo lies above it and is used instead.',
    faults: {
      'known-length': 'The length has to be more than nothing.',
      'click-uncertainty': 'The uncertainty of a click is missing.',
      tilt: 'The tilt has to lie between 0 and 45 degrees.',
      'plane-offset': 'The plane offset is no length.',
      'camera-distance': 'The distance of the camera is missing.',
      'too-small': 'Its points lie too close together to measure by.',
      'not-finite': 'A point has no place.',
      other:
        'Its corners make no rectangle that could have been seen: take them one after the other round it.',
    },
  },
  plate: {
    byScale: (scale: string, tilt: string) =>
      `Lengths by the scale of ${scale} drawn on it; tilt up to ${tilt}° is in their uncertainty (k = 2) and not corrected, nor is the lens.`,
    byRectangle: (sides: string) =>
      `Lengths by the rectangle of ${sides} drawn on it, in its plane; uncertainty with k = 2; the lens is not corrected.`,
    measures: (reading: string) => `measured ${reading}`,
  },
} as const;
