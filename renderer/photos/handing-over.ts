/** Dropped or chosen files on their way into the program, three at a time, then one import of them all. */
import { create } from 'zustand';
import { AppError } from '#shared-types/errors.ts';
import type { CaseId, IntakeToken, JobId } from '#shared-types/ids.ts';
import { shellTexts } from '#shared-types/texts/shell.ts';
import { call, takeIn } from '../api/client.ts';
import { noteBegun } from '../api/job-store.ts';
import { toastError } from '../ui/toaster.tsx';

export type RefusedFile = { readonly name: string; readonly sentence: string };

export type HandingOver = {
  readonly done: number;
  readonly total: number;
  /** Files a second; null until it is known. */
  readonly rate: number | null;
  readonly stopping: boolean;
  /** Files that could not even be handed over; kept until the next ones come. */
  readonly refused: readonly RefusedFile[];
  readonly underWay: boolean;
  /** The imports that came of it, since their results were last put away. */
  readonly jobIds: readonly JobId[];
};

const atOnce = 3;
/** As many as one request of the contract carries. */
const mostInOneImport = 2_000;

const nothing: HandingOver = {
  done: 0,
  total: 0,
  rate: null,
  stopping: false,
  refused: [],
  underWay: false,
  jobIds: [],
};

const useHandingOvers = create<{ readonly ofCase: ReadonlyMap<CaseId, HandingOver> }>(() => ({
  ofCase: new Map(),
}));

export function useHandingOver(caseId: CaseId): HandingOver {
  return useHandingOvers((store) => store.ofCase.get(caseId) ?? nothing);
}

function now(caseId: CaseId): HandingOver {
  return useHandingOvers.getState().ofCase.get(caseId) ?? nothing;
}

function note(caseId: CaseId, change: Partial<HandingOver>): void {
  const next = { ...now(caseId), ...change };
  useHandingOvers.setState(({ ofCase }) => ({ ofCase: new Map(ofCase).set(caseId, next) }));
}

/** No further file is begun; those handed over by then are imported. */
export function stopHandingOver(caseId: CaseId): void {
  note(caseId, { stopping: true });
}

export function forgetResults(caseId: CaseId): void {
  note(caseId, { refused: [], jobIds: [] });
}

const turns = new Map<CaseId, Promise<void>>();

/** Hands the files over and begins their import; what is dropped meanwhile waits its turn. */
export function handOver(caseId: CaseId, files: readonly File[]): Promise<void> {
  if (turns.get(caseId) === undefined) forgetResults(caseId);
  const turn = (turns.get(caseId) ?? Promise.resolve()).then(() => carryAll(caseId, files));
  turns.set(caseId, turn);
  return turn.finally(() => {
    if (turns.get(caseId) === turn) turns.delete(caseId);
  });
}

/** What goes wrong is kept with the file it happened to. */
async function carryAll(caseId: CaseId, files: readonly File[]): Promise<void> {
  note(caseId, { done: 0, total: files.length, rate: null, stopping: false, underWay: true });
  const begun = performance.now();
  const tokens = new Map<number, IntakeToken>();
  let next = 0;
  const carry = async () => {
    while (next < files.length && !now(caseId).stopping) {
      const index = next;
      next += 1;
      const file = files[index];
      if (file === undefined) return;
      try {
        tokens.set(index, (await takeIn(file)).token);
      } catch (error) {
        const sentence = error instanceof AppError ? error.message : shellTexts.unexpected;
        note(caseId, { refused: [...now(caseId).refused, { name: file.name, sentence }] });
      }
      const done = now(caseId).done + 1;
      const seconds = (performance.now() - begun) / 1_000;
      note(caseId, { done, rate: seconds > 0.5 ? done / seconds : null });
    }
  };
  await Promise.all(Array.from({ length: atOnce }, carry));
  try {
    const inOrder = [...tokens].sort(([a], [b]) => a - b).map(([, token]) => token);
    for (let from = 0; from < inOrder.length; from += mostInOneImport) {
      const job = await call('photos.import', {
        caseId,
        tokens: inOrder.slice(from, from + mostInOneImport),
      });
      noteBegun(job);
      note(caseId, { jobIds: [...now(caseId).jobIds, job.id] });
    }
  } catch (error) {
    toastError(error);
  } finally {
    note(caseId, { underWay: false, stopping: false });
  }
}
