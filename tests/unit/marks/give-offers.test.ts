import { describe, expect, it } from 'vitest';
import {
  giveOffers,
  likeliestOffer,
  type GiveOffer,
  type GiveQuestion,
} from '#analysis/marks/give-offers.ts';
import type { HeldFinding } from '#analysis/marks/bench-state.ts';
import { turbochargerPack } from '../../support/world.ts';
import { findingFields, findingId } from './bench-gestures.ts';

const pack = turbochargerPack();
const bearing = { component: 'thrust-bearing', position: null };

function finding(number: number, change: Partial<HeldFinding> = {}): HeldFinding {
  return {
    ...findingFields({ ...bearing, zone: 'front-pads', kind: 'worn-away' }),
    id: findingId(number),
    number,
    revision: 1,
    ...change,
  };
}

const findings = [
  finding(1),
  finding(2, { kind: 'heat-tint' }),
  finding(3, { zone: 'oil-holes', kind: 'smearing' }),
  finding(12, { kind: 'scoring', presence: 'looked-for-absent' }),
];

const asked = (change: Partial<GiveQuestion>): readonly GiveOffer[] =>
  giveOffers({ pack, findings, recent: [], parts: [bearing], typed: '', ...change });
const numbers = (offers: readonly GiveOffer[]) =>
  offers.flatMap((offer) => (offer.offer === 'finding' ? [offer.finding.number] : []));
const first = (change: Partial<GiveQuestion>) => asked(change)[0];
/** What Enter takes without any other key. */
const likeliest = (change: Partial<GiveQuestion>) => {
  const offers = asked(change);
  return offers[likeliestOffer(offers)];
};

describe('what a mark can be given to', () => {
  it('begins with the finding last given to, so that Enter alone gives to it', () => {
    expect(numbers(asked({ recent: [findingId(2), findingId(1)] }))).toEqual([2, 1, 3, 12]);
  });

  it('without any given to yet begins with the newest; what is not there comes last', () => {
    expect(numbers(asked({}))).toEqual([3, 2, 1, 12]);
  });

  it('offers below a new finding for every kind at every zone of the part shown, as the machine kind has them', () => {
    const offers = asked({ findings: [] });
    const component = pack.components.find(({ id }) => id === 'thrust-bearing')!;
    const pairs = component.zones.flatMap(({ id, kinds }) => kinds.map((kind) => `${id} ${kind}`));
    expect(
      offers.map((offer) => (offer.offer === 'new' ? `${offer.terms.zone} ${offer.terms.kind}` : '')),
    ).toEqual([...pairs, ...component.kinds.map((kind) => `null ${kind}`)]);
    expect(asked({ findings: [], parts: [] })).toEqual([]);
  });

  it('a digit goes to the finding of that number, and to no new one', () => {
    expect(numbers(asked({ typed: '3' }))).toEqual([3]);
    expect(asked({ typed: '1' }).map(({ offer }) => offer)).toEqual(['finding', 'finding']);
    expect(numbers(asked({ typed: '1' }))).toEqual([1, 12]);
    expect(numbers(asked({ typed: '12' }))).toEqual([12]);
    expect(asked({ typed: '7' })).toEqual([]);
  });

  it('letters narrow by the beginnings of words, kinds of damage first', () => {
    expect(first({ typed: 'wo', findings: [] })).toMatchObject({
      offer: 'new',
      terms: { ...bearing, zone: 'front-pads', kind: 'worn-away' },
    });
    expect(first({ typed: 'w', findings: [] })?.kind.startsWith('w')).toBe(true);
    expect(first({ typed: 'HEAT' })).toMatchObject({ finding: { number: 2 } });
    expect(first({ typed: 'tint' })).toMatchObject({ finding: { number: 2 } });
  });

  it('words of place and kind narrow together', () => {
    const offers = asked({ typed: 'rear worn', findings: [] });
    expect(offers.length).toBeGreaterThan(0);
    for (const offer of offers) expect(offer).toMatchObject({ terms: { zone: 'rear-pads' } });
    expect(asked({ typed: 'no such words' })).toEqual([]);
  });

  it('a finding that is there comes before a new one of the same words', () => {
    const offers = asked({ typed: 'worn away' });
    expect(offers[0]).toMatchObject({ offer: 'finding', finding: { number: 1 } });
    expect(offers[1]?.offer).toBe('new');
  });
});

describe('which finding comes first', () => {
  const turbine = { component: 'turbine-wheel', position: null, zone: 'blades', kind: 'torn' } as const;
  const torn = finding(7, turbine);
  const burst = finding(8, { ...turbine, kind: 'burst' });
  const all = [...findings, torn, burst];

  it('is the one last given to, then those at the parts on the photo, then the others', () => {
    expect(numbers(asked({ findings: all }))).toEqual([3, 2, 1, 12, 8, 7]);
    // What lies at a part that is not on the photo stays behind, given to before or not.
    expect(numbers(asked({ findings: all, recent: [findingId(7), findingId(1)] }))).toEqual([
      1, 3, 2, 12, 8, 7,
    ]);
    expect(numbers(asked({ findings: all, recent: [findingId(7)], parts: [] }))[0]).toBe(7);
    expect(
      numbers(asked({ findings: all, parts: [{ component: 'turbine-wheel', position: null }] })),
    ).toEqual([8, 7, 3, 2, 1, 12]);
  });

  it('goes by the place of a part where photo and finding both name it', () => {
    const places = pack.components.find(({ positions }) => positions.length > 1)!;
    const [one, other] = places.positions.map((position) => ({ component: places.id, position }));
    const there = [finding(1, one), finding(2, other), finding(3, { ...one, position: null })];
    expect(numbers(asked({ findings: there, parts: [one!] }))).toEqual([3, 1, 2]);
    expect(numbers(asked({ findings: there, parts: [{ ...one!, position: null }] }))).toEqual([3, 2, 1]);
  });

  it('Enter alone never gives to a finding at a part that is not on the photo while anything else is offered', () => {
    expect(likeliest({ findings: all })).toMatchObject({ finding: { number: 3 } });
    expect(likeliest({ findings: [torn] })).toMatchObject({ offer: 'new', terms: bearing });
    expect(likeliest({ findings: all, typed: 'torn' })).toMatchObject({ finding: { number: 7 } });
    expect(likeliest({ findings: [torn], parts: [] })).toMatchObject({ finding: { number: 7 } });
    expect(likeliest({ findings: all, recent: [findingId(7)] })).toMatchObject({ finding: { number: 3 } });
    expect(likeliest({ findings: [torn], recent: [findingId(7)] })).toMatchObject({ offer: 'new' });
    expect(likeliest({ findings: [], parts: [] })).toBeUndefined();
  });

  it('Enter alone passes over what was looked for and not found, unless marks were given to it before', () => {
    const absent = [finding(12, { kind: 'scoring', presence: 'looked-for-absent' })];
    expect(likeliest({ findings: absent })).toMatchObject({ offer: 'new' });
    expect(likeliest({ findings: absent, recent: [findingId(12)] })).toMatchObject({
      finding: { number: 12 },
    });
  });

  it('a number that is typed is taken as it is, whatever the photo shows', () => {
    expect(likeliest({ findings: [torn, finding(71)], typed: '7' })).toMatchObject({
      finding: { number: 7 },
    });
  });

  it('words reach findings at other parts, and a new one by part and kind', () => {
    expect(numbers(asked({ findings: all, typed: 'turbine torn' }))).toEqual([7]);
    expect(asked({ findings: all, typed: 'thrust, heat' }).at(-1)).toMatchObject({
      offer: 'new',
      terms: { component: 'thrust-bearing' },
    });
  });
});
