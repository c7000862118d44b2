import { describe, expect, it } from 'vitest';
import { handleAtPoint, markAtPoint, type PlacedMark } from '#analysis/marks/mark-at-point.ts';
import { imagePoint } from '#analysis/marks/planes.ts';

function placed(id: string, tailX: number, tailY: number, tipX: number, tipY: number): PlacedMark<string> {
  return {
    id,
    geometry: { kind: 'arrow', v: 1, tail: imagePoint(tailX, tailY), tip: imagePoint(tipX, tipY) },
    look: { class: 'primary', label: 'P 7.1', unit: 1 },
  };
}

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
    expect(handleAtPoint(across.geometry, imagePoint(297, 103), 8)).toBe('tip');
    expect(handleAtPoint(across.geometry, imagePoint(96, 100), 8)).toBe('tail');
    expect(handleAtPoint(across.geometry, imagePoint(200, 100), 8)).toBeNull();
  });
});
