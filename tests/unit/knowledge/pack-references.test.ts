import { describe, expect, test } from 'vitest';

import { broken, entry, refusalOf, rimFinding, withPredicate } from './pack-refusals.ts';
import { windlassFile } from './small-pack.ts';

describe('an id that is nowhere, or does not belong, is refused where it is named', () => {
  const measured = { test: 'measurement', quantity: 'bore-diameter', position: null, status: 'inside' };
  const cases: readonly [string, string, string, string][] = [
    [
      'the wider kind of a kind',
      broken((p) => (entry(p.kinds, 1).narrows = 'touch')),
      'kinds[1] "rub-all-round" / narrows',
      'there is no kind "touch"',
    ],
    [
      'a kind of a zone',
      broken((p) => (entry(entry(p.components, 0).zones, 1).kinds[1] = 'melted')),
      'components[0] "drum" / zones[1] "teeth" / kinds[1]',
      'there is no kind "melted"',
    ],
    [
      'a kind of a component',
      broken((p) => (entry(p.components, 1).kinds[0] = 'lost')),
      'components[1] "plain-bearing" / kinds[0]',
      'there is no kind "lost"',
    ],
    [
      'a position of a component',
      broken((p) => (entry(p.components, 1).positions[1] = 'middle')),
      'components[1] "plain-bearing" / positions[1]',
      'there is no position "middle"',
    ],
    [
      'the component of a quantity',
      broken((p) => (entry(p.quantities, 0).component = 'crank')),
      'quantities[0] "bore-diameter" / component',
      'there is no component "crank"',
    ],
    [
      'the zone of a quantity: there is one, but of another component',
      broken((p) => (entry(p.quantities, 0).zone = 'rim')),
      'quantities[0] "bore-diameter" / zone',
      '"plain-bearing" has no zone "rim"',
    ],
    [
      'the zone of a quantity without a component',
      broken((p) => (entry(p.quantities, 1).zone = 'rim')),
      'quantities[1] "hours-run" / zone',
      'a zone needs the component that it belongs to',
    ],
    [
      'the cause of a condition',
      broken((p) => (entry(entry(p.conditions, 1).causes, 0).from = 'bad-luck')),
      'conditions[1] "drum-loose" / causes[0] / from',
      'there is no mechanism or condition "bad-luck"',
    ],
    [
      'the cause of a mark: another mark is none',
      broken((p) => (entry(entry(p.marks, 1).causes, 0).from = 'rim-rubbed')),
      'marks[1] "teeth-chipped" / causes[0] / from',
      'there is no mechanism or condition "rim-rubbed"',
    ],
    [
      'the component of a predicate',
      withPredicate({ ...rimFinding, component: 'crank' }),
      'marks[0] "rim-rubbed" / predicate / component',
      'there is no component "crank"',
    ],
    [
      'a zone of a predicate, deep down',
      withPredicate({
        test: 'all',
        of: [rimFinding, { test: 'any', of: [{ ...rimFinding, zones: ['bore'] }] }],
      }),
      'marks[0] "rim-rubbed" / predicate / of[1] / of[0] / zones[0]',
      '"drum" has no zone "bore"',
    ],
    [
      'a kind of a predicate',
      withPredicate({ ...rimFinding, kinds: ['rub', 'melted'] }),
      'marks[0] "rim-rubbed" / predicate / kinds[1]',
      'there is no kind "melted"',
    ],
    [
      'a kind of a predicate that the zones named cannot show',
      withPredicate({ ...rimFinding, kinds: ['chipped'] }),
      'marks[0] "rim-rubbed" / predicate / kinds[0]',
      'kind "chipped" cannot occur in any of the zones named',
    ],
    [
      'a position of a predicate',
      withPredicate({ ...rimFinding, component: 'plain-bearing', zones: [], position: 'middle' }),
      'marks[0] "rim-rubbed" / predicate / position',
      'there is no position "middle"',
    ],
    [
      'a position of a predicate at a single part',
      withPredicate({ ...rimFinding, position: 'left' }),
      'marks[0] "rim-rubbed" / predicate / position',
      '"drum" has no position "left"',
    ],
    [
      'the quantity of a predicate',
      withPredicate({ ...measured, quantity: 'weight' }),
      'marks[0] "rim-rubbed" / predicate / quantity',
      'there is no quantity "weight"',
    ],
    [
      'the position of a measurement',
      withPredicate({ ...measured, position: 'middle' }),
      'marks[0] "rim-rubbed" / predicate / position',
      'there is no position "middle"',
    ],
    [
      'the position of a measurement that belongs to no component',
      withPredicate({ ...measured, quantity: 'hours-run', position: 'left' }),
      'marks[0] "rim-rubbed" / predicate / position',
      'quantity "hours-run" belongs to no component, so it has no positions',
    ],
    [
      'a share where nothing is counted',
      withPredicate({ ...rimFinding, leastShare: 0.5 }),
      'marks[0] "rim-rubbed" / predicate / leastShare',
      'nothing is counted in zone "rim", so a share of it has no meaning',
    ],
    [
      'a share of no zone in particular',
      withPredicate({ ...rimFinding, zones: [], leastShare: 0.5 }),
      'marks[0] "rim-rubbed" / predicate / leastShare',
      'a least share needs its zones named, because each counts its own blades or pads',
    ],
  ];
  test.each(cases)('%s', (_name, text, place, reason) => {
    expect(refusalOf(text).details).toEqual({ file: windlassFile, place, reason });
  });
});
