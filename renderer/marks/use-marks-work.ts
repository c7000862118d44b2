/** The work on one photo's marks: the tool, what is chosen, what is being given, and every deed. */
import { useMemo, useState, type RefObject } from 'react';
import { useLocation } from 'wouter';
import {
  givenMarks,
  givenToNewFinding,
  photoTouched,
  removedMarks,
  reshapedMarks,
  type Patches,
  type Reshape,
} from '#analysis/marks/bench-deeds.ts';
import type { BenchDesk } from '#analysis/marks/bench-desk.ts';
import type { Tool } from '#analysis/marks/gesture/gesture.ts';
import { asksForFinding, isScale } from '#analysis/marks/notes.ts';
import { photoReadings } from '#analysis/measure/photo-readings.ts';
import { marksOnPhoto } from '#analysis/report/mark-labels.ts';
import { toBack, toFront } from '#analysis/marks/stacking.ts';
import type { FindingFields } from '#shared-types/finding.ts';
import type { CaseId, FindingId, MarkId } from '#shared-types/ids.ts';
import type { MarkGeometry } from '#shared-types/mark.ts';
import type { Photo } from '#shared-types/photo.ts';
import { marksTexts } from '#shared-types/texts/marks.ts';
import { photoAddress } from '../app/addresses.ts';
import { toast } from '../ui/toaster.tsx';
import { benchOfCase } from './bench-store.ts';
import { labelledMarks, labelsOf } from './labelled-marks.ts';
import { markToShow } from './last-place.ts';
import { endAllHidden, hideMarks, showAllMarks, showMark, toggleAllHidden, useLooking } from './looking.ts';
import { duplicates, newFindingId, newMark } from './mark-patches.ts';
import { noteGiven } from './recent-findings.ts';
import { stepWords } from './step-words.ts';

const { said } = marksTexts;

/** A copy lies this share of the photo's width to the right and below. */
const copyOffset = 0.02;

export type MarksWork = ReturnType<typeof useMarksWork>;

export function useMarksWork(input: {
  caseId: CaseId;
  photos: readonly Photo[];
  photo: Photo;
  desk: BenchDesk;
  readOnly: boolean;
  well: RefObject<HTMLElement | null>;
}) {
  const { caseId, photos, photo, desk, readOnly, well } = input;
  const bench = benchOfCase(caseId);
  const state = desk.shown;
  const [, go] = useLocation();
  const [tool, setTool] = useState<Tool>('select');
  const [chosenIds, setChosenIds] = useState<ReadonlySet<MarkId>>(() => {
    const noted = markToShow(caseId);
    return new Set(noted === null ? [] : [noted]);
  });
  const [givingIds, setGivingIds] = useState<ReadonlySet<MarkId> | null>(null);
  const [rewriting, setRewriting] = useState<MarkId | null>(null);
  const [words, say] = useState('');
  const { hidden, allHidden } = useLooking();

  const labels = useMemo(() => labelsOf(photos, state), [photos, state]);
  const readings = useMemo(
    () => photoReadings(marksOnPhoto([...state.marks.values()], photo.id), photo),
    [photo, state],
  );
  const marks = useMemo(
    () => labelledMarks(photo.id, state, labels, readings.words),
    [photo.id, state, labels, readings],
  );
  const inSight = useMemo(
    () => (allHidden ? [] : marks.filter(({ mark }) => !hidden.has(mark.id))),
    [marks, hidden, allHidden],
  );
  const chosenMarks = useMemo(
    () => inSight.filter(({ mark }) => chosenIds.has(mark.id)),
    [inSight, chosenIds],
  );
  const chosen = useMemo(() => new Set(chosenMarks.map(({ mark }) => mark.id)), [chosenMarks]);
  const giving = readOnly || givingIds === null ? [] : marks.filter(({ mark }) => givingIds.has(mark.id));
  const nameOf = (id: MarkId) => marks.find(({ mark }) => mark.id === id)?.name ?? '';

  /** Where the page scrolls as a whole, the photo and the tools over it come back into sight with the keyboard. */
  const toWell = () => {
    well.current?.focus({ preventScroll: true });
    const seen = well.current?.getBoundingClientRect();
    if (seen !== undefined && (seen.top < 0 || seen.bottom > window.innerHeight)) {
      well.current?.parentElement?.scrollIntoView({ block: 'start' });
    }
  };

  const chooseSet = (ids: ReadonlySet<MarkId>) => {
    const [only] = ids;
    if (only === undefined) say(said.deselected);
    else say(ids.size === 1 ? said.selected(nameOf(only)) : said.severalSelected(ids.size));
    setChosenIds(ids);
    setGivingIds(null);
  };

  const choose = (ids: readonly MarkId[], how: 'only' | 'toggle' | 'add') => {
    if (how === 'only') {
      chooseSet(new Set(ids));
      return;
    }
    const next = new Set(chosen);
    for (const id of ids) {
      if (how === 'toggle' && next.has(id)) next.delete(id);
      else next.add(id);
    }
    chooseSet(next);
  };

  const chooseTool = (next: Tool) => {
    setTool(readOnly ? 'select' : next);
    toWell();
  };

  const drawn = (geometry: MarkGeometry) => {
    const mark = newMark(state, photo.id, geometry);
    bench.perform(mark.patches);
    endAllHidden();
    const ids = new Set([mark.id]);
    setChosenIds(ids);
    setGivingIds(asksForFinding(geometry.kind) ? ids : null);
    if (geometry.kind === 'text') say(said.noteWritten);
  };

  /** One history entry; nothing is chosen, nothing asked of a case that is closed. */
  const withChosen = (deed: () => void) => {
    if (chosen.size > 0 && !readOnly) deed();
  };

  /** A scale belongs to the photo and shows no damage. */
  const give = () =>
    withChosen(() => {
      const ids = chosenMarks.filter(({ mark }) => !isScale(mark.geometry.kind)).map(({ mark }) => mark.id);
      if (ids.length > 0) setGivingIds(new Set(ids));
    });

  const rewrite = () =>
    withChosen(() => {
      const [one] = chosenMarks;
      if (chosenMarks.length === 1 && one?.mark.geometry.kind === 'text') setRewriting(one.mark.id);
    });

  const remove = () =>
    withChosen(() => {
      const [only] = chosen;
      bench.perform(removedMarks(state, chosen));
      say(
        chosen.size === 1 && only !== undefined
          ? said.removed(nameOf(only))
          : said.severalRemoved(chosen.size),
      );
      setChosenIds(new Set());
      setGivingIds(null);
      toWell();
    });

  const duplicate = () =>
    withChosen(() => {
      const copies = duplicates(state, chosen, copyOffset * photo.width, photo);
      bench.perform(copies.patches);
      setChosenIds(new Set(copies.ids));
      setGivingIds(null);
      say(said.duplicated(copies.ids.length));
    });

  const front = () =>
    withChosen(() => {
      bench.perform(toFront(state, chosen));
      say(said.toFront);
    });

  const back = () =>
    withChosen(() => {
      bench.perform(toBack(state, chosen));
      say(said.toBack);
    });

  const hide = () => {
    if (chosen.size === 0) return;
    hideMarks(chosen);
    say(said.hidden(chosen.size));
    setChosenIds(new Set());
    setGivingIds(null);
    toWell();
  };

  const hideAll = () => {
    setGivingIds(null);
    say(toggleAllHidden() ? said.allHidden : said.allShown);
  };

  const showAll = () => {
    showAllMarks(marks.map(({ mark }) => mark.id));
    say(said.allShown);
    toWell();
  };

  /** From the list beside the photo: a hidden mark comes back into sight. */
  const pick = (id: MarkId, more: boolean) => {
    showMark(id);
    choose([id], more ? 'toggle' : 'only');
    setTool('select');
    toWell();
  };

  const afterGiving = () => {
    setGivingIds(null);
    toWell();
  };

  const giveTo = (findingId: FindingId) => {
    if (givingIds === null) return;
    bench.perform(givenMarks(state, givingIds, findingId));
    noteGiven(caseId, findingId);
    afterGiving();
  };

  const giveToNew = (fields: FindingFields) => {
    if (givingIds === null) return;
    const findingId = newFindingId();
    bench.perform(givenToNewFinding(state, givingIds, findingId, fields));
    noteGiven(caseId, findingId);
    afterGiving();
  };

  /** Shows where something was taken back or done again, if that is on another photo. */
  const followed = (patches: Patches | null, way: 'undone' | 'redone') => {
    setGivingIds(null);
    const about = { about: 'history' };
    if (patches === null) {
      toast(way === 'undone' ? said.nothingToUndo : said.nothingToRedo, about);
      return;
    }
    const now = bench.read().desk?.shown ?? state;
    const [earlier, later] = way === 'undone' ? [now, state] : [state, now];
    toast(said[way](stepWords(photos, earlier, later, patches)), about);
    const touched = photoTouched(patches, state);
    if (touched !== null && touched !== photo.id) go(photoAddress(caseId, touched));
  };

  const escape = () => {
    if (tool !== 'select') setTool('select');
    else chooseSet(new Set());
  };

  return {
    state,
    tool,
    marks,
    inSight,
    readings,
    chosen,
    chosenMarks,
    giving,
    rewriting,
    words,
    hiddenCount: marks.length - inSight.length,
    allHidden,
    isHidden: (id: MarkId) => allHidden || hidden.has(id),
    say,
    toWell,
    choose,
    chooseAll: () =>
      choose(
        inSight.map(({ mark }) => mark.id),
        'only',
      ),
    chooseTool,
    drawn,
    reshaped: (changes: readonly Reshape[]) => bench.perform(reshapedMarks(state, changes)),
    endRewriting: () => setRewriting(null),
    deeds: { give, rewrite, duplicate, toFront: front, toBack: back, hide, remove },
    hideAll,
    showAll,
    pick,
    giveTo,
    giveToNew,
    afterGiving,
    undo: () => {
      if (!readOnly) followed(bench.undo(), 'undone');
    },
    redo: () => {
      if (!readOnly) followed(bench.redo(), 'redone');
    },
    escape,
  };
}
