/** What holds when a process dies. */
import type { Break } from './break.ts';

export const processBreaks: readonly Break[] = [
  {
    breaks: 'deafness to what a dead engine said too late',
    file: 'electron/processes/engine-link.ts',
    find: 'if (running === port) receive(message as FromEngine, relay);',
    replace: 'receive(message as FromEngine, relay);',
    reddens: { file: 'unit/processes/engine-link.test.ts', test: 'by what a dead engine said too late' },
  },
  {
    breaks: 'that whoever waited on a dead engine is told',
    file: 'electron/processes/engine-link.ts',
    find: '    fail(asked, stopped);\n    if (closing)',
    replace: '    asked.clear();\n    if (closing)',
    reddens: { file: 'unit/processes/engine-link.test.ts', test: 'that the engine was asked when it died' },
  },
  {
    breaks: 'the giving up after three vain starts',
    file: 'electron/processes/engine-link.ts',
    find: 'if (vainStarts >= mostVainStarts) {',
    replace: 'if (vainStarts > mostVainStarts) {',
    reddens: { file: 'faults/vain-starts.test.ts', test: 'is given up after three' },
  },
  {
    breaks: 'the reading anew after an engine died',
    file: 'electron/processes/engine-link.ts',
    find: "if (wasReady) options.publish({ name: 'resync', payload: {} });",
    replace: '',
    reddens: { file: 'unit/processes/engine-link.test.ts', test: 'every window' },
  },
  {
    breaks: 'the engine’s end when its parent is gone',
    file: 'electron/engine/engine-entry.ts',
    find: '  relayed.loseParent();\n',
    replace: '',
    reddens: { file: 'faults/host-ended.test.ts', test: 'takes engine and decoders with it' },
  },
  {
    breaks: 'that Ctrl-C is the parent’s to act on',
    file: 'electron/processes/fork-broker.ts',
    find: 'detached: true,',
    replace: '',
    reddens: { file: 'faults/host-ended.test.ts', test: 'ends it in good order' },
  },
  {
    breaks: 'the blame: a picture that kills its decoder is called something else',
    file: 'electron/images/decoder-pool.ts',
    find: "const code = decoder.ready ? 'picture-killed-decoder' : 'decoder-unavailable';",
    replace: "const code = decoder.ready ? 'decoder-unavailable' : 'picture-killed-decoder';",
    reddens: { file: 'faults/decoder-killed.test.ts', test: 'fails by its name' },
  },
  {
    breaks: 'that events stand when the answer to a call comes after them',
    file: 'renderer/api/job-news.ts',
    find: 'return known.has(job.id) ? known : afterEvent(known, job);',
    replace: 'return afterEvent(known, job);',
    reddens: { file: 'unit/jobs/job-news.test.ts', test: 'stands when the answer' },
  },
  {
    breaks: 'that what only makers of samples need is not shipped',
    file: 'electron-builder.config.cjs',
    find: "    '!sample-cases/render/**',\n",
    replace: '',
    reddens: { file: 'electron/packaging.test.ts', test: 'holds nothing of the samples' },
  },
];
