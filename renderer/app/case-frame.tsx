import { lazy, Suspense, type ReactNode } from 'react';
import { Link, Redirect, useParams } from 'wouter';
import type { TeardownCase } from '#shared-types/case.ts';
import type { CaseId, PhotoId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import { shellTexts } from '#shared-types/texts/shell.ts';
import { useAnswer } from '../api/queries.ts';
import { BusyState } from '../ui/busy-state.tsx';
import { ErrorState } from '../ui/error-state.tsx';
import { shelfAddress, stationAddress, stations, type Station } from './addresses.ts';
import { CaseHeader } from './case-header.tsx';
import { Frame } from './frame.tsx';
import { NotFound } from './not-found.tsx';
import { ProgramHeader } from './program-header.tsx';
import { Spine } from './spine.tsx';

const ClaimScreen = lazy(async () => ({ default: (await import('../claim/claim-screen.tsx')).ClaimScreen }));
const PhotosScreen = lazy(async () => ({
  default: (await import('../photos/photos-screen.tsx')).PhotosScreen,
}));
const MarksScreen = lazy(async () => ({ default: (await import('../marks/marks-screen.tsx')).MarksScreen }));
const FindingsScreen = lazy(async () => ({
  default: (await import('../findings/findings-screen.tsx')).FindingsScreen,
}));
const ChainScreen = lazy(async () => ({ default: (await import('../chain/chain-screen.tsx')).ChainScreen }));
const ReportScreen = lazy(async () => ({
  default: (await import('../report/report-screen.tsx')).ReportScreen,
}));

type Address = { caseId: string; station?: string; inside?: string };

/** One case at one of its stations. */
export function CaseFrame() {
  const address = useParams<Address>();
  const caseId = address.caseId as CaseId;
  const station = stations.find((known) => known === address.station) ?? null;
  const teardownCase = useAnswer('cases.read', { caseId });
  const packName = teardownCase.data?.pack;
  const pack = useAnswer(
    'machine-kinds.read',
    packName === undefined ? null : { id: packName.id, version: packName.version },
  );

  if (address.station === undefined) return <Redirect to={stationAddress(caseId, 'claim')} replace />;

  const error = teardownCase.error ?? pack.error;
  if (teardownCase.data === undefined || pack.data === undefined) {
    return (
      <Frame title={shellTexts.shelf} header={<ProgramHeader />}>
        {error === null ? (
          <BusyState />
        ) : (
          <>
            <ErrorState
              error={error}
              onRetry={() => {
                void teardownCase.refetch();
                if (packName !== undefined) void pack.refetch();
              }}
            />
            <p className="under-state">
              <Link href={shelfAddress}>{shellTexts.backToShelf}</Link>
            </p>
          </>
        )}
      </Frame>
    );
  }

  const shown = teardownCase.data;
  return (
    <Frame
      title={station === null ? shown.number : `${shown.number} ${shellTexts.station[station]}`}
      header={<CaseHeader teardownCase={shown} />}
      spine={<Spine teardownCase={shown} pack={pack.data} here={station} />}
    >
      <Suspense fallback={<BusyState />}>
        {station === null ? <NotFound /> : screenOf(station, shown, pack.data, address.inside)}
      </Suspense>
    </Frame>
  );
}

/** Screens keep their own state for one case: another case gets them anew. */
function screenOf(
  station: Station,
  teardownCase: TeardownCase,
  pack: KnowledgePack,
  inside: string | undefined,
): ReactNode {
  const given = { teardownCase, pack };
  const key = teardownCase.id;
  switch (station) {
    case 'claim':
      return <ClaimScreen key={key} {...given} />;
    case 'photos':
      return <PhotosScreen key={key} {...given} />;
    case 'marks':
      return <MarksScreen key={key} {...given} photoId={(inside ?? null) as PhotoId | null} />;
    case 'findings':
      return <FindingsScreen key={key} {...given} />;
    case 'chain':
      return <ChainScreen key={key} {...given} />;
    case 'report':
      return <ReportScreen key={key} {...given} />;
  }
}
