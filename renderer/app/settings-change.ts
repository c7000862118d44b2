import type { Settings, SettingsFields } from '#shared-types/settings.ts';
import { AppError } from '#shared-types/errors.ts';
import { call } from '../api/client.ts';
import { putAnswer } from '../api/queries.ts';

/**
 * Changes single settings. Another window may have changed others meanwhile: then the change is made once more
 * on what is there now. Throws AppError.
 */
export async function changeSettings(fields: Partial<SettingsFields>): Promise<Settings> {
  const changed = await changeOnce(fields).catch((error: unknown) => {
    if (error instanceof AppError && error.code === 'stale-revision') return changeOnce(fields);
    throw error;
  });
  putAnswer('settings.read', {}, changed);
  return changed;
}

async function changeOnce(fields: Partial<SettingsFields>): Promise<Settings> {
  const { revision } = await call('settings.read', {});
  return call('settings.change', { revision, fields });
}
