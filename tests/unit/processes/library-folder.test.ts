import { homedir } from 'node:os';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

import { libraryFolders, userDataFolder } from '../../../electron/processes/library-folder.ts';

describe('the folder of a user’s data', () => {
  it.each([
    ['where it is given', { XDG_DATA_HOME: '/data/anna' }, '/data/anna/teardown-docket'],
    ['by default', {}, join(homedir(), '.local/share/teardown-docket')],
    // XDG Base Directory Specification 0.8: "either not set or empty" is the default, a relative path is ignored.
    ['empty', { XDG_DATA_HOME: '' }, join(homedir(), '.local/share/teardown-docket')],
    ['relative', { XDG_DATA_HOME: 'data' }, join(homedir(), '.local/share/teardown-docket')],
  ])('on Linux follows XDG_DATA_HOME: %s', (_case, env, folder) => {
    expect(userDataFolder(env, 'linux')).toBe(folder);
  });

  it('is the platform’s own elsewhere', () => {
    expect(userDataFolder({ APPDATA: '/roaming' }, 'win32')).toBe(join('/roaming', 'Teardown Docket'));
    expect(userDataFolder({}, 'darwin')).toBe(
      join(homedir(), 'Library', 'Application Support', 'Teardown Docket'),
    );
  });
});

describe('the sample library', () => {
  it.each(['/cases/workshop', '/cases', 'here'])('lies beside %s, whatever it is called', (chosen) => {
    const { own, samples } = libraryFolders(chosen);
    expect(own).toBe(resolve(chosen));
    expect(samples).toBe(`${own}-samples`);
  });
});
