import { useLayoutEffect, useRef, useState, type KeyboardEvent } from 'react';
import type { SearchHit } from '#shared-types/search.ts';
import { hitsAPage } from '#shared-types/search.ts';
import { searchTexts } from '#shared-types/texts/search.ts';
import { Button } from '../ui/button.tsx';
import { numberText } from '../ui/number-words.ts';
import { useRowWindow } from '../ui/row-window.ts';
import { HitEntry } from './hit-entry.tsx';

const listId = 'hits';
const mostInPage = 40;
const ordinaryHeight = 110;

/** Goes to the first case found, where there is one. */
export function focusFirstHit(): boolean {
  const link = linkAt(document.getElementById(listId), 0);
  link?.focus();
  return link !== null;
}

function linkAt(list: HTMLElement | null, index: number): HTMLElement | null {
  return list?.querySelector<HTMLElement>(`li[data-index="${index}"] .hit-link`) ?? null;
}

/** The cases found, walked by the arrow keys; of a long list only those in sight are in the page. */
export function HitList(props: {
  hits: readonly SearchHit[];
  total: number;
  loadingMore: boolean;
  onMore: () => void;
}) {
  const { hits, total, loadingMore, onMore } = props;
  const list = useRef<HTMLOListElement>(null);
  const [walkedTo, setWalkedTo] = useState(0);
  /** The case to focus as soon as it is in the page. */
  const goingTo = useRef<number | null>(null);
  const shown = useRowWindow({
    body: list,
    count: hits.length,
    keyOf: (index) => hits[index]?.case.id ?? String(index),
    rowHeight: ordinaryHeight,
    pinned: [walkedTo],
    on: hits.length > mostInPage,
  });

  useLayoutEffect(() => {
    if (goingTo.current === null) return;
    const link = linkAt(list.current, goingTo.current);
    if (link === null) return;
    goingTo.current = null;
    link.focus();
  });

  const onKeyDown = (event: KeyboardEvent<HTMLOListElement>) => {
    if (!(event.target instanceof HTMLElement) || !event.target.classList.contains('hit-link')) return;
    const steps: Record<string, number> = { ArrowDown: 1, ArrowUp: -1, Home: -hits.length, End: hits.length };
    const step = steps[event.key];
    if (step === undefined || event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    const here = Number(event.target.closest('li')?.dataset.index ?? 0);
    const wanted = here + step;
    if (wanted >= hits.length && hits.length < total) onMore();
    // Behind the last one listed comes the first of those that are on their way.
    const next = Math.max(0, Math.min(wanted, step === 1 ? total - 1 : hits.length - 1));
    goingTo.current = next;
    setWalkedTo(next);
    linkAt(list.current, next)?.focus();
  };

  return (
    <>
      <ol id={listId} ref={list} className="hits" aria-label={searchTexts.hits} onKeyDown={onKeyDown}>
        {shown.rows.map(({ index, gapBefore }) => {
          const hit = hits[index];
          if (hit === undefined) return null;
          return (
            <li
              key={hit.case.id}
              ref={shown.measure}
              data-index={index}
              className="hit"
              aria-setsize={total}
              aria-posinset={index + 1}
              style={gapBefore === 0 ? undefined : { marginTop: gapBefore }}
              onFocus={() => setWalkedTo(index)}
            >
              <HitEntry hit={hit} />
            </li>
          );
        })}
        {shown.gapAfter === 0 ? null : <li aria-hidden="true" style={{ height: shown.gapAfter }} />}
      </ol>
      {hits.length < total ? (
        <Button className="hits-more" aria-busy={loadingMore} onClick={onMore}>
          {loadingMore
            ? searchTexts.loadingMore
            : searchTexts.more(numberText(Math.min(hitsAPage, total - hits.length)))}
        </Button>
      ) : null}
    </>
  );
}
