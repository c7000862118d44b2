/** Small pictures with a colour in each corner, so that a turned or mirrored one shows. */
import sharp from 'sharp';

export type Colour = readonly [red: number, green: number, blue: number];

/** Colours of the four quarters, by the row and column of the *stored* picture they lie at. */
export const quarterColours = {
  firstRowFirstColumn: [220, 30, 30],
  firstRowLastColumn: [30, 200, 40],
  lastRowFirstColumn: [40, 60, 220],
  lastRowLastColumn: [240, 240, 240],
} as const satisfies Record<string, Colour>;
export type Quarter = keyof typeof quarterColours;

export type StoredSize = { readonly width: number; readonly height: number };

export function markedPixels({ width, height }: StoredSize): Buffer {
  const pixels = Buffer.alloc(width * height * 3);
  for (let row = 0; row < height; row += 1) {
    for (let column = 0; column < width; column += 1) {
      const rowName = row < height / 2 ? 'firstRow' : 'lastRow';
      const columnName = column < width / 2 ? 'FirstColumn' : 'LastColumn';
      pixels.set(quarterColours[`${rowName}${columnName}`], (row * width + column) * 3);
    }
  }
  return pixels;
}

export function markedPicture(size: StoredSize) {
  return sharp(markedPixels(size), { raw: { ...size, channels: 3 } });
}

export async function markedJpeg(size: StoredSize = { width: 96, height: 64 }): Promise<Buffer> {
  return markedPicture(size).jpeg({ quality: 95 }).toBuffer();
}

/** A JPEG of the given size that differs from any other seed's, and does not compress to nothing. */
export async function noisyJpeg(
  seed: number,
  size: StoredSize = { width: 320, height: 240 },
): Promise<Buffer> {
  const pixels = Buffer.alloc(size.width * size.height * 3);
  let state = (seed * 2_654_435_761 + 1) >>> 0;
  for (let index = 0; index < pixels.length; index += 1) {
    // Numerical Recipes' linear congruential generator (from memory): any fixed noise does.
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    pixels[index] = state >>> 24;
  }
  return sharp(pixels, { raw: { ...size, channels: 3 } })
    .jpeg()
    .toBuffer();
}

/** The pixel at a fraction of width and height, from the top left corner of the file as stored. */
export async function pixelAt(file: string | Buffer, x: number, y: number): Promise<Colour> {
  const { data, info } = await sharp(file)
    .toColourspace('srgb')
    .removeAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  const column = Math.min(info.width - 1, Math.floor(x * info.width));
  const row = Math.min(info.height - 1, Math.floor(y * info.height));
  const at = (row * info.width + column) * info.channels;
  return [data.readUInt8(at), data.readUInt8(at + 1), data.readUInt8(at + 2)];
}

/** Which quarter's colour this is, or null where it is none's; JPEG shifts colours by a few steps. */
export function nearestQuarter(colour: Colour): Quarter | null {
  for (const [name, known] of Object.entries(quarterColours)) {
    const most = Math.max(...known.map((value, channel) => Math.abs(value - (colour[channel] ?? 0))));
    if (most <= 12) return name as Quarter;
  }
  return null;
}
