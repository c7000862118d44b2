import { describe, expect, test } from 'vitest';

import { broken, entry, loosely, refusalOf, rimFinding, withPredicate } from './pack-refusals.ts';
import { windlassFile } from './small-pack.ts';

describe('a file of the wrong shape is refused at its place, in words', () => {
  const cases: readonly [string, string, string, string][] = [
    [
      'a missing field',
      broken((pack) => delete loosely(entry(pack.components, 1)).optional),
      'components[1] "plain-bearing" / optional',
      'this is missing',
    ],
    [
      'a missing word of a choice',
      broken((pack) => delete loosely(entry(pack.conditions, 0)).leak),
      'conditions[0] "bearings-worn" / leak',
      'this is missing',
    ],
    [
      'a field nobody knows',
      broken((pack) => (loosely(entry(entry(pack.components, 0).zones, 1)).colour = 'red')),
      'components[0] "drum" / zones[1] "teeth"',
      'nothing is known by the name "colour"',
    ],
    [
      'a number for a text',
      broken((pack) => (loosely(entry(pack.kinds, 2)).label = 7)),
      'kinds[2] "scoring" / label',
      'text is expected here, not a number',
    ],
    [
      'null for a list',
      broken((pack) => (loosely(pack).quantities = null)),
      'quantities',
      'a list is expected here, not null',
    ],
    [
      'an empty list of zones',
      broken((pack) => (entry(pack.components, 0).zones = [])),
      'components[0] "drum" / zones',
      'the list must not be empty',
    ],
    [
      'a zone at which nothing can happen',
      broken((pack) => (entry(entry(pack.components, 1).zones, 0).kinds = [])),
      'components[1] "plain-bearing" / zones[0] "bore" / kinds',
      'the list must not be empty',
    ],
    [
      'an empty label',
      broken((pack) => (entry(pack.sides, 0).label = '')),
      'sides[0] "from-crank" / label',
      'the text must not be empty',
    ],
    [
      'a label that is too long',
      broken((pack) => (entry(pack.positions, 1).label = 'x'.repeat(121))),
      'positions[1] "right" / label',
      'the text is longer than 120 characters',
    ],
    [
      'an id with capitals',
      broken((pack) => (entry(pack.components, 0).id = 'Drum')),
      'components[0] "Drum" / id',
      'an id is lower-case words joined by hyphens',
    ],
    [
      'a version of two numbers',
      broken((pack) => (pack.version = '1.2')),
      'version',
      'a version is three numbers such as 1.0.0',
    ],
    [
      'a schema of another number',
      broken((pack) => (loosely(pack).schema = 2)),
      'schema',
      'must be one of 1',
    ],
    [
      'a word that is no expectation',
      broken((pack) => (loosely(entry(entry(pack.marks, 0).causes, 0)).word = 'perhaps')),
      'marks[0] "rim-rubbed" / causes[0] / word',
      'must be one of "nearly-always", "often", "sometimes", "rarely", "practically-never"',
    ],
    [
      'a share above one',
      withPredicate({ ...rimFinding, leastShare: 1.5 }),
      'marks[0] "rim-rubbed" / predicate / leastShare',
      'the number must not be more than 1',
    ],
    [
      'a share below nought',
      withPredicate({ ...rimFinding, leastShare: -0.1 }),
      'marks[0] "rim-rubbed" / predicate / leastShare',
      'the number must not be less than 0',
    ],
    [
      'a test of another name, deep in a predicate',
      withPredicate({ test: 'all', of: [rimFinding, { test: 'any', of: [{ test: 'guess' }] }] }),
      'marks[0] "rim-rubbed" / predicate / of[1] / of[0] / test',
      'the test must be one of finding, measurement, all, any',
    ],
    [
      'a finding test that names no zones',
      withPredicate({ test: 'all', of: [rimFinding, { ...rimFinding, zones: undefined }] }),
      'marks[0] "rim-rubbed" / predicate / of[1] / zones',
      'this is missing',
    ],
    [
      'an all of nothing',
      withPredicate({ test: 'all', of: [] }),
      'marks[0] "rim-rubbed" / predicate / of',
      'the list must not be empty',
    ],
    [
      'a text for a predicate',
      withPredicate('rub'),
      'marks[0] "rim-rubbed" / predicate',
      'an object is expected here, not text',
    ],
    ['no predicate', withPredicate(undefined), 'marks[0] "rim-rubbed" / predicate', 'this is missing'],
  ];
  test.each(cases)('%s', (_name, text, place, reason) => {
    expect(refusalOf(text).details).toEqual({ file: windlassFile, place, reason });
  });
});
