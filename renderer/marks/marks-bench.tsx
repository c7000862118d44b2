/** One photo at the bench: tools above, the photo in its well, its findings beside it. */
import { useMemo, useRef, useState } from 'react';
import { useLocation } from 'wouter';
import type { BenchDesk } from '#analysis/marks/bench-desk.ts';
import type { BenchState } from '#analysis/marks/bench-state.ts';
import { tools } from '#analysis/marks/gesture/gesture.ts';
import type { TeardownCase } from '#shared-types/case.ts';
import type { FindingId, PhotoId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import type { Photo } from '#shared-types/photo.ts';
import { marksTexts } from '#shared-types/texts/marks.ts';
import { photoAddress } from '../app/addresses.ts';
import { numberText } from '../ui/number-words.ts';
import { ChosenMarks } from './chosen-marks.tsx';
import { Giving } from './giving.tsx';
import { heardWords } from './heard-words.ts';
import { KeysDialog } from './keys-dialog.tsx';
import { deedKeys, toolKeys } from './mark-keys.ts';
import { MarksOfPhoto } from './marks-of-photo.tsx';
import { MeasurePanel } from './measure-panel.tsx';
import { MarksToolbar } from './marks-toolbar.tsx';
import { PhotoRow } from './photo-row.tsx';
import { PhotoStage } from './photo-stage.tsx';
import { recentFindings } from './recent-findings.ts';
import { useKeys } from './use-keys.ts';
import { useMarksWork } from './use-marks-work.ts';
import { useUndoKeys } from './use-undo-keys.ts';

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
  const well = useRef<HTMLDivElement>(null);
  const [, go] = useLocation();
  const [keysOpen, setKeysOpen] = useState(false);
  const work = useMarksWork({ caseId, photos, photo, desk, readOnly, well });
  const { state, tool, marks, chosenMarks, giving, deeds } = work;
  const counts = useMemo(() => countsOf(state), [state]);
  const findings = useMemo(() => [...state.findings.values()].sort((a, b) => a.number - b.number), [state]);
  const number = photos.indexOf(photo) + 1;

  const showPhoto = (step: -1 | 1) => {
    const next = photos[number - 1 + step];
    if (next !== undefined) go(photoAddress(caseId, next.id));
  };

  useUndoKeys(work.undo, work.redo);
  useKeys({
    ...Object.fromEntries(tools.map((each) => [toolKeys[each], () => work.chooseTool(each)])),
    [deedKeys.give]: deeds.give,
    [deedKeys.hide]: deeds.hide,
    [deedKeys.hideAll]: work.hideAll,
    [deedKeys.toFront]: deeds.toFront,
    [deedKeys.toBack]: deeds.toBack,
    [deedKeys.keys]: () => setKeysOpen(true),
    'Ctrl+A': work.chooseAll,
    'Ctrl+D': deeds.duplicate,
    Delete: deeds.remove,
    Backspace: deeds.remove,
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
        onTool={work.chooseTool}
        onUndo={work.undo}
        onRedo={work.redo}
        onKeys={() => setKeysOpen(true)}
      />
      <PhotoStage
        pack={pack}
        saving={desk.pending.length > 0}
        hiddenWords={hiddenWords(work.hiddenCount, work.allHidden)}
        photo={photo}
        marks={work.inSight}
        measuring={marks}
        tool={tool}
        chosen={work.chosen}
        showHandles={tool === 'select' || giving.length > 0}
        readOnly={readOnly}
        name={marksTexts.photoName(numberText(number), photo.caption, marks.length)}
        wellRef={well}
        rewriting={work.rewriting}
        onRewritten={work.endRewriting}
        onChoose={work.choose}
        onDrawn={work.drawn}
        onReshaped={work.reshaped}
        onEscape={work.escape}
        onToWell={work.toWell}
        onHeard={(heard) => work.say(heardWords(heard, tool))}
        onShowAll={work.showAll}
      />
      <aside className="side-panel marks-side" aria-label={marksTexts.findingsHere}>
        <PhotoRow
          caseId={caseId}
          photos={photos}
          markCounts={counts.ofPhoto}
          shownId={photo.id}
          low={giving.length > 0}
        />
        {giving.length === 0 ? (
          <>
            <MarksOfPhoto
              caseId={caseId}
              pack={pack}
              marks={marks}
              markCounts={counts.ofFinding}
              chosen={work.chosen}
              isHidden={work.isHidden}
              readOnly={readOnly}
              onSelect={work.pick}
            />
            <MeasurePanel
              marks={chosenMarks}
              onDone={work.toWell}
              readings={work.readings}
              readOnly={readOnly}
              onReshaped={work.reshaped}
            />
            <ChosenMarks marks={chosenMarks} readOnly={readOnly} deeds={deeds} />
          </>
        ) : (
          <Giving
            key={giving.map(({ mark }) => mark.id).join()}
            pack={pack}
            marks={giving}
            findings={findings}
            recent={recentFindings(caseId)}
            parts={photo.parts}
            onNew={work.giveToNew}
            onListed={work.giveTo}
            onLater={work.afterGiving}
          />
        )}
      </aside>
      <p className="only-read-out" role="status">
        {work.words}
      </p>
      {keysOpen ? <KeysDialog onClose={() => setKeysOpen(false)} /> : null}
    </div>
  );
}

function hiddenWords(count: number, all: boolean): string | null {
  if (all) return marksTexts.hiddenAll;
  return count === 0 ? null : marksTexts.hidden(count);
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
