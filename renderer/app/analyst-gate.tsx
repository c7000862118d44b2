import { useState, type ReactNode } from 'react';
import type { Analyst } from '#shared-types/analyst.ts';
import { shellTexts } from '#shared-types/texts/shell.ts';
import { useEngineStore } from '../api/engine-store.ts';
import { useAnswer } from '../api/queries.ts';
import { BusyState } from '../ui/busy-state.tsx';
import { Button } from '../ui/button.tsx';
import { ErrorState } from '../ui/error-state.tsx';
import { AnalystForm } from './analyst-form.tsx';
import { changeSettings } from './settings-change.ts';

/** Before anything else: who works here. The journal and the report name them. */
export function AnalystGate({ children }: { children: ReactNode }) {
  const settings = useAnswer('settings.read', {});
  const switching = useEngineStore((store) => store.switching);
  if (settings.data !== undefined) {
    return settings.data.currentAnalystId === null ? <WhoWorksHere /> : children;
  }
  return (
    <main className="gate">
      {settings.error === null ? (
        <BusyState {...(switching ? { text: shellTexts.engine.switching, atOnce: true } : {})} />
      ) : (
        <ErrorState error={settings.error} onRetry={() => void settings.refetch()} />
      )}
    </main>
  );
}

function WhoWorksHere() {
  const analysts = useAnswer('analysts.list', {});
  const [entering, setEntering] = useState(false);
  const known = analysts.data ?? [];
  return (
    <main className="gate">
      <section className="gate-sheet">
        <h1>{shellTexts.analyst.title}</h1>
        <p className="secondary-words">{shellTexts.analyst.intro}</p>
        {analysts.error === null ? null : (
          <ErrorState inline error={analysts.error} onRetry={() => void analysts.refetch()} />
        )}
        {known.length > 0 && !entering ? (
          <KnownAnalysts known={known} onOther={() => setEntering(true)} />
        ) : (
          <AnalystForm submitLabel={shellTexts.analyst.enter} />
        )}
      </section>
    </main>
  );
}

function KnownAnalysts({ known, onOther }: { known: readonly Analyst[]; onOther: () => void }) {
  const [failed, setFailed] = useState<unknown>(null);
  return (
    <>
      <ul className="gate-people">
        {known.map((analyst) => (
          <li key={analyst.id}>
            <Button onClick={() => void changeSettings({ currentAnalystId: analyst.id }).catch(setFailed)}>
              {analyst.name}
            </Button>
            <span className="secondary-words">{analyst.qualification}</span>
          </li>
        ))}
      </ul>
      <div>
        <Button kind="quiet" onClick={onOther}>
          {shellTexts.analyst.someoneElse}
        </Button>
      </div>
      {failed === null ? null : <ErrorState inline error={failed} />}
    </>
  );
}
