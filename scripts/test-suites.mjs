/** The suites of tests/, in the order in which they run; vitest.config.ts makes one project of each. */
export const suiteNames = ['unit', 'database', 'contract', 'pdf', 'browser', 'faults', 'electron'];
