/** A library with a case, and one write of each kind for it; none stands in another's way. */
import type { Channel } from '#shared-types/api-contract.ts';
import type { CaseId, FindingId, PhotoId } from '#shared-types/ids.ts';

import { exampleFinding } from '../support/exchanges.ts';
import { testId } from '../support/open-test-library.ts';
import { smallPictures } from './small-pictures.ts';
import { engineIn } from './engine-here.ts';
import type { LibraryWork } from './library-work.ts';

export type ExampleCase = {
  readonly caseId: CaseId;
  readonly photoId: PhotoId;
  readonly findingId: FindingId;
};

const ids = {
  finding: testId<FindingId>(1),
  classified: testId<FindingId>(6),
  mark: testId(2),
  cause: testId(3),
  effect: testId(4),
};

/** One photo, two findings, and a mark of the first on it. */
export async function fillExampleCase(work: LibraryWork, picture: string): Promise<ExampleCase> {
  const caseId = await work.openCase();
  const { items } = await work.importAll(caseId, [picture]);
  const photoId = items[0]?.photoId;
  if (!photoId) throw new Error('no photo came in');
  const findingId = ids.finding;
  await work.call('bench.commit', {
    caseId,
    changes: [
      { change: 'put-finding', findingId, fields: exampleFinding, revision: null },
      { change: 'put-finding', findingId: ids.classified, fields: exampleFinding, revision: null },
      { change: 'put-mark', revision: null, mark: markOf({ caseId, photoId, findingId }, ids.mark, 0) },
    ],
  });
  return { caseId, photoId, findingId };
}

/** The example's library below the folder, closed. */
export async function makeExampleLibrary(folder: string): Promise<ExampleCase> {
  const [picture = ''] = await smallPictures(folder, 1);
  const engine = await engineIn(folder);
  try {
    return await fillExampleCase(engine, picture);
  } finally {
    await engine.close();
  }
}

function markOf({ photoId, findingId }: ExampleCase, id: string, order: number) {
  const geometry = { kind: 'arrow', v: 1, tail: { x: 10, y: 12 }, tip: { x: 60, y: 40 } } as const;
  return { id, photoId, findingId, geometry, order };
}

export type ExampleWrite = {
  readonly channel: Channel;
  /** The journal's word for it. */
  readonly what: string;
  /** `words` stand where the write takes some, so that a test can make it large. */
  readonly request: (example: ExampleCase, words: string) => unknown;
  /** The tables of the library that it changes; no other. */
  readonly tables: readonly string[];
  /** Its words as the library answers them afterwards, or null where it takes none. */
  readonly wordsOf: ((work: LibraryWork, example: ExampleCase) => Promise<string | undefined>) | null;
};

const findingNote =
  (id: FindingId): NonNullable<ExampleWrite['wordsOf']> =>
  async (work, { caseId }) =>
    (await work.call('bench.read', { caseId })).findings.find((finding) => finding.id === id)?.note;

export const exampleWrites: Readonly<Record<string, ExampleWrite>> = {
  'a mark drawn': {
    channel: 'bench.commit',
    what: 'bench',
    request: (example) => ({
      caseId: example.caseId,
      changes: [{ change: 'put-mark', revision: null, mark: markOf(example, testId(12), 1) }],
    }),
    tables: ['journal', 'mark'],
    wordsOf: null,
  },
  'a finding made': {
    channel: 'bench.commit',
    what: 'bench',
    request: ({ caseId }, note) => ({
      caseId,
      changes: [
        {
          change: 'put-finding',
          findingId: testId(11),
          fields: { ...exampleFinding, note },
          revision: null,
        },
      ],
    }),
    tables: ['finding', 'finding_number', 'journal', 'search_document'],
    wordsOf: findingNote(testId(11)),
  },
  'a finding changed': {
    channel: 'bench.commit',
    what: 'bench',
    request: ({ caseId, findingId }, note) => ({
      caseId,
      changes: [{ change: 'put-finding', findingId, fields: { ...exampleFinding, note }, revision: 1 }],
    }),
    tables: ['finding', 'journal', 'search_document'],
    wordsOf: findingNote(ids.finding),
  },
  'a class changed with its reason': {
    channel: 'findings.classify',
    what: 'class changed',
    request: (_example, reason) => ({
      findingId: ids.classified,
      revision: 1,
      class: 'secondary',
      reason,
    }),
    tables: ['finding', 'finding_class_change', 'journal'],
    wordsOf: async (work, { caseId }) =>
      (await work.call('findings.class-history', { caseId })).at(-1)?.reason,
  },
  'a chain with a link': {
    channel: 'chain.commit',
    what: 'chain',
    request: ({ caseId, findingId }, reason) => ({
      caseId,
      changes: [
        {
          change: 'put-node',
          revision: null,
          node: { id: ids.cause, kind: 'root-cause', findingId: null, term: null, words: 'grit in the oil' },
        },
        {
          change: 'put-node',
          revision: null,
          node: { id: ids.effect, kind: 'finding', findingId, term: null, words: '' },
        },
        {
          change: 'put-link',
          revision: null,
          link: { id: testId(5), causeId: ids.cause, effectId: ids.effect, reason, certainty: 'likely' },
        },
      ],
    }),
    tables: ['chain_link', 'chain_node', 'journal'],
    wordsOf: async (work, { caseId }) => (await work.call('chain.read', { caseId })).links[0]?.reason,
  },
  'a report’s plan': {
    channel: 'report-plan.change',
    what: 'report plan changed',
    request: ({ caseId }, words) => ({
      caseId,
      revision: 1,
      fields: { platesAPage: 2, sections: [{ place: 'before-answer', heading: 'Discussion', words }] },
    }),
    tables: ['journal', 'report_plan', 'report_section'],
    wordsOf: async (work, { caseId }) => (await work.call('report-plan.read', { caseId })).sections[0]?.words,
  },
};
