import type { CaseDraft, CaseFields } from '#shared-types/case.ts';

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
