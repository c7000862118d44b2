import { describe, expect, it } from 'vitest';
import { handleAtPoint, markAtPoint, marksInBox, type PlacedMark } from '#analysis/marks/mark-at-point.ts';
import { imagePoint } from '#analysis/marks/planes.ts';
import type { MarkGeometry } from '#shared-types/mark.ts';

function placed(id: string, tailX: number, tailY: number, tipX: number, tipY: number): PlacedMark<string> {
  return {
    id,
    geometry: { kind: 'arrow', v: 1, tail: imagePoint(tailX, tailY), tip: imagePoint(tipX, tipY) },
    look: { class: 'primary', label: 'P 7.1', unit: 1 },
  };
}

const ground = { image: { width: 2000, height: 2000 }, unit: 1 };

const across = placed('across', 100, 100, 300, 100);
const down = placed('down', 200, 50, 200, 300);

describe('the mark at a point', () => {
  it('is the one whose line is near enough', () => {
    expect(markAtPoint([across], imagePoint(150, 106), 8)).toBe('across');
    expect(markAtPoint([across], imagePoint(150, 112), 8)).toBeNull();
  });

  it('is the topmost where two cross', () => {
    expect(markAtPoint([across, down], imagePoint(200, 100), 8)).toBe('down');
    expect(markAtPoint([down, across], imagePoint(200, 100), 8)).toBe('across');
  });

  it('is found by its label, which stands beyond the tail', () => {
    expect(markAtPoint([across], imagePoint(75, 92), 2)).toBe('across');
    expect(markAtPoint([across], imagePoint(75, 112), 2)).toBeNull();
  });
});

describe('the handle at a point', () => {
  it('is the nearest within reach', () => {
    expect(handleAtPoint(across.geometry, imagePoint(297, 103), 8, ground)).toBe('tip');
    expect(handleAtPoint(across.geometry, imagePoint(96, 100), 8, ground)).toBe('tail');
    expect(handleAtPoint(across.geometry, imagePoint(200, 100), 8, ground)).toBeNull();
  });
});

describe('words on the picture', () => {
  const geometry: MarkGeometry = { kind: 'text', v: 1, at: imagePoint(500, 500), words: 'scored here' };
  const mark = { id: 'words', geometry, look: { class: 'primary', label: '', unit: 1 } } as const;

  // "scored here" in Source Sans 3 Semibold at 14: s 431, c 462, o 549, r 373, e 507, d 564, space 200, h 558 thousandths
  // of an em, as fontkit reads the advance widths from the font file: 70 pixels, and 4 of white on each side.
  it('are taken hold of where they are set, as wide as the font sets them', () => {
    expect(markAtPoint([mark], imagePoint(570, 496), 0)).toBe('words');
    expect(markAtPoint([mark], imagePoint(580, 496), 0)).toBeNull();
    expect(markAtPoint([mark], imagePoint(502, 470), 0)).toBeNull();
  });
});

describe('a box drawn on the photo', () => {
  it('holds the marks that lie wholly in it, whichever corners it was drawn between', () => {
    const box = [imagePoint(310, 120), imagePoint(90, 80)] as const;
    expect(marksInBox([across, down], ...box)).toEqual(['across']);
    expect(marksInBox([across, down], imagePoint(0, 0), imagePoint(400, 400))).toEqual(['across', 'down']);
    expect(marksInBox([across, down], imagePoint(0, 0), imagePoint(250, 400))).toEqual(['down']);
  });
});
