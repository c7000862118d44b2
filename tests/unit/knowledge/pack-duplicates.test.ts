import { describe, expect, test } from 'vitest';

import { loadPack } from '#analysis/knowledge/load-pack.ts';

import { broken, entry, refusalOf, rimFinding, withPredicate } from './pack-refusals.ts';
import { windlassFile } from './small-pack.ts';

describe('an id that stands twice is refused at the second place', () => {
  const cases: readonly [string, string, string, string][] = [
    ['positions', broken((p) => (entry(p.positions, 1).id = 'left')), 'positions[1] "left" / id', 'left'],
    [
      'sides',
      broken((p) => p.sides.push({ id: 'from-crank', label: 'from there' })),
      'sides[1] "from-crank" / id',
      'from-crank',
    ],
    ['kinds', broken((p) => (entry(p.kinds, 3).id = 'rub')), 'kinds[3] "rub" / id', 'rub'],
    ['components', broken((p) => (entry(p.components, 1).id = 'drum')), 'components[1] "drum" / id', 'drum'],
    [
      'zones of one component',
      broken((p) => (entry(entry(p.components, 0).zones, 1).id = 'rim')),
      'components[0] "drum" / zones[1] "rim" / id',
      'rim',
    ],
    [
      'kinds of one zone',
      broken((p) => entry(entry(p.components, 0).zones, 0).kinds.push('rub')),
      'components[0] "drum" / zones[0] "rim" / kinds[3]',
      'rub',
    ],
    [
      'kinds of one component',
      broken((p) => entry(p.components, 0).kinds.push('not-present')),
      'components[0] "drum" / kinds[1]',
      'not-present',
    ],
    [
      'positions of one component',
      broken((p) => entry(p.components, 1).positions.push('left')),
      'components[1] "plain-bearing" / positions[2]',
      'left',
    ],
    [
      'quantities',
      broken((p) => (entry(p.quantities, 1).id = 'bore-diameter')),
      'quantities[1] "bore-diameter" / id',
      'bore-diameter',
    ],
    [
      'mechanisms',
      broken((p) => (entry(p.mechanisms, 1).id = 'no-grease')),
      'mechanisms[1] "no-grease" / id',
      'no-grease',
    ],
    [
      'conditions',
      broken((p) => (entry(p.conditions, 1).id = 'bearings-worn')),
      'conditions[1] "bearings-worn" / id',
      'bearings-worn',
    ],
    [
      'marks',
      broken((p) => (entry(p.marks, 1).id = 'rim-rubbed')),
      'marks[1] "rim-rubbed" / id',
      'rim-rubbed',
    ],
    [
      'causes of one condition',
      broken((p) => entry(p.conditions, 0).causes.push(entry(entry(p.conditions, 0).causes, 0))),
      'conditions[0] "bearings-worn" / causes[1] / from',
      'no-grease',
    ],
    [
      'causes of one mark',
      broken((p) => entry(p.marks, 0).causes.push(entry(entry(p.marks, 0).causes, 0))),
      'marks[0] "rim-rubbed" / causes[1] / from',
      'drum-loose',
    ],
    [
      'zones of one predicate',
      withPredicate({ ...rimFinding, zones: ['rim', 'rim'] }),
      'marks[0] "rim-rubbed" / predicate / zones[1]',
      'rim',
    ],
    [
      'kinds of one predicate',
      withPredicate({ test: 'any', of: [{ ...rimFinding, kinds: ['rub', 'scoring', 'rub'] }] }),
      'marks[0] "rim-rubbed" / predicate / of[0] / kinds[2]',
      'rub',
    ],
  ];
  test.each(cases)('%s', (_name, text, place, id) => {
    expect(refusalOf(text).details).toEqual({
      file: windlassFile,
      place,
      reason: `"${id}" stands here twice`,
    });
  });

  test('mechanisms, conditions and marks share one net, so also their ids', () => {
    const condition = broken((p) => (entry(p.conditions, 1).id = 'overload'));
    expect(refusalOf(condition).details).toMatchObject({
      place: 'conditions[1] "overload" / id',
      reason: '"overload" is already the id of one of the mechanisms',
    });
    const mark = broken((p) => (entry(p.marks, 0).id = 'drum-loose'));
    expect(refusalOf(mark).details).toMatchObject({
      place: 'marks[0] "drum-loose" / id',
      reason: '"drum-loose" is already the id of one of the conditions',
    });
  });

  test('two components may each have a zone of the same id', () => {
    const text = broken((p) => (entry(entry(p.components, 0).zones, 1).id = 'bore')).replaceAll(
      '"teeth"',
      '"bore"',
    );
    expect(entry(entry(loadPack(text, windlassFile).components, 0).zones, 1).id).toBe('bore');
  });
});
