/**
 * The few tables of a TrueType file that the report needs: which characters it has and how wide they are.
 * Format: ISO/IEC 14496-22 (Open Font Format), tables head, hhea, hmtx and cmap (subtable formats 4 and 12).
 */

export type TrueTypeFile = {
  readonly unitsPerEm: number;
  /** Glyph number of a Unicode code point; 0 (.notdef) where the font has none. */
  glyphOf(codePoint: number): number;
  /** Advance width of a glyph, in font units, before kerning. */
  advanceOf(glyph: number): number;
};

/** Throws a RangeError or an Error that says what is missing when the bytes are not such a font. */
export function readTrueType(bytes: Uint8Array): TrueTypeFile {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const tables = readTableDirectory(view);
  const table = (tag: string): number => {
    const offset = tables.get(tag);
    if (offset === undefined) throw new Error(`the font has no ${tag} table`);
    return offset;
  };
  const unitsPerEm = view.getUint16(table('head') + 18);
  const longMetrics = view.getUint16(table('hhea') + 34);
  const hmtx = table('hmtx');
  const glyphs = readCharacterMap(view, table('cmap'));
  return {
    unitsPerEm,
    glyphOf: (codePoint) => glyphs.get(codePoint) ?? 0,
    // Glyphs past the long metrics share the last advance.
    advanceOf: (glyph) => view.getUint16(hmtx + 4 * Math.min(glyph, longMetrics - 1)),
  };
}

function readTableDirectory(view: DataView): Map<string, number> {
  const tables = new Map<string, number>();
  const count = view.getUint16(4);
  for (let index = 0; index < count; index++) {
    const record = 12 + 16 * index;
    const tag = String.fromCharCode(...[0, 1, 2, 3].map((byte) => view.getUint8(record + byte)));
    tables.set(tag, view.getUint32(record + 8));
  }
  return tables;
}

function readCharacterMap(view: DataView, cmap: number): Map<number, number> {
  const offsets = new Map<number, number>();
  const count = view.getUint16(cmap + 2);
  for (let index = 0; index < count; index++) {
    const record = cmap + 4 + 8 * index;
    const platform = view.getUint16(record);
    if (platform !== 0 && platform !== 3) continue;
    const subtable = cmap + view.getUint32(record + 4);
    offsets.set(view.getUint16(subtable), subtable);
  }
  const full = offsets.get(12);
  if (full !== undefined) return readFormat12(view, full);
  const basic = offsets.get(4);
  if (basic !== undefined) return readFormat4(view, basic);
  throw new Error('the font has no Unicode character map of format 4 or 12');
}

function readFormat12(view: DataView, subtable: number): Map<number, number> {
  const glyphs = new Map<number, number>();
  const groups = view.getUint32(subtable + 12);
  for (let group = 0; group < groups; group++) {
    const at = subtable + 16 + 12 * group;
    const first = view.getUint32(at);
    const last = view.getUint32(at + 4);
    const glyph = view.getUint32(at + 8);
    for (let code = first; code <= last; code++) glyphs.set(code, glyph + code - first);
  }
  return glyphs;
}

function readFormat4(view: DataView, subtable: number): Map<number, number> {
  const glyphs = new Map<number, number>();
  const doubled = view.getUint16(subtable + 6);
  const ends = subtable + 14;
  const starts = ends + doubled + 2;
  const deltas = starts + doubled;
  const rangeOffsets = deltas + doubled;
  for (let at = 0; at < doubled; at += 2) {
    const end = view.getUint16(ends + at);
    const start = view.getUint16(starts + at);
    const delta = view.getUint16(deltas + at);
    const rangeOffset = view.getUint16(rangeOffsets + at);
    for (let code = start; code <= end && code < 0xffff; code++) {
      const listed =
        rangeOffset === 0 ? code : view.getUint16(rangeOffsets + at + rangeOffset + 2 * (code - start));
      const glyph = listed === 0 && rangeOffset !== 0 ? 0 : (listed + delta) & 0xffff;
      if (glyph !== 0) glyphs.set(code, glyph);
    }
  }
  return glyphs;
}
