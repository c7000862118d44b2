/** Finds patches of colour where the analyst sees them. */
import type { Page } from 'playwright';
import sharp from 'sharp';

import type { Colour } from '../support/pictures/marked-picture.ts';

export type ScreenPlace = { readonly x: number; readonly y: number };

/**
 * The middle of each patch in the photo's well, in pixels of the window. Waits until all are painted: each look is a
 * round trip.
 */
export async function seenInWell(page: Page, colours: readonly Colour[]): Promise<ScreenPlace[]> {
  const well = page.getByRole('application');
  for (;;) {
    const edge = await well.boundingBox();
    const middles = await middlesOf(await well.screenshot(), colours);
    if (edge === null || !middles.every((middle) => middle !== null)) continue;
    return middles.map(({ x, y }) => ({ x: edge.x + x, y: edge.y + y }));
  }
}

async function middlesOf(shot: Buffer, colours: readonly Colour[]): Promise<(ScreenPlace | null)[]> {
  const { data, info } = await sharp(shot).removeAlpha().raw().toBuffer({ resolveWithObject: true });
  return colours.map((colour) => {
    let count = 0;
    const sum = { x: 0, y: 0 };
    for (let place = 0; place < data.length; place += 3) {
      if (colour.some((value, at) => Math.abs(data.readUInt8(place + at) - value) > 60)) continue;
      const pixel = place / 3;
      count += 1;
      sum.x += (pixel % info.width) + 0.5;
      sum.y += Math.floor(pixel / info.width) + 0.5;
    }
    // Fewer are the fringe of something else.
    return count < 9 ? null : { x: sum.x / count, y: sum.y / count };
  });
}
