/** Which marks are out of sight in this window. Looking only: they are saved and printed like all others. */
import { create } from 'zustand';
import type { MarkId } from '#shared-types/ids.ts';

type Looking = { readonly hidden: ReadonlySet<MarkId>; readonly allHidden: boolean };

export const useLooking = create<Looking>(() => ({ hidden: new Set(), allHidden: false }));

export function hideMarks(ids: Iterable<MarkId>): void {
  useLooking.setState(({ hidden }) => ({ hidden: new Set([...hidden, ...ids]) }));
}

export function showMark(id: MarkId): void {
  useLooking.setState(({ hidden }) => ({
    hidden: new Set([...hidden].filter((each) => each !== id)),
    allHidden: false,
  }));
}

/** Brings the marks of one photo back into sight. */
export function showAllMarks(ids: Iterable<MarkId>): void {
  const shown = new Set(ids);
  useLooking.setState(({ hidden }) => ({
    hidden: new Set([...hidden].filter((id) => !shown.has(id))),
    allHidden: false,
  }));
}

export function toggleAllHidden(): boolean {
  const allHidden = !useLooking.getState().allHidden;
  useLooking.setState({ allHidden });
  return allHidden;
}

/** All marks in sight again, but for those hidden one by one. */
export function endAllHidden(): void {
  useLooking.setState({ allHidden: false });
}
