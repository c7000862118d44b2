/** What the tests do with a library, whichever process its engine lives in. */
import { statSync } from 'node:fs';
import { basename } from 'node:path';

import type { Channel, RequestOf, ResponseOf } from '#shared-types/api-contract.ts';
import type { TakenIn } from '#shared-types/carrier.ts';
import type { Envelope } from '#shared-types/errors.ts';
import type { CaseId, IntakeToken } from '#shared-types/ids.ts';
import type { Job } from '#shared-types/job.ts';

import type { CarrierAsk, ServedFile } from '../../electron/processes/engine-messages.ts';
import { exchanges, jobEnded, valueOf } from '../support/exchanges.ts';

export type LibraryUnderTest = {
  /** Its folder. */
  readonly library: string;
  answer(channel: Channel, request: unknown): Promise<Envelope<unknown>>;
  ask(ask: CarrierAsk): Promise<Envelope<unknown>>;
};

export type LibraryWork = LibraryUnderTest & {
  /** Throws the AppError of an answer that is none. */
  call<C extends Channel>(channel: C, request: RequestOf<C>): Promise<ResponseOf<C>>;
  picture(address: string): Promise<ServedFile>;
  openCase(number?: string): Promise<CaseId>;
  takeIn(paths: readonly string[]): Promise<IntakeToken[]>;
  beginImport(caseId: CaseId, paths: readonly string[]): Promise<Job>;
  /** Answers the job as it ended. */
  importAll(caseId: CaseId, paths: readonly string[]): Promise<Job>;
};

export function workInLibrary(under: LibraryUnderTest): LibraryWork {
  const { answer, ask } = under;
  const work: LibraryWork = {
    ...under,
    call: async <C extends Channel>(channel: C, request: RequestOf<C>) =>
      valueOf(await answer(channel, request)) as ResponseOf<C>,
    picture: async (address) => valueOf(await ask({ ask: 'picture', address })) as ServedFile,
    async openCase(number = '26-0147') {
      if ((await work.call('analysts.list', {})).length === 0) {
        await work.call('analysts.add', exchanges['analysts.add']({} as never));
      }
      const draft = { ...exchanges['cases.open']({} as never), number };
      return (await work.call('cases.open', draft)).caseId;
    },
    async takeIn(paths) {
      const tokens: IntakeToken[] = [];
      for (const path of paths) {
        const file = { path, name: basename(path), bytes: statSync(path).size, temporary: false };
        tokens.push((valueOf(await ask({ ask: 'take-in', ...file })) as TakenIn).token);
      }
      return tokens;
    },
    beginImport: async (caseId, paths) =>
      work.call('photos.import', { caseId, tokens: await work.takeIn(paths) }),
    async importAll(caseId, paths) {
      const { id } = await work.beginImport(caseId, paths);
      return jobEnded({ call: answer }, id);
    },
  };
  return work;
}
