/** Columns of the table of findings. On a narrow window some of them lie under others: findings-screen.css says which. */
import { damageClasses, presences, severities } from '#shared-types/finding.ts';
import { bendLabel, extentLabel, kindLabel, partLabel, placeLabel } from '#analysis/report/term-labels.ts';
import type { CaseId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { findingsTexts } from '#shared-types/texts/findings.ts';
import { ClassBadge } from '../ui/class-badge.tsx';
import type { Column } from '../ui/data-table.tsx';
import { conflictWords, type FindingRow } from './finding-rows.ts';
import { MarkPicture } from './mark-picture.tsx';

const { columns: heads } = findingsTexts;
const mostPicturesInRow = 3;

export function findingColumns(caseId: CaseId, pack: KnowledgePack): readonly Column<FindingRow>[] {
  const words = termWords(pack);
  return [
    {
      key: 'number',
      head: heads.number,
      align: 'end',
      className: 'finding-number',
      cell: ({ finding }) => finding.number,
      sortBy: ({ finding }) => finding.number,
    },
    {
      key: 'conflicts',
      head: heads.conflicts,
      headHidden: true,
      className: 'finding-sign',
      cell: (row) => <ConflictSign row={row} />,
    },
    {
      key: 'class',
      head: heads.class,
      cell: ({ finding }) =>
        finding.presence === 'present' ? <ClassBadge of={finding.class} /> : <NoClass />,
      sortBy: ({ finding }) => (finding.presence === 'present' ? damageClasses.indexOf(finding.class) : null),
    },
    {
      key: 'part',
      head: heads.part,
      className: 'finding-part',
      cell: ({ finding }) => (
        <>
          {words.component(finding.component)}
          <span className="finding-under finding-under-place">{words.under(finding)}</span>
        </>
      ),
      sortBy: ({ finding }) => placeLabel(pack, finding),
    },
    {
      key: 'position',
      head: heads.position,
      className: 'finding-beside',
      cell: ({ finding }) => (finding.position === null ? null : words.position(finding.position)),
      sortBy: ({ finding }) => (finding.position === null ? null : words.position(finding.position)),
    },
    {
      key: 'zone',
      head: heads.zone,
      className: 'finding-beside',
      cell: ({ finding }) => words.zone(finding),
      sortBy: ({ finding }) => words.zone(finding) || null,
    },
    {
      key: 'kind',
      head: heads.kind,
      className: 'finding-kind',
      cell: ({ finding }) => (
        <>
          {kindLabel(pack, finding.kind)}
          <span className="finding-under finding-under-said">{words.said(finding)}</span>
        </>
      ),
      sortBy: ({ finding }) => kindLabel(pack, finding.kind),
    },
    {
      key: 'severity',
      head: heads.severity,
      className: 'finding-beside',
      cell: ({ finding }) => words.severity(finding),
      sortBy: ({ finding }) =>
        finding.severity === null || finding.presence !== 'present'
          ? null
          : severities.indexOf(finding.severity),
    },
    {
      key: 'extent',
      head: heads.extent,
      cell: ({ finding }) =>
        finding.extent === null ? commonTexts.none : extentLabel(pack, finding, finding.extent),
      sortBy: ({ finding }) => (finding.extent === null ? null : finding.extent.affected / finding.extent.of),
    },
    {
      key: 'bend',
      head: heads.bend,
      className: 'finding-beside finding-bend',
      cell: ({ finding }) => words.bend(finding),
      sortBy: ({ finding }) => words.bend(finding) || null,
    },
    {
      key: 'presence',
      head: heads.presence,
      cell: ({ finding }) => commonTexts.presences[finding.presence],
      sortBy: ({ finding }) => presences.indexOf(finding.presence),
    },
    {
      key: 'note',
      head: heads.note,
      className: 'finding-note',
      cell: ({ finding }) => <span title={finding.note}>{finding.note}</span>,
      sortBy: ({ finding }) => finding.note || null,
    },
    {
      key: 'marks',
      head: heads.marks,
      className: 'finding-pictures',
      cell: (row) => <Pictures caseId={caseId} row={row} damage={damageOf(pack, row)} />,
      sortBy: (row) => row.marks.length,
    },
  ];
}

/** "worn away, thrust bearing, front pads" */
export function damageOf(pack: KnowledgePack, { finding }: FindingRow): string {
  return `${kindLabel(pack, finding.kind)}, ${placeLabel(pack, finding)}`;
}

export function NoClass() {
  return (
    <span className="secondary-words">
      <span aria-hidden="true">{findingsTexts.noClassSign}</span>
      <span className="only-read-out">{findingsTexts.noClass}</span>
    </span>
  );
}

type Said = FindingRow['finding'];

/** The machine kind's words for what a cell shows; empty where there is nothing to show. */
function termWords(pack: KnowledgePack) {
  const component = (id: string) => partLabel(pack, { component: id, position: null });
  const position = (id: string) => pack.positions.find((known) => known.id === id)?.label ?? id;
  const zone = (finding: Said) => {
    if (finding.zone === null) return '';
    const zones = pack.components.find(({ id }) => id === finding.component)?.zones ?? [];
    return zones.find(({ id }) => id === finding.zone)?.label ?? finding.zone;
  };
  const severity = ({ severity: how, presence }: Said) =>
    how === null || presence !== 'present' ? '' : findingsTexts.severities[how];
  const bend = ({ bend: way, presence }: Said) =>
    way === null || presence !== 'present' ? '' : bendLabel(pack, way);
  const joined = (...words: readonly string[]) => words.filter((word) => word !== '').join(', ');
  return {
    component,
    position,
    zone,
    severity,
    bend,
    under: (finding: Said) =>
      joined(finding.position === null ? '' : position(finding.position), zone(finding)),
    said: (finding: Said) => joined(severity(finding), bend(finding)),
  };
}

function ConflictSign({ row }: { row: FindingRow }) {
  const words = conflictWords(row);
  if (words === null) return null;
  const certain = row.conflicts.some((conflict) => conflict.certain);
  return (
    <span className={certain ? 'conflict-sign' : 'conflict-sign-possible'} title={words}>
      <span aria-hidden="true">
        {certain ? findingsTexts.conflicts.sign : findingsTexts.conflicts.possibleSign}
      </span>
      <span className="only-read-out">{words}</span>
    </span>
  );
}

function Pictures({ caseId, row, damage }: { caseId: CaseId; row: FindingRow; damage: string }) {
  if (row.marks.length === 0) return <span className="secondary-words">{findingsTexts.noMarks}</span>;
  const more = row.marks.length - mostPicturesInRow;
  return (
    <span className="mark-pictures">
      {row.marks.slice(0, mostPicturesInRow).map((mark) => (
        <MarkPicture key={mark.id} caseId={caseId} mark={mark} damage={damage} size="small" />
      ))}
      {more <= 0 ? null : (
        <span className="secondary-words" title={findingsTexts.moreMarks(more)}>
          <span aria-hidden="true">{findingsTexts.moreMarksShort(more)}</span>
          <span className="only-read-out">{findingsTexts.moreMarks(more)}</span>
        </span>
      )}
    </span>
  );
}
