/**
 * The layers stay apart only as long as the rules that hold them do. Each rule is given a small text that breaks it, in
 * the place where it applies, and has to name the fault; a text that keeps to all of them has to pass.
 * What counts as a fault is this project's own decision.
 */
import { ESLint } from 'eslint';
import tseslint from 'typescript-eslint';
import { describe, expect, it } from 'vitest';
import { diagnose, root } from './layers-diagnosis.ts';

/** The project's own rules without those that need types: the texts lie in no file. */
const eslint = new ESLint({
  cwd: root,
  overrideConfig: [{ files: ['**/*.{ts,tsx}'], ...tseslint.configs.disableTypeChecked }],
});

async function faultsIn(filePath: string, text: string): Promise<string[]> {
  const results = await eslint.lintText(`${text}\n`, { filePath });
  return results.flatMap((result) =>
    result.messages
      .filter((message) => !message.ruleId?.endsWith('no-unused-vars'))
      .map((message) => `${message.ruleId ?? 'parser'}: ${message.message}`),
  );
}

const layers = 'docket/layers';
const syntax = 'no-restricted-syntax';
const names = 'no-restricted-globals';

type Breach = readonly [file: string, text: string, rule: string, message: RegExp];

const breaches: readonly Breach[] = [
  [
    'shared-types/x.ts',
    "import { a } from '#analysis/a.ts';",
    layers,
    /shared-types\/x\.ts may not import #analysis/,
  ],
  ['shared-types/x.ts', "import { a } from '../analysis/a.ts';", layers, /may not import \.\.\/analysis/],
  ['shared-types/x.ts', "export { a } from '../electron/a.ts';", layers, /may not import \.\.\/electron/],
  ['shared-types/x.ts', "import { readFileSync } from 'node:fs';", layers, /node:fs is Node/],
  ['shared-types/texts/x.ts', "import { a } from '../../renderer/a.ts';", layers, /may not import/],
  ['shared-types/x.ts', 'export const at = Date.now();', syntax, /No clock here/],
  ['analysis/x.ts', "import { a } from '../electron/a.ts';", layers, /may not import \.\.\/electron/],
  ['analysis/marks/x.ts', "import { a } from '../../renderer/a.ts';", layers, /may not import/],
  ['analysis/x.ts', "export type A = import('../electron/a.ts').A;", layers, /may not import \.\.\/electron/],
  ['analysis/x.ts', "export const a = await import('../electron/a.ts');", layers, /may not import/],
  ['analysis/x.ts', "import { createHash } from 'node:crypto';", layers, /node:crypto is Node/],
  ['analysis/x.ts', "import { createHash } from 'crypto';", layers, /crypto is Node/],
  ['analysis/x.ts', "import React from 'react';", layers, /analysis does not use the package react/],
  ['analysis/x.ts', 'export const at = Date.now();', syntax, /No clock here/],
  ['analysis/x.ts', 'export const at = new Date();', syntax, /No clock here/],
  ['analysis/x.ts', 'export const at = Date();', syntax, /No clock here/],
  ['analysis/x.ts', 'export const a = Math.random();', syntax, /No chance here/],
  ['analysis/x.ts', 'export const a = document.title;', names, /neither page nor process/],
  ['analysis/x.ts', 'export const a = window.name;', names, /neither page nor process/],
  ['analysis/x.ts', 'export const a = performance.now();', names, /neither page nor process/],
  ['analysis/x.ts', 'export const a = process.pid;', names, /neither page nor process/],
  ['analysis/x.ts', "export const a = fetch('/');", names, /neither page nor process/],
  ['analysis/x.ts', 'setTimeout(() => undefined, 1);', names, /neither page nor process/],
  ['electron/engine/x.ts', "import { a } from '../../renderer/a.ts';", layers, /may not import/],
  ['electron/engine/x.ts', "import { app } from 'electron';", layers, /know the desktop runtime/],
  ['electron/engine/x.ts', "import { app } from 'electron/main';", layers, /know the desktop runtime/],
  ['electron/engine/x.ts', "import type { App } from 'electron';", layers, /know the desktop runtime/],
  ['electron/engine/x.ts', "import Database from 'better-sqlite3';", layers, /opens databases/],
  ['electron/engine/x.ts', 'export const a = window;', names, /has no page/],
  ['electron/services/x.ts', "export const a = (db: D) => db.prepare('x');", syntax, /SQL lives in/],
  ['electron/services/x.ts', "export const a = (db: D) => db.exec('x');", syntax, /SQL lives in/],
  ['electron/services/x.ts', "export const a = (s: S) => s.db.exec('x');", syntax, /SQL lives in/],
  ['electron/services/x.ts', "export const a = (db: D) => db.pragma('x');", syntax, /SQL lives in/],
  ['electron/services/x.ts', "export const a = 'SELECT id FROM finding';", syntax, /SQL lives in/],
  [
    'electron/services/x.ts',
    'export const a = `\n  UPDATE finding SET revision = 2`;',
    syntax,
    /SQL lives in/,
  ],
  ['renderer/x.ts', "import { a } from '../electron/a.ts';", layers, /may not import \.\.\/electron/],
  ['renderer/bench/x.tsx', "import { a } from '../../electron/a.ts';", layers, /may not import/],
  ['renderer/x.ts', "import { join } from 'node:path';", layers, /node:path is Node/],
  ['renderer/x.ts', "import { ipcRenderer } from 'electron';", layers, /know the desktop runtime/],
  ['renderer/x.ts', "import Database from 'better-sqlite3';", layers, /renderer does not use the package/],
  ['renderer/x.ts', 'export const a = process.platform;', names, /has no Node/],
  [
    'renderer/x.tsx',
    "import { useState } from 'react';\nexport function X({ a }: { a: boolean }) { if (a) useState(1); return null; }",
    'react-hooks/rules-of-hooks',
    /called conditionally/,
  ],
  ['tests/unit/x.test.ts', "import { app } from 'electron';", layers, /know the desktop runtime/],
  ['tests/unit/x.test.ts', "vi.mock('../../analysis/a.ts');", syntax, /are not mocked/],
  ['tests/unit/x.test.ts', 'expect(1).toMatchSnapshot();', syntax, /Nobody reads snapshots/],
  ['tests/browser/x.test.ts', 'await page.waitForTimeout(1);', syntax, /not for a time/],
  ...[
    'shared-types/x.ts',
    'analysis/x.ts',
    'electron/x.ts',
    'electron/database/x.ts',
    'renderer/x.ts',
  ].flatMap((file): Breach[] => [
    [file, 'export const a = (b: any) => String(b);', '@typescript-eslint/no-explicit-any', /Unexpected any/],
    [file, 'try { a(); } catch {}', syntax, /never to lose it/],
    [file, 'try { a(); } catch { /* nothing */ }', syntax, /never to lose it/],
    [file, 'export default 1;', syntax, /Exports have names/],
    [file, 'export const a = b!.c;', '@typescript-eslint/no-non-null-assertion', /non-null assertion/],
    [file, 'export interface A { a: 1 }', syntax, /Shapes are types/],
  ]),
];

const sound: readonly (readonly [file: string, text: string])[] = [
  [
    'shared-types/x.ts',
    "import { z } from 'zod';\nimport { a } from './a.ts';\nexport const b = z.literal(a);",
  ],
  [
    'analysis/marks/x.ts',
    "import type { Mark } from '#shared-types/mark.ts';\nimport { a } from '../a.ts';\n" +
      'export const b = (mark: Mark, at: string) => [mark, a, new Date(at), /x/.exec(at), Math.hypot(3, 4)];',
  ],
  [
    'electron/services/x.ts',
    "import { join } from 'node:path';\nimport type { Database } from 'better-sqlite3';\n" +
      "import { a } from '#analysis/a.ts';\nimport { insertFinding } from '../database/repositories/finding.ts';\n" +
      "export const b = (db: Database, c: string) => db.transaction(() => insertFinding(db, join(a, c, /x/.exec(c)?.[0] ?? '')));",
  ],
  [
    'electron/database/repositories/x.ts',
    "import Database from 'better-sqlite3';\nexport const a = (path: string) => new Database(path).prepare('SELECT 1').get();",
  ],
  ['electron/engine/x.ts', 'export const a = (store: { prepare(): void }) => store.prepare();'],
  ['electron/shell/x.ts', "import { app } from 'electron';\nexport const a = () => app.getName();"],
  ['electron/preload.ts', "import { contextBridge } from 'electron';\nexport const a = contextBridge;"],
  [
    'renderer/bench/x.tsx',
    "import { useState } from 'react';\nimport { a } from '#analysis/a.ts';\nimport type { Mark } from '#shared-types/mark.ts';\n" +
      'export function X({ mark }: { mark: Mark }) {\n  const [b] = useState(a);\n  return <p>{b(mark, window.name)}</p>;\n}',
  ],
  ['tests/unit/x.test.ts', "import { a } from '../../electron/a.ts';\nexport const b = a!.c;"],
  [
    'electron/services/y.ts',
    "export function a() {\n  try {\n    return 1;\n  } catch (error) {\n    throw new Error('a', { cause: error });\n  }\n}",
  ],
];

describe('lint rules', () => {
  it.each(breaches)('%s refuses %s', async (file, text, rule, message) => {
    const faults = await faultsIn(file, text);
    expect(faults.filter((fault) => fault.startsWith(`${rule}: `) && message.test(fault))).not.toEqual([]);
  });

  it.each(sound)('%s accepts %s', async (file, text) => {
    expect(await faultsIn(file, text)).toEqual([]);
  });
});

describe('compiler options', () => {
  const page = 'export const a = document.title;';
  const clickedPart = 'export const a = (b: HTMLElement): string => b.id;';
  const file = "import { readFileSync } from 'node:fs';\nexport const a = readFileSync('a', 'utf8');";
  const running = 'export const a = process.pid;';

  it.each([
    ['shared-types', page, /Cannot find name 'document'/],
    ['shared-types', running, /Cannot find name 'process'/],
    ['analysis', page, /Cannot find name 'document'/],
    ['analysis', file, /'node:fs'/],
    ['electron', page, /Cannot find name 'document'/],
    ['electron', clickedPart, /Cannot find name 'HTMLElement'/],
    ['renderer', file, /'node:fs'/],
    ['renderer', running, /Cannot find name 'process'/],
    ['electron', 'export enum A { b }', /erasableSyntaxOnly/],
    ['renderer', 'export const a = (b: readonly string[]): string => b[0];', /undefined/],
  ] as const)('%s refuses %s', (layer, text, message) => {
    expect(diagnose(layer, text).join('\n')).toMatch(message);
  });

  it.each([
    ['analysis', 'export const a = (b: readonly number[]): number => Math.hypot(...b);'],
    ['electron', file],
    ['electron', running],
    ['renderer', page],
    ['renderer', clickedPart],
  ] as const)('%s accepts %s', (layer, text) => {
    expect(diagnose(layer, text)).toEqual([]);
  });
});
