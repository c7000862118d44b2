/**
 * The three planes a mark is seen in, and the only place that converts between them.
 * Image: upright pixels of the original (what is stored). Screen: CSS pixels from the top left of the photo's well.
 * Page: PDF points from the top left of the printed plate.
 */
import type { ImagePoint, PagePoint, ScreenPoint } from '#shared-types/points.ts';

/** Width and height in the units of its plane. */
export type Size = { readonly width: number; readonly height: number };

/** What part of the photo the well shows. */
export type View = {
  /** CSS pixels per image pixel. */
  readonly scale: number;
  /** Where the picture's top left corner falls. */
  readonly origin: ScreenPoint;
};

/** A picture set on a page. */
export type Plate = {
  /** PDF points per image pixel. */
  readonly scale: number;
  readonly origin: PagePoint;
};

/** How many times larger than life a photo can be looked at: CSS pixels per image pixel. */
export const largestScale = 32;

export function imagePoint(x: number, y: number): ImagePoint {
  return { x, y } as ImagePoint;
}

export function screenPoint(x: number, y: number): ScreenPoint {
  return { x, y, __plane: 'screen' };
}

export function pagePoint(x: number, y: number): PagePoint {
  return { x, y, __plane: 'page' };
}

export function imageToScreen(view: View, point: ImagePoint): ScreenPoint {
  return screenPoint(view.origin.x + point.x * view.scale, view.origin.y + point.y * view.scale);
}

export function screenToImage(view: View, point: ScreenPoint): ImagePoint {
  return imagePoint((point.x - view.origin.x) / view.scale, (point.y - view.origin.y) / view.scale);
}

export function imageToPage(plate: Plate, point: ImagePoint): PagePoint {
  return pagePoint(plate.origin.x + point.x * plate.scale, plate.origin.y + point.y * plate.scale);
}

export function pageToImage(plate: Plate, point: PagePoint): ImagePoint {
  return imagePoint((point.x - plate.origin.x) / plate.scale, (point.y - plate.origin.y) / plate.scale);
}

/** Nearest point of the picture; a point inside it stays where it is. */
export function withinImage(image: Size, point: ImagePoint): ImagePoint {
  return imagePoint(between(0, point.x, image.width), between(0, point.y, image.height));
}

/** The whole picture in the middle of the well, with `margin` CSS pixels round it at least. */
export function fitView(image: Size, well: Size, margin: number): View {
  const scale = fitScale(image, well, margin);
  return {
    scale,
    origin: screenPoint((well.width - image.width * scale) / 2, (well.height - image.height * scale) / 2),
  };
}

function fitScale(image: Size, well: Size, margin: number): number {
  const room = { width: Math.max(1, well.width - 2 * margin), height: Math.max(1, well.height - 2 * margin) };
  return Math.min(room.width / image.width, room.height / image.height);
}

/** Makes the picture `factor` times larger; what lies under `at` stays under it, within the scale's bounds. */
export function zoomAbout(view: View, at: ScreenPoint, factor: number, image: Size, well: Size): View {
  const smallest = Math.min(fitScale(image, well, 0) / 2, largestScale);
  const scale = between(smallest, view.scale * factor, largestScale);
  const under = screenToImage(view, at);
  return { scale, origin: screenPoint(at.x - under.x * scale, at.y - under.y * scale) };
}

/** Moves the picture by CSS pixels. */
export function pan(view: View, byX: number, byY: number): View {
  return { scale: view.scale, origin: screenPoint(view.origin.x + byX, view.origin.y + byY) };
}

/** Keeps at least `share` (0 to 1) of the smaller of picture and well in sight, so that a photo is never lost. */
export function clampView(view: View, image: Size, well: Size, share = 0.25): View {
  return {
    scale: view.scale,
    origin: screenPoint(
      clampOrigin(view.origin.x, image.width * view.scale, well.width, share),
      clampOrigin(view.origin.y, image.height * view.scale, well.height, share),
    ),
  };
}

function clampOrigin(origin: number, picture: number, well: number, share: number): number {
  const inSight = Math.min(picture, well) * share;
  return between(inSight - picture, origin, well - inSight);
}

/** Moves the picture no further than it must so that `point` is at least `margin` CSS pixels inside the well. */
export function bringIntoSight(view: View, point: ImagePoint, well: Size, margin: number): View {
  const at = imageToScreen(view, point);
  const dx = between(margin, at.x, Math.max(margin, well.width - margin)) - at.x;
  const dy = between(margin, at.y, Math.max(margin, well.height - margin)) - at.y;
  return dx === 0 && dy === 0 ? view : pan(view, dx, dy);
}

function between(least: number, value: number, most: number): number {
  return Math.min(Math.max(value, least), most);
}
