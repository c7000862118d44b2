import { useEffect, useState, useSyncExternalStore } from 'react';
import type { TeardownCase } from '#shared-types/case.ts';
import type { CaseId } from '#shared-types/ids.ts';
import { call } from '../api/client.ts';
import { putAnswer } from '../api/queries.ts';
import { useFlushed } from '../api/use-flushed.ts';
import type { FieldName } from './case-field.ts';
import { createFieldKeeper, type FieldKeeper, type KeeperView } from './field-keeper.ts';

/** Well under the 400 ms within which what was written has to be on its way. */
const typingPauseMs = 300;

/** The keeper of one case's fields for as long as the screen stands; what is left unsaved is sent when it goes. */
export function useFieldKeeper(teardownCase: TeardownCase): { keeper: FieldKeeper; view: KeeperView } {
  const [keeper] = useState(() => keeperOf(teardownCase));
  const { id: caseId } = teardownCase;
  const view = useSyncExternalStore(keeper.listen, keeper.view);

  useEffect(() => keeper.adopt(teardownCase), [keeper, teardownCase]);

  useFlushed(keeper);

  useEffect(() => () => void unfinished.set(caseId, keeper.unfinished()), [keeper, caseId]);

  return { keeper, view };
}

/** What was typed and not understood, by case, while its screen is not there. */
const unfinished = new Map<CaseId, ReadonlyMap<FieldName, string>>();

function keeperOf(teardownCase: TeardownCase): FieldKeeper {
  const caseId = teardownCase.id;
  const keeper = createFieldKeeper(teardownCase, {
    send: async (revision, fields) => {
      const now = await call('cases.change', { caseId, revision, fields });
      putAnswer('cases.read', { caseId }, now);
      return now;
    },
    readAgain: async () => {
      const now = await call('cases.read', { caseId });
      putAnswer('cases.read', { caseId }, now);
      return now;
    },
    afterPause: (run) => {
      const timer = window.setTimeout(run, typingPauseMs);
      return () => window.clearTimeout(timer);
    },
  });
  if (teardownCase.status === 'open') {
    for (const [name, text] of unfinished.get(caseId) ?? []) keeper.edit(name, text);
  }
  return keeper;
}
