import { describe, expect, it } from 'vitest';

import { pageGeometry, plateSize } from '#analysis/report/page-geometry.ts';

describe('pageGeometry', () => {
  // ISO 216: A4 is 210 mm x 297 mm. ANSI/ASME Y14.1: size A is 8.5 in x 11 in. A point is 1/72 inch.
  it.each([
    ['A4', 595.276, 841.89],
    ['Letter', 612, 792],
  ] as const)('%s is %s x %s points', (paper, width, height) => {
    const page = pageGeometry(paper);
    expect(page.width).toBeCloseTo(width, 3);
    expect(page.height).toBeCloseTo(height, 2);
    expect(page.measure + page.margins.left + page.margins.right).toBeCloseTo(page.width, 9);
    expect(page.textHeight + page.margins.top + page.margins.bottom).toBeCloseTo(page.height, 9);
  });
});

describe.each(['A4', 'Letter'] as const)('plateSize on %s', (paper) => {
  const page = pageGeometry(paper);

  it('sets a marked landscape picture across the measure', () => {
    const size = plateSize({ width: 4000, height: 3000 }, page, true);
    expect(size.width).toBeCloseTo(page.measure, 9);
    expect(size.height / size.width).toBeCloseTo(0.75, 9);
  });

  it('limits the height of a portrait and keeps its shape', () => {
    const size = plateSize({ width: 3000, height: 4000 }, page, true);
    expect(size.height).toBeLessThan(page.textHeight * 0.7);
    expect(size.width / size.height).toBeCloseTo(0.75, 9);
    expect(plateSize({ width: 10, height: 9000 }, page, true).height).toBeLessThan(page.textHeight * 0.7);
  });

  it('lets two pictures without marks share a page with their captions', () => {
    const size = plateSize({ width: 3000, height: 4000 }, page, false);
    expect(2 * (size.height + 40)).toBeLessThan(page.textHeight);
  });
});
