/** The chain station: what led to what, drawn as it will be printed. */
import type { TeardownCase } from '#shared-types/case.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import { chainTexts } from '#shared-types/texts/chain.ts';
import { benchOfCase, useBench } from '../marks/bench-store.ts';
import { BusyState } from '../ui/busy-state.tsx';
import { ErrorState } from '../ui/error-state.tsx';
import { chainOfCase, useChain } from './chain-store.ts';
import { ChainWork } from './chain-work.tsx';
import './chain.css';

export function ChainScreen({ teardownCase, pack }: { teardownCase: TeardownCase; pack: KnowledgePack }) {
  const caseId = teardownCase.id;
  const bench = useBench(caseId);
  const chain = useChain(caseId);
  const failure = chain.error ?? bench.error;
  if (failure !== null) {
    const retry = () => {
      if (chain.error !== null) chainOfCase(caseId).retry();
      if (bench.error !== null) benchOfCase(caseId).retry();
    };
    return (
      <>
        <h1 className="only-read-out">{chainTexts.heading}</h1>
        <ErrorState error={failure} onRetry={retry} />
      </>
    );
  }
  if (chain.desk === null || bench.desk === null) return <BusyState />;
  return (
    <ChainWork
      teardownCase={teardownCase}
      pack={pack}
      desk={chain.desk}
      findings={bench.desk.confirmed.findings}
    />
  );
}
