import { defineConfig } from 'vitest/config';
import { suiteNames } from './scripts/test-suites.mjs';

/** Suites that start processes, browsers or PDF tools: a slow machine is no failure. Milliseconds. */
const patient = { testTimeout: 180_000, hookTimeout: 180_000, teardownTimeout: 30_000 };
const quick = { testTimeout: 30_000, hookTimeout: 60_000 };

/** One file at a time: each drives a browser, or builds and packs the program, and needs both cores for itself. */
const oneFileAtATime = new Set(['browser', 'electron']);
const patientSuites = new Set([...oneFileAtATime, 'contract', 'faults', 'pdf']);

export default defineConfig({
  test: {
    passWithNoTests: false,
    allowOnly: false,
    retry: 0,
    pool: 'forks',
    maxWorkers: 2,
    projects: suiteNames.map((name) => ({
      extends: true as const,
      test: {
        name,
        include: [`tests/${name}/**/*.test.ts`],
        environment: 'node',
        fileParallelism: !oneFileAtATime.has(name),
        ...(patientSuites.has(name) ? patient : quick),
      },
    })),
  },
});
