/** What fills `{what}` where it is no file of the user's. */
export const diskWhats = { library: 'the library' } as const;

/** Reasons that fill `{reason}` of the errors about files and the disk. */
export const diskReasons = {
  EACCES: 'permission denied',
  EPERM: 'the operation is not permitted',
  EROFS: 'the disk is read-only',
  ENOENT: 'it is not there any more',
  EISDIR: 'it is a folder',
  EIO: 'the disk or card reports a read error',
  other: 'the system reports {code}',
} as const;

export const originalReasons = {
  size: (found: number, expected: number) => `the file there has ${found} bytes instead of ${expected}`,
  content: 'the file there has the right length and a different content',
} as const;
