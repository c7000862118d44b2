/**
 * Named points at which a test makes a process die or hang. Inert unless the environment variable
 * TEARDOWN_DOCKET_FAULT is set when the process starts; nobody but the tests sets it.
 *
 *   <step>:<action>@<n>             at the n-th time this process (or thread of it) reaches the step; 1 is the first
 *   <step>:<action>@<key prefix>    when the step is reached with a key that begins so: 8 to 64 hex digits
 *
 * Actions: `kill` ends the process at once (SIGKILL, no clean-up runs), `hang` blocks its thread for ever.
 * Examples: `original.named:kill@2`, `class-changed.journalled:kill@1`, `decoder.decode:hang@ba7816bf8f01`.
 */
const variable = 'TEARDOWN_DOCKET_FAULT';

const actions = ['kill', 'hang'] as const;
type FaultAction = (typeof actions)[number];

export type Fault = {
  readonly step: string;
  readonly action: FaultAction;
  readonly at: { readonly count: number } | { readonly keyPrefix: string };
};

/** Reads the variable's syntax. Throws an Error that shows the text when it does not fit. */
export function parseFault(text: string): Fault {
  const match = /^([a-z0-9.-]+):([a-z]+)@([0-9a-f]+)$/.exec(text);
  const [, step, action, at] = match ?? [];
  const known = actions.find((candidate) => candidate === action);
  if (step === undefined || known === undefined || at === undefined || at.length > 64) {
    throw new Error(`${variable} is not <step>:<${actions.join('|')}>@<n or hex prefix>: ${text}`);
  }
  if (at.length >= 8) return { step, action: known, at: { keyPrefix: at } };
  if (!/^[1-9][0-9]*$/.test(at)) {
    throw new Error(`${variable}: a key prefix has at least 8 hex digits, a count is 1 or more: ${text}`);
  }
  return { step, action: known, at: { count: Number(at) } };
}

const armedText = process.env[variable];
const armed = armedText === undefined || armedText === '' ? null : parseFault(armedText);
let timesReached = 0;

/** Marks a step of work; `key` is the SHA-256 of what is worked on, where there is one. */
export function reachFaultPoint(step: string, key?: string): void {
  if (armed?.step !== step) return;
  timesReached += 1;
  const due =
    'count' in armed.at ? timesReached === armed.at.count : (key?.startsWith(armed.at.keyPrefix) ?? false);
  if (!due) return;
  if (armed.action === 'kill') process.kill(process.pid, 'SIGKILL');
  // Also after kill: the signal may take a moment, and not one more step may happen.
  Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0);
}
