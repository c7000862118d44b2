/**
 * Every mark that the weighing of a failed turbocharger will ask for has its part, zones and kinds, and what must
 * be measured its quantity. Common practice, no source.
 */
import { describe, expect, test } from 'vitest';

import { loadPack } from '#analysis/knowledge/load-pack.ts';
import { kindsFor, quantityOf, zoneOf } from '#analysis/knowledge/pack-terms.ts';

import { turbocharger as pack, turbochargerFile } from './turbocharger-file.ts';

describe('what the marks of this machine need can be said', () => {
  type Need = [mark: string, component: string, zones: string, kinds: string, position?: string];
  /** Blanks between ids; no zones: the part as a whole or any of its zones. */
  const needs: readonly Need[] = [
    ['dents on all full blades', 'compressor-wheel', 'leading-edges', 'dent nick'],
    ['fine even erosion', 'compressor-wheel', 'leading-edges', 'impact-erosion'],
    ['dents from a loose body', 'compressor-housing', 'inlet-tract', 'dent'],
    ['nut imprint in the inlet', 'compressor-housing', 'inlet-tract inlet-bore contour', 'nut-imprint'],
    ['nut imprint on blades', 'compressor-wheel', 'leading-edges splitter-edges blade-faces', 'nut-imprint'],
    ['compressor contour rub', 'compressor-wheel', 'contour-edge', 'rub burr'],
    ['compressor housing contour rub', 'compressor-housing', 'contour', 'rub'],
    ['inducer side rub', 'compressor-wheel', 'inducer-sides', 'rub'],
    ['inlet bore rub', 'compressor-housing', 'inlet-bore', 'rub'],
    ['bent against rotation', 'compressor-wheel', 'inducer-sides', 'bent-against-rotation'],
    ['bent with rotation', 'compressor-wheel', 'inducer-sides', 'bent-with-rotation'],
    ['bent softly', 'compressor-wheel', 'leading-edges inducer-sides', 'smooth-bend'],
    ['fibre left', 'compressor-wheel', 'leading-edges blade-faces', 'fibre-left'],
    ['back face rub', 'compressor-wheel', 'back-face', 'rub'],
    ['turbine contour rub', 'turbine-wheel', 'contour-edge', 'rub burr'],
    ['exducer side rub', 'turbine-wheel', 'exducer-sides', 'rub bent-against-rotation'],
    ['inlet tips hammered', 'turbine-wheel', 'inlet-tips', 'hammered missing-piece'],
    ['heat shield scored', 'heat-shield', 'back', 'scoring rub'],
    ['front pads', 'thrust-bearing', 'front-pads', 'worn-away'],
    ['rear pads', 'thrust-bearing', 'rear-pads', 'worn-away'],
    ['journal bearing worn open', 'journal-bearing', 'bore', 'worn-open', 'compressor-side'],
    ['journal bearing worn outside', 'journal-bearing', 'outside', 'worn-away', 'turbine-side'],
    [
      'bearing bores worn open',
      'centre-housing',
      'bearing-bore-compressor-side bearing-bore-turbine-side',
      'worn-open',
    ],
    ['pads tinted', 'thrust-bearing', 'front-pads rear-pads', 'heat-tint smearing'],
    ['collar tinted', 'thrust-collar', 'thrust-face', 'heat-tint smearing'],
    ['journal tint', 'shaft', 'journal-compressor-side journal-turbine-side', 'heat-tint'],
    ['metal transfer', 'shaft', 'journal-compressor-side journal-turbine-side', 'metal-transfer'],
    ['journal grooves', 'shaft', 'journal-compressor-side journal-turbine-side', 'turned-grooves'],
    ['embedded in journal bearings', 'journal-bearing', 'bore outside', 'embedded-particles'],
    ['embedded in pads', 'thrust-bearing', 'front-pads rear-pads', 'embedded-particles'],
    ['arc on the wheel', 'compressor-wheel', 'inducer-sides contour-edge', 'rub-on-arc'],
    ['arc on the journal', 'shaft', 'journal-compressor-side', 'rub-on-arc'],
    ['ring on the housing', 'compressor-housing', 'inlet-bore contour', 'rub-full-ring'],
    ['ring in the bearing', 'journal-bearing', 'bore', 'rub-full-ring', 'compressor-side'],
    ['coked seal', 'seal-ring', '', 'coking', 'turbine-side'],
    ['coked housing', 'centre-housing', 'seal-bore hot-end-wall oil-drain-port', 'coking'],
    ['seal bore worn, compressor', 'back-plate', 'seal-bore', 'worn-open'],
    ['seal bore worn, turbine', 'centre-housing', 'seal-bore', 'worn-open'],
    ['seal ring broken', 'seal-ring', '', 'broken not-present misfitted ring-stuck'],
    ['oil, compressor side', 'compressor-housing', 'inlet-tract volute contour', 'oil-wetting'],
    ['oil, turbine side', 'turbine-housing', 'volute outlet contour', 'oil-wetting burnt-oil'],
    ['shaft in two', 'shaft', '', 'broken'],
    ['beach marks', 'shaft', '', 'fatigue-fracture'],
    ['overload', 'shaft', '', 'overload-fracture torsion-fracture'],
    ['nut missing', 'shaft-nut', '', 'not-present'],
    ['clamp faces fretted, wheel', 'compressor-wheel', 'nose-face back-clamp-face', 'fretting polishing'],
    ['clamp faces fretted, nut', 'shaft-nut', 'seat-face', 'fretting polishing'],
    ['clamp faces fretted, shaft', 'shaft', 'nut-seat stub clamp-shoulder', 'fretting polishing'],
    ['slip, wheel led', 'compressor-wheel', 'bore back-face back-clamp-face', 'smear-wheel-led'],
    ['slip, shaft led', 'compressor-wheel', 'bore back-face back-clamp-face', 'smear-shaft-led'],
    ['stub stretched', 'shaft', 'stub thread', 'stretched'],
    ['hub stretched', 'compressor-wheel', 'bore back-face hub', 'stretched orange-peel'],
    ['turbine creep', 'turbine-wheel', 'blade-faces blade-roots', 'creep-stretch crack orange-peel'],
    ['housing heat cracks', 'turbine-housing', 'volute contour outlet', 'heat-crack'],
    ['wheel fatigue', 'compressor-wheel', 'blade-roots hub bore', 'fatigue-fracture'],
    ['turbine wheel fatigue', 'turbine-wheel', 'blade-roots hub', 'fatigue-fracture'],
    ['feed obstructed', 'oil-feed', 'pipe union gasket', 'narrowed blocked sealant-left'],
    ['drain obstructed', 'oil-drain', 'pipe', 'blocked kinked'],
    ['breather obstructed', 'crankcase-breather', 'hose valve', 'blocked kinked'],
    ['oil dirty', 'engine-oil', 'oil-sample oil-filter', 'hard-particles'],
    ['filter blocked', 'air-filter', 'element', 'blocked collapsed'],
    ['filter torn', 'air-filter', 'element box', 'torn unsealed'],
    ['hose torn', 'inlet-hose', 'wall joints', 'torn unsealed'],
  ];
  const words = (said: string) => said.split(' ').filter((word) => word !== '');

  test.each(needs.map((need) => ({ need, mark: need[0] })))('$mark', ({ need }) => {
    const [mark, component, zones, kinds, position] = need;
    const predicate = {
      test: 'finding',
      component,
      position: position ?? null,
      zones: words(zones),
      kinds: words(kinds),
      leastShare: null,
    };
    const tryIt = { id: 'tried', label: mark, predicate, causes: [], leak: 'rarely' };
    const tried = loadPack(JSON.stringify({ ...pack, marks: [tryIt] }), turbochargerFile);
    expect(tried.marks).toHaveLength(1);
    const possibleAtEach = words(zones).map((zone) => kindsFor(tried, component, zone).map(({ id }) => id));
    for (const possible of possibleAtEach) {
      expect(words(kinds).some((kind) => possible.includes(kind))).toBe(true);
    }
  });

  test('dents on all full blades count blades', () => {
    expect(zoneOf(pack, 'compressor-wheel', 'leading-edges').counts).toBe('blades');
  });

  test('one bearing worn and the other not, and failure within the first hours, are measured', () => {
    expect(quantityOf(pack, 'bearing-inner-clearance')).toMatchObject({ component: 'journal-bearing' });
    expect(quantityOf(pack, 'time-since-fitting')).toMatchObject({ dimension: 'duration', limited: 'below' });
  });
});

describe('quantities', () => {
  const expected: readonly (readonly [string, string, string | null, string])[] = [
    ['end-float', 'length', 'shaft', 'both'],
    ['radial-play-nose', 'length', 'shaft', 'both'],
    ['bearing-inner-clearance', 'length', 'journal-bearing', 'both'],
    ['bearing-outer-clearance', 'length', 'journal-bearing', 'both'],
    ['journal-diameter-compressor-side', 'length', 'shaft', 'both'],
    ['journal-diameter-turbine-side', 'length', 'shaft', 'both'],
    ['housing-bore-compressor-side', 'length', 'centre-housing', 'both'],
    ['housing-bore-turbine-side', 'length', 'centre-housing', 'both'],
    ['bearing-bore-diameter', 'length', 'journal-bearing', 'both'],
    ['pad-height-front', 'length', 'thrust-bearing', 'below'],
    ['pad-height-rear', 'length', 'thrust-bearing', 'below'],
    ['inducer-tip-gap', 'length', 'compressor-wheel', 'both'],
    ['exducer-tip-gap', 'length', 'turbine-wheel', 'both'],
    ['compressor-contour-gap', 'length', 'compressor-wheel', 'both'],
    ['turbine-contour-gap', 'length', 'turbine-wheel', 'both'],
    ['thread-pitch', 'length', 'shaft', 'none'],
    ['nut-break-torque', 'torque', 'shaft-nut', 'below'],
    ['nut-turn-angle', 'angle', 'shaft-nut', 'both'],
    ['shaft-run-out', 'length', 'shaft', 'above'],
    ['thrust-washer-thickness', 'length', 'thrust-washer', 'below'],
    ['seal-ring-gap', 'length', 'seal-ring', 'both'],
    ['unbalance-compressor-plane', 'unbalance', null, 'above'],
    ['unbalance-turbine-plane', 'unbalance', null, 'above'],
    ['compressor-blades', 'count', 'compressor-wheel', 'none'],
    ['compressor-missing-mass', 'mass', 'compressor-wheel', 'none'],
    ['exhaust-temperature', 'temperature', 'turbine-housing', 'above'],
    ['fatigue-share', 'ratio', 'shaft', 'none'],
    ['highest-speed', 'speed', 'shaft', 'above'],
    ['crankcase-pressure', 'pressure', 'crankcase-breather', 'above'],
  ];
  test.each(expected)('%s is a %s', (id, dimension, component, limited) => {
    expect(quantityOf(pack, id)).toMatchObject({ dimension, component, limited });
  });

  test('what the geometry of play, nut and contact asks for can be entered', () => {
    const ids = pack.quantities.map(({ id }) => id);
    expect(ids).toEqual(
      expect.arrayContaining([
        'bearing-span',
        'compressor-overhang',
        'turbine-overhang',
        'thrust-face-diameter',
        'thread-pitch-diameter',
        'nut-seat-outer-diameter',
        'nut-seat-inner-diameter',
        'compressor-clamp-outer-diameter',
        'compressor-clamp-inner-diameter',
        'compressor-back-gap',
        'turbine-back-gap',
        'nut-mass',
      ]),
    );
  });
});
