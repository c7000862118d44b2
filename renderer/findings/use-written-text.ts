/** Text that saves itself while it is written: after a pause in typing, when it is left, when its place or the window goes. */
import { useEffect, useRef, useState } from 'react';

/** Shorter than the 400 ms within which written text has to be on its way. */
const pauseMs = 350;

/**
 * `save` answers whether the text is in the library now; what could not be saved stays in its place as written.
 * It says itself what went wrong.
 */
export function useWrittenText(saved: string, save: (text: string) => boolean | Promise<boolean>) {
  const [draft, setDraft] = useState<string | null>(null);
  const waiting = useRef<{ readonly text: string; readonly timer: number } | null>(null);
  const latestSave = useRef(save);

  useEffect(() => {
    latestSave.current = save;
  }, [save]);

  const [flush] = useState(() => () => {
    const written = waiting.current;
    if (written === null) return;
    window.clearTimeout(written.timer);
    waiting.current = null;
    void Promise.resolve(latestSave.current(written.text)).then((isSaved) => {
      if (isSaved) setDraft((now) => (now === written.text ? null : now));
    });
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
    onValue: (text: string) => {
      setDraft(text);
      if (waiting.current !== null) window.clearTimeout(waiting.current.timer);
      waiting.current = { text, timer: window.setTimeout(flush, pauseMs) };
    },
    onBlur: flush,
  };
}
