/** The shell's own three channels: files in, documents out, events; on a line that the test holds both ends of. */
import { EventEmitter } from 'node:events';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';

import type { Envelope } from '#shared-types/errors.ts';

import type { EngineLink } from '../../electron/processes/engine-link.ts';
import type { CarrierAsk, ServedFile } from '../../electron/processes/engine-messages.ts';
import { createEventHub } from '../../electron/processes/event-hub.ts';
import { registerChannels, type CallEvent } from '../../electron/shell/registration.ts';
import { temporaryFolder } from '../support/temporary-folder.ts';

const token = '00000000-0000-4000-8000-000000000001';
const report: ServedFile = { file: '/deliveries/1', mediaType: 'application/pdf', fileName: 'report-1.pdf' };

class Page extends EventEmitter {
  readonly sent: unknown[][] = [];

  send(...values: unknown[]): void {
    this.sent.push(values);
  }

  isDestroyed(): boolean {
    return false;
  }
}

function registered(saveAs: (document: ServedFile) => Promise<boolean> = () => Promise.resolve(true)) {
  const answers = new Map<string, (event: CallEvent, value: unknown) => unknown>();
  const asked: CarrierAsk[] = [];
  const hub = createEventHub();
  const link: EngineLink = {
    started: Promise.resolve({ ok: true, value: null }),
    call: () => Promise.resolve({ ok: true, value: null }),
    ask: <Value>(ask: CarrierAsk) => {
      asked.push(ask);
      return Promise.resolve({ ok: true, value: report } as Envelope<unknown> as Envelope<Value>);
    },
    close: () => Promise.resolve(),
  };
  registerChannels({ handle: (channel, answer) => answers.set(channel, answer) }, { link, hub, saveAs });
  const ask = (channel: string, value?: unknown, page = new Page()) =>
    answers.get(channel)?.({ senderFrame: { url: 'docket://app/' }, sender: page }, value);
  return { ask, asked, hub };
}

describe('a document on its way out', () => {
  test('is saved where the user says, or not where they think better of it', async () => {
    const saved: ServedFile[] = [];
    const { ask } = registered((document) => {
      saved.push(document);
      return Promise.resolve(saved.length === 1);
    });
    expect(await ask('docket:deliver', token)).toEqual({ ok: true, value: { delivered: true } });
    expect(await ask('docket:deliver', token)).toEqual({ ok: true, value: { delivered: false } });
    expect(saved).toEqual([report, report]);
  });

  test.each([
    ['ENOSPC', 'disk-full'],
    ['EACCES', 'disk-refused'],
    ['EROFS', 'disk-refused'],
    ['EMFILE', 'unexpected'],
  ])('that cannot be saved for %s is told as %s, by its name', async (system, code) => {
    const { ask } = registered(() => Promise.reject(Object.assign(new Error(system), { code: system })));
    const refused = (await ask('docket:deliver', token)) as Envelope<unknown>;
    expect(refused).toMatchObject({ ok: false, error: { code } });
    if (code !== 'unexpected') expect(JSON.stringify(refused)).toContain('report-1.pdf');
  });

  test.each([undefined, '', 'x', '../deliveries', {}, [token], `${token}x`])(
    'is not asked for by %j',
    async (value) => {
      const { ask, asked } = registered();
      expect(await ask('docket:deliver', value)).toMatchObject({ error: { code: 'delivery-gone' } });
      expect(asked).toEqual([]);
    },
  );
});

describe('a file on its way in', () => {
  test('has the name and size that it has on the disk, whatever the page calls it', async () => {
    const path = join(temporaryFolder(), 'front-face.jpg');
    writeFileSync(path, 'abc');
    const { ask, asked } = registered();
    await ask('docket:take-in', { path, name: '../../other.jpg' });
    expect(asked).toEqual([{ ask: 'take-in', path, name: 'front-face.jpg', bytes: 3, temporary: false }]);
  });

  test('that is none is refused', async () => {
    const folder = temporaryFolder();
    const { ask, asked } = registered();
    for (const value of [
      ...[undefined, null, '', join(folder, 'x.jpg'), [], {}],
      ...[
        { path: folder, name: 'x' },
        { path: join(folder, 'none.jpg'), name: 'x' },
      ],
      ...[
        { path: '', name: 'x' },
        { path: 7, name: 'x' },
        { path: folder },
        { path: folder, name: 'x', more: 1 },
      ],
    ]) {
      expect(await ask('docket:take-in', value)).toMatchObject({ error: { code: 'intake-gone' } });
    }
    expect(asked).toEqual([]);
  });
});

describe('events', () => {
  const shelf = { name: 'shelf-changed', payload: {} } as const;
  const numbered = (sequence: number) => ['docket:event', { ...shelf, sequence }];

  test('reach each window that listens, once also after it was reloaded', async () => {
    const { ask, hub } = registered();
    const [one, other] = [new Page(), new Page()];
    await ask('docket:listen', undefined, one);
    await ask('docket:listen', undefined, other);
    await ask('docket:listen', undefined, one);
    hub.publish(shelf);
    expect(one.sent).toEqual([numbered(1)]);
    expect(other.sent).toEqual([numbered(1)]);
  });

  test('are sent to no window that is gone', async () => {
    const { ask, hub } = registered();
    const page = new Page();
    await ask('docket:listen', undefined, page);
    await ask('docket:listen', undefined, page);
    page.emit('destroyed');
    hub.publish(shelf);
    expect(page.sent).toEqual([]);
    expect(page.listenerCount('destroyed')).toBe(0);
  });
});
