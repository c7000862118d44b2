/** A made-up machine kind with all that makes places hard to tell: positions, zones, kinds three deep, a whole part. */
import { loadPack } from '#analysis/knowledge/load-pack.ts';

import { windlass } from '../knowledge/small-pack.ts';

export const pegs = loadPack(
  JSON.stringify({
    ...windlass(),
    sides: [
      { id: 'from-left', label: 'from the left', axisEnd: 'first' },
      { id: 'from-right', label: 'from the right', axisEnd: 'second' },
    ],
    kinds: [
      { id: 'rub', label: 'rub', meaning: 'Touched while turning.' },
      { id: 'ring-rub', label: 'rub all round', meaning: 'The whole way round.', narrows: 'rub' },
      { id: 'deep-ring-rub', label: 'deep rub all round', meaning: 'And deep.', narrows: 'ring-rub' },
      { id: 'worn', label: 'worn', meaning: 'Less than it was.' },
      { id: 'lost', label: 'lost', meaning: 'It was not there.', partMissing: true },
      {
        id: 'bent-back',
        label: 'bent back',
        meaning: 'Against the turning.',
        bends: true,
        bendIs: 'against',
      },
    ],
    components: [
      {
        id: 'peg',
        label: 'peg',
        positions: ['left', 'right'],
        optional: false,
        zones: [
          { id: 'head', label: 'head', kinds: ['deep-ring-rub', 'worn', 'rub', 'ring-rub'], counts: null },
          { id: 'foot', label: 'foot', kinds: ['worn', 'rub'], counts: null },
        ],
        kinds: ['lost'],
      },
      {
        id: 'board',
        label: 'board',
        positions: [],
        optional: false,
        zones: [{ id: 'face', label: 'face', kinds: ['worn', 'rub', 'deep-ring-rub'], counts: null }],
        kinds: [],
      },
    ],
    quantities: [],
    mechanisms: [],
    conditions: [],
    marks: [],
  }),
  'pegs.json',
);
