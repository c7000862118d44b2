import { useEffect, type RefObject } from 'react';

/** The place whose heading had the focus last, or the one the page was opened at. */
let arrivedAt: string | null = null;

/**
 * After a change of place the keyboard stands at the new screen's heading, and a screen reader reads it.
 * A screen that is still being fetched has no heading yet: until it comes, focus waits on the main region.
 */
export function useHeadingFocus(main: RefObject<HTMLElement | null>, place: string): void {
  useEffect(() => {
    const region = main.current;
    arrivedAt ??= place;
    if (region === null || arrivedAt === place) return;
    // Typing in the find box opens the search screen: whoever writes keeps the pen.
    if (document.activeElement instanceof HTMLInputElement || focusHeading(region)) {
      arrivedAt = place;
      return;
    }
    region.focus({ preventScroll: true });
    const watch = new MutationObserver(() => {
      const leftAlready = document.activeElement !== region;
      if (!leftAlready && !focusHeading(region)) return;
      arrivedAt = place;
      watch.disconnect();
    });
    watch.observe(region, { childList: true, subtree: true });
    return () => watch.disconnect();
  }, [main, place]);
}

function focusHeading(region: HTMLElement): boolean {
  const heading = region.querySelector<HTMLElement>('h1');
  if (heading === null) return false;
  heading.tabIndex = -1;
  heading.focus({ preventScroll: true });
  return true;
}
