/** The report's headings: each leads to its page, and to where what stands below it is written. */
import { meaningOf, type DestinationMeaning } from '#analysis/report/destinations.ts';
import type { CaseId, FindingId } from '#shared-types/ids.ts';
import { reportScreenTexts } from '#shared-types/texts/report-screen.ts';
import { Link } from 'wouter';
import { findingAddress, photoAddress, stationAddress, type Station } from '../app/addresses.ts';
import { Button } from '../ui/button.tsx';
import { focusSection } from './plan-panel.tsx';
import type { ContentsEntry } from './use-pdf.ts';

type WrittenStation = keyof typeof reportScreenTexts.writtenAt;

/** The station where what stands at a place is written; null for what is written nowhere or beside the pages. */
export function stationOf(meaning: DestinationMeaning): WrittenStation | null {
  switch (meaning.what) {
    case 'title':
    case 'claim':
    case 'instruction':
    case 'received':
    case 'answer':
      return 'claim';
    case 'findings':
    case 'finding':
      return 'findings';
    case 'plates':
    case 'plate':
      return 'marks';
    case 'chain':
      return 'chain';
    case 'register':
    case 'sheet':
      return 'photos';
    case 'own-section':
    case 'limits':
    case 'record':
    case 'signature':
      return null;
  }
}

/** Leads to where it is written. `findingIdOf` answers null for a finding that is gone. */
export function leadToWriting(
  meaning: DestinationMeaning,
  caseId: CaseId,
  findingIdOf: (number: number) => FindingId | null,
  navigate: (address: string) => void,
): void {
  if (meaning.what === 'own-section') {
    focusSection(meaning.place);
    return;
  }
  const findingId = meaning.what === 'finding' ? findingIdOf(meaning.number) : null;
  const station = stationOf(meaning);
  if (meaning.what === 'plate') navigate(photoAddress(caseId, meaning.photoId));
  else if (findingId !== null) navigate(findingAddress(caseId, findingId));
  else if (station !== null) navigate(stationAddress(caseId, station satisfies Station));
}

export function ReportContents(props: {
  caseId: CaseId;
  contents: readonly ContentsEntry[];
  onShow: (name: string) => void;
}) {
  const { caseId, contents, onShow } = props;
  const texts = reportScreenTexts;
  if (contents.length === 0) return null;
  return (
    <details className="report-contents">
      <summary>{texts.contents}</summary>
      <ul>
        {contents.map(({ title, name }) => {
          const meaning = meaningOf(name);
          const station = meaning === null ? null : stationOf(meaning);
          return (
            <li key={name}>
              <Button kind="quiet" aria-label={texts.toPage(title)} onClick={() => onShow(name)}>
                {title}
              </Button>
              {station === null ? null : (
                <Link href={stationAddress(caseId, station)}>{texts.writtenAt[station]}</Link>
              )}
            </li>
          );
        })}
      </ul>
    </details>
  );
}
