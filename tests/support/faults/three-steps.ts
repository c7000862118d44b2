/** Run as a process of its own: reaches one fault point three times and prints a line after each. */
import { writeSync } from 'node:fs';
import { reachFaultPoint } from '../../../electron/processes/fault-point.ts';

// FIPS 180-4: SHA-256 of "abc" and of nothing, as keys.
const abc = 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad';
const empty = 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855';

for (const [key, line] of [
  [abc, 'one'],
  [empty, 'two'],
  [abc, 'three'],
] as const) {
  reachFaultPoint('work.step', key);
  writeSync(1, `${key.slice(0, 8)} ${line}\n`);
}
