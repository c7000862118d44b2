/** Mistakes of the program itself go into its log. */
import { call } from '../api/client.ts';

const longestMessage = 2_000;
const longestPlace = 200;

/** Writes a fault to the program's log; when even that fails there is only the console left. */
export function noteFault(where: string, fault: unknown): void {
  const message = fault instanceof Error ? (fault.stack ?? fault.message) : String(fault);
  call('program.note-fault', {
    where: where.slice(0, longestPlace),
    message: message.slice(0, longestMessage),
  }).catch((notNoted: unknown) => console.error('fault not noted', where, fault, notNoted));
}

/** Faults outside of any component: handlers, timers, promises nobody waits for. */
export function watchForFaults(say: (fault: unknown) => void): void {
  window.addEventListener('error', (event) => noteFault('window', event.error ?? event.message));
  window.addEventListener('unhandledrejection', (event) => {
    noteFault('promise', event.reason);
    say(event.reason);
  });
}
