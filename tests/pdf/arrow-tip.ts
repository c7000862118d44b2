/** Finds a printed arrow's tip by its colour. */
import type { Raster } from './pdf-tools.ts';

type XY = { readonly x: number; readonly y: number };
type Rgb = readonly [red: number, green: number, blue: number];

/** How much of a pixel an arrow of its class covers on grey and white, whose channels are alike. */
const covers = {
  /** #b84700: red less blue is 184. */
  primary: ([red, , blue]: Rgb) => (red - blue) / 184,
  /** #8b3f79: red less green is 76. */
  undecided: ([red, green]: Rgb) => (red - green) / 76,
};

/** The foremost place along the arrow where its colour covers a quarter of a pixel; null for none within 25 pixels. */
export function tipNear(
  raster: Raster,
  expected: XY,
  along: XY,
  of: keyof typeof covers = 'primary',
): XY | null {
  const reach = 25;
  const seen: { x: number; y: number; forward: number; cover: number }[] = [];
  for (let y = Math.floor(expected.y) - reach; y <= expected.y + reach; y++) {
    for (let x = Math.floor(expected.x) - reach; x <= expected.x + reach; x++) {
      if (x < 0 || y < 0 || x >= raster.width || y >= raster.height) continue;
      const cover = covers[of](raster.at(x, y));
      const middle = { x: x + 0.5, y: y + 0.5 };
      const forward = (middle.x - expected.x) * along.x + (middle.y - expected.y) * along.y;
      if (cover >= 0.25) seen.push({ ...middle, forward, cover });
    }
  }
  const foremost = Math.max(...seen.map((pixel) => pixel.forward));
  const tip = seen.filter((pixel) => pixel.forward > foremost - 0.75);
  const weight = tip.reduce((sum, pixel) => sum + pixel.cover, 0);
  if (weight === 0) return null;
  return {
    x: tip.reduce((sum, pixel) => sum + pixel.x * pixel.cover, 0) / weight,
    y: tip.reduce((sum, pixel) => sum + pixel.y * pixel.cover, 0) / weight,
  };
}
