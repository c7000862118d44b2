/** Where the libraries lie when the user does not say: the platform's folder for a user's data. */
import { homedir } from 'node:os';
import { basename, dirname, isAbsolute, join, resolve } from 'node:path';

import type { LibraryName } from '#shared-types/library.ts';

const name = 'Teardown Docket';

/** The platform's user-data folder, by the conventions of each (XDG base directories on Linux). */
export function userDataFolder(env: NodeJS.ProcessEnv = process.env, platform = process.platform): string {
  if (platform === 'win32') return join(env.APPDATA ?? join(homedir(), 'AppData', 'Roaming'), name);
  if (platform === 'darwin') return join(homedir(), 'Library', 'Application Support', name);
  // An empty or relative path counts as none: XDG Base Directory Specification, "Environment variables" and "Basics".
  const given = env.XDG_DATA_HOME ?? '';
  return join(isAbsolute(given) ? given : join(homedir(), '.local', 'share'), 'teardown-docket');
}

/** The user's own library and, beside it, the one that holds nothing but sample cases. */
export function libraryFolders(chosen: string | null): Readonly<Record<LibraryName, string>> {
  const own = chosen === null ? join(userDataFolder(), 'library') : resolve(chosen);
  return { own, samples: join(dirname(own), `${basename(own)}-samples`) };
}
