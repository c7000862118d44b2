/** Files on their way in: the carrier hands in a path and gets a token; the page only ever sees the token. */
import { rm } from 'node:fs/promises';

import { AppError } from '#shared-types/errors.ts';
import type { IntakeToken } from '#shared-types/ids.ts';

export type IntakeFile = {
  readonly path: string;
  readonly name: string;
  readonly bytes: number;
  /** An upload's own copy, removed when it has been taken in; a user's own file never is. */
  readonly temporary: boolean;
};

export type IntakeDesk = {
  register(file: IntakeFile): IntakeToken;
  /** @throws AppError intake-gone for a token of an earlier run, or one already used */
  take(token: IntakeToken): IntakeFile;
};

export function openIntakeDesk(newId: () => string): IntakeDesk {
  const files = new Map<IntakeToken, IntakeFile>();
  return {
    register(file) {
      const token = newId() as IntakeToken;
      files.set(token, file);
      return token;
    },
    take(token) {
      const file = files.get(token);
      if (!file) throw new AppError('intake-gone');
      files.delete(token);
      return file;
    },
  };
}

export async function discardIntake(file: IntakeFile): Promise<void> {
  if (file.temporary) await rm(file.path, { force: true });
}
