import { describe, expect, it } from 'vitest';
import { giveOffers, type GiveOffer, type GiveQuestion } from '#analysis/marks/give-offers.ts';
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
