/**
 * The photo well with 300 marks while the picture is made larger and smaller, held against a bare canvas of the same
 * size on which the same picture and the same strokes are drawn at the same sizes. What is told is the page's own work
 * for each change, by the browser's count of it.
 */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';

import type { Page } from 'playwright';
import sharp from 'sharp';

import { markToDrawing } from '#analysis/marks/mark-to-drawing.ts';
import { imagePoint } from '#analysis/marks/planes.ts';
import type { ArrowGeometry } from '#shared-types/mark.ts';
import type { Drawing } from '#shared-types/drawing.ts';
import type { CaseId, MarkId, PhotoId } from '#shared-types/ids.ts';

import { openProgramHouse } from '../browser/program-house.ts';
import { exampleFinding } from '../support/exchanges.ts';
import { chanceFrom } from '../support/world-chance.ts';
import { startEngineProcess } from './engine-process.ts';
import { figure, share, type Figure } from './figures.ts';
import { writePictures } from './pictures.ts';

const markCount = 300;
const window = { width: 1920, height: 1080 };
/** As many steps in as out again, so many times over. */
const steps = 8;
const rounds = 5;
const zoomStep = 1.25;

export async function measureCanvas(folder: string): Promise<Figure[]> {
  mkdirSync(join(folder, 'canvas'));
  const [picture = ''] = await writePictures(join(folder, 'canvas'), 1, 'twelve megapixels');
  const arrows = drawArrows();
  let caseId = '';
  const house = await openProgramHouse(null, async (library) => {
    caseId = await caseOfArrows(library, picture, arrows);
  });
  try {
    const opened = await house.open({ route: `/case/${caseId}/marks`, size: window });
    await opened.page.locator('.marks-stage canvas').first().waitFor();
    await opened.page.locator('.marks-well').focus();
    const here = await workOfEach(opened.page, (page, larger) => page.keyboard.press(larger ? '+' : '-'));
    const well = await opened.page
      .locator('.marks-stage canvas')
      .first()
      .evaluate(({ clientWidth, clientHeight }) => ({ width: clientWidth, height: clientHeight }));
    await opened.close();
    const bare = await house.open({ size: window });
    await prepareBareCanvas(bare.page, well, picture, arrows);
    const baseline = await workOfEach(bare.page, (page, larger) =>
      page.evaluate(
        (by) => (globalThis as unknown as { step: (by: number) => void }).step(by),
        larger ? 1 : -1,
      ),
    );
    return [
      figure(
        `Page’s work for one change of size of a photo with ${String(markCount)} marks, median of ${String(here.length)} runs`,
        share(here, 0.5),
        'ms',
        share(baseline, 0.5),
      ),
    ];
  } finally {
    await house.close();
  }
}

function drawArrows(): ArrowGeometry[] {
  const chance = chanceFrom(53);
  return Array.from({ length: markCount }, () => {
    const tip = { x: 300 + chance.integer(3_400), y: 300 + chance.integer(2_400) };
    const [dx, dy] = [chance.integer(400) - 200, chance.integer(400) - 200];
    return {
      kind: 'arrow',
      v: 1,
      tip: imagePoint(tip.x, tip.y),
      tail: imagePoint(tip.x + dx + 60, tip.y + dy + 60),
    };
  });
}

async function caseOfArrows(
  library: string,
  picture: string,
  arrows: readonly ArrowGeometry[],
): Promise<CaseId> {
  const engine = await startEngineProcess(library);
  try {
    await engine.ask('analysts.add', { name: 'M. Sundgren', qualification: '' });
    const unit = { maker: 'Halvard', model: 'R45', serial: 'SN-30771', partNumber: '' };
    const draft = { number: 'canvas', unit, customer: '', claim: '', machineKind: 'turbocharger' };
    const { caseId } = await engine.ask('cases.open', draft);
    const tokens = [await engine.takeIn(picture)];
    const { items } = await engine.done(await engine.ask('photos.import', { caseId, tokens }));
    const chance = chanceFrom(54);
    const findingId = chance.uuid();
    const fields = { ...exampleFinding, bend: null, extent: null };
    await engine.ask('bench.commit', {
      caseId,
      changes: [
        { change: 'put-finding', findingId, fields, revision: null },
        ...arrows.map((geometry, order) => ({
          change: 'put-mark' as const,
          revision: null,
          mark: {
            id: chance.uuid() as MarkId,
            photoId: items[0]?.photoId as PhotoId,
            findingId,
            geometry,
            order,
          },
        })),
      ] as never,
    });
    return caseId;
  } finally {
    await engine.close();
  }
}

/** Milliseconds of the page's tasks for each change, one figure a round. */
async function workOfEach(page: Page, change: (page: Page, larger: boolean) => Promise<unknown>) {
  const session = await page.context().newCDPSession(page);
  await session.send('Performance.enable');
  const worked = async () => {
    const { metrics } = await session.send('Performance.getMetrics');
    return 1_000 * (metrics.find(({ name }) => name === 'TaskDuration')?.value ?? Number.NaN);
  };
  const round = async () => {
    const before = await worked();
    for (let step = 0; step < 2 * steps; step += 1) {
      await change(page, step < steps);
      await page.evaluate(() => new Promise((drawn) => requestAnimationFrame(() => setTimeout(drawn))));
    }
    return ((await worked()) - before) / (2 * steps);
  };
  await round();
  const times: number[] = [];
  for (let run = 0; run < rounds; run += 1) times.push(await round());
  return times;
}

async function prepareBareCanvas(
  page: Page,
  well: { readonly width: number; readonly height: number },
  picture: string,
  arrows: readonly ArrowGeometry[],
): Promise<void> {
  const jpeg = await sharp(picture).autoOrient().resize(2_560).jpeg({ quality: 90 }).toBuffer();
  const full = { width: 4_000, height: 3_000 };
  const fitted = Math.min((well.width - 24) / full.width, (well.height - 24) / full.height);
  const scales = Array.from({ length: steps + 1 }, (_, step) => fitted * zoomStep ** step);
  const drawings: Drawing[] = scales.map((scale) =>
    arrows.flatMap((arrow, index) =>
      markToDrawing(arrow, {
        class: exampleFinding.class,
        label: `P 1.${String(index + 1)}`,
        unit: 1 / scale,
        within: full,
      }),
    ),
  );
  await page.evaluate(makeBareCanvas, {
    well,
    full,
    scales,
    drawings,
    jpeg: jpeg.toString('base64'),
  } as never);
}

/** Runs in the page: only canvas calls, with every path made beforehand. */
async function makeBareCanvas(given: {
  readonly well: { readonly width: number; readonly height: number };
  readonly full: { readonly width: number; readonly height: number };
  readonly scales: readonly number[];
  readonly drawings: readonly Drawing[];
  /** In base64. */
  readonly jpeg: string;
}): Promise<void> {
  const canvas = document.createElement('canvas');
  Object.assign(canvas, given.well);
  document.body.replaceChildren(canvas);
  const bytes = Uint8Array.from(atob(given.jpeg), (letter) => letter.charCodeAt(0));
  const picture = await createImageBitmap(new Blob([bytes], { type: 'image/jpeg' }));
  const context = canvas.getContext('2d');
  if (context === null) throw new Error('no canvas');
  const ready = given.drawings.map((drawing) =>
    drawing.map((part) => ({ part, path: part.type === 'path' ? new Path2D(part.d) : null })),
  );
  let at = 0;
  const draw = () => {
    const scale = given.scales[at] ?? 1;
    context.setTransform(1, 0, 0, 1, 0, 0);
    context.clearRect(0, 0, canvas.width, canvas.height);
    context.setTransform(
      scale,
      0,
      0,
      scale,
      (canvas.width - given.full.width * scale) / 2,
      (canvas.height - given.full.height * scale) / 2,
    );
    context.drawImage(picture, 0, 0, given.full.width, given.full.height);
    for (const { part, path } of ready[at] ?? []) {
      if (part.type === 'text') {
        context.font = `${String(part.weight)} ${String(part.size)}px 'Source Sans 3', sans-serif`;
        context.fillStyle = part.fill;
        context.fillText(part.text, part.x, part.y);
      } else if (path !== null) {
        if (part.fill !== null) {
          context.fillStyle = part.fill;
          context.fill(path);
        }
        if (part.stroke !== null) {
          context.strokeStyle = part.stroke;
          context.lineWidth = part.strokeWidth;
          context.setLineDash([...part.dash]);
          context.stroke(path);
        }
      }
    }
  };
  draw();
  Object.assign(globalThis, {
    step: (by: number) => {
      at = Math.min(given.scales.length - 1, Math.max(0, at + by));
      requestAnimationFrame(draw);
    },
  });
}
