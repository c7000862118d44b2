import { listAnalysts } from '../../database/repositories/analysts.ts';
import { checkJournal, listJournal } from '../../database/repositories/journal.ts';
import { readSettings } from '../../database/repositories/settings.ts';
import { describeProgram, overview } from '../../services/library-work.ts';
import { changeSettings, correctAnalyst, enterAnalyst } from '../../services/people-and-settings.ts';
import type { Handlers } from './handler-types.ts';

export const libraryHandlers = {
  'program.describe': describeProgram,
  'program.note-fault': (services, { where, message }) => {
    services.log.note('page fault', { where, message });
    return null;
  },
  'library.overview': overview,
  'library.open': (services, { library }) => {
    if (library !== services.config.library) services.openLibrary(library);
    return null;
  },
  'settings.read': ({ db }) => readSettings(db),
  'settings.change': changeSettings,
  'analysts.list': ({ db }) => listAnalysts(db),
  'analysts.add': enterAnalyst,
  'analysts.change': correctAnalyst,
  'machine-kinds.list': ({ packs }) => packs.list(),
  'machine-kinds.read': ({ packs }, { id, version }) => packs.read(id, version),
  'journal.list': ({ db }, request) => listJournal(db, request),
  'journal.check': ({ db }) => checkJournal(db),
} satisfies Partial<Handlers>;
