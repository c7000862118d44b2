/** One line of the list of what can occur. */
import type { KeyboardEvent } from 'react';
import { Link } from 'wouter';
import type { MarkState } from '#analysis/knowledge/mark-state.ts';
import type { HeldFinding } from '#analysis/marks/bench-state.ts';
import { presences, type Presence } from '#shared-types/finding.ts';
import type { CaseId } from '#shared-types/ids.ts';
import { expectationTexts as texts } from '#shared-types/texts/expectations.ts';
import { findingAddress } from '../app/addresses.ts';
import { Button } from '../ui/button.tsx';
import { classNames } from '../ui/class-names.ts';
import { StatusWord, type StatusTone } from '../ui/status-word.tsx';
import type { ExpectationLine } from './expectation-rows.ts';

/** That something is there is neither good nor bad: only what contradicts itself stands out. */
const tones: Record<MarkState, StatusTone> = {
  present: 'neutral',
  'looked-for-absent': 'neutral',
  'not-examined': 'neutral',
  conflict: 'bad',
  unknown: 'neutral',
};

export type ExpectationLineProps = {
  caseId: CaseId;
  line: ExpectationLine;
  /** Place in the list, and pixels of lines that are not in the page before it. */
  index: number;
  gapBefore: number;
  /** The one line that Tab reaches. */
  isStop: boolean;
  readOnly: boolean;
  /** What is recorded of exactly this place. */
  own: readonly HeldFinding[];
  /** Numbers of the findings that bear on it. */
  heard: readonly number[];
  measure: ((row: Element | null) => void) | undefined;
  onKeyDown: (event: KeyboardEvent<HTMLElement>, line: ExpectationLine) => void;
  onReached: (key: string) => void;
  onFold: (line: ExpectationLine) => void;
  onAnswer: (line: ExpectationLine, presence: Presence) => void;
};

export function ExpectationLineRow(props: ExpectationLineProps) {
  const { line, index, gapBefore, isStop, measure, onKeyDown, onReached, onFold } = props;
  const level = line.line === 'part' ? 1 : line.line === 'zone' ? 2 : 3 + line.expected.depth;
  return (
    <div
      ref={measure}
      role="row"
      data-row={line.key}
      data-index={index}
      aria-level={level}
      aria-rowindex={index + 1}
      aria-expanded={line.line === 'part' ? line.unfolded : undefined}
      aria-label={nameOf(line)}
      tabIndex={isStop ? 0 : -1}
      className={classNames('expectation', `expectation-${line.line}`)}
      style={gapBefore === 0 ? undefined : { marginBlockStart: gapBefore }}
      onFocus={() => onReached(line.key)}
      onKeyDown={(event) => onKeyDown(event, line)}
      onClick={line.line === 'part' ? () => onFold(line) : undefined}
    >
      {line.line === 'part' ? (
        <PartCells line={line} />
      ) : line.line === 'zone' ? (
        <span role="gridcell">{line.label}</span>
      ) : (
        <KindCells {...props} line={line} />
      )}
    </div>
  );
}

function nameOf(line: ExpectationLine): string {
  if (line.line === 'kind') {
    const { kind, state } = line.expected;
    return texts.rowName(kind.label, line.place, texts.states[state]);
  }
  return line.label;
}

function PartCells({ line }: { line: Extract<ExpectationLine, { line: 'part' }> }) {
  return (
    <>
      <span role="gridcell" className="expectation-name">
        <span className="expectation-fold" aria-hidden="true">
          {line.unfolded ? '▾' : '▸'}
        </span>
        {line.label}
      </span>
      <span role="gridcell" className="secondary-words">
        {texts.openOf(line.open, line.all)}
      </span>
    </>
  );
}

function KindCells(props: ExpectationLineProps & { line: Extract<ExpectationLine, { line: 'kind' }> }) {
  const { caseId, line, isStop, readOnly, own, heard, onAnswer } = props;
  const { kind, depth, state } = line.expected;
  const bears = own.length > 0 ? own.map((finding) => finding.number) : state === 'unknown' ? [] : heard;
  return (
    <>
      <span
        role="gridcell"
        className="expectation-name"
        title={kind.meaning}
        style={depth === 0 ? undefined : { paddingInlineStart: `${depth * 1.25}rem` }}
      >
        {kind.label}
      </span>
      <span
        role="gridcell"
        className={classNames('expectation-state', state !== 'unknown' && 'expectation-answered')}
      >
        <StatusWord tone={tones[state]}>{texts.states[state]}</StatusWord>
        {bears.length > 0 ? (
          <span className="secondary-words">
            {own.length === 1 && own[0] !== undefined ? (
              <Link href={findingAddress(caseId, own[0].id)} replace tabIndex={isStop ? 0 : -1}>
                {texts.by([own[0].number])}
              </Link>
            ) : (
              texts.by(bears)
            )}
          </span>
        ) : null}
      </span>
      <span role="gridcell" className="expectation-answers">
        {readOnly
          ? null
          : presences.map((presence) => (
              <Button
                key={presence}
                kind="quiet"
                pressed={own.some((finding) => finding.presence === presence)}
                tabIndex={isStop ? 0 : -1}
                aria-label={texts.answer(texts.answers[presence], kind.label)}
                aria-keyshortcuts={texts.answerKeys[presence]}
                onClick={() => onAnswer(line, presence)}
              >
                {texts.answers[presence]}
              </Button>
            ))}
      </span>
    </>
  );
}
