/** One photo at the bench: tools above, the photo in its well, its findings beside it. */
import { useCallback, useMemo, useRef, useState } from 'react';
import { useLocation } from 'wouter';
import type { BenchDesk } from '#analysis/marks/bench-desk.ts';
import type { BenchPatch, BenchState } from '#analysis/marks/bench-state.ts';
import type { TeardownCase } from '#shared-types/case.ts';
import type { FindingFields } from '#shared-types/finding.ts';
import type { FindingId, MarkId, PhotoId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import type { MarkGeometry } from '#shared-types/mark.ts';
import type { Photo } from '#shared-types/photo.ts';
import { marksTexts } from '#shared-types/texts/marks.ts';
import { photoAddress } from '../app/addresses.ts';
import { numberText } from '../ui/number-words.ts';
import { benchOfCase } from './bench-store.ts';
import { GiveForm } from './give-form.tsx';
import { labelledMarks, labelsOf } from './labelled-marks.ts';
import { markToShow } from './last-place.ts';
import { given, newFinding, newMark, photoTouched, reshaped } from './mark-patches.ts';
import { MarksOfPhoto } from './marks-of-photo.tsx';
import { MarksToolbar } from './marks-toolbar.tsx';
import { PhotoRow } from './photo-row.tsx';
import { PhotoStage } from './photo-stage.tsx';
import { useKeys } from './use-keys.ts';
import { useUndoKeys } from './use-undo-keys.ts';
import type { Tool } from './well-gesture.ts';

const { said } = marksTexts;

type MarksBenchProps = {
  teardownCase: TeardownCase;
  pack: KnowledgePack;
  photos: readonly Photo[];
  photo: Photo;
  desk: BenchDesk;
};

export function MarksBench({ teardownCase, pack, photos, photo, desk }: MarksBenchProps) {
  const caseId = teardownCase.id;
  const readOnly = teardownCase.status !== 'open';
  const bench = benchOfCase(caseId);
  const state = desk.shown;
  const [, go] = useLocation();
  const [tool, setTool] = useState<Tool>('select');
  const [chosenId, setChosenId] = useState<MarkId | null>(() => markToShow(caseId));
  const [givingId, setGivingId] = useState<MarkId | null>(null);
  const [words, setWords] = useState('');
  const well = useRef<HTMLDivElement>(null);

  const labels = useMemo(() => labelsOf(photos, state), [photos, state]);
  const marks = useMemo(() => labelledMarks(photo.id, state, labels), [photo.id, state, labels]);
  const counts = useMemo(() => countsOf(state), [state]);
  const findings = useMemo(() => [...state.findings.values()].sort((a, b) => a.number - b.number), [state]);
  const selected = marks.find(({ mark }) => mark.id === chosenId) ?? null;
  const giving = readOnly ? null : (marks.find(({ mark }) => mark.id === givingId) ?? null);
  const number = photos.indexOf(photo) + 1;

  const toWell = useCallback(() => well.current?.focus({ preventScroll: true }), []);
  const labelOf = (id: MarkId) => labels.get(id) ?? '';

  const select = (id: MarkId | null) => {
    if (id !== chosenId) setWords(id === null ? said.deselected : said.selected(labelOf(id)));
    setChosenId(id);
    setGivingId(null);
  };

  const chooseTool = (next: Tool) => {
    setTool(next === 'arrow' && readOnly ? 'select' : next);
    toWell();
  };

  const drawn = (geometry: MarkGeometry) => {
    const mark = newMark(state, photo.id, geometry);
    bench.perform(mark.patches);
    setChosenId(mark.id);
    setGivingId(mark.id);
  };

  const remove = (id: MarkId | null) => {
    if (id === null || readOnly) return;
    bench.perform([{ patch: 'remove-mark', markId: id }]);
    setWords(said.removed(labelOf(id)));
    setChosenId(null);
    setGivingId(null);
    toWell();
  };

  const removeSelected = () => remove(selected?.mark.id ?? null);

  /** Shows where something was taken back or done again, if that is on another photo. */
  const followed = (patches: readonly BenchPatch[] | null, done: string, nothing: string) => {
    setGivingId(null);
    setWords(patches === null ? nothing : done);
    const touched = patches === null ? null : photoTouched(patches, state);
    if (touched !== null && touched !== photo.id) go(photoAddress(caseId, touched));
  };
  const undo = () => !readOnly && followed(bench.undo(), said.undone, said.nothingToUndo);
  const redo = () => !readOnly && followed(bench.redo(), said.redone, said.nothingToRedo);

  const showPhoto = (step: -1 | 1) => {
    const next = photos[number - 1 + step];
    if (next !== undefined) go(photoAddress(caseId, next.id));
  };

  const giveTo = (id: MarkId, patches: readonly BenchPatch[]) => {
    bench.perform(patches);
    setChosenId(id);
    setGivingId(null);
    toWell();
  };
  const giveToNew = (id: MarkId, fields: FindingFields) => {
    const finding = newFinding(fields);
    const mark = state.marks.get(id);
    if (mark === undefined) return;
    const { revision: _ofLibrary, ...known } = mark;
    giveTo(id, [...finding.patches, { patch: 'put-mark', mark: { ...known, findingId: finding.id } }]);
  };

  useUndoKeys(undo, redo);
  useKeys({
    v: () => chooseTool('select'),
    w: () => chooseTool('arrow'),
    Delete: removeSelected,
    Backspace: removeSelected,
    PageUp: () => showPhoto(-1),
    PageDown: () => showPhoto(1),
  });

  return (
    <div className="marks-bench">
      <MarksToolbar
        tool={tool}
        readOnly={readOnly}
        canUndo={desk.history.done.length > 0 && !readOnly}
        canRedo={desk.history.undone.length > 0 && !readOnly}
        canRemove={selected !== null}
        onTool={chooseTool}
        onUndo={undo}
        onRedo={redo}
        onRemove={removeSelected}
      />
      <PhotoStage
        pack={pack}
        saving={desk.pending.length > 0}
        photo={photo}
        marks={marks}
        tool={tool}
        selectedId={selected?.mark.id ?? null}
        showHandles={tool === 'select' || giving !== null}
        readOnly={readOnly}
        name={marksTexts.photoName(numberText(number), photo.caption, marks.length)}
        wellRef={well}
        onSelect={select}
        onDrawn={drawn}
        onChanged={(id, geometry) => bench.perform(reshaped(state, id, geometry))}
        onEscape={() => {
          if (tool !== 'select') setTool('select');
          else select(null);
        }}
        say={setWords}
      />
      <aside className="side-panel marks-side" aria-label={marksTexts.findingsHere}>
        <PhotoRow caseId={caseId} photos={photos} markCounts={counts.ofPhoto} shownId={photo.id} />
        {giving === null ? (
          <MarksOfPhoto
            caseId={caseId}
            pack={pack}
            marks={marks}
            markCounts={counts.ofFinding}
            selectedId={selected?.mark.id ?? null}
            readOnly={readOnly}
            onSelect={(id) => {
              select(id);
              setTool('select');
              toWell();
            }}
            onGive={setGivingId}
            onRemove={remove}
          />
        ) : (
          <GiveForm
            key={giving.mark.id}
            pack={pack}
            findings={findings}
            givenTo={giving.mark.findingId}
            label={giving.label}
            part={photo.parts[0] ?? null}
            onNew={(fields) => giveToNew(giving.mark.id, fields)}
            onListed={(id) => giveTo(giving.mark.id, given(state, giving.mark.id, id))}
            onLater={() => {
              setGivingId(null);
              toWell();
            }}
          />
        )}
      </aside>
      <p className="only-read-out" role="status">
        {words}
      </p>
    </div>
  );
}

function countsOf(state: BenchState) {
  const ofPhoto = new Map<PhotoId, number>();
  const ofFinding = new Map<FindingId, number>();
  for (const { photoId, findingId } of state.marks.values()) {
    ofPhoto.set(photoId, (ofPhoto.get(photoId) ?? 0) + 1);
    if (findingId !== null) ofFinding.set(findingId, (ofFinding.get(findingId) ?? 0) + 1);
  }
  return { ofPhoto, ofFinding };
}
