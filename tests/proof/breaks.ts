/**
 * One-line breaks of the program, each with a test that it must redden: a break that no test notices is a promise that
 * no test keeps. `npm run proof` carries them out, one at a time, in a copy of the tree.
 */
export type Break = {
  /** What is taken away, in a few words. */
  readonly breaks: string;
  /** Path within the project. */
  readonly file: string;
  /** Occurs in the file exactly once. */
  readonly find: string;
  readonly replace: string;
  /** Path of the test file within tests/, and a part of the name of the test or tests. */
  readonly reddens: { readonly file: string; readonly test: string };
};

const guard = 'electron/host/request-guard.ts';
const host = 'electron/host/loopback-host.ts';
const library = 'migrations/0001-library.sql';
const hostGuard = (test: string) => ({ file: 'contract/host-guard.test.ts', test });
const desktopShell = (test: string) => ({ file: 'contract/desktop-shell.test.ts', test });

const carriers: readonly Break[] = [
  {
    breaks: 'the Origin check',
    file: guard,
    find: 'if (origin !== undefined) return origin === `http://127.0.0.1:${String(port)}`;',
    replace: 'if (origin !== undefined) return port > 0;',
    reddens: hostGuard('closed to another page of the same browser'),
  },
  {
    breaks: 'the Sec-Fetch-Site check',
    file: guard,
    find: "return site === undefined || site === 'same-origin' || site === 'none';",
    replace: "return site !== 'nowhere';",
    reddens: hostGuard('closed to another page of the same browser'),
  },
  {
    breaks: 'the Host check',
    file: guard,
    find: 'return request.headers.host === `127.0.0.1:${String(port)}`;',
    replace: 'return request.headers.host !== String(port);',
    reddens: hostGuard('closed under any other name of this computer'),
  },
  {
    breaks: 'the check of the page’s token',
    file: guard,
    find: "return typeof given === 'string' && same(given, secrets.pageToken);",
    replace: "return typeof given === 'string' && given !== secrets.key;",
    reddens: hostGuard('closed to a request with'),
  },
  {
    breaks: 'the check of the cookie’s secret',
    file: guard,
    find: 'return given !== undefined && same(given.slice(prefix.length), secrets.cookie);',
    replace: 'return given !== undefined && given !== secrets.cookie;',
    reddens: hostGuard('closed to whoever has no cookie, or another'),
  },
  {
    breaks: 'the port in the cookie’s name',
    file: guard,
    find: 'export const cookieName = (port: number) => `docket-${String(port)}`;',
    replace: 'export const cookieName = (port: number) => `docket-${String(port > 0)}`;',
    reddens: hostGuard('is exchanged for a cookie'),
  },
  {
    breaks: 'the check of the key in the first address',
    file: host,
    find: 'if (!same(key, secrets.key)) {',
    replace: 'if (key === secrets.cookie) {',
    reddens: hostGuard('opens nothing when it is another'),
  },
  {
    breaks: 'HttpOnly of the cookie',
    file: host,
    find: '; HttpOnly; SameSite=Strict; Path=/',
    replace: '; SameSite=Strict; Path=/',
    reddens: hostGuard('is exchanged for a cookie'),
  },
  {
    breaks: 'the cookie’s being asked for at all',
    file: host,
    find: 'if (!rightCookie(request, port, secrets)) {',
    replace: 'if (!rightCookie(request, port, secrets) && port === 0) {',
    reddens: hostGuard('closed to whoever has no cookie, or another'),
  },
  {
    breaks: 'the limit of a request',
    file: host,
    find: "if (bytes > largestRequestBytes) return invalid('too large');",
    replace: "if (bytes < 0) return invalid('too large');",
    reddens: hostGuard('of a call is refused in a sentence'),
  },
  {
    breaks: 'the limit of an upload',
    file: 'electron/host/intake-upload.ts',
    find: '  if (bytes > limit * 1e6) {',
    replace: '  if (bytes > limit * 1e9) {',
    reddens: hostGuard('of an upload is refused by the name of the file'),
  },
  {
    breaks: 'the policy: eval is let in',
    file: 'electron/processes/page-policy.ts',
    find: '"script-src \'self\'",',
    replace: "\"script-src 'self' 'unsafe-eval'\",",
    reddens: hostGuard('every answer carries the policy'),
  },
  {
    breaks: 'the policy: frames of others are let in',
    file: 'electron/processes/page-policy.ts',
    find: '"frame-ancestors \'none\'",',
    replace: '',
    reddens: hostGuard('every answer carries the policy'),
  },
  {
    breaks: 'that no answer’s kind is guessed at',
    file: 'electron/processes/page-policy.ts',
    find: "'x-content-type-options': 'nosniff',",
    replace: '',
    reddens: hostGuard('every answer carries the policy'),
  },
  {
    breaks: 'the policy in the answers of the loopback host',
    file: host,
    find: 'for (const [name, value] of Object.entries(pageHeaders)) response.setHeader(name, value);',
    replace: '',
    reddens: hostGuard('every answer carries the policy'),
  },
  {
    breaks: 'the policy in the answers of the desktop’s scheme',
    file: 'electron/shell/page-scheme.ts',
    find: "headers: { ...pageHeaders, 'content-type': mediaType, 'cache-control': caching },",
    replace: "headers: { 'content-type': mediaType, 'cache-control': caching },",
    reddens: desktopShell('serves the page with the same policy'),
  },
  {
    breaks: 'the refusal of foreign frames',
    file: 'electron/shell/registration.ts',
    find: '(fromOurPage(event) ? answer(event, value) : refused())',
    replace: '(fromOurPage(event) ? answer(event, value) : answer(event, value) ?? refused())',
    reddens: desktopShell('refuses every channel to every other frame'),
  },
  {
    breaks: 'the end of the page’s origin: one that only begins like it is let in',
    file: 'electron/shell/registration.ts',
    find: 'return url === pageOrigin || url.startsWith(`${pageOrigin}/`);',
    replace: 'return url.startsWith(pageOrigin);',
    reddens: desktopShell('refuses every channel to every other frame'),
  },
  {
    breaks: 'a channel: one is registered too few',
    file: 'electron/shell/registration.ts',
    find: 'for (const channel of channels) {',
    replace: 'for (const channel of channels.slice(1)) {',
    reddens: desktopShell('has the contract’s channels'),
  },
  {
    breaks: 'the sandbox',
    file: 'electron/shell/window.ts',
    find: 'sandbox: true,',
    replace: 'sandbox: false,',
    reddens: desktopShell('is one, sandboxed'),
  },
  {
    breaks: 'the isolation of the page from the preload',
    file: 'electron/shell/window.ts',
    find: 'contextIsolation: true,',
    replace: 'contextIsolation: false,',
    reddens: desktopShell('is one, sandboxed'),
  },
  {
    breaks: 'the refusal of a second window',
    file: 'electron/shell/window.ts',
    find: "return { action: 'deny' };",
    replace: "return { action: 'allow' };",
    reddens: desktopShell('goes nowhere else'),
  },
  {
    breaks: 'the refusal to go to another page',
    file: 'electron/shell/window.ts',
    find: 'if (!event.url.startsWith(`${pageOrigin}/`)) event.preventDefault();',
    replace: 'if (!event.url.startsWith(pageOrigin)) event.preventDefault();',
    reddens: desktopShell('goes nowhere else'),
  },
  {
    breaks: 'the refusal of permissions',
    file: 'electron/shell/window.ts',
    find: 'answer(false);',
    replace: 'answer(true);',
    reddens: desktopShell('is granted nothing'),
  },
  {
    breaks: 'the bar to every network',
    file: 'electron/shell/window.ts',
    find: 'answer({ cancel: !own && !inspector });',
    replace: 'answer({ cancel: !own && inspector });',
    reddens: desktopShell('is granted nothing'),
  },
  {
    breaks: 'the number that a page that comes back goes on from',
    file: 'electron/processes/event-hub.ts',
    find: 'if (event.sequence > after) receive(event);',
    replace: 'if (event.sequence >= after) receive(event);',
    reddens: { file: 'contract/events.test.ts', test: 'tells a page that comes back what it missed' },
  },
  {
    breaks: 'the telling of a gap',
    file: 'electron/processes/event-hub.ts',
    find: 'const missedSome = after > sequence || after < oldest - 1;',
    replace: 'const missedSome = after > sequence;',
    reddens: { file: 'contract/events.test.ts', test: 'the hub' },
  },
];

const processes: readonly Break[] = [
  {
    breaks: 'deafness to what a dead engine said too late',
    file: 'electron/processes/engine-link.ts',
    find: 'if (running === port) receive(message as FromEngine, relay);',
    replace: 'receive(message as FromEngine, relay);',
    reddens: { file: 'unit/processes/engine-link.test.ts', test: 'by what a dead engine said too late' },
  },
  {
    breaks: 'that whoever waited on a dead engine is told',
    file: 'electron/processes/engine-link.ts',
    find: '    fail(asked, stopped);\n    if (closing)',
    replace: '    asked.clear();\n    if (closing)',
    reddens: { file: 'unit/processes/engine-link.test.ts', test: 'that the engine was asked when it died' },
  },
  {
    breaks: 'the giving up after three vain starts',
    file: 'electron/processes/engine-link.ts',
    find: 'if (vainStarts >= mostVainStarts) {',
    replace: 'if (vainStarts > mostVainStarts) {',
    reddens: { file: 'faults/vain-starts.test.ts', test: 'is given up after three' },
  },
  {
    breaks: 'the reading anew after an engine died',
    file: 'electron/processes/engine-link.ts',
    find: "if (wasReady) options.publish({ name: 'resync', payload: {} });",
    replace: '',
    reddens: { file: 'unit/processes/engine-link.test.ts', test: 'every window' },
  },
  {
    breaks: 'the engine’s end when its parent is gone',
    file: 'electron/engine/engine-entry.ts',
    find: '  relayed.loseParent();\n',
    replace: '',
    reddens: { file: 'faults/host-ended.test.ts', test: 'takes engine and decoders with it' },
  },
  {
    breaks: 'that Ctrl-C is the parent’s to act on',
    file: 'electron/processes/fork-broker.ts',
    find: 'detached: true,',
    replace: '',
    reddens: { file: 'faults/host-ended.test.ts', test: 'ends it in good order' },
  },
  {
    breaks: 'the blame: a picture that kills its decoder is called something else',
    file: 'electron/images/decoder-pool.ts',
    find: "const code = decoder.ready ? 'picture-killed-decoder' : 'decoder-unavailable';",
    replace: "const code = decoder.ready ? 'decoder-unavailable' : 'picture-killed-decoder';",
    reddens: { file: 'faults/decoder-killed.test.ts', test: 'fails by its name' },
  },
];

const data: readonly Break[] = [
  {
    breaks: 'the check that a stored original is what its name says',
    file: 'electron/files/photo-store.ts',
    find: 'if (stored.sha256 !== staged.sha256) throw altered(originalReasons.content);',
    replace: 'if (stored.bytes !== staged.bytes) throw altered(originalReasons.content);',
    reddens: { file: 'unit/files/photo-store.test.ts', test: 'as long but different' },
  },
  {
    breaks: 'the sync of an original’s content',
    file: 'electron/files/photo-store.ts',
    find: 'await files.syncFile(staged.path);',
    replace: '',
    reddens: { file: 'unit/files/photo-store-power-cut.test.ts', test: 'whole or absent' },
  },
  {
    breaks: 'the sync of an original’s name',
    file: 'electron/files/photo-store.ts',
    find: 'await files.syncFolder(dirname(final));',
    replace: '',
    reddens: { file: 'unit/files/photo-store-power-cut.test.ts', test: 'whole or absent' },
  },
  {
    breaks: 'the order: the row comes before the original',
    file: 'electron/services/photo-import.ts',
    find: "  await store.keepOriginal(staged);\n  reachFaultPoint('import.original-kept', staged.sha256);\n",
    replace: "  reachFaultPoint('import.original-kept', staged.sha256);\n",
    reddens: { file: 'faults/engine-killed.test.ts', test: 'at import.recorded, time 1' },
  },
  {
    breaks: 'the transaction that holds a change and its line in the journal',
    file: 'electron/services/recorded-write.ts',
    find: 'return inTransaction(db, () => {',
    replace: 'return ((_: typeof db, work: () => Result) => work())(db, () => {',
    reddens: { file: 'faults/engine-killed.test.ts', test: 'before the end of its transaction' },
  },
  {
    breaks: 'the name of a missing original',
    file: 'electron/services/picture-shelf.ts',
    find: "throw new AppError('original-missing', { name: sourceName });",
    replace: "throw new AppError('original-missing', { name: sha256 });",
    reddens: { file: 'faults/pictures-lost.test.ts', test: 'is named by the sweep' },
  },
  {
    breaks: 'the sweep’s eye for what is missing',
    file: 'electron/files/store-sweep.ts',
    find: 'filter((original) => !found.has(original.sha256));',
    replace: 'filter((original) => found.has(`${original.sha256}?`));',
    reddens: { file: 'faults/pictures-lost.test.ts', test: 'is named by the sweep' },
  },
  {
    breaks: 'the sentence for a full disk, where it is the database that is full',
    file: 'electron/services/told-error.ts',
    find: "error.code === 'SQLITE_FULL'",
    replace: "error.code === 'SQLITE_EMPTY'",
    reddens: { file: 'faults/disk-full.test.ts', test: 'refuses a commit whole' },
  },
  {
    breaks: 'the end of a job that the database does not take',
    file: 'electron/jobs/job-board.ts',
    find: 'unwritten.set(id, ending);',
    replace: '',
    reddens: { file: 'faults/job-end-refused.test.ts', test: 'it is told as ended' },
  },
  {
    breaks: 'the patience with a log that cannot be written',
    file: 'electron/log/log.ts',
    find: '      console.error(`The log could not be written',
    replace: '      throw new Error(`The log could not be written',
    reddens: { file: 'faults/disk-full.test.ts', test: 'and for the log' },
  },
  {
    breaks: 'every commit’s being on the disk: synchronous at NORMAL',
    file: 'electron/database/open-library.ts',
    find: "db.pragma('synchronous = FULL');",
    replace: "db.pragma('synchronous = NORMAL');",
    reddens: { file: 'database/migrate.test.ts', test: 'every write synced' },
  },
  {
    breaks: 'the check of references after a migration',
    file: 'electron/database/migrate.ts',
    find: 'if (broken.length > 0) throw',
    replace: 'if (broken.length < 0) throw',
    reddens: { file: 'database/migrate.test.ts', test: 'rows that point at nothing' },
  },
  {
    breaks: 'the refusal of an edited migration',
    file: 'electron/database/migrate.ts',
    find: 'if (shipped?.sha256 !== one.sha256) throw',
    replace: 'if (shipped?.number !== one.number) throw',
    reddens: { file: 'faults/library-refused.test.ts', test: 'whose migration was edited' },
  },
  {
    breaks: 'the refusal of a newer library',
    file: 'electron/database/migrate.ts',
    find: 'if (found > newest) {',
    replace: 'if (found > newest + 1) {',
    reddens: { file: 'faults/library-refused.test.ts', test: 'of a newer version' },
  },
  {
    breaks: 'the refusal of another program’s database',
    file: 'electron/database/open-library.ts',
    find: "db.pragma('application_id', { simple: true }) !== applicationId",
    replace: "db.pragma('application_id', { simple: true }) === applicationId + 1",
    reddens: { file: 'faults/library-refused.test.ts', test: 'of another program' },
  },
  {
    breaks: 'the exclusiveness of the library’s lock',
    file: 'electron/database/library-lock.ts',
    find: "db.exec('BEGIN IMMEDIATE');",
    replace: "db.exec('BEGIN');",
    reddens: { file: 'database/library-lock.test.ts', test: 'the sentence says who holds it' },
  },
  {
    breaks: 'the refusal of a database that may only be read',
    file: 'electron/database/opening-error.ts',
    find: 'if (existsSync(place.file)) accessSync(',
    replace: 'if (!existsSync(place.file)) accessSync(',
    reddens: { file: 'faults/library-refused.test.ts', test: 'in its file library.sqlite only' },
  },
  {
    breaks: 'the trigger that keeps the journal from being changed',
    file: library,
    find: 'CREATE TRIGGER journal_is_never_changed BEFORE UPDATE ON journal\n',
    replace: 'CREATE TRIGGER journal_is_never_changed BEFORE UPDATE ON journal WHEN false\n',
    reddens: { file: 'database/journal.test.ts', test: 'refuses to be changed or shortened' },
  },
  {
    breaks: 'the trigger that keeps the journal from being shortened',
    file: library,
    find: 'CREATE TRIGGER journal_is_never_shortened BEFORE DELETE ON journal\n',
    replace: 'CREATE TRIGGER journal_is_never_shortened BEFORE DELETE ON journal WHEN false\n',
    reddens: { file: 'database/journal.test.ts', test: 'refuses to be changed or shortened' },
  },
  {
    breaks: 'the hash before it in a line of the journal',
    file: 'electron/database/repositories/journal.ts',
    find: 'entry.previousHash === previousHash &&',
    replace: '',
    reddens: { file: 'faults/journal-forged.test.ts', test: 'shows at the next line' },
  },
  {
    breaks: 'the trigger that keeps the history of classes',
    file: library,
    find: 'CREATE TRIGGER class_history_is_never_changed BEFORE UPDATE ON finding_class_change\n',
    replace:
      'CREATE TRIGGER class_history_is_never_changed BEFORE UPDATE ON finding_class_change WHEN false\n',
    reddens: { file: 'database/finding-class.test.ts', test: 'its history is never changed' },
  },
  {
    breaks: 'the trigger that keeps a caption to be found',
    file: library,
    find: 'AFTER UPDATE OF caption, source_name, removed_at ON photo BEGIN',
    replace: 'AFTER UPDATE OF caption, source_name, removed_at ON photo WHEN false BEGIN',
    reddens: { file: 'database/search-text.test.ts', test: 'of a caption' },
  },
  {
    breaks: 'the trigger that keeps the index as what is written',
    file: library,
    find: 'CREATE TRIGGER search_document_gone AFTER DELETE ON search_document BEGIN',
    replace: 'CREATE TRIGGER search_document_gone AFTER DELETE ON search_document WHEN false BEGIN',
    reddens: { file: 'database/random-work.test.ts', test: 'the full text index is whole' },
  },
  {
    breaks: 'the check of a row’s revision',
    file: 'electron/database/repositories/written-row.ts',
    find: 'if (found.revision !== revision)',
    replace: 'if (found.revision < revision)',
    reddens: { file: 'database/bench-commit.test.ts', test: 'the later one is told' },
  },
  {
    breaks: 'the reason for a change of class',
    file: 'electron/services/bench-work.ts',
    find: 'if (known.class !== fields.class)',
    replace: 'if (known.number < 0)',
    reddens: { file: 'database/finding-class.test.ts', test: 'is not changed on the way' },
  },
  {
    breaks: 'the stop of an import: the photos that wait are begun all the same',
    file: 'electron/services/photo-import.ts',
    find: 'if (job.signal.aborted) job.itemDone(',
    replace: 'if (job.signal.aborted && place < 0) job.itemDone(',
    reddens: { file: 'faults/work-stopped.test.ts', test: 'finishes the two photos at work' },
  },
  {
    breaks: 'the stop of a report',
    file: 'electron/services/report-work.ts',
    find: '{ signal: job.signal, onPhase',
    replace: '{ onPhase',
    reddens: { file: 'faults/work-stopped.test.ts', test: 'a report is dropped where it is' },
  },
];

const pictures: readonly Break[] = [
  {
    breaks: 'the setting upright of a picture',
    file: 'electron/images/decode-picture.ts',
    find: '      .autoOrient()\n',
    replace: '',
    reddens: { file: 'unit/images/decode-picture.test.ts', test: 'row 0 is at the' },
  },
  {
    breaks: 'the limit of megapixels',
    file: 'electron/images/picture-limits.ts',
    find: 'megapixelsByRows: 250,',
    replace: 'megapixelsByRows: 5_000,',
    reddens: { file: 'unit/images/sniff.test.ts', test: 'before anything is decoded' },
  },
  {
    breaks: 'the limit of a file’s size',
    file: 'electron/images/picture-limits.ts',
    find: 'megabytes: 200,',
    replace: 'megabytes: 2_000,',
    reddens: { file: 'unit/images/sniff.test.ts', test: 'a file of more than 200 MB' },
  },
  {
    breaks: 'the silence about the place: a photo tells where it was taken',
    file: 'electron/database/repositories/photos.ts',
    find: 'b.taken_local, b.taken_offset_minutes, b.taken_precision, b.camera\n',
    replace:
      "b.taken_local, b.taken_offset_minutes, b.taken_precision, b.camera || coalesce(b.gps, '') AS camera\n",
    reddens: { file: 'contract/host-guard-place.test.ts', test: 'no answer of any channel' },
  },
  {
    breaks: 'the silence about the place: a picture that is served carries what the camera wrote',
    file: 'electron/services/picture-shelf.ts',
    find: 'file: services.store.derivativePath(picture.sha256, kindWord),',
    replace: 'file: services.store.originalPath(picture.sha256),',
    reddens: { file: 'contract/host-guard-place.test.ts', test: 'no picture that the page is given' },
  },
  {
    breaks: 'the tip: an arrow’s head ends short of it',
    file: 'analysis/marks/arrow-head.ts',
    find: '    tip,\n    behind(tip, direction, headLength * unit, headHalfWidth * unit),',
    replace:
      '    behind(tip, direction, unit, 0),\n    behind(tip, direction, headLength * unit, headHalfWidth * unit),',
    reddens: { file: 'unit/marks/mark-to-drawing.test.ts', test: 'is a corner of the head in exact' },
  },
  {
    breaks: 'the white round a mark: it paints past the tip',
    file: 'analysis/marks/arrow-head.ts',
    find: 'const front = -width;',
    replace: 'const front = -2 * width;',
    reddens: { file: 'unit/marks/mark-to-drawing.test.ts', test: 'no more than half a line of white' },
  },
  {
    breaks: 'the agreement of label and table: the ordinal',
    file: 'analysis/report/mark-labels.ts',
    find: 'const ordinal = (counts.get(finding.id) ?? 0) + 1;',
    replace: 'const ordinal = (counts.get(finding.id) ?? 1) + 1;',
    reddens: { file: 'unit/report/mark-labels.test.ts', test: 'counts a finding’s marks' },
  },
];

export const breaks: readonly Break[] = [...carriers, ...processes, ...data, ...pictures];
