import { describe, expect, it } from 'vitest';

import { destinations, fixedPlaces, meaningOf } from '#analysis/report/destinations.ts';
import { looseReferences, referencesIn, resolveReference } from '#analysis/report/references.ts';
import { inBrackets, referenceTargets, reportOutline } from '#analysis/report/report-outline.ts';

import { arrow, finding, photo, photoId, registered } from '../../pdf/report-case.ts';

const photos = [
  photo(1, { sourceName: 'IMG_2041.jpg' }),
  photo(2, { sourceName: 'IMG_2042.jpg' }),
  photo(3, { sourceName: 'left [1].jpg' }),
  photo(4, { sourceName: 'twice.jpg' }),
  photo(5, { sourceName: 'TWICE.jpg' }),
];
const input = {
  sections: [
    { place: 'before-answer', heading: 'Weighing', words: 'x' },
    { place: 'before-findings', heading: '', words: '' },
    { place: 'before-findings', heading: 'Oil  supply', words: 'x' },
  ] as const,
  findings: [finding(3), finding(12)],
  photos,
  marks: [arrow(1, 2, 3, [0, 0], [9, 9])],
  register: photos.map(registered),
  hasCustody: true,
  hasChain: false,
};

function resolved(text: string, more: Partial<typeof input> = {}) {
  const targets = referenceTargets({ ...input, ...more });
  return referencesIn(text).map((reference) => resolveReference(reference, targets));
}

describe('a reference', () => {
  it.each([
    ['[finding 12]', 'finding\u00a012', 'finding-12'],
    ['[Finding 3]', 'Finding\u00a03', 'finding-3'],
    // The marked photo is the first plate.
    ['[plate IMG_2042.jpg]', 'plate\u00a01', destinations.plate(photoId(2))],
    ['[plate img_2041]', 'plate\u00a02', destinations.plate(photoId(1))],
    ['[plate left 1 .jpg]', 'plate\u00a03', destinations.plate(photoId(3))],
    ['[plate TWICE.jpg]', 'plate\u00a05', destinations.plate(photoId(5))],
    ['[table custody]', 'table\u00a01', 'table-custody'],
    ['[Table findings]', 'Table\u00a02', 'table-findings'],
    ['[table photos]', 'table\u00a03', 'table-photos'],
    ['[section Oil supply]', 'section\u00a04', 'own-2'],
    ['[section Weighing]', 'section\u00a07', 'own-0'],
    ['[Section Contact sheet]', 'Annex\u00a0B', 'sheet'],
  ])('%s', (text, words, destination) => {
    expect(resolved(text)).toEqual([{ words, destination }]);
  });

  it('keeps leading to the same thing when what stands before it goes', () => {
    const fewer = { photos: photos.slice(1), hasCustody: false, findings: [finding(12)] };
    expect(resolved('[plate IMG_2042] [table findings] [finding 12]', fewer)).toEqual([
      { words: 'plate\u00a01', destination: destinations.plate(photoId(2)) },
      { words: 'table\u00a01', destination: 'table-findings' },
      { words: 'finding\u00a012', destination: 'finding-12' },
    ]);
  });

  it('that leads nowhere says why', () => {
    const targets = referenceTargets(input);
    const text = '[finding 4] [plate 2] [plate gone.jpg] [plate Twice.jpg] [figure chain] [finding 4]';
    expect(looseReferences(text, targets)).toEqual([
      { raw: '[finding 4]', reason: 'unknown' },
      { raw: '[plate 2]', reason: 'plate-by-number' },
      { raw: '[plate gone.jpg]', reason: 'unknown' },
      { raw: '[plate Twice.jpg]', reason: 'ambiguous' },
      { raw: '[figure chain]', reason: 'unknown' },
    ]);
    expect(resolved('[figure chain]', { hasChain: true })).toMatchObject([{ destination: 'chain' }]);
  });

  it('is written as one of the five kinds with a name, and nothing else is one', () => {
    expect(referencesIn('[findings 3] [finding] [finding 3\n] finding 3 [photo x] [3]')).toEqual([]);
  });

  it('can be written for every name, whatever it holds', () => {
    const name = 'a [b]\n c  d.jpg';
    const [reference] = referencesIn(`[plate ${inBrackets(name)}]`);
    expect(reference?.name).toBe(inBrackets(name));
  });
});

describe('the outline', () => {
  it('numbers the sections in the order in which they stand, and leaves out an empty one', () => {
    expect(reportOutline(input).all.map(({ heading }) => heading.replace(/\u00a0+/, ' '))).toEqual([
      '1 The claim',
      '2 Instruction and interest',
      '3 What was received',
      '4 Oil  supply',
      '5 Findings',
      '6 Plates',
      '7 Weighing',
      '8 The analyst’s answer',
      '9 Limits of this report',
      '10 Record',
      '11 Signature',
      'Annex A Photo register',
      'Annex B Contact sheet',
    ]);
  });

  it('has a place of its own for each section', () => {
    const names = reportOutline({ ...input, hasChain: true }).all.map(({ destination }) => destination);
    expect(new Set(names).size).toBe(names.length);
  });
});

describe('the meaning of a named place', () => {
  it('is found from its name again', () => {
    for (const place of fixedPlaces) expect(meaningOf(place)).toEqual({ what: place });
    expect(meaningOf(destinations.ownSection(12))).toEqual({ what: 'own-section', place: 12 });
    expect(meaningOf(destinations.finding(7))).toEqual({ what: 'finding', number: 7 });
    expect(meaningOf(destinations.plate(photoId(3)))).toEqual({ what: 'plate', photoId: photoId(3) });
    expect(meaningOf(destinations.table('custody'))).toEqual({ what: 'received' });
    expect(meaningOf(destinations.table('photos'))).toEqual({ what: 'register' });
    expect(meaningOf('somewhere')).toBeNull();
  });
});
