import { Link } from 'wouter';
import type { CaseId } from '#shared-types/ids.ts';
import type { Excerpt, FoundExcerpt, MatchedFinding, SearchHit } from '#shared-types/search.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { searchTexts } from '#shared-types/texts/search.ts';
import { pictureAddress } from '../api/client.ts';
import { findingAddress, photoAddress, stationAddress } from '../app/addresses.ts';
import { unitText } from '../app/unit-text.ts';
import { ClassBadge } from '../ui/class-badge.tsx';
import { OtherCases } from './other-cases.tsx';

/** One case that fits: who it is, the words that fit, the findings that fit, and its photos. */
export function HitEntry({ hit }: { hit: SearchHit }) {
  const { case: found, excerpts, findings, thumbnails } = hit;
  const listed = new Set(findings.map(({ findingId }) => findingId));
  return (
    <>
      <div className="hit-words">
        <h3>
          <Link className="hit-link" href={stationAddress(found.id, 'claim')}>
            {found.number}
          </Link>{' '}
          <span className="hit-unit">{unitText(found.unit)}</span>
        </h3>
        <p className="secondary-words">
          {[found.customer, commonTexts.statuses[found.status], commonTexts.outcomes[found.outcome]]
            .filter(Boolean)
            .join(' · ')}
        </p>
        {excerpts.length === 0 ? null : (
          <dl className="hit-excerpts">
            {excerpts.map((one, index) => (
              <div key={index}>
                <dt>{searchTexts.excerptWhere[one.where]}</dt>
                <dd>
                  <ExcerptWords one={one} caseId={found.id} />
                  {one.finding === null || listed.has(one.finding.findingId) ? null : (
                    <OtherCases finding={one.finding} />
                  )}
                </dd>
              </div>
            ))}
          </dl>
        )}
        {findings.length === 0 ? null : (
          <ul className="hit-findings" aria-label={searchTexts.matchedFindings}>
            {findings.map((finding) => (
              <li key={finding.findingId}>
                {finding.presence === 'present' ? <ClassBadge of={finding.class} /> : null}
                <Link href={findingAddress(found.id, finding.findingId)}>{nameOf(finding)}</Link>
                {finding.presence === 'present' ? null : (
                  <span className="secondary-words">{commonTexts.presences[finding.presence]}</span>
                )}
                <OtherCases finding={finding} />
              </li>
            ))}
          </ul>
        )}
      </div>
      <div className="hit-photos">
        {thumbnails.map((blobId) => (
          <img key={blobId} src={pictureAddress(`thumbnail/${blobId}`)} alt="" loading="lazy" />
        ))}
      </div>
    </>
  );
}

/** Part, zone and damage come in the words of the case's own machine kind. */
function nameOf({ number, component, zone, kind }: MatchedFinding): string {
  return searchTexts.findingName(number, zone === null ? component : `${component}, ${zone}`, kind);
}

/** The words; where they stand in a finding or on a photo, the way there. */
function ExcerptWords({ one, caseId }: { one: FoundExcerpt; caseId: CaseId }) {
  const { excerpt, near, finding, photoId, presence } = one;
  if (near) {
    return <span className="hit-near">{searchTexts.near(excerpt.map(({ text }) => text).join(''))}</span>;
  }
  const words = <ExcerptLine excerpt={excerpt} />;
  const address =
    finding !== null
      ? findingAddress(caseId, finding.findingId)
      : photoId !== null
        ? photoAddress(caseId, photoId)
        : null;
  return (
    <>
      {finding?.presence === 'present' ? <ClassBadge of={finding.class} /> : null}
      <span className="hit-said">{address === null ? words : <Link href={address}>{words}</Link>}</span>
      {presence === null || presence === 'present' ? null : (
        <span className="secondary-words"> ({commonTexts.presences[presence]})</span>
      )}
    </>
  );
}

function ExcerptLine({ excerpt }: { excerpt: Excerpt }) {
  return excerpt.map((piece, index) =>
    piece.matched ? <mark key={index}>{piece.text}</mark> : <span key={index}>{piece.text}</span>,
  );
}
