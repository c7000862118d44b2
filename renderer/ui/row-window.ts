/** Of a long list only the rows in sight, and a few about them, are in the page. */
import {
  defaultRangeExtractor,
  observeElementOffset,
  observeElementRect,
  useVirtualizer,
  type Range,
  type Virtualizer,
} from '@tanstack/react-virtual';
import { useLayoutEffect, useState, type RefObject } from 'react';

type Options<Held extends Element> = {
  /** What holds the rows. */
  readonly body: RefObject<Held | null>;
  readonly count: number;
  readonly keyOf: (index: number) => string;
  /** Height of a row that was not yet seen, in CSS pixels. */
  readonly rowHeight: number;
  /** Rows that stay in the page wherever they are: the one that has the keyboard. */
  readonly pinned: readonly number[];
  /** False: every row is in the page. */
  readonly on: boolean;
};

/** A row, and how many CSS pixels of rows that are not in the page lie before it. */
export type RowInWindow = { readonly index: number; readonly gapBefore: number };

export type RowWindow = {
  readonly rows: readonly RowInWindow[];
  readonly gapAfter: number;
  /** Takes each row as it comes into the page; it carries its index as `data-index`. */
  readonly measure: ((row: Element | null) => void) | undefined;
};

const rowsBeyond = 8;

export function useRowWindow<Held extends Element>(options: Options<Held>): RowWindow {
  const { body, count, keyOf, rowHeight, pinned, on } = options;
  const [place, setPlace] = useState<Place | null>(null);

  // After every rendering: what stands above the rows may have grown, the window may scroll as a whole now.
  useLayoutEffect(() => {
    if (!on) return;
    const look = () => {
      const found = body.current === null ? null : placeOf(body.current);
      setPlace((known) => (samePlace(known, found) ? known : found));
    };
    look();
    window.addEventListener('resize', look);
    return () => window.removeEventListener('resize', look);
  });

  const wholePage = place?.scroller === document.documentElement;
  // eslint-disable-next-line react-hooks/incompatible-library -- no compiler memoizes here
  const virtualizer = useVirtualizer<Element, Element>({
    count: on ? count : 0,
    getScrollElement: () => place?.scroller ?? null,
    scrollMargin: place?.above ?? 0,
    estimateSize: () => rowHeight,
    getItemKey: keyOf,
    overscan: rowsBeyond,
    useFlushSync: false,
    observeElementRect: wholePage ? observePageSize : observeElementRect,
    observeElementOffset: wholePage ? observePageOffset : observeElementOffset,
    rangeExtractor: rangeWith(pinned),
  });

  if (!on) {
    return {
      rows: Array.from({ length: count }, (_, index) => ({ index, gapBefore: 0 })),
      gapAfter: 0,
      measure: undefined,
    };
  }
  const above = place?.above ?? 0;
  let end = above;
  const rows = virtualizer.getVirtualItems().map((item): RowInWindow => {
    const gapBefore = Math.max(0, item.start - end);
    end = item.end;
    return { index: item.index, gapBefore };
  });
  return {
    rows,
    gapAfter: Math.max(0, virtualizer.getTotalSize() + above - end),
    measure: virtualizer.measureElement,
  };
}

/** The rows in sight and a few about them, and those that are pinned, wherever they are. */
export function rangeWith(pinned: readonly number[]): (range: Range) => number[] {
  return (range) => {
    const there = pinned.filter((index) => index < range.count);
    return [...new Set([...defaultRangeExtractor(range), ...there])].sort((a, b) => a - b);
  };
}

/** What scrolls the rows, and how far below the top of what it scrolls they begin. */
type Place = { readonly scroller: Element; readonly above: number };

function placeOf(rows: Element): Place {
  const scroller = scrollerOf(rows);
  const top = scroller === document.documentElement ? 0 : scroller.getBoundingClientRect().top;
  return { scroller, above: Math.round(rows.getBoundingClientRect().top - top + scroller.scrollTop) };
}

function samePlace(one: Place | null, other: Place | null): boolean {
  return one?.scroller === other?.scroller && one?.above === other?.above;
}

/** A box that could scroll but holds all it has does not count: on a narrow window the page scrolls as a whole. */
function scrollerOf(rows: Element): Element {
  for (let box = rows.parentElement; box !== null; box = box.parentElement) {
    const { overflowY } = getComputedStyle(box);
    if ((overflowY === 'auto' || overflowY === 'scroll') && box.scrollHeight > box.clientHeight) return box;
  }
  return document.documentElement;
}

type Observed = Virtualizer<Element, Element>;

function observePageSize(_: Observed, tell: (size: { width: number; height: number }) => void) {
  const look = () => tell({ width: window.innerWidth, height: window.innerHeight });
  look();
  window.addEventListener('resize', look);
  return () => window.removeEventListener('resize', look);
}

function observePageOffset(_: Observed, tell: (offset: number, isScrolling: boolean) => void) {
  const scrolled = () => tell(window.scrollY, true);
  const still = () => tell(window.scrollY, false);
  still();
  window.addEventListener('scroll', scrolled, { passive: true });
  window.addEventListener('scrollend', still);
  return () => {
    window.removeEventListener('scroll', scrolled);
    window.removeEventListener('scrollend', still);
  };
}
