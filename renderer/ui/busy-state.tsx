import { useEffect, useState } from 'react';
import { commonTexts } from '#shared-types/texts/common.ts';

const patienceMs = 500;

/** Stands where an answer is awaited. It shows itself only when the wait is long enough to be noticed. */
export function BusyState({ text = commonTexts.busy, atOnce = false }: { text?: string; atOnce?: boolean }) {
  const [shown, setShown] = useState(atOnce);

  useEffect(() => {
    if (atOnce) return;
    const timer = window.setTimeout(() => setShown(true), patienceMs);
    return () => window.clearTimeout(timer);
  }, [atOnce]);

  return (
    <div className="state-place" role="status" aria-busy="true">
      {shown ? (
        <p className="busy">
          <span className="busy-bar" aria-hidden="true" />
          {text}
        </p>
      ) : null}
    </div>
  );
}
