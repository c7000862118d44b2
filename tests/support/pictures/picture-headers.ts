/** Heads of picture files that promise what is not there: a few bytes that would be gigabytes of pixels. */
import { crc32 } from 'node:zlib';

/** Signature and IHDR of a PNG (W3C PNG Specification, 5.2, 11.2.2), 8-bit RGB. */
export function pngHeader(width: number, height: number, interlaced = false): Buffer {
  const header = Buffer.alloc(25);
  header.writeUInt32BE(13, 0);
  header.write('IHDR', 4, 'latin1');
  header.writeUInt32BE(width, 8);
  header.writeUInt32BE(height, 12);
  header.set([8, 2, 0, 0, interlaced ? 1 : 0], 16);
  header.writeUInt32BE(crc32(header.subarray(4, 21)), 21);
  return Buffer.concat([Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]), header]);
}

export type JpegHeader = { readonly progressive?: boolean; readonly before?: readonly Buffer[] };

/** SOI, any segments, and the frame header of a JPEG (ITU-T T.81, B.2.2), three components. */
export function jpegHeader(width: number, height: number, options: JpegHeader = {}): Buffer {
  const frame = Buffer.alloc(19);
  frame.set([0xff, options.progressive === true ? 0xc2 : 0xc0, 0, 17, 8]);
  frame.writeUInt16BE(height, 5);
  frame.writeUInt16BE(width, 7);
  frame.set([3, 1, 0x22, 0, 2, 0x11, 1, 3, 0x11, 1], 9);
  return Buffer.concat([Buffer.from([0xff, 0xd8]), ...(options.before ?? [jpegSegment(0xe0, 14)]), frame]);
}

/** One marker segment of `length` bytes of noughts. */
export function jpegSegment(marker: number, length: number): Buffer {
  const segment = Buffer.alloc(4 + length);
  segment.set([0xff, marker]);
  segment.writeUInt16BE(2 + length, 2);
  return segment;
}
