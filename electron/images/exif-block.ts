/**
 * Makes an EXIF block safe to hand to a reader that trusts the lengths in it: eight changed bytes make it ask for
 * gigabytes. TIFF 6.0, section 2 (header, directories, types); CIPA DC-008 (EXIF), 4.6.3 (pointers 0x8769, 0x8825).
 */

/** A block in a JPEG cannot pass 64 KiB (the APP1 segment's length); other formats have no such bound. */
const longestBlock = 1024 * 1024;
/** Bytes of one value at most: a text tag or a list of fractions is far below. */
const longestValue = 4096;
/** IFD0, EXIF and GPS directories: a block has one each; a broken one could point in circles. */
const mostDirectories = 8;

/** Bytes of one element by TIFF type number: BYTE, ASCII, SHORT, LONG, RATIONAL, ... DOUBLE, IFD. */
const elementBytes = [0, 1, 1, 2, 4, 8, 1, 1, 2, 4, 8, 4, 8, 4];
/** To the EXIF and GPS directories; of type LONG. */
const pointerTags = new Set([0x8769, 0x8825]);
const emptyByteList = { type: 1, count: 0 };

/**
 * A copy from its TIFF header on, in which every value that is too long or does not lie within the block is an empty
 * list of bytes. Null where there is no TIFF header or the block is too long. `block` may begin with "Exif\0\0".
 */
export function safeExifBlock(block: Uint8Array): Uint8Array | null {
  const tiff = Uint8Array.from(withoutPrefix(block));
  if (tiff.length < 8 || tiff.length > longestBlock) return null;
  const view = new DataView(tiff.buffer);
  const little = view.getUint16(0) === 0x4949;
  if (!little && view.getUint16(0) !== 0x4d4d) return null;
  if (view.getUint16(2, little) !== 42) return null;
  const waiting = [view.getUint32(4, little)];
  const seen = new Set<number>();
  for (let at = waiting.pop(); at !== undefined && seen.size < mostDirectories; at = waiting.pop()) {
    if (seen.has(at)) continue;
    seen.add(at);
    waiting.push(...emptyUnsafeValues(view, little, at));
  }
  return tiff;
}

/** Answers where the directories lie that this one points to. */
function emptyUnsafeValues(view: DataView, little: boolean, directory: number): number[] {
  if (directory + 2 > view.byteLength) return [];
  const pointers: number[] = [];
  const entries = view.getUint16(directory, little);
  for (let index = 0; index < entries; index += 1) {
    const at = directory + 2 + index * 12;
    if (at + 12 > view.byteLength) break;
    const type = view.getUint16(at + 2, little);
    const count = view.getUint32(at + 4, little);
    const bytes = (elementBytes[type] ?? 0) * count;
    const value = view.getUint32(at + 8, little);
    const fits = bytes <= 4 || (bytes <= longestValue && value + bytes <= view.byteLength);
    const points = pointerTags.has(view.getUint16(at, little));
    const isPointer = type === 4 && count === 1;
    if (bytes === 0 || !fits || (points && !isPointer)) {
      view.setUint16(at + 2, emptyByteList.type, little);
      view.setUint32(at + 4, emptyByteList.count, little);
    } else if (points) {
      pointers.push(value);
    }
  }
  return pointers;
}

function withoutPrefix(block: Uint8Array): Uint8Array {
  const prefix = Buffer.from('Exif\0\0', 'latin1');
  return prefix.equals(block.subarray(0, prefix.length)) ? block.subarray(prefix.length) : block;
}
