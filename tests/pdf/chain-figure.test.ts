/** The figure of cause and effect in the printed report, as other programs read the PDF. */
import { join } from 'node:path';

import { PDFDocument } from 'pdf-lib';
import { afterAll, describe, expect, it } from 'vitest';

import { chainToDrawing } from '#analysis/chain/chain-to-drawing.ts';
import { pageGeometry } from '#analysis/report/page-geometry.ts';
import {
  linkCertainties,
  type Chain,
  type ChainLink,
  type ChainNode,
  type WrittenNodeKind,
} from '#shared-types/chain.ts';
import type { ChainLinkId, ChainNodeId } from '#shared-types/ids.ts';
import { chainReportTexts } from '#shared-types/texts/chain.ts';

import { createReportMaker } from '../../electron/report/report-maker.ts';
import { scratchFolder } from '../support/files/scratch-folder.ts';
import { qpdfCheck, rasterOf, textOf, type Raster } from './pdf-tools.ts';
import { printReport, withoutSpaces } from './printed-report.ts';
import { finding, findingId, reportInput } from './report-case.ts';

const maker = createReportMaker();
afterAll(() => maker.close());

const uuid = (block: number, number: number) =>
  `${String(block).padStart(8, '0')}-0000-4000-8000-${String(number).padStart(12, '0')}`;

const event = (number: number, words: string, kind: WrittenNodeKind = 'event'): ChainNode => ({
  id: uuid(7, number) as ChainNodeId,
  kind,
  findingId: null,
  term: null,
  words,
  revision: 1,
});
const link = (number: number, cause: ChainNode, effect: ChainNode, reason: string): ChainLink => ({
  id: uuid(8, number) as ChainLinkId,
  causeId: cause.id,
  effectId: effect.id,
  reason,
  certainty: linkCertainties[number % linkCertainties.length] ?? 'likely',
  revision: 1,
});

/** A chain in a row: each box the cause of the next. */
function row(count: number, reason = 'as found'): Chain {
  const nodes = Array.from({ length: count }, (_, index) =>
    event(index + 1, `Step number ${index + 1} came`),
  );
  const links = nodes.slice(1).flatMap((effect, index) => {
    const cause = nodes[index];
    return cause === undefined ? [] : [link(index, cause, effect, reason)];
  });
  return { nodes, links };
}

const longReason =
  'The pads are worn to the grooves and carry what was in the oil, embedded all round. '.repeat(2);

/** A root cause, two findings, the claim; one reason too long for its link. */
function shortChain(): Chain {
  const root = event(1, 'Grit in the oil from the first hour', 'root-cause');
  const [one, two] = [1, 2].map((number): ChainNode => ({
    id: uuid(7, 10 + number) as ChainNodeId,
    kind: 'finding',
    findingId: findingId(number),
    term: null,
    words: '',
    revision: 1,
  })) as [ChainNode, ChainNode];
  return { nodes: [root, one, two], links: [link(1, root, one, longReason), link(2, one, two, '')] };
}

const findings = [finding(1), finding(2, { class: 'secondary', kind: 'heat-tint' })];

async function print(chain: Chain, name = 'report') {
  const folder = scratchFolder();
  const printed = await printReport(maker, folder, reportInput({ findings, chain }), name);
  const pdf = await PDFDocument.load(printed.bytes, { updateMetadata: false });
  const pages = (await textOf(printed.file)).split('\f').slice(0, -1);
  const at = pages.findIndex((text) => text.includes('Figure 1.'));
  return { ...printed, folder, pages, at, size: at < 0 ? null : pdf.getPage(at).getSize() };
}

/** Where a straight walk across a raster meets something dark: the middle of each run of dark pixels. */
function darkAt(
  raster: Raster,
  walk: (step: number) => readonly [x: number, y: number],
  steps: number,
): number[] {
  const met: number[] = [];
  let begun: number | null = null;
  for (let step = 0; step <= steps; step += 1) {
    const [r, g, b] = step === steps ? [255, 255, 255] : raster.at(...walk(step));
    const dark = r + g + b < 3 * 150;
    if (dark && begun === null) begun = step;
    if (!dark && begun !== null) {
      met.push((begun + step - 1) / 2);
      begun = null;
    }
  }
  return met;
}

describe('the chain in the report', () => {
  it('stands as a figure with its caption, every box and reason in words', async () => {
    const { file, pages, at, size } = await print(shortChain());
    await qpdfCheck(file);
    const words = withoutSpaces(pages.join(''));
    for (const said of [
      'Root cause',
      'Grit in the oil from the first hour',
      'Finding 1, primary',
      'Thrust bearing, front pads: worn away',
      'Finding 2, secondary',
      'Thrust bearing, front pads: heat tint, smeared metal',
      `Figure 1. ${chainReportTexts.caption}`,
      chainReportTexts.reasons,
      `(1) ${longReason.trim()}`,
    ]) {
      expect(words).toContain(withoutSpaces(said));
    }
    expect(pages[at]?.match(/likely|possible|established/g)?.length).toBeGreaterThanOrEqual(2 + 3);
    const paper = pageGeometry('A4');
    expect(size?.width).toBeCloseTo(paper.width, 1);
  });

  it('paints as many boxes and links as the chain has, each where the figure has it', async () => {
    const count = 4;
    const unbroken = row(count, '').links.map((one): ChainLink => ({ ...one, certainty: 'established' }));
    const { file, folder, at, model } = await print({ nodes: row(count).nodes, links: unbroken });
    const dpi = 200;
    const raster = await rasterOf(file, at + 1, dpi, join(folder, 'page'));
    const { margins, measure } = pageGeometry('A4');
    const figure = chainToDrawing(model.chain?.content ?? { nodes: [], links: [] });
    const scale = Math.min(1, measure / figure.width);
    const pixel = (x: number) => ((margins.left + x * scale) * dpi) / 72;
    const across = (y: number) => darkAt(raster, (x) => [x, y], raster.width);
    const sides = figure.nodes
      .flatMap((box) => [pixel(box.x), pixel(box.x + box.width)])
      .sort((one, other) => one - other);

    // Below the words of the boxes a row of pixels meets their sides and nothing else.
    const rows = Array.from({ length: raster.height }, (_, y) => y).filter((y) => {
      const met = across(y);
      return met.length === 2 * count && met.every((x, index) => Math.abs(x - (sides[index] ?? 0)) < 2);
    });
    expect(figure.nodes).toHaveLength(count);
    expect(rows.length).toBeGreaterThan(3);

    // Where each link leaves its box a column of pixels, as high as the box, meets one line.
    const foot = rows.at(-1) ?? 0;
    const high = Math.round(((figure.nodes[0]?.height ?? 0) * scale * dpi) / 72) - 8;
    const met = sides
      .filter((_, index) => index % 2 === 1)
      .map((side) => darkAt(raster, (step) => [Math.round(side) + 6, foot - step], high).length);
    expect(met).toEqual([...unbroken.map(() => 1), 0]);
  });

  it('gets a page of its own, turned, when it would be too small upright, and the next page stands again', async () => {
    const { pages, at, size, bytes } = await print(row(6));
    const paper = pageGeometry('A4');
    expect([size?.width, size?.height].map((side) => Math.round(side ?? 0))).toEqual(
      [paper.height, paper.width].map(Math.round),
    );
    const text = pages[at] ?? '';
    for (let step = 1; step <= 6; step += 1) expect(text).toContain(`Step number ${step} came`);
    expect(text).toContain(`${at + 1} of ${pages.length}`);
    expect(text).not.toContain('of its size');
    const pdf = await PDFDocument.load(bytes, { updateMetadata: false });
    const sizes = pdf.getPages().map((page) => (page.getWidth() > page.getHeight() ? 'lies' : 'stands'));
    expect(sizes.filter((how) => how === 'lies')).toHaveLength(1);
    expect(sizes[at + 1]).toBe('stands');
  });

  it('says so where even a turned page shows it small', async () => {
    const { pages, at } = await print(row(14));
    expect(withoutSpaces(pages[at] ?? '')).toMatch(/Printedat[2-5]\d%ofitssize\./);
    for (let step = 1; step <= 14; step += 1) expect(pages.join('')).toContain(`Step number ${step} came`);
  });

  it('prints what the typefaces lack as its number, within the box', async () => {
    const { pages } = await print({ nodes: [event(1, 'Öl 漢 rausch')], links: [] });
    expect(withoutSpaces(pages.join(''))).toContain('Öl[U+6F22]rausch');
  });

  it('is missing, and said to be, where there are findings only', async () => {
    const none = withoutSpaces(chainReportTexts.none);
    const without = await print({ nodes: [], links: [] });
    expect(without.at).toBe(-1);
    expect(withoutSpaces(without.pages.join(''))).toContain(none);
    const empty = await printReport(maker, scratchFolder(), reportInput());
    expect(withoutSpaces(await textOf(empty.file))).not.toContain(none);
    expect(withoutSpaces((await print(shortChain())).pages.join(''))).not.toContain(none);
  });
});
