/**
 * Whether a file says of itself that no camera took it. Two places are looked at: the digital source type of IPTC Photo
 * Metadata (Iptc4xmpExt:DigitalSourceType in the XMP packet), and EXIF's ImageDescription. A file that says nothing may
 * still be made or altered: this reads what is declared and judges nothing.
 */

/**
 * Codes of http://cv.iptc.org/newscodes/digitalsourcetype/ for what was made and not captured, or holds parts that were
 * made. The list is from memory.
 */
const madeCodes = new Set([
  'algorithmicMedia',
  'trainedAlgorithmicMedia',
  'compositeSynthetic',
  'compositeWithTrainedAlgorithmicMedia',
  'dataDrivenMedia',
  'digitalArt',
  'digitalCreation',
  'virtualRecording',
]);

/** As an attribute or as an element; XMP (ISO 16684-1) allows both. */
const sourceType =
  /:DigitalSourceType\s*(?:=\s*["']|>)\s*(?:https?:\/\/cv\.iptc\.org\/newscodes\/digitalsourcetype\/)?(\w+)/u;
/** Bytes; a packet is a few thousand. */
const longestPacket = 1024 * 1024;
const saidInWords = /\b(?:computer|ai)[ -]generated\b/iu;
const longestWords = 200;

/**
 * @param description EXIF 0x010E; empty where there is none
 * @param xmp the XMP packet as it stands in the file
 * @returns the code or the words by which it says so; null where it does not
 */
export function declaredSynthetic(description: string, xmp: Uint8Array | undefined): string | null {
  const code =
    xmp === undefined || xmp.length > longestPacket
      ? null
      : sourceType.exec(new TextDecoder().decode(xmp))?.[1];
  if (code !== null && code !== undefined && madeCodes.has(code)) return code;
  if (!saidInWords.test(description)) return null;
  return description
    .replace(/[\s\0]+/g, ' ')
    .trim()
    .slice(0, longestWords);
}
