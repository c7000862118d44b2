import { shellTexts } from '#shared-types/texts/shell.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { useEngineStore } from '../api/engine-store.ts';
import { Button } from '../ui/button.tsx';

/** Says when the process that holds the library is not there, and what to do when it cannot come back. */
export function EngineBanner() {
  const { state, error, switching } = useEngineStore();
  if (state === 'ready') return <div role="status" />;
  if (state === 'stopped') {
    return (
      <div className="engine-banner engine-banner-stopped" role="alert">
        <p>
          <strong>{error?.message ?? shellTexts.engine.stopped}</strong> {shellTexts.engine.whatToDo}
        </p>
        <Button onClick={() => window.location.reload()}>{commonTexts.reload}</Button>
      </div>
    );
  }
  return (
    <div className="engine-banner" role="status">
      <p>{switching ? shellTexts.engine.switching : shellTexts.engine[state]}</p>
    </div>
  );
}
