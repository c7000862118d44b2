/** Finished documents on their way out, each under a token, in a folder that is emptied at every start. */
import { mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';

import { AppError } from '#shared-types/errors.ts';
import type { DeliveryToken } from '#shared-types/ids.ts';

import type { ServedFile } from '../processes/engine-messages.ts';

export type DeliveryDesk = {
  /** A new document's token and where its bytes are to be written. */
  begin(document: { fileName: string; mediaType: string }): { token: DeliveryToken; file: string };
  /** @throws AppError delivery-gone */
  find(token: DeliveryToken): ServedFile;
};

export function openDeliveryDesk(folder: string, newId: () => string): DeliveryDesk {
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  const documents = new Map<DeliveryToken, ServedFile>();
  return {
    begin({ fileName, mediaType }) {
      const token = newId() as DeliveryToken;
      const file = join(folder, token);
      documents.set(token, { file, fileName, mediaType });
      return { token, file };
    },
    find(token) {
      const found = documents.get(token);
      if (!found) throw new AppError('delivery-gone');
      return found;
    },
  };
}
