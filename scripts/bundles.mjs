/**
 * What is built: the page (dist/renderer) and the desktop program's processes (dist/electron), each only when its
 * sources changed. A stamp beside each holds the hash of every source it was made from.
 */
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { join, relative } from 'node:path';
import { inProject, Refusal, root, timed } from './project.mjs';

const bundles = {
  page: {
    label: 'Building the page (dist/renderer)',
    stamp: inProject('dist', 'renderer.sha256'),
    product: inProject('dist', 'renderer', 'index.html'),
    sources: [
      'renderer',
      'shared-types',
      'analysis',
      'vite.config.ts',
      'package.json',
      'package-lock.json',
      'scripts/bundles.mjs',
    ],
    build: buildPage,
  },
  desktop: {
    label: 'Building the desktop program (dist/electron)',
    stamp: inProject('dist', 'electron.sha256'),
    product: inProject('dist', 'electron', 'main.js'),
    sources: [
      'electron',
      'shared-types',
      'analysis',
      'package.json',
      'package-lock.json',
      'scripts/bundles.mjs',
    ],
    build: buildDesktop,
  },
};

/** @typedef {keyof typeof bundles} BundleName */
export const bundleNames = Object.keys(bundles);

function filesUnder(path) {
  if (!existsSync(path)) return [];
  if (!statSync(path).isDirectory()) return [path];
  return readdirSync(path, { withFileTypes: true })
    .sort((one, other) => (one.name < other.name ? -1 : 1))
    .flatMap((entry) => filesUnder(join(path, entry.name)));
}

/** SHA-256 over the names and contents of all sources, in a fixed order. */
function hashOfSources(sources) {
  const hash = createHash('sha256');
  for (const file of sources.flatMap((source) => filesUnder(inProject(source)))) {
    const content = readFileSync(file);
    hash.update(`${relative(root, file)}\0${content.length}\0`).update(content);
  }
  return hash.digest('hex');
}

export function isCurrent(name) {
  const { stamp, product, sources } = bundles[name];
  return existsSync(product) && existsSync(stamp) && readFileSync(stamp, 'utf8') === hashOfSources(sources);
}

/** Builds one bundle whether or not it is current. @throws {Refusal} when a source that is needed is missing */
export async function build(name) {
  const { label, stamp, product, sources, build: make } = bundles[name];
  rmSync(stamp, { force: true });
  const hash = hashOfSources(sources);
  await timed(label, () => makeOrRefuse(name, make));
  if (!existsSync(product)) throw new Refusal(`The build left no ${relative(root, product)}.`);
  mkdirSync(inProject('dist'), { recursive: true });
  writeFileSync(stamp, hash);
}

/** Faults in the sources come as a list from the bundler; they say more than the place in it that threw them. */
async function makeOrRefuse(name, make) {
  try {
    await make();
  } catch (error) {
    if (!Array.isArray(error.errors)) throw error;
    throw new Refusal(`The ${name} could not be built.\n\n${error.message}`);
  }
}

/** Builds those of the named bundles whose sources changed since they were last built. */
export async function buildStale(names) {
  for (const name of names) if (!isCurrent(name)) await build(name);
}

async function buildPage() {
  const configFile = inProject('vite.config.ts');
  if (!existsSync(configFile)) throw new Refusal('vite.config.ts is missing: the page cannot be built.');
  const vite = await import('vite');
  await vite.build({ configFile, logLevel: 'warn' });
}

/** Packages that stay packages in the packaged program: all it depends on but zod, and the runtime itself. */
function externalPackages() {
  const { dependencies } = JSON.parse(readFileSync(inProject('package.json'), 'utf8'));
  return ['electron', ...Object.keys(dependencies).filter((name) => name !== 'zod')];
}

/** The processes of electron/processes/entry-table.ts: name -> absolute path of its source. */
async function readEntries() {
  const table = inProject('electron', 'processes', 'entry-table.ts');
  const { entries } = await import(pathToFileURL(table).href);
  const missing = Object.entries(entries).filter(([, source]) => !existsSync(inProject(source)));
  if (missing.length > 0) {
    const list = missing.map(([name, source]) => `  ${name}: ${source}`).join('\n');
    throw new Refusal(`electron/processes/entry-table.ts names processes whose files are missing:\n${list}`);
  }
  return Object.fromEntries(Object.entries(entries).map(([name, source]) => [name, inProject(source)]));
}

async function buildDesktop() {
  const { preload, ...processes } = await readEntries();
  const vite = await import('vite');
  const outDir = inProject('dist', 'electron');
  rmSync(outDir, { recursive: true, force: true });

  /** Chunks lie beside the entries: entryPath() looks for an entry in the folder of the module that asks. */
  await buildForNode(vite, {
    outDir,
    external: externalPackages(),
    input: processes,
    output: { format: 'es', entryFileNames: '[name].js', chunkFileNames: 'chunk-[name]-[hash].js' },
  });
  /** A sandboxed preload may require nothing but the runtime, so it is one file. */
  await buildForNode(vite, {
    outDir,
    external: ['electron'],
    input: { preload },
    output: { format: 'cjs', entryFileNames: '[name].cjs', codeSplitting: false },
  });
}

async function buildForNode(vite, { outDir, external, input, output }) {
  await vite.build({
    configFile: false,
    root,
    logLevel: 'warn',
    publicDir: false,
    ssr: { noExternal: true, external },
    build: {
      ssr: true,
      outDir,
      emptyOutDir: false,
      target: 'node24',
      minify: false,
      sourcemap: true,
      rolldownOptions: { input, output },
    },
  });
}
