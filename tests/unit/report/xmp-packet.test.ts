import { createRequire } from 'node:module';

import { describe, expect, it } from 'vitest';

import type { Instant } from '#shared-types/times.ts';

import { xmpPacket } from '../../../electron/report/xmp-packet.ts';

/** sax, in its strict mode: throws at the first place that is not well-formed XML. It has no types. */
type Sax = {
  parser(strict: boolean): {
    onerror: (error: Error) => void;
    ontext: (text: string) => void;
    write(text: string): { close(): void };
  };
};
const sax = createRequire(import.meta.url)('sax') as Sax;

function textsOf(xml: string): string[] {
  const texts: string[] = [];
  const parser = sax.parser(true);
  parser.onerror = (error) => {
    throw error;
  };
  parser.ontext = (text) => texts.push(text);
  parser.write(xml).close();
  return texts.filter((text) => text.trim() !== '');
}

describe('xmpPacket', () => {
  it('is well-formed XML that says what it was given, whatever characters that has', () => {
    const title = 'Report 1 & <2> ]]> "x" ö 漢';
    const packet = xmpPacket({
      properties: { title, subject: 'S & S', author: 'A\u0000\ud800B', language: 'en-GB', producer: 'P' },
      madeAt: '2026-03-04T09:15:00.000Z' as Instant,
    });
    const texts = textsOf(packet.replace('\ufeff', ''));
    expect(texts).toContain(title);
    expect(texts).toContain('S & S');
    expect(texts).toContain('A  B');
    expect(texts.filter((text) => text === '2026-03-04T09:15:00.000Z')).toHaveLength(2);
  });
});
