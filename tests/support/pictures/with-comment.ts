/** The same picture as a file of its own: a comment segment (ITU-T T.81, B.2.4.5) after the start of the image. */
export function withComment(jpeg: Buffer, words: string): Buffer {
  const text = Buffer.from(words, 'latin1');
  const segment = Buffer.alloc(4);
  segment.set([0xff, 0xfe]);
  segment.writeUInt16BE(2 + text.length, 2);
  return Buffer.concat([jpeg.subarray(0, 2), segment, text, jpeg.subarray(2)]);
}
