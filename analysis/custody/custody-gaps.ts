/** Where the custody of an item, as told, does not join up. */
import { isHandover, type CustodyEntry } from '#shared-types/custody.ts';
import { isCertainlyBefore, spanOf, type ToldSpan } from '../text/told-span.ts';

export type CustodyGap =
  /** Who hands it on is not who had it last. `before` is the entry by which that one had it. */
  | { readonly kind: 'other-hands'; readonly entry: CustodyEntry; readonly before: CustodyEntry }
  /** It was opened, cleaned or sectioned, and nothing says that anybody had received it by then. */
  | { readonly kind: 'not-yet-received'; readonly entry: CustodyEntry };

const deedsThatNeedReceipt: readonly CustodyEntry['event'][] = ['opened', 'cleaned', 'sectioned'];

/**
 * Item by item, in the order in which the items first stand in the list. Struck entries count for nothing; names of
 * items and people are the same whatever their capitals and blanks.
 *
 * @param entries in the order in which they were entered, or any other: times and instants of entry decide
 */
export function custodyGaps(entries: readonly CustodyEntry[]): CustodyGap[] {
  const valid = entries.filter((entry) => entry.struck === null);
  return [...Map.groupBy(valid, (entry) => called(entry.item)).values()].flatMap(gapsOfItem);
}

/** A name as it is compared. */
const called = (name: string) => name.normalize('NFKC').trim().replace(/\s+/gu, ' ').toLowerCase();

type Placed = { readonly entry: CustodyEntry; readonly span: ToldSpan };

function gapsOfItem(entries: readonly CustodyEntry[]): CustodyGap[] {
  const placed = entries.map((entry) => ({ entry, span: spanOf(entry.at) }));
  const receipts = placed.filter(({ entry: { event } }) => event === 'received' || event === 'moved');
  let last: CustodyEntry | null = null;
  const gaps: CustodyGap[] = [];
  for (const { entry, span } of inOrderOfTime(placed)) {
    if (isHandover(entry.event)) {
      if (last !== null && called(last.to) !== called(entry.from)) {
        gaps.push({ kind: 'other-hands', entry, before: last });
      }
      last = entry;
    } else if (
      deedsThatNeedReceipt.includes(entry.event) &&
      receipts.every((receipt) => isCertainlyBefore(span, receipt.span))
    ) {
      gaps.push({ kind: 'not-yet-received', entry });
    }
  }
  return gaps;
}

/**
 * Earlier before later; what was told too coarsely to say stays in the order in which it was entered. Taken one by
 * one, because "certainly before" leaves some pairs open and is no order to sort by.
 */
function inOrderOfTime(entries: readonly Placed[]): Placed[] {
  const left = [...entries].sort((one, other) => comparedText(one.entry.enteredAt, other.entry.enteredAt));
  const ordered: Placed[] = [];
  while (left.length > 0) {
    const at = left.findIndex((one) => !left.some((other) => isCertainlyBefore(other.span, one.span)));
    ordered.push(...left.splice(Math.max(at, 0), 1));
  }
  return ordered;
}

/** Instants are ISO 8601 in UTC with a fixed length: their letters sort as they do. */
const comparedText = (one: string, other: string) => (one < other ? -1 : one > other ? 1 : 0);
