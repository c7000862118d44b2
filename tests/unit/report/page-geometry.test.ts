import { describe, expect, it } from 'vitest';

import { pageGeometry, plateGap, plateSize, printedPixels } from '#analysis/report/page-geometry.ts';

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
  const alone = { platesAPage: 1, legendLines: 3 } as const;
  const landscape = { width: 4000, height: 3000 };
  const portrait = { width: 3000, height: 4000 };

  it('sets a landscape picture with a page of its own across the measure', () => {
    const size = plateSize(landscape, page, alone);
    expect(size.width).toBeCloseTo(page.measure, 9);
    expect(size.height / size.width).toBeCloseTo(0.75, 9);
  });

  it('limits the height of a portrait and keeps its shape', () => {
    const size = plateSize(portrait, page, alone);
    expect(size.height).toBeLessThan(page.textHeight * 0.7);
    expect(size.width / size.height).toBeCloseTo(0.75, 9);
    expect(plateSize({ width: 10, height: 9000 }, page, alone).height).toBeLessThan(page.textHeight * 0.7);
  });

  it.each([2, 4] as const)(
    'lets two rows of %d to a page share it with captions and legends',
    (platesAPage) => {
      for (const legendLines of [null, 1, 4]) {
        // Two lines of caption, key and legend in 8.5 points, of 11.2 points each.
        const below = 5 + 2 * 11.2 + (legendLines === null ? 0 : 17 + 5 + legendLines * 12);
        const { height } = plateSize(portrait, page, { platesAPage, legendLines });
        expect(2 * (height + below) + plateGap, `${String(legendLines)} lines`).toBeLessThan(page.textHeight);
      }
    },
  );

  it('sets two columns where four stand on a page', () => {
    const { width } = plateSize(landscape, page, { platesAPage: 4, legendLines: null });
    expect(2 * width + plateGap).toBeCloseTo(page.measure, 9);
  });
});

describe('printedPixels', () => {
  // A point is 1/72 inch: 6 inches at 300 to the inch are 1800.
  it('are 300 to the inch, in the shape of the picture', () => {
    expect(printedPixels({ width: 4000, height: 3000 }, { width: 432, height: 324 })).toEqual({
      width: 1800,
      height: 1350,
    });
  });

  it('are never more than the picture has', () => {
    expect(printedPixels({ width: 800, height: 600 }, { width: 432, height: 324 })).toEqual({
      width: 800,
      height: 600,
    });
  });
});
