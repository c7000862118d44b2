import { describe, expect, test } from 'vitest';

import {
  checkFindingTerms,
  componentOf,
  findingTitle,
  kindAndItsCases,
  kindOf,
  kindsFor,
  positionLabel,
  quantityOf,
  sideLabel,
  zoneOf,
  type FindingTerms,
} from '#analysis/knowledge/pack-terms.ts';
import { AppError } from '#shared-types/errors.ts';

import { loadWindlass } from './small-pack.ts';

const pack = loadWindlass();
const ids = (terms: readonly { readonly id: string }[]) => terms.map((term) => term.id);
const boreScored: FindingTerms = {
  component: 'plain-bearing',
  position: 'right',
  zone: 'bore',
  kind: 'scoring',
};

function unknownTerm(act: () => unknown) {
  try {
    act();
  } catch (error) {
    if (error instanceof AppError && error.code === 'term-unknown') return error.details;
    throw error;
  }
  throw new Error('every term was known');
}

describe('look-ups', () => {
  test('answer the term with that id', () => {
    expect(componentOf(pack, 'plain-bearing').label).toBe('plain bearing');
    expect(zoneOf(pack, 'drum', 'teeth').counts).toBe('blades');
    expect(kindOf(pack, 'chipped').meaning).toBe('A piece is off.');
    expect(quantityOf(pack, 'hours-run').dimension).toBe('duration');
    expect(positionLabel(pack, 'left')).toBe('left');
    expect(sideLabel(pack, 'from-crank')).toBe('from the crank');
  });

  test('name the list and the id that it does not have', () => {
    expect(unknownTerm(() => componentOf(pack, 'crank'))).toEqual({ list: 'part', id: 'crank' });
    expect(unknownTerm(() => zoneOf(pack, 'crank', 'rim'))).toEqual({ list: 'part', id: 'crank' });
    expect(unknownTerm(() => zoneOf(pack, 'drum', 'bore'))).toEqual({ list: 'zone of the drum', id: 'bore' });
    expect(unknownTerm(() => kindOf(pack, 'melted'))).toEqual({ list: 'kind of damage', id: 'melted' });
    expect(unknownTerm(() => quantityOf(pack, 'weight'))).toEqual({ list: 'quantity', id: 'weight' });
    expect(unknownTerm(() => positionLabel(pack, 'middle'))).toEqual({ list: 'position', id: 'middle' });
    expect(unknownTerm(() => sideLabel(pack, 'above'))).toEqual({ list: 'side to look from', id: 'above' });
  });
});

describe('the kinds of damage for a place', () => {
  test('at a zone: the zone’s, then the part’s own', () => {
    expect(ids(kindsFor(pack, 'drum', 'teeth'))).toEqual(['chipped', 'rub', 'not-present']);
  });

  test('for the part as a whole: its own, then all its zones’, each once', () => {
    expect(ids(kindsFor(pack, 'drum', null))).toEqual([
      'not-present',
      'rub',
      'rub-all-round',
      'scoring',
      'chipped',
    ]);
  });

  test('a kind takes in its cases, at any remove', () => {
    const deeper = loadWindlass((each) => {
      each.kinds.push({
        id: 'deep-rub',
        label: 'deep rub',
        meaning: 'To the core.',
        narrows: 'rub-all-round',
      });
    });
    expect(kindAndItsCases(deeper, 'rub')).toEqual(['rub', 'rub-all-round', 'deep-rub']);
    expect(kindAndItsCases(deeper, 'chipped')).toEqual(['chipped']);
  });
});

describe('the title of a finding', () => {
  test.each<[Partial<FindingTerms>, string]>([
    [{}, 'Plain bearing, right, bore: scoring'],
    [{ position: null }, 'Plain bearing, bore: scoring'],
    [{ zone: null }, 'Plain bearing, right: scoring'],
    [{ zone: null, position: null, kind: 'not-present' }, 'Plain bearing: not present'],
    [{ component: 'drum', position: null, zone: 'rim', kind: 'rub-all-round' }, 'Drum, rim: rub all round'],
  ])('%o', (change, title) => {
    expect(findingTitle(pack, { ...boreScored, ...change })).toBe(title);
  });

  test('names a term that is unknown instead of leaving a hole', () => {
    expect(unknownTerm(() => findingTitle(pack, { ...boreScored, zone: 'rim' }))).toEqual({
      list: 'zone of the plain bearing',
      id: 'rim',
    });
  });
});

describe('the terms of a finding', () => {
  test.each<[string, Partial<FindingTerms>]>([
    ['named in full', {}],
    ['without a position, where it was not said which', { position: null }],
    ['without a zone, with a kind of one of its zones', { zone: null }],
    ['with a kind of the part as a whole, at a zone', { kind: 'not-present' }],
  ])('pass %s', (_name, change) => {
    expect(() => checkFindingTerms(pack, { ...boreScored, ...change })).not.toThrow();
  });

  test.each<[string, Partial<FindingTerms>, string, string]>([
    ['component', { component: 'crank' }, 'part', 'crank'],
    ['position', { position: 'middle' }, 'position', 'middle'],
    ['zone', { zone: 'rim' }, 'zone of the plain bearing', 'rim'],
    ['kind', { kind: 'melted' }, 'kind of damage', 'melted'],
    [
      'position of a single part',
      { component: 'drum', zone: 'rim', position: 'left' },
      'position of the drum',
      'left',
    ],
    [
      'kind that cannot occur at that zone',
      { kind: 'chipped' },
      'kind of damage at the plain bearing, right, bore',
      'chipped',
    ],
    [
      'kind that cannot occur at the part at all',
      { zone: null, position: null, kind: 'rub-all-round' },
      'kind of damage at the plain bearing',
      'rub-all-round',
    ],
  ])('are refused for an unknown %s', (_name, change, list, id) => {
    expect(unknownTerm(() => checkFindingTerms(pack, { ...boreScored, ...change }))).toEqual({ list, id });
  });
});
