import type { CaseDraft, CaseFields, TeardownCase } from '#shared-types/case.ts';
import type { Instant } from '#shared-types/times.ts';

import { testId } from './open-test-library.ts';

/** The fields of a case as it is just after it was opened, changed where a test wants them otherwise. */
export function fieldsAfterOpening(
  draft: Omit<CaseDraft, 'machineKind'>,
  change: Partial<CaseFields> = {},
): CaseFields {
  const { number, unit, customer, claim } = draft;
  return {
    number,
    unit: { ...unit, rotation: null, thread: null },
    customer,
    claim,
    service: { fittedOn: null, failedOn: null, timeInService: null, runningHours: null },
    stateReceived: '',
    interest: { standing: 'not-stated', words: '' },
    outcome: 'not-answered',
    conclusion: '',
    ...change,
  };
}

/** A case as the library answers it just after it was opened. */
export function openedCase(): TeardownCase {
  const unit = { maker: '', model: 'R45', serial: '', partNumber: '' };
  return {
    ...fieldsAfterOpening({ number: '26-0147', unit, customer: '', claim: 'The nut came off.' }),
    id: testId(1),
    revision: 1,
    status: 'open',
    pack: { id: 'turbocharger', version: '0.3.0', sha256: '' },
    openedAt: '2026-03-04T09:15:00.000Z' as Instant,
    openedBy: 'M. Sundgren',
    counts: { photos: 0, marks: 0, findings: 0, journalEntries: 1 },
  };
}
