import { useMemo } from 'react';
import { Link } from 'wouter';
import { conflictsAmong, markCountsOf } from '#analysis/findings/conflicts.ts';
import type { TeardownCase } from '#shared-types/case.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import { shellTexts } from '#shared-types/texts/shell.ts';
import { useAnswer } from '../api/queries.ts';
import { useSavedAt } from '../api/saved-store.ts';
import { classNames } from '../ui/class-names.ts';
import { clockText, numberText } from '../ui/number-words.ts';
import { shelfAddress, stationAddress, stations, type Station } from './addresses.ts';
import { ProgramButtons } from './program-buttons.tsx';
import { stationSigns, type StationSign } from './station-state.ts';

/** The case's stations in the order of the work, each with its dot and what is in it. */
export function Spine(props: { teardownCase: TeardownCase; pack: KnowledgePack; here: Station | null }) {
  const { teardownCase, pack, here } = props;
  const { rotation } = teardownCase.unit;
  const caseId = teardownCase.id;
  const photos = useAnswer('photos.list', { caseId }).data;
  const bench = useAnswer('bench.read', { caseId }).data;
  const chain = useAnswer('chain.read', { caseId }).data;
  const toSettle = useMemo(() => {
    if (bench === undefined) return false;
    const compared = { markCounts: markCountsOf(bench.marks), rotation };
    return conflictsAmong(pack, bench.findings, compared).some(({ certain }) => certain);
  }, [bench, pack, rotation]);
  const read = photos !== undefined && bench !== undefined && chain !== undefined;
  const contents = read ? { photos, chain, toSettle, ...bench } : null;
  const signs = stationSigns(teardownCase, contents);

  return (
    <nav className="spine" aria-label={shellTexts.stations}>
      <Link className="spine-back" href={shelfAddress}>
        {shellTexts.shelf}
      </Link>
      <ol className="spine-stations">
        {stations.map((station) => (
          <li key={station}>
            <StationLink
              href={stationAddress(caseId, station)}
              station={station}
              sign={signs[station]}
              here={station === here}
            />
          </li>
        ))}
      </ol>
      <div className="spine-foot">
        <ProgramButtons />
        <SavedNote teardownCase={teardownCase} />
      </div>
    </nav>
  );
}

function StationLink(props: { href: string; station: Station; sign: StationSign; here: boolean }) {
  const { href, station, sign, here } = props;
  const state = shellTexts.stationState[sign.state];
  return (
    <Link
      href={href}
      className={classNames('station', `station-${sign.state}`, here && 'station-here')}
      aria-current={here ? 'page' : undefined}
      title={`${shellTexts.station[station]}: ${state}`}
    >
      <i className="station-dot" aria-hidden="true" />
      <span>{shellTexts.station[station]}</span>
      <span className="station-count">
        {sign.count === null || sign.count === 0 ? null : numberText(sign.count)}
        <span className="only-read-out"> {state}</span>
      </span>
    </Link>
  );
}

/** How much the journal holds and when this case was last written. */
function SavedNote({ teardownCase }: { teardownCase: TeardownCase }) {
  const heard = useSavedAt(teardownCase.id);
  const latest = useAnswer('journal.list', { caseId: teardownCase.id, most: 1 }).data?.at(-1);
  const savedAt = heard ?? (latest === undefined ? null : new Date(latest.at));
  const entries = teardownCase.counts.journalEntries;
  return (
    <p className="spine-note">
      <span>{shellTexts.journalEntries(numberText(entries), entries === 1)}</span>
      <span>{savedAt === null ? shellTexts.nothingSaved : shellTexts.savedAt(clockText(savedAt))}</span>
    </p>
  );
}
