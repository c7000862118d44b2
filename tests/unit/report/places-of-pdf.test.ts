import { describe, expect, it } from 'vitest';

import { placeAt, type PlaceOnPage } from '../../../renderer/report/places-of-pdf.ts';

const place = (name: string, page: number, x: number, y: number): PlaceOnPage => ({ name, page, x, y });

/** Two columns of plates on page 2, as four of them stand on a page. */
const places = [
  place('claim', 1, 60, 100),
  place('findings', 1, 60, 400),
  place('plates', 2, 60, 90),
  place('one', 2, 60, 120),
  place('two', 2, 310, 120),
  place('three', 2, 60, 450),
  place('four', 2, 310, 450),
];

describe('a click on a page', () => {
  it.each([
    [1, 70, 110, 'claim'],
    [1, 500, 399, 'findings'],
    [1, 500, 380, 'claim'],
    [2, 100, 300, 'one'],
    [2, 400, 300, 'two'],
    [2, 305, 300, 'two'],
    [2, 100, 460, 'three'],
    [2, 500, 800, 'four'],
    // Above everything on its page, and on a page without a place: what began before runs on there.
    [2, 100, 20, 'findings'],
    [3, 100, 20, 'four'],
  ])('on page %d at %d, %d means %s', (page, x, y, name) => {
    expect(placeAt(places, { page, x, y })?.name).toBe(name);
  });

  it('before everything means nothing', () => {
    expect(placeAt(places, { page: 1, x: 70, y: 20 })).toBeNull();
    expect(placeAt([], { page: 1, x: 70, y: 20 })).toBeNull();
  });
});
