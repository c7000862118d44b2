/**
 * A choice from a list that is saved when it is settled on: a moment after the last change, at Enter, when the list is
 * left, when its place or the window goes. Walking down the list with the arrow keys saves nothing on the way.
 */
import { useEffect, useRef, useState, type KeyboardEvent } from 'react';

/** Long enough to look at one choice and go on to the next. */
const settleMs = 900;

/** `save` answers whether it is in the library now; it says itself what went wrong. */
export function useSettledChoice<Value extends string>(
  saved: Value | '',
  save: (value: Value | '') => Promise<boolean>,
) {
  const [draft, setDraft] = useState<Value | '' | null>(null);
  const waiting = useRef<{ readonly value: Value | ''; readonly timer: number } | null>(null);
  const latest = useRef({ saved, save });

  useEffect(() => {
    latest.current = { saved, save };
  }, [saved, save]);

  const [flush] = useState(() => () => {
    const settled = waiting.current;
    if (settled === null) return;
    window.clearTimeout(settled.timer);
    waiting.current = null;
    const done = () => setDraft((now) => (now === settled.value ? null : now));
    if (settled.value === latest.current.saved) done();
    else void latest.current.save(settled.value).then(done);
  });

  useEffect(() => {
    window.addEventListener('pagehide', flush);
    return () => {
      window.removeEventListener('pagehide', flush);
      flush();
    };
  }, [flush]);

  return {
    value: draft ?? saved,
    onValue: (value: Value | '') => {
      setDraft(value);
      if (waiting.current !== null) window.clearTimeout(waiting.current.timer);
      waiting.current = { value, timer: window.setTimeout(flush, settleMs) };
    },
    onBlur: flush,
    onKeyDown: (event: KeyboardEvent) => {
      if (event.key === 'Enter') flush();
    },
  };
}
