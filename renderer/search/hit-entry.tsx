import { Link } from 'wouter';
import type { Excerpt, MatchedFinding, SearchHit } from '#shared-types/search.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { searchTexts } from '#shared-types/texts/search.ts';
import { pictureAddress } from '../api/client.ts';
import { findingAddress, stationAddress } from '../app/addresses.ts';
import { unitText } from '../app/unit-text.ts';
import { ClassBadge } from '../ui/class-badge.tsx';

/** One case that fits: who it is, the words that fit, the findings that fit, and its photos. */
export function HitEntry({ hit }: { hit: SearchHit }) {
  const { case: found, excerpts, findings, thumbnails } = hit;
  return (
    <li className="hit">
      <div className="hit-words">
        <h2>
          <Link href={stationAddress(found.id, 'claim')}>{found.number}</Link>{' '}
          <span className="hit-unit">{unitText(found.unit)}</span>
        </h2>
        <p className="secondary-words">
          {[found.customer, commonTexts.statuses[found.status], commonTexts.outcomes[found.outcome]]
            .filter(Boolean)
            .join(' · ')}
        </p>
        {excerpts.length === 0 ? null : (
          <dl className="hit-excerpts">
            {excerpts.map(({ where, excerpt, presence }, index) => (
              <div key={index}>
                <dt>{searchTexts.excerptWhere[where] ?? where}</dt>
                <dd>
                  <ExcerptLine excerpt={excerpt} />
                  {presence === null || presence === 'present' ? null : (
                    <span className="secondary-words"> ({commonTexts.presences[presence]})</span>
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
                <ClassBadge of={finding.class} />
                <Link href={findingAddress(found.id, finding.findingId)}>{nameOf(finding)}</Link>
                {finding.presence === 'present' ? null : (
                  <span className="secondary-words">{commonTexts.presences[finding.presence]}</span>
                )}
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
    </li>
  );
}

/** Part, zone and damage come in the words of the case's own machine kind. */
function nameOf({ number, component, zone, kind }: MatchedFinding): string {
  return searchTexts.findingName(number, zone === null ? component : `${component}, ${zone}`, kind);
}

function ExcerptLine({ excerpt }: { excerpt: Excerpt }) {
  return excerpt.map((piece, index) =>
    piece.matched ? <mark key={index}>{piece.text}</mark> : <span key={index}>{piece.text}</span>,
  );
}
