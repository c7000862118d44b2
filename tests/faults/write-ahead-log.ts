/** SQLite's write-ahead log, read as bytes. Its form: https://sqlite.org/fileformat2.html#the_write_ahead_log */

const headerBytes = 32;
const frameHeaderBytes = 24;

export type LoggedCommit = {
  /** Where the first of its frames begins and the last one ends, in bytes. */
  readonly from: number;
  readonly to: number;
  readonly frameBytes: number;
};

/** The commits in the log, oldest first; what stands there from before its last beginning is left out. */
export function commitsIn(log: Buffer): LoggedCommit[] {
  if (log.length < headerBytes) return [];
  const frameBytes = frameHeaderBytes + log.readUInt32BE(8);
  const salts = log.subarray(16, 24);
  const commits: LoggedCommit[] = [];
  let from = headerBytes;
  for (let at = headerBytes; at + frameBytes <= log.length; at += frameBytes) {
    if (!log.subarray(at + 8, at + 16).equals(salts)) break;
    // The size of the database after a commit stands in the commit's last frame, and nought in the others.
    if (log.readUInt32BE(at + 4) === 0) continue;
    commits.push({ from, to: at + frameBytes, frameBytes });
    from = at + frameBytes;
  }
  return commits;
}

/**
 * As much of the log as SQLite has synced. At FULL it syncs the log after each commit, below that only before pages
 * go from it into the database: https://sqlite.org/pragma.html#pragma_synchronous. The log's name, and the
 * database's beside it, are synced with the log's first content (os_unix.c, UNIXFILE_DIRSYNC).
 * @param synchronous the connection's, as the pragma answers it: 2 is FULL
 */
export function syncedLog(log: Buffer, synchronous: number): Buffer {
  const last = commitsIn(log).at(-1);
  return synchronous < 2 || last === undefined ? Buffer.alloc(0) : log.subarray(0, last.to);
}
