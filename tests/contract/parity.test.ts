/** Every channel, through HTTP and through preload and registration: the same answers, the same refusals. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import fc from 'fast-check';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';

import { channels, type Channel } from '#shared-types/api-contract.ts';

import { handlers } from '../../electron/engine/handlers/handlers.ts';
import { callPrefix, pageOrigin } from '../../electron/shell/bridge-channels.ts';
import { createBridge } from '../../electron/shell/bridge.ts';
import {
  openDesktop,
  openLoopback,
  type CarrierUnderTest,
  type DesktopUnderTest,
} from '../support/both-carriers.ts';
import { exchanges, goThrough, valueOf, type Walkthrough } from '../support/exchanges.ts';
import { markedJpeg } from '../support/pictures/marked-picture.ts';
import { sameButForChance } from '../support/same-but-for-chance.ts';
import { makeTemporaryFolder, removeFolder } from '../support/temporary-folder.ts';

let folder: string;
let loopback: CarrierUnderTest;
let desktop: DesktopUnderTest;
let overLoopback: Walkthrough;
let overDesktop: Walkthrough;

beforeAll(async () => {
  folder = makeTemporaryFolder();
  const picture = join(folder, 'front-face.jpg');
  await writeFile(picture, await markedJpeg());
  loopback = await openLoopback(join(folder, 'loopback'));
  desktop = openDesktop(join(folder, 'desktop'));
  overLoopback = await goThrough(loopback, picture);
  overDesktop = await goThrough(desktop, picture);
}, 120_000);

afterAll(async () => {
  await loopback.close();
  await desktop.close();
  removeFolder(folder);
});

const answerTo = (walkthrough: Walkthrough, channel: Channel) =>
  walkthrough.exchanges.find((exchange) => exchange.channel === channel)?.answer;

/** What may differ: which carrier it was, where its library lies, and the size of a file that holds the time. */
function comparable(answer: unknown): unknown {
  const text = JSON.stringify(sameButForChance(answer))
    .replaceAll(/"carrier":"\w+"/g, '"carrier":""')
    .replaceAll(/"folder":"[^"]*"/g, '"folder":""')
    .replaceAll(/"bytes":\d+/g, '"bytes":0')
    .replaceAll(/"rate":[\d.]+/g, '"rate":null');
  return JSON.parse(text) as unknown;
}

describe('the contract', () => {
  test('has a handler, a registration and a preload key for every channel, and no other', () => {
    const bridge = createBridge(desktop.line.renderer, () => '');
    const registered = desktop.line.registered().filter((name) => name.startsWith(callPrefix));
    expect(Object.keys(handlers).sort()).toEqual([...channels].sort());
    expect(registered.map((name) => name.slice(callPrefix.length)).sort()).toEqual([...channels].sort());
    expect(Object.keys(bridge.calls).sort()).toEqual([...channels].sort());
    expect(Object.keys(exchanges).sort()).toEqual([...channels].sort());
  });

  test.each(channels)('%s answers without an error over both carriers', (channel) => {
    expect(answerTo(overLoopback, channel)).toMatchObject({ ok: true });
    expect(answerTo(overDesktop, channel)).toMatchObject({ ok: true });
  });

  test.each(channels)('%s answers the same over both carriers', (channel) => {
    expect(comparable(answerTo(overDesktop, channel))).toEqual(comparable(answerTo(overLoopback, channel)));
  });

  test.each(channels)(
    '%s refuses an ill-formed request over both carriers, naming itself',
    async (channel) => {
      const request = { unheardOf: 'field' };
      const one = await loopback.call(channel, request);
      const other = await desktop.call(channel, request);
      expect(one).toMatchObject({ ok: false, error: { code: 'request-invalid' } });
      expect(JSON.stringify(one)).toContain(channel);
      expect(other).toEqual(one);
    },
  );

  test('the jobs begun end done, with the same items and document over both carriers', () => {
    expect(overLoopback.ended.map(({ kind, state }) => [kind, state])).toEqual([
      ['photo-import', 'done'],
      ['report', 'done'],
    ]);
    expect(overLoopback.ended[0]?.items).toMatchObject([{ outcome: 'added', sourceName: 'front-face.jpg' }]);
    expect(overLoopback.ended[1]?.document).toMatchObject({ fileName: 'report-26-0147.pdf' });
    expect(comparable(overDesktop.ended)).toEqual(comparable(overLoopback.ended));
  });

  test('a channel that does not exist is refused by both', async () => {
    const name = 'library.erase' as Channel;
    expect(await loopback.call(name, {})).toMatchObject({ ok: false, error: { code: 'request-invalid' } });
    expect(await desktop.call(name, {})).toMatchObject({ ok: false, error: { code: 'request-invalid' } });
  });
});

describe('messages', () => {
  test('are JSON values only: each survives structured clone and JSON unchanged', () => {
    expect(desktop.line.messages.length).toBeGreaterThan(2 * channels.length);
    for (const { message } of desktop.line.messages) {
      if (message === undefined) continue;
      expect(structuredClone(message)).toEqual(message);
      expect(JSON.parse(JSON.stringify(message))).toEqual(message);
    }
  });

  test('bring any well-formed text back as it was sent, over both carriers', async () => {
    const wellFormed = fc.string({ unit: 'binary', maxLength: 60 }).filter((text) => text.isWellFormed());
    let serial = 0;
    const openWith = async (carrier: CarrierUnderTest, claim: string) => {
      const draft = { ...exchanges['cases.open']({} as never), number: `T-${String((serial += 1))}`, claim };
      const { caseId } = valueOf(await carrier.call('cases.open', draft)) as { caseId: string };
      return (valueOf(await carrier.call('cases.read', { caseId })) as { claim: string }).claim;
    };
    await fc.assert(
      fc.asyncProperty(wellFormed, async (claim) => {
        expect(await openWith(loopback, claim)).toBe(claim);
        expect(await openWith(desktop, claim)).toBe(claim);
      }),
      { numRuns: 25, seed: 4711 },
    );
  });
});

describe('a name', () => {
  test.each(['26\u00000147', '', '   '])('like %j is refused for a case, by its field', async (number) => {
    const draft = { ...exchanges['cases.open']({} as never), number };
    const refused = await loopback.call('cases.open', draft);
    expect(refused).toMatchObject({ ok: false, error: { code: 'request-invalid' } });
    expect(refused).toMatchObject({ error: { details: { field: 'cases.open number' } } });
  });
});

describe('the desktop bridge', () => {
  test('answers nobody but the program’s own page', async () => {
    desktop.line.pageUrl = 'https://example.org/';
    const refused = await desktop.call('cases.list', {});
    desktop.line.pageUrl = `${pageOrigin}.example.org/`;
    const alsoRefused = await desktop.call('cases.list', {});
    desktop.line.pageUrl = `${pageOrigin}/`;
    expect(refused).toMatchObject({ ok: false, error: { code: 'carrier-refused' } });
    expect(alsoRefused).toMatchObject({ ok: false, error: { code: 'carrier-refused' } });
    expect(await desktop.call('cases.list', {})).toMatchObject({ ok: true });
  });

  test('takes no file in that is not there', async () => {
    const answer = await desktop.takeIn(join(folder, 'no-such-file.jpg'));
    expect(answer).toMatchObject({ ok: false, error: { code: 'intake-gone' } });
  });
});
