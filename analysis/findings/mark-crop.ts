/** The piece of a photo that shows one of its marks. */
import type { Bounds } from '#analysis/marks/mark-handles.ts';
import type { Size } from '#analysis/marks/planes.ts';

/** Upright image pixels. */
export type Crop = {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
};

/** On every side of the mark, as a share of its own width and height. */
const room = 0.35;
/** A short mark is shown with its surroundings: the least width and height, as shares of the picture's. */
const least = 0.16;

/**
 * The rectangle round `bounds` with room about it, inside the picture, of the proportion `width / height`. Where no
 * rectangle of that proportion inside the picture holds all of the mark, the largest one is taken about its middle.
 */
export function markCrop(bounds: Bounds, image: Size, proportion: number): Crop {
  const wanted = {
    width: Math.max((bounds.right - bounds.left) * (1 + 2 * room), image.width * least),
    height: Math.max((bounds.bottom - bounds.top) * (1 + 2 * room), image.height * least),
  };
  const largest = Math.min(image.width, image.height * proportion);
  const width = Math.min(Math.max(wanted.width, wanted.height * proportion), largest);
  const height = width / proportion;
  return {
    x: kept((bounds.left + bounds.right - width) / 2, image.width - width),
    y: kept((bounds.top + bounds.bottom - height) / 2, image.height - height),
    width,
    height,
  };
}

function kept(start: number, most: number): number {
  return Math.max(0, Math.min(start, most));
}
