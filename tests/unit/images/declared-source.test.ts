/** What a file says of its origin, written by exiftool and read by the program. */
import { readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { declaredSynthetic } from '../../../electron/images/declared-source.ts';
import { readExif } from '../../../electron/images/exif.ts';
import { scratchFolder } from '../../support/files/scratch-folder.ts';
import { writeTags } from '../../support/pictures/exiftool.ts';
import { markedJpeg } from '../../support/pictures/marked-picture.ts';

const sourceTypes = 'http://cv.iptc.org/newscodes/digitalsourcetype/';

async function declaredBy(path: string): Promise<string | null> {
  const { exif, xmp } = await sharp(path).metadata();
  return declaredSynthetic((await readExif(exif)).description, xmp);
}

async function declaredWith(tags: Readonly<Record<string, string>>): Promise<string | null> {
  const path = join(scratchFolder(), 'tagged.jpg');
  writeFileSync(path, await markedJpeg({ width: 32, height: 24 }));
  writeTags({ path, tags });
  return declaredBy(path);
}

describe('a file that says that no camera took it', () => {
  // Codes and their address: IPTC NewsCodes, Digital Source Type; from memory.
  it.each(['algorithmicMedia', 'trainedAlgorithmicMedia', 'compositeWithTrainedAlgorithmicMedia'])(
    'by the digital source type %s',
    async (code) => {
      expect(await declaredWith({ 'XMP-iptcExt:DigitalSourceType': `${sourceTypes}${code}` })).toBe(code);
    },
  );

  it('by its description', async () => {
    expect(await declaredWith({ ImageDescription: 'Computer-generated sample, no. 4' })).toBe(
      'Computer-generated sample, no. 4',
    );
  });

  it('is each of the sample photos', async () => {
    const folder = 'sample-cases/ferry-auxiliary/photos';
    const names = readdirSync(folder).filter((name) => name.endsWith('.jpg'));
    expect(names.length).toBeGreaterThan(10);
    for (const name of names) expect(await declaredBy(join(folder, name)), name).toBe('algorithmicMedia');
  });

  it('as an element of the packet too', () => {
    const element = `<Iptc4xmpExt:DigitalSourceType>${sourceTypes}algorithmicMedia</Iptc4xmpExt:DigitalSourceType>`;
    expect(declaredSynthetic('', Buffer.from(element))).toBe('algorithmicMedia');
  });
});

describe('a file that does not', () => {
  it.each([
    {},
    { ImageDescription: 'Thrust bearing, front' },
    { 'XMP-iptcExt:DigitalSourceType': `${sourceTypes}digitalCapture` },
    { 'XMP-iptcExt:DigitalSourceType': `${sourceTypes}computationalCapture` },
  ])('is taken for a photograph: %o', async (tags) => {
    expect(await declaredWith(tags)).toBeNull();
  });

  it('nor is one whose packet is not to be read', () => {
    expect(declaredSynthetic('', Buffer.alloc(0))).toBeNull();
    expect(declaredSynthetic('', Buffer.alloc(2 * 1024 * 1024, 'x'))).toBeNull();
  });
});
