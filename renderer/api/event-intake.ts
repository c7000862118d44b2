/** What each of the program's events makes stale on the page. Keys are [channel, request], see queries.ts. */
import type { QueryClient } from '@tanstack/react-query';
import type { Channel } from '#shared-types/api-contract.ts';
import type { Carrier } from '#shared-types/carrier.ts';
import type { AppEvent, EventMap, NumberedEvent } from '#shared-types/events.ts';
import { call } from './client.ts';
import { useEngineStore } from './engine-store.ts';
import { noteJob, replaceJobs } from './job-store.ts';
import { noteSaved } from './saved-store.ts';

type StaleKey = readonly [Channel] | readonly [Channel, unknown];

const ofTheShelf: readonly StaleKey[] = [
  ['cases.list'],
  ['search.known-tags'],
  ['search.cases'],
  ['search.counts'],
  ['library.overview'],
];

const channelsOfWhat: Record<EventMap['case-changed']['what'], readonly Channel[]> = {
  fields: [],
  photos: ['photos.list', 'photos.register'],
  bench: ['bench.read', 'findings.class-history'],
  parties: ['parties.list'],
  custody: ['custody.list'],
  chain: ['chain.read'],
  'report-plan': ['report-plan.read'],
};

/** Keys that an event makes stale; 'everything' after events were missed. */
export function madeStaleBy(event: AppEvent): readonly StaleKey[] | 'everything' {
  switch (event.name) {
    case 'case-changed': {
      const { caseId, what } = event.payload;
      const ofCase: readonly Channel[] = ['cases.read', ...channelsOfWhat[what]];
      return [...ofCase.map((channel) => [channel, { caseId }] as const), ['journal.list'], ...ofTheShelf];
    }
    case 'shelf-changed':
      return ofTheShelf;
    case 'settings-changed':
      return [['settings.read'], ['analysts.list']];
    case 'resync':
      return 'everything';
    case 'engine-state':
    case 'job-changed':
      return [];
  }
}

/** Many writes in a row (an import) are read once, not once each. */
const gatherForMs = 100;

/** Listens for the page's whole life. Answers a function that ends it. */
export function beginEventIntake(carrier: Carrier<File>, queries: QueryClient): () => void {
  const stale = new Map<string, StaleKey>();
  let timer: number | undefined;

  const readStale = () => {
    timer = undefined;
    const keys = [...stale.values()];
    stale.clear();
    for (const queryKey of keys) void queries.invalidateQueries({ queryKey });
  };

  const receive = (event: NumberedEvent) => {
    if (event.name === 'engine-state') useEngineStore.setState(event.payload);
    if (event.name === 'job-changed') noteJob(event.payload.job);
    if (event.name === 'case-changed') noteSaved(event.payload.caseId, new Date());
    const keys = madeStaleBy(event);
    if (keys === 'everything') {
      void queries.invalidateQueries();
      void readJobs();
      return;
    }
    for (const key of keys) stale.set(JSON.stringify(key), key);
    if (stale.size > 0) timer ??= window.setTimeout(readStale, gatherForMs);
  };

  const endListening = carrier.listen(receive);
  void readJobs();
  return () => {
    endListening();
    window.clearTimeout(timer);
  };
}

/** Where the program cannot be reached the banner says so; the jobs come with the next resync. */
async function readJobs(): Promise<void> {
  const list = await call('jobs.list', {}).catch(() => null);
  if (list !== null) replaceJobs(list);
}
