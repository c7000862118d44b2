/** The chain at work: tools above, the figure on its sheet, and beside it the same in words. */
import { useMemo, useState } from 'react';
import { chainContent } from '#analysis/chain/chain-content.ts';
import type { ChainDesk } from '#analysis/chain/chain-desk.ts';
import { chainFlags } from '#analysis/chain/chain-flags.ts';
import { chainToDrawing, notesDrawing } from '#analysis/chain/chain-to-drawing.ts';
import { nodeWords, type ChainFinding } from '#analysis/chain/node-words.ts';
import type { TeardownCase } from '#shared-types/case.ts';
import type { CaseId, ChainNodeId, FindingId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import { chainTexts } from '#shared-types/texts/chain.ts';
import { call, deliver } from '../api/client.ts';
import { useKeys } from '../marks/use-keys.ts';
import { useUndoKeys } from '../marks/use-undo-keys.ts';
import { Button } from '../ui/button.tsx';
import { EmptyState } from '../ui/empty-state.tsx';
import { toast, toastError } from '../ui/toaster.tsx';
import { ChainForms } from './chain-forms.tsx';
import { ChainPanel } from './chain-panel.tsx';
import { ChainSheet } from './chain-sheet.tsx';
import { useChainWork, type ChainWorkings } from './use-chain-work.ts';
import { useSheetView } from './use-sheet-view.ts';

const zoomStep = 1.25;

export function ChainWork(props: {
  teardownCase: TeardownCase;
  pack: KnowledgePack;
  desk: ChainDesk;
  findings: ReadonlyMap<FindingId, ChainFinding>;
}) {
  const { teardownCase, pack, desk } = props;
  const caseId = teardownCase.id;
  const work = useChainWork(props);
  const { state, subject, readOnly } = work;
  const figure = useMemo(() => chainToDrawing(chainContent(state, subject)), [state, subject]);
  const flags = useMemo(() => chainFlags(state, subject), [state, subject]);
  const sheetView = useSheetView(notesDrawing(figure));
  const larger = () => sheetView.zoom(zoomStep);
  const smaller = () => sheetView.zoom(1 / zoomStep);
  const empty = state.nodes.size === 0;

  useUndoKeys(work.undo, work.redo);
  useKeys({
    L: work.beginLink,
    N: work.add,
    Escape: work.escaped,
    Delete: work.remove,
    Backspace: work.remove,
    '+': larger,
    '=': larger,
    '-': smaller,
    '−': smaller,
    '0': sheetView.fit,
  });

  const spoken = (id: ChainNodeId) => {
    const node = state.nodes.get(id);
    if (node === undefined) return '';
    const { head, words } = nodeWords(node, subject);
    const links = [...state.links.values()];
    const causes = links.filter((link) => link.effectId === id).length;
    const effects = links.filter((link) => link.causeId === id).length;
    return chainTexts.nodeName(head, words, causes, effects);
  };

  return (
    <div className="chain-screen">
      <div className="chain-tools" role="toolbar" aria-label={chainTexts.toolbar}>
        <h1>{chainTexts.heading}</h1>
        {readOnly ? null : (
          <>
            <Button shortcut="N" aria-haspopup="dialog" onClick={work.add}>
              {chainTexts.add}
            </Button>
            {work.toBringIn.length === 0 ? null : (
              <Button title={chainTexts.bringInHint} onClick={work.bringIn}>
                {chainTexts.bringIn(work.toBringIn.length)}
              </Button>
            )}
            <Button
              kind="quiet"
              disabled={desk.history.done.length === 0}
              aria-keyshortcuts="Control+Z"
              onClick={work.undo}
            >
              {chainTexts.undo}
            </Button>
            <Button
              kind="quiet"
              disabled={desk.history.undone.length === 0}
              aria-keyshortcuts="Control+Shift+Z"
              onClick={work.redo}
            >
              {chainTexts.redo}
            </Button>
          </>
        )}
        <span className="chain-tools-gap secondary-words">
          {desk.pending.length > 0 ? chainTexts.saving : null}
        </span>
        <Button kind="quiet" aria-label={chainTexts.smaller} disabled={empty} onClick={smaller}>
          −
        </Button>
        <Button kind="quiet" disabled={empty} aria-keyshortcuts="0" onClick={sheetView.fit}>
          {chainTexts.fit}
        </Button>
        <Button kind="quiet" aria-label={chainTexts.larger} disabled={empty} onClick={larger}>
          +
        </Button>
        <SaveFigure caseId={caseId} disabled={empty} settled={work.settled} />
        <Button kind="quiet" aria-haspopup="dialog" onClick={work.openKeys}>
          {chainTexts.keys}
        </Button>
      </div>
      {empty ? (
        <NothingYet work={work} />
      ) : (
        <ChainSheet
          name={chainTexts.figure(state.nodes.size, state.links.size)}
          figure={figure}
          sheetView={sheetView}
          chosen={work.chosen}
          linkingFrom={work.linkingFrom}
          readOnly={readOnly}
          nameOf={spoken}
          goTo={work.goTo}
          onWalked={work.walked}
          onPressed={work.pressed}
          onEnter={work.entered}
          onEscape={work.escaped}
          onLinked={work.link}
        />
      )}
      <p className={work.linkingFrom === null ? 'only-read-out' : 'chain-said'} role="status">
        {work.words}
      </p>
      <ChainPanel
        caseId={caseId}
        state={state}
        flags={flags}
        chosen={work.chosen}
        readOnly={readOnly}
        wordsOf={(node) => nodeWords(node, subject)}
        nameOf={work.nameOf}
        onGoTo={work.goToNode}
        onChooseLink={(id) => {
          work.chooseLink(id);
          const drawn = figure.links.find((link) => link.id === id);
          if (drawn !== undefined) sheetView.show(drawn.label);
        }}
        onBeginLink={work.beginLink}
        onChange={work.change}
        onRemove={work.remove}
      />
      <ChainForms work={work} pack={pack} findings={props.findings} />
    </div>
  );
}

function NothingYet({ work }: { work: ChainWorkings }) {
  const { readOnly, toBringIn } = work;
  return (
    <EmptyState
      title={chainTexts.emptyTitle}
      actions={
        readOnly ? undefined : (
          <>
            {toBringIn.length === 0 ? null : (
              <Button kind="primary" onClick={work.bringIn}>
                {chainTexts.bringIn(toBringIn.length)}
              </Button>
            )}
            <Button kind={toBringIn.length === 0 ? 'primary' : 'plain'} onClick={work.add}>
              {chainTexts.add}
            </Button>
          </>
        )
      }
    >
      <p>{chainTexts.emptyWords}</p>
    </EmptyState>
  );
}

/** Made by the engine from what is saved, and handed over as the report is. */
function SaveFigure(props: { caseId: CaseId; disabled: boolean; settled: () => Promise<unknown> }) {
  const { caseId, disabled, settled } = props;
  const [busy, setBusy] = useState(false);
  const save = async () => {
    setBusy(true);
    try {
      await settled();
      const { token } = await call('chain.figure', { caseId });
      if (await deliver(token)) toast(chainTexts.saved);
    } catch (error) {
      toastError(error);
    } finally {
      setBusy(false);
    }
  };
  return (
    <Button kind="quiet" disabled={disabled || busy} onClick={() => void save()}>
      {chainTexts.save}
    </Button>
  );
}
