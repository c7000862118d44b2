/** The built preload: one CommonJS file that a sandboxed page may load, and what it gives the page. */
import { existsSync, readFileSync } from 'node:fs';
import { createContext, Script } from 'node:vm';
import ts from 'typescript';
import { beforeAll, describe, expect, test } from 'vitest';

import { channels } from '#shared-types/api-contract.ts';

import { entryPath } from '../../electron/processes/entry-table.ts';

const file = entryPath('preload');
let text: string;

beforeAll(() => {
  if (!existsSync(file)) throw new Error(`${file} is not built: npm run build`);
  text = readFileSync(file, 'utf8');
});

/** Names of all modules that the file could ask for, wherever in it; null for one that only running it would tell. */
function modulesAskedFor(): (string | null)[] {
  const source = ts.createSourceFile('preload.cjs', text, ts.ScriptTarget.Latest, true, ts.ScriptKind.JS);
  const found: (string | null)[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) found.push(node.getText());
    if (ts.isCallExpression(node)) {
      const { expression } = node;
      const asks = ts.isIdentifier(expression) && expression.text === 'require';
      if (asks || expression.kind === ts.SyntaxKind.ImportKeyword) {
        const [name] = node.arguments;
        found.push(name && ts.isStringLiteral(name) ? name.text : null);
      }
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

type Exposed = Record<string, unknown> & {
  calls: Record<string, (request: unknown) => unknown>;
  call(channel: string, request: unknown): Promise<unknown>;
  takeIn(file: unknown): Promise<unknown>;
  listen(receive: (event: unknown) => void): () => void;
};

/** Runs the file as the sandbox does: nothing but a require that knows the runtime. */
function run() {
  const asked: string[] = [];
  const exposed = new Map<string, Exposed>();
  const invoked: unknown[][] = [];
  const listeners = new Map<string, (event: unknown, ...values: unknown[]) => void>();
  const runtime = {
    contextBridge: {
      exposeInMainWorld: (name: string, value: Exposed) => exposed.set(name, value),
    },
    ipcRenderer: {
      invoke: (...values: unknown[]) => {
        invoked.push(values);
        return Promise.resolve({ ok: true, value: null });
      },
      on: (channel: string, receive: (event: unknown, ...values: unknown[]) => void) =>
        listeners.set(channel, receive),
      removeListener: (channel: string) => listeners.delete(channel),
    },
    webUtils: { getPathForFile: (dropped: { path?: string }) => dropped.path ?? '' },
  };
  const require = (name: string) => {
    asked.push(name);
    if (name !== 'electron') throw new Error(`module not found: ${name}`);
    return runtime;
  };
  const module = { exports: {} };
  new Script(text).runInContext(createContext({ require, module, exports: module.exports, console }));
  return { asked, exposed, invoked, listeners };
}

function bridge() {
  const ran = run();
  const given = ran.exposed.get('teardownDocket');
  if (!given) throw new Error('the preload gives the page no bridge');
  return { ...ran, given };
}

describe('the built preload', () => {
  test('asks for the runtime and for no other module, anywhere in it', () => {
    expect(modulesAskedFor().length).toBeGreaterThan(0);
    expect([...new Set(modulesAskedFor())]).toEqual(['electron']);
    expect(run().asked).toEqual(['electron']);
  });

  test('gives the page one object, with the keys of the carrier and no other', () => {
    const { exposed, given } = bridge();
    expect([...exposed.keys()]).toEqual(['teardownDocket']);
    expect(Object.keys(given).sort()).toEqual(
      ['call', 'calls', 'deliver', 'documentBase', 'kind', 'listen', 'pictureBase', 'takeIn'].sort(),
    );
    expect(Object.keys(given.calls).sort()).toEqual([...channels].sort());
  });

  test('passes on the channels of the contract only, each under its own name', async () => {
    const { given, invoked } = bridge();
    for (const channel of channels) await given.call(channel, { of: channel });
    expect(invoked).toEqual(channels.map((channel) => [`call:${channel}`, { of: channel }]));
    for (const channel of ['docket:take-in', 'call:cases.list', '__proto__', 'toString', '']) {
      expect(await given.call(channel, {})).toMatchObject({ ok: false, error: { code: 'request-invalid' } });
    }
    expect(invoked).toHaveLength(channels.length);
  });

  test('takes in what the runtime knows as a dropped file, and never a path from the page', async () => {
    const { given, invoked } = bridge();
    await given.takeIn({ name: 'front.jpg', size: 3, path: '/photos/front.jpg' });
    expect(invoked).toEqual([['docket:take-in', { path: '/photos/front.jpg', name: 'front.jpg' }]]);
    expect(await given.takeIn({ name: '/etc/passwd', size: 3 })).toMatchObject({
      ok: false,
      error: { code: 'intake-gone' },
    });
    expect(invoked).toHaveLength(1);
  });

  test('hands the page events, never the runtime’s own event with its sender', () => {
    const { given, listeners } = bridge();
    const heard: unknown[][] = [];
    const end = given.listen((...values: unknown[]) => heard.push(values));
    listeners.get('docket:event')?.({ sender: 'the runtime' }, { name: 'resync', sequence: 1 }, 'more');
    expect(heard).toEqual([[{ name: 'resync', sequence: 1 }]]);
    end();
    expect(listeners.size).toBe(0);
  });
});
