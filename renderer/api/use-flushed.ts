import { useEffect } from 'react';
import { useEngineStore } from './engine-store.ts';

/**
 * Sends what a keeper holds unsaved whenever it could be lost: the window is left or hidden, the screen goes, or the
 * library is back after it was away.
 */
export function useFlushed(keeper: { readonly flush: () => Promise<void> }): void {
  const engine = useEngineStore((store) => store.state);

  useEffect(() => {
    if (engine === 'ready') void keeper.flush();
  }, [keeper, engine]);

  useEffect(() => {
    const save = () => void keeper.flush();
    window.addEventListener('pagehide', save);
    document.addEventListener('visibilitychange', save);
    return () => {
      window.removeEventListener('pagehide', save);
      document.removeEventListener('visibilitychange', save);
      save();
    };
  }, [keeper]);
}
