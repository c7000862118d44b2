/** The whole report, as other programs read it: nothing of the case is lost, everything can be found and reached. */
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';

import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

import type { ReportInput } from '#analysis/report/report-model.ts';
import { instantInWords } from '#analysis/report/told-words.ts';
import { reportTexts } from '#shared-types/texts/report.ts';
import { imagePoint } from '#analysis/marks/planes.ts';
import type { Mark, MarkGeometry } from '#shared-types/mark.ts';
import { measureTexts } from '#shared-types/texts/measure.ts';
import type { CustodyEntryId, PartyId } from '#shared-types/ids.ts';
import type { Instant } from '#shared-types/times.ts';

import { headingsOf } from '../../electron/report/outline-of-pdf.ts';
import { createReportMaker } from '../../electron/report/report-maker.ts';
import { scratchFolder } from '../support/files/scratch-folder.ts';
import { makeTemporaryFolder, removeFolder } from '../support/temporary-folder.ts';
import { qpdfCheck, rasterOf } from './pdf-tools.ts';
import { printReport, withoutSpaces, type PrintedReport } from './printed-report.ts';
import { arrow, finding, photo, photoId, registered, reportInput } from './report-case.ts';

const maker = createReportMaker();
afterAll(async () => {
  await maker.close();
  removeFolder(folderOfAll);
});

const struckAt = '2026-05-06T07:08:09.000Z' as Instant;

/** Everything a case can hold: parties, custody with a struck entry, own sections, photos taken out. */
function fullCase(change: Partial<ReportInput> = {}): ReportInput {
  const photos = Array.from({ length: 8 }, (_, index) =>
    photo(index + 1, { sha256: hashOf(index + 1), sourceName: `IMG_20${40 + index}.jpg` }),
  );
  const [first = photo(1), ...rest] = photos;
  const input = reportInput({
    photos: rest,
    register: [
      { ...registered(first), takenOut: { at: struckAt, by: 'B. Other', reason: 'blurred beyond use' } },
      ...rest.map(registered),
    ],
    parties: [
      { id: '1' as PartyId, revision: 1, name: 'Skerry Line', roles: ['claims', 'instructs'], details: '' },
    ],
    custody: [
      {
        id: '1' as CustodyEntryId,
        revision: 2,
        item: 'Unit in its crate',
        event: 'moved',
        from: 'A. Analyst',
        to: 'Store room',
        at: { local: '2026-03-04T10:15:00', offsetMinutes: null, precision: 'minute' },
        why: 'Locked up over night',
        enteredAt: struckAt,
        enteredBy: 'A. Analyst',
        struck: { at: struckAt, by: 'B. Other', reason: 'it never left the bench' },
      },
    ],
    findings: [finding(1, { note: 'Level with the grooves.' }), finding(2, { class: 'secondary' })],
    marks: [arrow(1, 3, 1, [300, 300], [800, 600]), arrow(2, 5, 2, [300, 300], [800, 600])],
    plan: {
      platesAPage: 4,
      printCameraPlaces: false,
      sections: [
        {
          place: 'before-findings',
          heading: 'Method & (order)',
          words: 'Seen on [plate IMG_2044]; [plate 9] is not there.\n\n- *first* this\n- **then** that',
        },
        { place: 'before-answer', heading: 'Weighing', words: '[Finding 2] follows from [finding 1].' },
      ],
    },
    ...change,
  });
  return {
    ...input,
    teardownCase: {
      ...input.teardownCase,
      outcome: 'claim-not-supported',
      conclusion: 'See [table custody] and [section Weighing].',
      stateReceived: 'Crate open, ports not plugged.',
    },
  };
}

/** Made up, but of the form of a SHA-256 and each another. */
function hashOf(number: number): string {
  return `${number}0f`.padEnd(8, 'a').repeat(8).slice(0, 64);
}

let printed: PrintedReport;
let words: string;
let folderOfAll: string;
beforeAll(async () => {
  folderOfAll = makeTemporaryFolder();
  printed = await printReport(maker, folderOfAll, fullCase());
  words = withoutSpaces(printed.bodies.join(''));
});

describe('the whole report', () => {
  it('is a sound PDF', async () => {
    expect(await qpdfCheck(printed.file)).toContain('No syntax or stream encoding errors found');
  });

  it('holds every finding, every note, every custody entry and every hash', () => {
    const { model } = printed;
    for (const row of model.findings.rows) expect(words).toContain(withoutSpaces(row.part + row.finding));
    for (const note of model.findings.notes) expect(words).toContain(withoutSpaces(note.words));
    for (const { photo: known } of fullCase().register) expect(words).toContain(known.sha256);
    for (const said of [
      'Crate open, ports not plugged.',
      'Locked up over night',
      `Struck by B. Other, ${instantInWords(struckAt)}: it never left the bench`,
      `Taken out ${instantInWords(struckAt)} by B. Other: blurred beyond use`,
      'Claimed by Skerry Line',
      'not stated',
      'Who is liable for it is not decided here.',
    ]) {
      expect(words).toContain(withoutSpaces(said));
    }
  });

  it('puts claim, instruction, what was received, findings, plates, answer, limits, record, signature and annexes in this order', () => {
    const places = headingsOf(printed.model).map(({ heading }) => words.indexOf(withoutSpaces(heading)));
    expect(places.every((place) => place >= 0)).toBe(true);
    expect(places).toEqual([...places].sort((one, other) => one - other));
  });

  it('crosses out the words of a struck entry, and not the reason', async () => {
    const page = printed.bodies.findIndex((body) => body.includes('Locked up over'));
    const folder = scratchFolder();
    const raster = await rasterOf(printed.file, page + 1, 144, `${folder}/page`);
    const boxes = wordBoxes(printed.file, page + 1);
    const crossed = (word: string) => {
      const box = boxes.find((known) => known.word === word);
      if (box === undefined) throw new Error(`no word ${word}`);
      // A line right across, somewhere in the middle half of the word's height.
      for (
        let y = Math.ceil(2 * (box.top + 0.25 * box.height));
        y < 2 * (box.top + 0.75 * box.height);
        y += 1
      ) {
        let dark = 0;
        let all = 0;
        for (let x = Math.ceil(2 * box.left) + 1; x < 2 * box.right - 1; x += 1, all += 1) {
          if (raster.at(x, y)[0] < 170) dark += 1;
        }
        if (all > 0 && dark === all) return true;
      }
      return false;
    };
    expect([crossed('Locked'), crossed('crate'), crossed('moved')]).toEqual([true, true, true]);
    expect([crossed('Struck'), crossed('bench'), crossed('happened')]).toEqual([false, false, false]);
  });
});

describe('the way through it', () => {
  it('has an outline whose entries are the headings, each leading to where its heading stands', async () => {
    const loading = getDocument({ data: new Uint8Array(readFileSync(printed.file)), verbosity: 0 });
    const pdf = await loading.promise;
    try {
      const outline = ((await pdf.getOutline()) as { title: string; dest: unknown }[] | null) ?? [];
      const headings = headingsOf(printed.model);
      expect(outline.map(({ title }) => title)).toEqual(headings.map(({ heading }) => heading));
      for (const [index, { title, dest }] of outline.entries()) {
        expect(dest).toBe(headings[index]?.destination);
        const place = (await pdf.getDestination(String(dest))) as readonly unknown[] | null;
        const [ref, , , top] = place ?? [];
        const number = (await pdf.getPageIndex(ref as never)) + 1;
        const page = await pdf.getPage(number);
        const { items } = await page.getTextContent();
        const line = items
          .filter((item) => 'str' in item)
          .filter((item) => Math.abs(Number(item.transform[5]) - Number(top)) < 20)
          .map((item) => item.str)
          .join('');
        expect(withoutSpaces(line)).toContain(withoutSpaces(title));
      }
    } finally {
      await loading.destroy();
    }
  });

  it('turns references into numbers that lead to what they name, and leaves one that leads nowhere', async () => {
    expect(words).toContain('Seenonplate2;[plate9]isnotthere.');
    expect(words).toContain('Finding2followsfromfinding1.');
    expect(words).toContain('Seetable1andsection7.');
    const links = await linksOf(printed.file);
    expect(links.map(({ dest }) => dest)).toEqual(
      expect.arrayContaining([`plate-${photoId(5)}`, 'finding-2', 'finding-1', 'table-custody', 'own-1']),
    );
    // Every named place that anything leads to is there, and lies on a page.
    for (const { dest, page } of links) expect(page, dest).not.toBeNull();
  });
});

describe('a picture whose file says that no camera took it', () => {
  it('is stamped on its plate, and called so below it, in the register and on the contact sheet', async () => {
    const made = photo(1, { declaredSynthetic: 'algorithmicMedia' });
    const shown = await printReport(
      maker,
      scratchFolder(),
      reportInput({ photos: [made, photo(2)], register: [registered(made), registered(photo(2))] }),
    );
    const { stamp, caption, register, sheet } = reportTexts.synthetic;
    const printedWords = withoutSpaces(shown.bodies.join(' '));
    const times = (said: string) => printedWords.split(withoutSpaces(said)).length - 1;
    expect(times(stamp)).toBe(1);
    expect(times(caption('algorithmicMedia'))).toBe(1);
    expect(times(register('algorithmicMedia'))).toBe(1);
    expect(printedWords).toMatch(new RegExp(`photo-1\\.jpg${withoutSpaces(sheet)}`));
  });

  it('needs no stamp in a sample case, which says so at the head of every page', async () => {
    const made = photo(1, { declaredSynthetic: 'algorithmicMedia' });
    const input = reportInput({ isSample: true, photos: [made], register: [registered(made)] });
    const { file } = await printReport(maker, scratchFolder(), input);
    const pages = execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' }).split('\f');
    for (const page of pages.filter((words) => words.trim() !== '')) {
      expect(page).toContain(reportTexts.sampleStanding);
      expect(page).not.toContain('algorithmicMedia');
      expect(withoutSpaces(page)).not.toContain(withoutSpaces(reportTexts.synthetic.stamp));
    }
  });
});

describe('a length that was measured on a photo', () => {
  const [from, to] = [imagePoint(300, 300), imagePoint(900, 300)];
  const drawn = (number: number, findingNumber: number | null, geometry: MarkGeometry) => {
    const { geometry: _arrow, ...mark } = arrow(number, 1, findingNumber, [0, 0], [9, 9]);
    return { ...mark, geometry };
  };
  const known = { mm: 60, expandedMm: 0.2 };
  const scale = drawn(1, null, { kind: 'scale', v: 1, from, to, known, greatestTilt: 0 });
  const below = { from: imagePoint(300, 700), to: imagePoint(900, 700) };
  const length = (number: number | null) => drawn(2, number, { kind: 'dimension', v: 1, ...below });
  const printed = (marks: Mark[]) =>
    printReport(
      maker,
      scratchFolder(),
      reportInput({ photos: [photo(1)], findings: [finding(1)], marks, register: [registered(photo(1))] }),
    );

  it('stands on its plate and in the line of its finding, and the caption says by what', async () => {
    const words = withoutSpaces((await printed([scale, length(1)])).bodies.join(' '));
    // 600 px are 60 mm; a click is sure to 1.5 px: the root of 2(1.5² 0.1²)·2 and 0.1², twice (JCGM 100, eq. 10).
    const reading = withoutSpaces('60.00 ± 0.63 mm');
    expect(words.split(reading)).toHaveLength(3);
    expect(words).toContain(withoutSpaces(measureTexts.plate.measures('60.00 ± 0.63 mm')));
    expect(words).toContain(withoutSpaces(measureTexts.plate.byScale('60 mm', '0')));
  });

  it('stands on its plate alone where it is given to no finding, and in pixels without a scale', async () => {
    const words = withoutSpaces((await printed([length(null)])).bodies.join(' '));
    expect(words).toContain(withoutSpaces(measureTexts.pixels('600')));
    expect(words).not.toContain(withoutSpaces(reportTexts.plates.unassigned));
  });
});

describe('odd cases', () => {
  it('with Greek, arrows and names in Chinese characters is sound, and says which they were', async () => {
    const strange = 'Ελληνικά → 漢字 Ø ≤ ½ “x” – 𝔘';
    const sections = [
      { place: 'before-findings' as const, heading: strange, words: `**${strange}** [plate 漢.jpg]` },
    ];
    const input = reportInput({
      photos: [photo(1, { sourceName: '漢.jpg', caption: strange, camera: '相机' })],
      findings: [finding(1, { note: strange })],
      plan: { ...reportInput().plan, sections },
    });
    const { file, bodies } = await printReport(maker, scratchFolder(), input);
    expect(await qpdfCheck(file)).toContain('No syntax or stream encoding errors found');
    const text = withoutSpaces(bodies.join(''));
    expect(text).toContain(withoutSpaces('Ελληνικά → [U+6F22][U+5B57] Ø ≤ ½ “x” – [U+1D518] plate 1'));
    expect(text).toContain('[U+6F22].jpg');
  });

  it('with 200 findings loses none, and repeats the table’s head on each of its pages', async () => {
    const findings = Array.from({ length: 200 }, (_, index) => finding(index + 1));
    const { file, bodies } = await printReport(maker, scratchFolder(), reportInput({ findings }));
    expect(await qpdfCheck(file)).toContain('No syntax or stream encoding errors found');
    const rows = withoutSpaces(bodies.join('')).match(/Thrustbearing,frontpads/g) ?? [];
    expect(rows).toHaveLength(200);
    for (const body of bodies.filter((page) => page.includes('Thrust bearing, front pads'))) {
      expect(body).toContain('Shown on');
    }
  });
});

type WordBox = { word: string; left: number; right: number; top: number; height: number };

/** Words of a page with their boxes in points from its upper left corner, as Poppler finds them. */
function wordBoxes(file: string, page: number): WordBox[] {
  const html = execFileSync('pdftotext', ['-bbox', '-f', `${page}`, '-l', `${page}`, file, '-'], {
    encoding: 'utf8',
  });
  return [...html.matchAll(/xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">([^<]*)</g)].map(
    ([, left, top, right, bottom, word = '']) => ({
      word,
      left: Number(left),
      right: Number(right),
      top: Number(top),
      height: Number(bottom) - Number(top),
    }),
  );
}

/** Every link of the document, with the page it leads to; null for one that leads nowhere. */
async function linksOf(file: string): Promise<{ dest: string; page: number | null }[]> {
  const loading = getDocument({ data: new Uint8Array(readFileSync(file)), verbosity: 0 });
  const pdf = await loading.promise;
  try {
    const links: { dest: string; page: number | null }[] = [];
    for (let number = 1; number <= pdf.numPages; number += 1) {
      const annotations = (await (await pdf.getPage(number)).getAnnotations()) as { dest?: unknown }[];
      for (const { dest } of annotations) {
        if (typeof dest !== 'string') continue;
        const place = await pdf.getDestination(dest);
        links.push({ dest, page: place === null ? null : (await pdf.getPageIndex(place[0] as never)) + 1 });
      }
    }
    return links;
  } finally {
    await loading.destroy();
  }
}
