/**
 * The search over a large library: two hundred questions of eight sorts, cold and warm, held against the sqlite3 shell,
 * which is given the very statements that the engine runs for each. Alone: node tests/benchmarks/measure-search.ts --cases 2000 --photos 100000 prints a line of JSON for
 * each figure; with --keep FOLDER the library is poured there and found again the next time. The photos are rows without
 * files; five percent of all times are worse than the p95.
 */
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';

import type { RequestOf } from '#shared-types/api-contract.ts';
import { searchRequestSchema, type DamageTag } from '#shared-types/search.ts';

import { openLibrary } from '../../electron/database/open-library.ts';
import { shippedPath } from '../../electron/processes/entry-table.ts';
import { listKnownTags, searchCases } from '../../electron/services/case-search.ts';
import { chanceFrom, type Chance } from '../support/world-chance.ts';
import { turbochargerPack } from '../support/world.ts';
import { startEngineProcess, type EngineProcess } from './engine-process.ts';
import { figure, share, timeOf, type Figure } from './figures.ts';
import { drawTerms, pourLibrary, type LibrarySize, type PouredLibrary } from './library-of-cases.ts';
import { statementsOf, timeInShell } from './sqlite-shell.ts';

type Question = { readonly sort: string; readonly request: RequestOf<'search.cases'> };

const ofEachSort = 25;
const timesInShell = 5;
const asker = '00000000-0000-4000-8000-000000000001';

export async function measureSearchFigures(folder: string, size: LibrarySize): Promise<Figure[]> {
  const library = join(folder, 'large-search');
  const poured = pouredLibrary(library, size);
  const file = join(library, 'library.sqlite');
  const questions = drawQuestions(chanceFrom(11), poured);
  const begun = performance.now();
  const cold = await startEngineProcess(library);
  let first: number;
  let listed: number;
  try {
    await cold.ask('cases.list', { latest: 201 });
    listed = performance.now() - begun;
    first = await timeOf(() => cold.ask('search.known-tags', {}));
  } finally {
    await cold.close();
  }
  const engine = await startEngineProcess(library);
  try {
    await engine.ask('search.known-tags', {});
    const answered = await askTwice(engine, questions);
    const counted = await countTwice(engine, questions);
    const empty = await emptyCounts(engine);
    const byShell = timeInShell(file, await statementsOfAll(library, questions), timesInShell);
    const [counting = Number.NaN] = timeInShell(file, [countsInSql], 1);
    return [
      figure('library poured', poured.seconds, 's'),
      figure('library file', statSync(file).size / 1e6, 'MB'),
      figure('start of the engine’s process to the answered list of the newest 200 cases', listed, 'ms'),
      figure('first question of a fresh engine, which reads what filters and identifiers need', first, 'ms'),
      ...pageFigures(questions, answered, byShell),
      ...countFigures(counted),
      figure('counts of all filters over all cases, median of 20', empty, 'ms', counting),
    ];
  } finally {
    await engine.close();
  }
}

/** As it was poured before, where it is there already. */
function pouredLibrary(library: string, size: LibrarySize): PouredLibrary {
  const account = join(library, '..', 'poured.json');
  if (existsSync(account)) {
    const { casesOfWord, ...known } = JSON.parse(readFileSync(account, 'utf8')) as Omit<
      PouredLibrary,
      'casesOfWord'
    > & { readonly casesOfWord: [string, number][] };
    return { ...known, casesOfWord: new Map(casesOfWord) };
  }
  mkdirSync(library, { recursive: true });
  const poured = pourLibrary(library, 7, size);
  writeFileSync(account, JSON.stringify({ ...poured, casesOfWord: [...poured.casesOfWord] }));
  return poured;
}

function drawQuestions(chance: Chance, { casesOfWord, serials }: PouredLibrary): Question[] {
  const words = [...casesOfWord].sort(([, one], [, other]) => other - one);
  const within = (least: number, most: number) =>
    words.flatMap(([word, cases]) =>
      cases >= least * serials.length && cases <= Math.max(3, most * serials.length) ? [word] : [],
    );
  const [frequent, middle, rare] = [within(0.25, 1), within(0.01, 0.05), within(0, 0.001)];
  const pack = turbochargerPack();
  const sorts: Record<string, () => Question['request']> = {
    'a frequent word': () => byWords([chance.pick(frequent)]),
    'a middling word': () => byWords([chance.pick(middle)]),
    'a rare word': () => byWords([chance.pick(rare)]),
    'a frequent and a middling word': () => byWords([chance.pick(frequent), chance.pick(middle)]),
    'a serial number': () => byWords([chance.pick(serials)]),
    'a serial number with a slip': () => byWords([slipped(chance, chance.pick(serials))]),
    'a frequent word and a serial number with a slip': () =>
      byWords([chance.pick(frequent), slipped(chance, chance.pick(serials))]),
    'a damage': () => {
      const { component, kind, class: damageClass } = drawTerms(chance, pack);
      const tag: DamageTag = { component, kind, zone: null, class: damageClass, presence: null };
      return { text: '', tags: [tag] };
    },
  };
  return Object.entries(sorts).flatMap(([sort, draw]) =>
    Array.from({ length: ofEachSort }, () => ({ sort, request: draw() })),
  );
}

const byWords = (words: readonly string[]) => ({ text: words.join(' '), tags: [] });

/** One of the first five digits is another. */
function slipped(chance: Chance, serial: string): string {
  const at = 3 + chance.integer(3);
  const digit = String((Number(serial.charAt(at)) + 1 + chance.integer(9)) % 10);
  return serial.slice(0, at) + digit + serial.slice(at + 1);
}

type Twice = { readonly cold: readonly number[]; readonly warm: readonly number[] };

async function askTwice(engine: EngineProcess, questions: readonly Question[]): Promise<Twice> {
  const pass = async () => {
    const times: number[] = [];
    for (const { request } of questions) times.push(await timeOf(() => engine.ask('search.cases', request)));
    return times;
  };
  return { cold: await pass(), warm: await pass() };
}

async function countTwice(engine: EngineProcess, questions: readonly Question[]): Promise<Twice> {
  const pass = async () => {
    const times: number[] = [];
    for (const { request } of questions) {
      times.push(await timeOf(() => engine.ask('search.counts', { ...request, asker })));
    }
    return times;
  };
  return { cold: await pass(), warm: await pass() };
}

/** Nothing is looked for: every case counts for every filter. */
async function emptyCounts(engine: EngineProcess): Promise<number> {
  const times: number[] = [];
  for (let run = 0; run < 20; run += 1) {
    times.push(await timeOf(() => engine.ask('search.counts', { text: '', tags: [], asker })));
  }
  return share(times, 0.5);
}

/** As one would count in SQL alone. */
const countsInSql = [
  ...['component', 'kind', 'class', 'presence'].map(
    (field) => `SELECT ${field}, count(DISTINCT case_row) FROM finding GROUP BY ${field}`,
  ),
  ...['unit_model', 'customer', 'outcome', 'substr(opened_at, 1, 4)', 'substr(opened_at, 1, 7)'].map(
    (field) => `SELECT ${field}, count(*) FROM teardown_case GROUP BY ${field}`,
  ),
];

/** What the engine reads for each question, in a process of its own beside the engine that was measured. */
async function statementsOfAll(folder: string, questions: readonly Question[]): Promise<string[][]> {
  const now = () => '2026-03-04T09:15:00.000Z';
  const { db } = openLibrary({ folder, migrationsFolder: shippedPath('migrations'), now });
  try {
    await listKnownTags({ db });
    const all: string[][] = [];
    for (const { request } of questions) {
      const parsed = searchRequestSchema.parse(request);
      all.push(await statementsOf(db, () => searchCases({ db }, parsed)));
    }
    return all;
  } finally {
    db.close();
  }
}

function pageFigures(
  questions: readonly Question[],
  { cold, warm }: Twice,
  shell: readonly number[],
): Figure[] {
  const sorts = [...new Set(questions.map(({ sort }) => sort))];
  const of = (name: string, isIt: (sort: string) => boolean): Figure[] => {
    const [base, here, first] = [shell, warm, cold].map((times) =>
      times.filter((_, at) => isIt(questions[at]?.sort ?? '')),
    );
    return [
      figure(`${name}, warm, median`, share(here, 0.5), 'ms', share(base, 0.5)),
      figure(`${name}, warm, p95`, share(here, 0.95), 'ms', share(base, 0.95)),
      figure(`${name}, cold, median`, share(first, 0.5), 'ms', share(base, 0.5)),
      figure(`${name}, cold, p95`, share(first, 0.95), 'ms', share(base, 0.95)),
    ];
  };
  return [
    ...sorts.flatMap((sort) => of(`page of 20 cases, ${sort}`, (one) => one === sort)),
    ...of(`page of 20 cases, all ${questions.length}`, () => true),
  ];
}

function countFigures({ cold, warm }: Twice): Figure[] {
  const name = `counts of all filters, all ${warm.length}`;
  return [
    figure(`${name}, warm, median`, share(warm, 0.5), 'ms'),
    figure(`${name}, warm, p95`, share(warm, 0.95), 'ms'),
    figure(`${name}, cold, p95`, share(cold, 0.95), 'ms'),
  ];
}

/** As asked on the command line, otherwise 20,000 cases and a million photos. */
function asked(): { readonly size: LibrarySize; readonly keep: string | null } {
  const { values } = parseArgs({
    options: {
      cases: { type: 'string', default: '20000' },
      photos: { type: 'string', default: '1000000' },
      keep: { type: 'string' },
    },
  });
  const cases = Number(values.cases);
  return { size: { cases, photos: Number(values.photos), findings: 20 * cases }, keep: values.keep ?? null };
}

/** For the table of all figures. */
export async function measureLargeSearch(folder: string): Promise<Figure[]> {
  const { size, keep } = asked();
  const over = `over ${size.cases.toLocaleString('en')} cases and ${size.photos.toLocaleString('en')} photos`;
  const figures = await measureSearchFigures(keep ?? folder, size);
  return figures.map((one) => ({ ...one, name: `Search ${over}: ${one.name}` }));
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const { size, keep } = asked();
  const folder = keep ?? mkdtempSync(join(tmpdir(), 'docket-search-'));
  try {
    for (const one of await measureSearchFigures(folder, size)) {
      process.stdout.write(`${JSON.stringify(one)}\n`);
    }
  } finally {
    if (keep === null) rmSync(folder, { recursive: true, force: true });
  }
}
