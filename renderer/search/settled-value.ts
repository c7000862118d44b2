import { useEffect, useState } from 'react';

/**
 * What is typed, once it has not changed for the given time (milliseconds); at once where what stands beside it has
 * changed, for then it was not by typing.
 */
export function useSettledText(text: string, beside: unknown, quietForMs: number): string {
  const [settled, setSettled] = useState({ text, beside });
  useEffect(() => {
    const timer = window.setTimeout(() => setSettled({ text, beside }), quietForMs);
    return () => window.clearTimeout(timer);
  }, [text, beside, quietForMs]);
  return settled.beside === beside ? settled.text : text;
}
