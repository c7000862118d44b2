import { readdirSync } from 'node:fs';

import { afterAll, describe, expect, it } from 'vitest';

import { pageGeometry } from '#analysis/report/page-geometry.ts';
import type { ReportInput } from '#analysis/report/report-model.ts';

import { createReportMaker } from '../../electron/report/report-maker.ts';
import { scratchFolder } from '../support/files/scratch-folder.ts';
import { exifToolOf, fontsOf, infoOf, qpdfCheck, textOf } from './pdf-tools.ts';
import { placementsOf } from './plate-placement.ts';
import { printReport, withoutSpaces } from './printed-report.ts';
import { arrow, finding, photo, reportInput } from './report-case.ts';

const maker = createReportMaker();
afterAll(() => maker.close());

function withClaim(claim: string, change: Partial<ReportInput> = {}): ReportInput {
  const input = reportInput(change);
  return { ...input, teardownCase: { ...input.teardownCase, claim } };
}

/** Landscape, portrait, wide and very high pictures, two of them marked. */
function mixedCase(paper: 'A4' | 'Letter' = 'A4', change: Partial<ReportInput> = {}): ReportInput {
  return reportInput({
    ...change,
    paper,
    photos: [
      photo(1, { caption: 'Front face, uncleaned' }),
      photo(2, { width: 1200, height: 1600, displayWidth: 1200, displayHeight: 1600 }),
      photo(3, { width: 1600, height: 300, displayWidth: 1600, displayHeight: 300 }),
      photo(4, { width: 200, height: 1600, displayWidth: 200, displayHeight: 1600 }),
      photo(5),
    ],
    findings: [
      finding(1, { severity: 'severe', extent: { affected: 3, of: 3 }, note: 'Level with the grooves.' }),
      finding(2, { class: 'secondary', kind: 'heat-tint' }),
      finding(3, { class: 'undecided', presence: 'looked-for-absent' }),
    ],
    marks: [
      arrow(1, 1, 1, [300, 300], [800, 600]),
      arrow(2, 2, 1, [300, 300], [600, 800]),
      arrow(3, 2, 2, [900, 300], [620, 800]),
    ],
  });
}

describe('the printed report', () => {
  it('is a sound PDF with the claim, the findings, the plates and its page numbers', async () => {
    const folder = scratchFolder();
    const { file, made, bytes, model } = await printReport(maker, folder, mixedCase());
    expect(await qpdfCheck(file)).toContain('No syntax or stream encoding errors found');
    expect(made.bytes).toBe(bytes.byteLength);
    expect((await infoOf(file)).get('Pages')).toBe(String(made.pages));
    const text = await textOf(file);
    const words = withoutSpaces(text);
    expect(words).toContain(withoutSpaces(model.claim.words));
    for (const row of model.findings.rows) {
      for (const cell of [row.finding, row.extent, ...row.plates])
        expect(words).toContain(withoutSpaces(cell));
    }
    for (const plate of model.plates.plates) {
      expect(words).toContain(withoutSpaces(`${plate.name} ${plate.caption}`));
      for (const mark of plate.marks) expect(words).toContain(withoutSpaces(mark.label));
    }
    expect(words).toContain('Levelwiththegrooves.');
    const pages = text.split('\f').slice(0, -1);
    expect(pages).toHaveLength(made.pages);
    pages.forEach((page, index) => {
      expect(page).toContain(`${index + 1} of ${made.pages}`);
      expect(page).toContain('Report 26-0147, working copy, not issued');
      expect(page).toContain('Sample Works R45, serial 30771');
    });
    expect(readdirSync(folder).filter((name) => name.endsWith('.part'))).toEqual([]);
  });

  it('embeds every font, with its way back to Unicode', async () => {
    const { file } = await printReport(maker, scratchFolder(), mixedCase());
    const fonts = await fontsOf(file);
    expect(fonts.map((font) => font.name.replace(/^[A-Z]{6}\+/, '')).sort()).toEqual([
      'SourceSans3-Regular',
      'SourceSans3-SemiBold',
      'SourceSerif4-Italic',
      'SourceSerif4-Regular',
      'SourceSerif4-SemiBold',
    ]);
    for (const font of fonts) expect(font).toMatchObject({ embedded: true, toUnicode: true });
  });

  it('says what it is in its properties, as two other programs read them', async () => {
    const input = mixedCase();
    const unit = { ...input.teardownCase.unit, maker: 'Huber & Sons <Ghö>' };
    const { file } = await printReport(maker, scratchFolder(), {
      ...input,
      teardownCase: { ...input.teardownCase, unit },
    });
    const title = 'Report 26-0147: Huber & Sons <Ghö> R45, serial 30771';
    const info = await infoOf(file);
    expect(info.get('Title')).toBe(title);
    expect(info.get('Author')).toBe('A. Analyst');
    expect(info.get('Subject')).toContain('Teardown report, Turbocharger');
    expect(info.get('Producer')).toBe('Teardown Docket');
    expect(info.get('CreationDate')).toBe('2026-03-04T09:15:00Z');
    expect(info.get('ModDate')).toBe('2026-03-04T09:15:00Z');
    const xmp = await exifToolOf(file);
    expect(xmp).toMatchObject({
      'PDF:Language': 'en-GB',
      'XMP-dc:Title': title,
      'XMP-dc:Creator': 'A. Analyst',
      'XMP-dc:Language': 'en-GB',
      'XMP-pdf:Producer': 'Teardown Docket',
    });
  });

  it('gives the same bytes for the same case', async () => {
    const folder = scratchFolder();
    const first = await printReport(maker, folder, mixedCase(), 'first');
    const second = await printReport(maker, folder, mixedCase(), 'second');
    expect(first.bytes.equals(second.bytes)).toBe(true);
  });

  it.each(['A4', 'Letter'] as const)(
    'keeps pictures inside the margins of %s, and upright',
    async (paper) => {
      const { file, model } = await printReport(maker, scratchFolder(), mixedCase(paper, { register: [] }));
      const page = pageGeometry(paper);
      const size = (await infoOf(file)).get('Page size') ?? '';
      expect(size).toContain(paper === 'A4' ? '595.276 x 841.89 pts' : '612 x 792 pts');
      const placements = await placementsOf(file);
      expect(placements).toHaveLength(model.plates.plates.length);
      placements.forEach(({ matrix: [a, b, c, d, e, f] }, index) => {
        const plate = model.plates.plates[index];
        expect([b, c]).toEqual([0, 0]);
        expect(a / d).toBeCloseTo((plate?.picture.width ?? 0) / (plate?.picture.height ?? 1), 3);
        expect(e).toBeGreaterThanOrEqual(page.margins.left - 0.01);
        expect(e + a).toBeLessThanOrEqual(page.width - page.margins.right + 0.01);
        expect(f).toBeGreaterThan(page.margins.bottom);
        expect(f + d).toBeLessThanOrEqual(page.height - page.margins.top + 0.01);
      });
    },
  );

  it('can be printed with nothing in it', async () => {
    const { bodies, file } = await printReport(maker, scratchFolder(), withClaim(''));
    await qpdfCheck(file);
    expect(bodies.join('\n')).toContain('No claim has been entered.');
    expect(bodies.join('\n')).toContain('No finding has been entered.');
    expect(bodies.join('\n')).toContain('No photograph belongs to this case.');
  });
});

describe('words that are long or strange', () => {
  it('prints a claim of 20 000 characters whole', async () => {
    const sentence = 'The wheel „touched“ ≤ 0.3 mm, Ø 54, after 12 h; ';
    const claim = Array.from({ length: 500 }, (_, index) => `${index}. ${sentence}`)
      .join('')
      .slice(0, 20_000);
    const { bodies, file } = await printReport(maker, scratchFolder(), withClaim(claim));
    await qpdfCheck(file);
    expect(withoutSpaces(bodies.join(''))).toContain(withoutSpaces(claim));
  });

  it('breaks a word of 20 000 letters rather than lose any of it', async () => {
    const claim = 'abcdefghij'.repeat(2_000);
    const { bodies } = await printReport(maker, scratchFolder(), withClaim(claim));
    expect(withoutSpaces(bodies.join(''))).toContain(claim);
  });

  it('prints 3 000 characters in a row that no font has, every one by its number', async () => {
    const { bodies } = await printReport(maker, scratchFolder(), withClaim('漢字'.repeat(1_500)));
    const numbers = withoutSpaces(bodies.join('')).match(/\[U\+(6F22|5B57)\]/g) ?? [];
    // One more stands in the sentence that explains them.
    expect(numbers).toHaveLength(3_001);
  });

  it('prints Greek, Cyrillic, quotes and signs as they are, and what no font has as its number', async () => {
    const claim = 'Größe ≤ 0,08 µm, Ø 12 „neu“; Ελληνικά; Кириллица; ŧ‑ 漢字 \u0007';
    const { bodies, file } = await printReport(maker, scratchFolder(), withClaim(claim));
    const words = withoutSpaces(bodies.join(''));
    expect(words).toContain(
      withoutSpaces('Größe ≤ 0,08 µm, Ø 12 „neu“; Ελληνικά; Кириллица; ŧ‑ [U+6F22][U+5B57] [U+0007]'),
    );
    expect(words).toContain(withoutSpaces('are printed as their Unicode numbers'));
    expect((await fontsOf(file)).every((font) => font.embedded)).toBe(true);
  });

  it('does not speak of replaced characters where there are none', async () => {
    const { bodies } = await printReport(maker, scratchFolder(), reportInput());
    expect(withoutSpaces(bodies.join(''))).not.toContain('Unicodenumbers');
  });

  it('repeats the table’s head on every page it runs over, and loses no row', async () => {
    const findings = Array.from({ length: 120 }, (_, index) =>
      finding(index + 1, { note: `Note ${index + 1}.` }),
    );
    const { bodies } = await printReport(maker, scratchFolder(), reportInput({ findings }));
    const tablePages = bodies.filter((body) => /^\s*Thrust bearing, front pads|worn away/m.test(body));
    expect(tablePages.length).toBeGreaterThan(2);
    for (const body of tablePages) expect(withoutSpaces(body)).toContain('Part,zone');
    const words = withoutSpaces(bodies.join(''));
    for (const { number } of findings) expect(words).toContain(`Finding${number}.Note${number}.`);
    expect(words.match(/wornaway/g)).toHaveLength(findings.length);
  });

  it('prints a caption that would fill more than a page', async () => {
    const caption = 'WWWW '.repeat(400).trim();
    const marks = [arrow(1, 1, 1, [300, 300], [800, 600])];
    const { bodies, file } = await printReport(
      maker,
      scratchFolder(),
      reportInput({
        photos: [photo(1, { caption: `漢${caption}漢` }), photo(2)],
        marks,
        findings: [finding(1)],
      }),
    );
    await qpdfCheck(file);
    expect(withoutSpaces(bodies.join(''))).toContain(withoutSpaces(`[U+6F22]${caption}[U+6F22]`));
  });
});

describe('page breaks', () => {
  /** Plates of many heights, three of them marked, with captions of one line to some twenty. */
  const photos = Array.from({ length: 12 }, (_, index) => {
    const height = 250 + ((index * 157) % 700);
    const caption = 'Seen after cleaning. '.repeat(2 + ((index * 11) % 30));
    return photo(index + 1, { caption, height, displayHeight: height });
  });
  const marks = [1, 2, 3].map((number) => arrow(number, number, 1, [300, 300], [800, 200]));

  it.each([1, 2, 4] as const)(
    'never part a plate from its caption, and put at most %d on a page',
    async (platesAPage) => {
      const plan = { ...reportInput().plan, platesAPage };
      const { file, bodies } = await printReport(
        maker,
        scratchFolder(),
        reportInput({ photos, register: [], marks, plan, findings: [finding(1)] }),
      );
      const pictures = new Map<number, number>();
      for (const { page } of await placementsOf(file)) pictures.set(page, (pictures.get(page) ?? 0) + 1);
      bodies.forEach((body, index) => {
        const onPage = pictures.get(index + 1) ?? 0;
        const begun = body.match(/(?<=^|\s{2})Plate \d+\. /gm) ?? [];
        const ended = withoutSpaces(body).match(/photo\d+of12\./g) ?? [];
        expect([begun.length, ended.length], `page ${index + 1}`).toEqual([onPage, onPage]);
        expect(onPage).toBeLessThanOrEqual(platesAPage);
      });
      expect([...pictures.values()].reduce((sum, count) => sum + count, 0)).toBe(photos.length);
    },
  );

  it('never leave a heading or a table’s head at the foot of a page, however long the words before it', async () => {
    const folder = scratchFolder();
    const component = 'part-with-a-name-of-many-words-'.repeat(3).slice(0, 80);
    for (let lines = 2; lines <= 26; lines += 2) {
      const long = Array.from({ length: lines }, (_, index) => `Line ${index + 1} of it.`).join('\n');
      const input = withClaim(long, { findings: [finding(1, { component })], photos: [photo(1)] });
      const teardownCase = { ...input.teardownCase, conclusion: long };
      const { bodies } = await printReport(maker, folder, { ...input, teardownCase }, `claim-${lines}`);
      // What cannot be parted goes to the next page whole, and is not lost on its way.
      expect(withoutSpaces(bodies.join('')), `${lines} lines`).toMatch(/Limitsofthis.*Record.*Placeanddate/);
      for (const body of bodies) {
        expect(body.trim(), `${lines} lines`).not.toBe('');
        const last = body.trimEnd().split('\n').at(-1) ?? '';
        expect(last, `${lines} lines`).not.toMatch(/^(\d+|Annex [AB])\s+\p{Lu}/u);
        expect(withoutSpaces(body), `${lines} lines`).not.toMatch(/Shownon$|Findings\.$|enteredinstate$/);
      }
    }
  });
});
