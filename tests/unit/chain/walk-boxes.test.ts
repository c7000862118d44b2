import { describe, expect, it } from 'vitest';
import { boxAt, nextBox } from '#analysis/chain/walk-boxes.ts';

const box = (id: string, x: number, y: number) => ({ id, x, y, width: 10, height: 6 });
/** Two columns, the right one between the rows of the left. */
const boxes = [box('top', 0, 0), box('foot', 0, 20), box('right', 30, 9), box('far', 60, 40)];

describe('walking from box to box', () => {
  it('goes to the nearest that way, straight ahead first', () => {
    expect(nextBox(boxes, 'top', 'right')).toBe('right');
    expect(nextBox(boxes, 'top', 'down')).toBe('foot');
    expect(nextBox(boxes, 'right', 'left')).toBe('top');
    expect(nextBox(boxes, 'foot', 'up')).toBe('top');
    expect(nextBox(boxes, 'right', 'right')).toBe('far');
  });

  it('stays where nothing lies that way', () => {
    expect(nextBox(boxes, 'top', 'left')).toBeNull();
    expect(nextBox(boxes, 'top', 'up')).toBeNull();
    expect(nextBox(boxes, 'far', 'right')).toBeNull();
    expect(nextBox(boxes, 'nowhere', 'right')).toBeNull();
  });
});

describe('the box under a point', () => {
  it('is the one whose edges hold it', () => {
    expect(boxAt(boxes, { x: 30, y: 15 })).toBe('right');
    expect(boxAt(boxes, { x: 29.9, y: 12 })).toBeNull();
  });
});
