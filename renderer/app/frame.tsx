import { useEffect, useRef, type ReactNode } from 'react';
import { useLocation } from 'wouter';
import { commonTexts } from '#shared-types/texts/common.ts';
import { shellTexts } from '#shared-types/texts/shell.ts';
import { placeOf } from './addresses.ts';
import { EngineBanner } from './engine-banner.tsx';
import { ErrorBoundary } from './error-boundary.tsx';
import { useHeadingFocus } from './heading-focus.ts';

/** Header over the whole width, the spine where there is one, and the work. */
export function Frame(props: { title: string; header: ReactNode; spine?: ReactNode; children: ReactNode }) {
  const { title, header, spine, children } = props;
  const [location] = useLocation();
  const main = useRef<HTMLElement>(null);
  const place = placeOf(location);
  useHeadingFocus(main, place);

  useEffect(() => {
    document.title = `${title} – ${commonTexts.programName}`;
  }, [title]);

  return (
    <div className="frame-holder">
      <a
        className="skip-link"
        href="#work"
        onClick={(event) => {
          event.preventDefault();
          main.current?.focus();
        }}
      >
        {shellTexts.skipToWork}
      </a>
      <div className={spine === undefined ? 'frame' : 'frame frame-with-spine'}>
        <header className="frame-header">{header}</header>
        <EngineBanner />
        {spine}
        <main className="frame-work" id="work" ref={main} tabIndex={-1} aria-label={title}>
          <ErrorBoundary key={place} where={place}>
            {children}
          </ErrorBoundary>
        </main>
      </div>
    </div>
  );
}
