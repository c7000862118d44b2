/** A made-up machine kind, small enough to be read whole: a windlass with a toothed drum between two bearings. */
import { loadPack } from '#analysis/knowledge/load-pack.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';

/** A fresh copy each time, so that a test can break it as it likes. */
export function windlass(): KnowledgePack {
  return {
    schema: 1,
    id: 'windlass',
    version: '1.2.0',
    label: 'windlass',
    source: 'Made up for the tests.',
    positions: [
      { id: 'left', label: 'left' },
      { id: 'right', label: 'right' },
    ],
    sides: [{ id: 'from-crank', label: 'from the crank' }],
    kinds: [
      { id: 'rub', label: 'rub', meaning: 'Touched while turning.' },
      {
        id: 'rub-all-round',
        label: 'rub all round',
        meaning: 'Touched the whole way round.',
        narrows: 'rub',
      },
      { id: 'scoring', label: 'scoring', meaning: 'Grooves along the sliding direction.' },
      { id: 'chipped', label: 'chipped', meaning: 'A piece is off.' },
      { id: 'not-present', label: 'not present', meaning: 'It was not there.' },
    ],
    components: [
      {
        id: 'drum',
        label: 'drum',
        positions: [],
        optional: false,
        zones: [
          { id: 'rim', label: 'rim', kinds: ['rub', 'rub-all-round', 'scoring'], counts: null },
          { id: 'teeth', label: 'teeth', kinds: ['chipped', 'rub'], counts: 'blades' },
        ],
        kinds: ['not-present'],
      },
      {
        id: 'plain-bearing',
        label: 'plain bearing',
        positions: ['left', 'right'],
        optional: false,
        zones: [{ id: 'bore', label: 'bore', kinds: ['scoring', 'rub'], counts: null }],
        kinds: ['not-present'],
      },
    ],
    quantities: [
      {
        id: 'bore-diameter',
        label: 'bore diameter',
        meaning: 'Largest of several directions.',
        dimension: 'length',
        component: 'plain-bearing',
        zone: 'bore',
        limited: 'above',
      },
      {
        id: 'hours-run',
        label: 'hours run',
        meaning: 'Since it was built.',
        dimension: 'duration',
        component: null,
        zone: null,
        limited: 'none',
      },
    ],
    mechanisms: [
      { id: 'no-grease', label: 'no grease', meaning: 'It ran without grease.' },
      { id: 'overload', label: 'overload', meaning: 'Too much was lifted.' },
    ],
    conditions: [
      {
        id: 'bearings-worn',
        label: 'the bearings were worn',
        causes: [{ from: 'no-grease', word: 'nearly-always', because: 'Dry metal wears.' }],
        leak: 'practically-never',
      },
      {
        id: 'drum-loose',
        label: 'the drum could move',
        causes: [{ from: 'bearings-worn', word: 'often', because: 'Wear is play.' }],
        leak: 'rarely',
      },
    ],
    marks: [
      {
        id: 'rim-rubbed',
        label: 'drum, rim: rub',
        predicate: {
          test: 'any',
          of: [
            {
              test: 'finding',
              component: 'drum',
              position: null,
              zones: ['rim'],
              kinds: ['rub'],
              leastShare: null,
            },
            { test: 'measurement', quantity: 'bore-diameter', position: 'left', status: 'outside' },
          ],
        },
        causes: [{ from: 'drum-loose', word: 'often', because: 'The rim reaches the frame.' }],
        leak: 'practically-never',
      },
      {
        id: 'teeth-chipped',
        label: 'drum, teeth: chipped',
        predicate: {
          test: 'finding',
          component: 'drum',
          position: null,
          zones: ['teeth'],
          kinds: ['chipped'],
          leastShare: 0.5,
        },
        causes: [{ from: 'overload', word: 'nearly-always', because: 'Teeth give way first.' }],
        leak: 'practically-never',
      },
    ],
  };
}

export const windlassFile = 'windlass.json';

/** The windlass as the loader reads it, after `change`. */
export function loadWindlass(change: (pack: KnowledgePack) => void = () => {}): KnowledgePack {
  const pack = windlass();
  change(pack);
  return loadPack(JSON.stringify(pack), windlassFile);
}
