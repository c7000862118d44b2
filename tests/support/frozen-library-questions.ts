/**
 * What a frozen library must still say. Questions are only ever added for libraries made later: a question that an
 * older expected.json does not answer is left out there.
 */
import type { CaseId } from '#shared-types/ids.ts';

import type { EngineHere } from './world-engine.ts';

const tag = (more: Record<string, string>) => ({
  component: null,
  zone: null,
  kind: null,
  class: null,
  presence: null,
  ...more,
});

export async function askEverything(engine: EngineHere) {
  const { cases, photos, journal } = await engine.ask('library.overview', {});
  const shelf = await engine.ask('cases.list', {});
  const found = async (text: string, tags: ReturnType<typeof tag>[] = []) =>
    (await engine.ask('search.cases', { text, tags })).hits.map((hit) => hit.case.number);
  return {
    overview: { cases, photos, journal },
    settings: await engine.ask('settings.read', {}),
    analysts: await engine.ask('analysts.list', {}),
    shelf,
    cases: Object.fromEntries(
      await Promise.all(shelf.map(async ({ id, number }) => [number, await askCase(engine, id)] as const)),
    ),
    jobs: await engine.ask('jobs.list', {}),
    journal: await engine.ask('journal.list', { caseId: null, most: 1_000 }),
    journalCheck: await engine.ask('journal.check', {}),
    found: {
      word: await found('nut'),
      umlaut: await found('mullerstrand'),
      caption: await found('grooves'),
      serial: await found('3077'),
      tag: await found('', [tag({ component: 'thrust-bearing', kind: 'worn-away', class: 'primary' })]),
      absent: await found('', [tag({ kind: 'scoring', presence: 'looked-for-absent' })]),
    },
    knownTags: await engine.ask('search.known-tags', {}),
  };
}

async function askCase(engine: EngineHere, caseId: CaseId) {
  return {
    case: await engine.ask('cases.read', { caseId }),
    photos: await engine.ask('photos.list', { caseId }),
    ...(await engine.ask('bench.read', { caseId })),
  };
}
