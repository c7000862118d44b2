/** What to look for: everything that can occur at the parts at hand, answered with one press. */
import { useDeferredValue, useLayoutEffect, useMemo, useRef, useState, type KeyboardEvent } from 'react';
import { everyPart, expectationsOf, partsAtHand } from '#analysis/findings/expectations.ts';
import type { HeldFinding } from '#analysis/marks/bench-state.ts';
import { presences, type Presence } from '#shared-types/finding.ts';
import type { CaseId, FindingId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import type { PartShown, Photo } from '#shared-types/photo.ts';
import { expectationTexts as texts } from '#shared-types/texts/expectations.ts';
import { Button } from '../ui/button.tsx';
import { EmptyState } from '../ui/empty-state.tsx';
import { Kbd } from '../ui/kbd.tsx';
import { numberText } from '../ui/number-words.ts';
import { useRowWindow } from '../ui/row-window.ts';
import { TextField } from '../ui/text-field.tsx';
import { ExpectationLineRow } from './expectation-line.tsx';
import { expectationLines, type ExpectationLine } from './expectation-rows.ts';
import './expectations.css';

/** What an answer is about. */
export type ExpectedPlace = PartShown & { readonly zone: string | null; readonly kind: string };

const mostLinesInPage = 120;
const lineHeight = 30;
const linesAPage = 10;
const none: readonly HeldFinding[] = [];

export function ExpectationList(props: {
  caseId: CaseId;
  pack: KnowledgePack;
  photos: readonly Photo[];
  findings: ReadonlyMap<FindingId, HeldFinding>;
  readOnly: boolean;
  /** `own` are the findings of exactly that place. */
  onAnswer: (place: ExpectedPlace, own: readonly HeldFinding[], presence: Presence) => void;
}) {
  const { caseId, pack, photos, findings, readOnly, onAnswer } = props;
  const [allParts, setAllParts] = useState(false);
  const [words, setWords] = useState('');
  const [openOnly, setOpenOnly] = useState(false);
  const [kept, setKept] = useState<ReadonlySet<string>>(new Set());
  const [folded, setFolded] = useState<ReadonlySet<string>>(new Set());
  const [reached, setReached] = useState<string | null>(null);
  const list = useRef<HTMLDivElement>(null);
  const goingTo = useRef<string | null>(null);
  const askedWords = useDeferredValue(words);

  const parts = useMemo(
    () =>
      allParts
        ? everyPart(pack)
        : partsAtHand(pack, [...photos.flatMap((photo) => photo.parts), ...findings.values()]),
    [allParts, pack, photos, findings],
  );
  const expected = useMemo(() => {
    const ofComponent = Map.groupBy(findings.values(), (finding) => finding.component);
    return parts.map((part) => expectationsOf(pack, part, ofComponent.get(part.component) ?? []));
  }, [pack, parts, findings]);
  const { lines, counts } = useMemo(
    () => expectationLines(pack, expected, { words: askedWords, openOnly, kept, folded }),
    [pack, expected, askedWords, openOnly, kept, folded],
  );
  const indexOf = useMemo(() => new Map(lines.map((line, index) => [line.key, index])), [lines]);
  const stop = reached !== null && indexOf.has(reached) ? reached : (lines[0]?.key ?? null);
  const shown = useRowWindow({
    body: list,
    count: lines.length,
    keyOf: (index) => lines[index]?.key ?? String(index),
    rowHeight: lineHeight,
    pinned: stop === null ? [] : [indexOf.get(stop) ?? 0],
    on: lines.length > mostLinesInPage,
  });

  useLayoutEffect(() => {
    if (goingTo.current === null) return;
    const row = list.current?.querySelector<HTMLElement>(`[data-row="${CSS.escape(goingTo.current)}"]`);
    if (row === null || row === undefined) return;
    goingTo.current = null;
    row.focus();
  });

  const goTo = (index: number) => {
    const key = lines[Math.max(0, Math.min(index, lines.length - 1))]?.key;
    if (key === undefined) return;
    goingTo.current = key;
    setReached(key);
  };
  const fold = (line: ExpectationLine) => {
    if (line.line !== 'part') return;
    const next = new Set(folded);
    if (!next.delete(line.key)) next.add(line.key);
    setFolded(next);
  };
  const answer = (line: ExpectationLine, presence: Presence) => {
    if (line.line !== 'kind' || readOnly) return;
    const { zone, kind, own, key } = line.expected;
    setKept((before) => new Set(before).add(key));
    onAnswer(
      { ...line.part, zone, kind: kind.id },
      own.flatMap((id) => findings.get(id) ?? []),
      presence,
    );
  };

  const onKeyDown = (event: KeyboardEvent<HTMLElement>, line: ExpectationLine) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const onRow = event.target === event.currentTarget;
    const index = indexOf.get(line.key) ?? 0;
    const presence = presences.find((each) => texts.answerKeys[each] === event.key.toUpperCase());
    const walked = { ArrowDown: 1, ArrowUp: -1, PageDown: linesAPage, PageUp: -linesAPage }[event.key];
    if (walked !== undefined) goTo(index + walked);
    else if (event.key === 'Home') goTo(0);
    else if (event.key === 'End') goTo(lines.length - 1);
    else if (presence !== undefined && line.line === 'kind') answer(line, presence);
    else if (onRow && line.line === 'part' && (event.key === 'Enter' || event.key === ' ')) fold(line);
    else if (onRow && event.key === 'ArrowRight' && line.line === 'part' && !line.unfolded) fold(line);
    else if (onRow && event.key === 'ArrowLeft' && line.line === 'part' && line.unfolded) fold(line);
    else if (onRow && event.key === 'ArrowLeft' && line.line !== 'part') {
      goTo(lines.slice(0, index).findLastIndex((above) => above.line === 'part'));
    } else return;
    event.preventDefault();
  };

  const nothing =
    parts.length === 0
      ? null
      : lines.length > 0
        ? null
        : words.trim() === ''
          ? texts.noneOpen
          : texts.noneFound;
  return (
    <section className="expectations">
      <div className="expectations-head">
        <TextField
          label={texts.filter}
          labelHidden
          type="search"
          placeholder={texts.filterPlaceholder}
          className="expectations-filter"
          value={words}
          onValue={setWords}
        />
        <Button
          pressed={openOnly}
          onClick={() => {
            setKept(new Set());
            setOpenOnly(!openOnly);
          }}
        >
          {texts.openOnly}
        </Button>
        <Button pressed={allParts} onClick={() => setAllParts(!allParts)}>
          {texts.allParts}
        </Button>
        <p className="secondary-words" role="status">
          {texts.counts({
            all: numberText(counts.all),
            open: numberText(counts.open),
            present: numberText(counts.present),
            absent: numberText(counts.absent),
            unseen: numberText(counts.unseen),
          })}
        </p>
      </div>
      <p className="secondary-words expectations-keys">
        <Kbd>↑</Kbd> <Kbd>↓</Kbd> {texts.keys.walk}
        {' · '}
        <Kbd>←</Kbd> <Kbd>→</Kbd> {texts.keys.fold}
        {presences.map((presence) => (
          <span key={presence}>
            {' · '}
            <Kbd>{texts.answerKeys[presence]}</Kbd> {texts.answerNames[presence]}
          </span>
        ))}
      </p>
      {parts.length === 0 ? (
        <EmptyState
          title={texts.noneAtHand}
          actions={<Button onClick={() => setAllParts(true)}>{texts.allParts}</Button>}
        >
          <p>{texts.noneAtHandWords}</p>
        </EmptyState>
      ) : nothing !== null ? (
        <p className="secondary-words">{nothing}</p>
      ) : (
        <div
          ref={list}
          role="treegrid"
          aria-label={texts.name}
          aria-rowcount={lines.length}
          className="expectation-rows"
          style={shown.gapAfter === 0 ? undefined : { paddingBlockEnd: shown.gapAfter }}
        >
          {shown.rows.map(({ index, gapBefore }) => {
            const line = lines[index];
            if (line === undefined) return null;
            const own =
              line.line === 'kind' ? line.expected.own.flatMap((id) => findings.get(id) ?? []) : none;
            const heard =
              line.line === 'kind' ? line.expected.heard.flatMap((id) => findings.get(id)?.number ?? []) : [];
            return (
              <ExpectationLineRow
                key={line.key}
                caseId={caseId}
                line={line}
                index={index}
                gapBefore={gapBefore}
                isStop={line.key === stop}
                readOnly={readOnly}
                own={own}
                heard={heard}
                measure={shown.measure}
                onKeyDown={onKeyDown}
                onReached={setReached}
                onFold={fold}
                onAnswer={answer}
              />
            );
          })}
        </div>
      )}
    </section>
  );
}
