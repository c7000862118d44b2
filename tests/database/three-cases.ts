/** Three cases to look for, and the numbers of those that a text finds. */
import type { CaseDraft } from '#shared-types/case.ts';
import type { FindingId } from '#shared-types/ids.ts';

import { exampleFinding } from '../support/exchanges.ts';
import { testId } from '../support/open-test-library.ts';
import type { EngineHere } from '../support/world-engine.ts';

export const draft: CaseDraft = {
  number: '26-0147',
  unit: { maker: 'Halvard', model: 'R45', serial: 'SN-30771', partNumber: 'R45-1180' },
  customer: 'Müllerstrand Kühlhaus',
  claim: 'The nut came loose. Oil smoke from the funnel (“white, then blue”).',
  machineKind: 'turbocharger',
};

const others: readonly Partial<CaseDraft>[] = [
  { number: '26-0148', customer: 'Skerry Line', claim: 'Loud whistle, then no boost.' },
  {
    number: '25-0471',
    unit: { maker: 'Ostrevik', model: 'K9', serial: 'QÜ 4410 B', partNumber: '' },
    customer: 'Żuławska Żegluga',
    claim: 'Fjærholm says the nuts were never torqued.',
  },
];

export async function enterThreeCases(engine: EngineHere): Promise<EngineHere> {
  await engine.ask('analysts.add', { name: 'M. Sundgren', qualification: '' });
  const { caseId } = await engine.ask('cases.open', draft);
  await engine.ask('bench.commit', {
    caseId,
    changes: [
      { change: 'put-finding', findingId: testId<FindingId>(1), fields: exampleFinding, revision: null },
    ],
  });
  for (const other of others) await engine.ask('cases.open', { ...draft, ...other });
  return engine;
}

export async function found(engine: EngineHere, text: string): Promise<string[]> {
  const { hits } = await engine.ask('search.cases', { text, tags: [] });
  return hits.map((hit) => hit.case.number);
}
