/**
 * One exchange for every channel of the contract, in an order in which each finds what it needs. A channel without
 * an exchange does not compile.
 */
import type { Channel, RequestOf, ResponseOf } from '#shared-types/api-contract.ts';
import type { TakenIn } from '#shared-types/carrier.ts';
import { AppError, type Envelope } from '#shared-types/errors.ts';
import type { FindingFields } from '#shared-types/finding.ts';
import type {
  CaseId,
  ChainLinkId,
  ChainNodeId,
  CustodyEntryId,
  FindingId,
  IntakeToken,
  JobId,
  MarkId,
  PartyId,
  PhotoId,
} from '#shared-types/ids.ts';
import type { Job } from '#shared-types/job.ts';

export type Caller = {
  call(channel: Channel, request: unknown): Promise<Envelope<unknown>>;
  takeIn(path: string): Promise<Envelope<TakenIn>>;
};

/** What earlier exchanges left for later ones. */
export type Scene = {
  caseId: CaseId;
  photoId: PhotoId;
  tokens: IntakeToken[];
  jobId: JobId;
  partyId: PartyId;
  custodyEntryId: CustodyEntryId;
  findingId: FindingId;
  markId: MarkId;
  analystId: ResponseOf<'analysts.add'>['id'];
};

export const exampleFinding: FindingFields = {
  component: 'thrust-bearing',
  position: null,
  zone: 'front-pads',
  kind: 'worn-away',
  class: 'primary',
  presence: 'present',
  severity: 'severe',
  extent: { affected: 3, of: 3 },
  bend: { sense: 'anticlockwise', seenFrom: 'from-inlet' },
  note: 'worn to the grooves, λ ≈ 0,3 mm “everywhere”',
};

const unit = { maker: 'Halvard', model: 'R45', serial: 'SN-30771', partNumber: 'R45-1180' };

type Exchanges = { readonly [C in Channel]: (scene: Scene) => RequestOf<C> };

export const exchanges: Exchanges = {
  'program.describe': () => ({}),
  'analysts.add': () => ({ name: 'M. Sundgren', qualification: 'turbomachinery' }),
  'analysts.list': () => ({}),
  'analysts.change': ({ analystId }) => ({
    analystId,
    revision: 1,
    fields: { name: 'M. Sundgren', qualification: 'marine engineer' },
  }),
  'settings.read': () => ({}),
  'settings.change': () => ({ revision: 2, fields: { theme: 'dark' } }),
  'machine-kinds.list': () => ({}),
  'machine-kinds.read': () => ({ id: 'turbocharger', version: null }),
  'cases.open': () => ({
    number: '26-0147',
    unit,
    customer: 'Skerry Line',
    claim: 'The nut came loose.',
    machineKind: 'turbocharger',
  }),
  'cases.list': () => ({}),
  'cases.read': ({ caseId }) => ({ caseId }),
  'cases.change': ({ caseId }) => ({ caseId, revision: 1, fields: { outcome: 'claim-not-supported' } }),
  'parties.put': ({ caseId, partyId }) => ({
    caseId,
    partyId,
    revision: null,
    fields: { name: 'Skerry Line', roles: ['claims', 'owns'], details: 'their reference 771' },
  }),
  'parties.list': ({ caseId }) => ({ caseId }),
  'custody.add': ({ caseId, custodyEntryId }) => ({
    caseId,
    entryId: custodyEntryId,
    fields: {
      item: 'unit in its crate',
      event: 'received',
      from: 'the carrier',
      to: 'M. Sundgren',
      at: { local: '2026-03-04T00:00:00', offsetMinutes: null, precision: 'day' },
      why: '',
    },
  }),
  'custody.list': ({ caseId }) => ({ caseId }),
  'custody.strike': ({ custodyEntryId }) => ({ entryId: custodyEntryId, revision: 1, reason: 'wrong day' }),
  'parties.remove': ({ partyId }) => ({ partyId, revision: 1 }),
  'photos.import': ({ caseId, tokens }) => ({ caseId, tokens }),
  'jobs.read': ({ jobId }) => ({ jobId }),
  'jobs.list': () => ({}),
  'jobs.stop': ({ jobId }) => ({ jobId }),
  'photos.list': ({ caseId }) => ({ caseId }),
  'photos.change': ({ photoId }) => ({
    photoId,
    revision: 1,
    fields: { caption: 'front face', parts: [{ component: 'thrust-bearing', position: null }] },
  }),
  'photos.assign': ({ caseId, photoId }) => ({
    caseId,
    photos: [{ photoId, revision: 2 }],
    fields: { stage: 'stripped', seenFrom: 'from-turbine-side' },
    addParts: [{ component: 'shaft', position: null }],
    removeParts: [],
  }),
  'photos.reorder': ({ caseId, photoId }) => ({ caseId, photoIds: [photoId], before: null }),
  'photos.take-out': ({ caseId, photoId }) => ({
    caseId,
    photos: [{ photoId, revision: 3 }],
    reason: 'shows another unit',
  }),
  'photos.put-back': ({ photoId }) => ({ photoId, revision: 4 }),
  'photos.register': ({ caseId }) => ({ caseId }),
  'bench.commit': ({ caseId, photoId, findingId, markId }) => ({
    caseId,
    changes: [
      { change: 'put-finding', findingId, fields: exampleFinding, revision: null },
      {
        change: 'put-mark',
        revision: null,
        mark: {
          id: markId,
          photoId,
          findingId,
          geometry: { kind: 'arrow', v: 1, tail: { x: 10, y: 12.5 }, tip: { x: 60.25, y: 40 } },
          order: 0,
        },
      },
    ],
  }),
  'bench.read': ({ caseId }) => ({ caseId }),
  'findings.classify': ({ findingId }) => ({
    findingId,
    revision: 1,
    class: 'secondary',
    reason: 'follows from the worn journals',
  }),
  'findings.class-history': ({ caseId }) => ({ caseId }),
  'chain.commit': ({ caseId, findingId }) => ({
    caseId,
    changes: [
      {
        change: 'put-node',
        revision: null,
        node: {
          id: chainIds.cause,
          kind: 'root-cause',
          findingId: null,
          term: null,
          words: 'grit in the oil',
        },
      },
      {
        change: 'put-node',
        revision: null,
        node: { id: chainIds.effect, kind: 'finding', findingId, term: null, words: '' },
      },
      {
        change: 'put-link',
        revision: null,
        link: {
          id: chainIds.link,
          causeId: chainIds.cause,
          effectId: chainIds.effect,
          reason: 'particles in all pads',
          certainty: 'likely',
        },
      },
    ],
  }),
  'chain.read': ({ caseId }) => ({ caseId }),
  'chain.figure': ({ caseId }) => ({ caseId }),
  'search.cases': () => ({
    text: 'nut',
    tags: [{ component: 'thrust-bearing', zone: null, kind: 'worn-away', class: null, presence: 'present' }],
  }),
  'search.counts': () => ({
    text: 'nut',
    tags: [],
    filters: { component: ['thrust-bearing'], outcome: ['claim-not-supported'] },
    asker: 'b3a0c6a2-52b0-4a52-9d0b-0d5a0f6a2a05',
  }),
  'search.known-tags': () => ({}),
  'report-plan.read': ({ caseId }) => ({ caseId }),
  'report-plan.change': ({ caseId }) => ({
    caseId,
    revision: 1,
    fields: {
      platesAPage: 2,
      sections: [{ place: 'before-answer', heading: 'Discussion', words: 'The pads wore **first**.' }],
    },
  }),
  'reports.make': ({ caseId }) => ({ caseId, paper: 'A4' }),
  'journal.list': ({ caseId }) => ({ caseId, most: 50 }),
  'journal.check': () => ({}),
  'program.note-fault': () => ({ where: 'a test', message: 'nothing happened' }),
  'cases.withdraw': ({ caseId }) => ({ caseId, revision: 2, reason: 'opened twice' }),
  'library.overview': () => ({}),
  'library.open': () => ({ library: 'own' }),
};

/** Ids the page makes itself: the same on both sides, so that what comes back can be compared. */
const pageMade = {
  partyId: 'b3a0c6a2-52b0-4a52-9d0b-0d5a0f6a2a03' as PartyId,
  custodyEntryId: 'b3a0c6a2-52b0-4a52-9d0b-0d5a0f6a2a04' as CustodyEntryId,
  findingId: 'b3a0c6a2-52b0-4a52-9d0b-0d5a0f6a2a01' as FindingId,
  markId: 'b3a0c6a2-52b0-4a52-9d0b-0d5a0f6a2a02' as MarkId,
};

const chainIds = {
  cause: 'b3a0c6a2-52b0-4a52-9d0b-0d5a0f6a2a05' as ChainNodeId,
  effect: 'b3a0c6a2-52b0-4a52-9d0b-0d5a0f6a2a06' as ChainNodeId,
  link: 'b3a0c6a2-52b0-4a52-9d0b-0d5a0f6a2a07' as ChainLinkId,
};

export type Walkthrough = {
  readonly exchanges: readonly { readonly channel: Channel; readonly answer: Envelope<unknown> }[];
  /** Each job that was begun, as it ended. */
  readonly ended: readonly Job[];
};

/** Goes through all exchanges once; waits for each job to end, so that its last word is compared. */
export async function goThrough(caller: Caller, picturePath: string): Promise<Walkthrough> {
  const gone: { channel: Channel; answer: Envelope<unknown> }[] = [];
  const ended: Job[] = [];
  const scene = { ...pageMade, tokens: [] as IntakeToken[] } as Scene;
  for (const channel of Object.keys(exchanges) as Channel[]) {
    if (channel === 'photos.import') scene.tokens = [valueOf(await caller.takeIn(picturePath)).token];
    const answer = await caller.call(channel, exchanges[channel](scene));
    gone.push({ channel, answer });
    if (answer.ok) ended.push(...(await remember(caller, scene, channel, answer.value)));
  }
  return { exchanges: gone, ended };
}

/** Keeps what later exchanges need; answers the job that was begun, as it ended. */
async function remember(caller: Caller, scene: Scene, channel: Channel, value: unknown): Promise<Job[]> {
  if (channel === 'analysts.add') scene.analystId = (value as ResponseOf<'analysts.add'>).id;
  if (channel === 'cases.open') scene.caseId = (value as ResponseOf<'cases.open'>).caseId;
  if (channel === 'photos.list') {
    const first = (value as ResponseOf<'photos.list'>)[0];
    if (first) scene.photoId = first.id;
  }
  if (channel !== 'photos.import' && channel !== 'reports.make') return [];
  scene.jobId = (value as Job).id;
  return [await jobEnded(caller, scene.jobId)];
}

/** Asks until the job has ended: each question is a round trip, so this waits without a clock. */
export async function jobEnded(caller: Pick<Caller, 'call'>, jobId: JobId): Promise<Job> {
  for (;;) {
    const job = valueOf(await caller.call('jobs.read', { jobId })) as Job;
    if (job.state !== 'running' && job.state !== 'waiting') return job;
  }
}

/** @throws AppError what the envelope says */
export function valueOf<Value>(envelope: Envelope<Value>): Value {
  if (envelope.ok) return envelope.value;
  throw AppError.fromShape(envelope.error);
}
