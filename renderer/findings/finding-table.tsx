/** Columns and rows of the table of findings. */
import { Link } from 'wouter';
import type { BenchState, HeldFinding } from '#analysis/marks/bench-state.ts';
import { marksOnPhoto } from '#analysis/report/mark-labels.ts';
import { extentLabel, kindLabel, placeLabel } from '#analysis/report/term-labels.ts';
import { damageClasses } from '#shared-types/finding.ts';
import type { CaseId, FindingId, MarkId, PhotoId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import type { Photo } from '#shared-types/photo.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { findingsTexts } from '#shared-types/texts/findings.ts';
import { photoAddress } from '../app/addresses.ts';
import { noteMarkToShow } from '../marks/last-place.ts';
import { ClassBadge } from '../ui/class-badge.tsx';
import type { Column } from '../ui/data-table.tsx';

export type FindingMark = { readonly id: MarkId; readonly photoId: PhotoId; readonly label: string };
export type FindingRow = { readonly finding: HeldFinding; readonly marks: readonly FindingMark[] };

/** Each finding with its marks in the order in which they are numbered. */
export function rowsOf(
  photos: readonly Photo[],
  state: BenchState,
  labels: ReadonlyMap<MarkId, string>,
): readonly FindingRow[] {
  const ofFinding = new Map<FindingId, FindingMark[]>();
  const marks = [...state.marks.values()];
  for (const photo of photos) {
    for (const { id, photoId, findingId } of marksOnPhoto(marks, photo.id)) {
      if (findingId === null) continue;
      const known = ofFinding.get(findingId) ?? [];
      known.push({ id, photoId, label: labels.get(id) ?? '' });
      ofFinding.set(findingId, known);
    }
  }
  return [...state.findings.values()].map((finding) => ({
    finding,
    marks: ofFinding.get(finding.id) ?? [],
  }));
}

const { columns: heads } = findingsTexts;

export function findingColumns(caseId: CaseId, pack: KnowledgePack): readonly Column<FindingRow>[] {
  return [
    {
      key: 'number',
      head: heads.number,
      align: 'end',
      cell: ({ finding }) => finding.number,
      sortBy: ({ finding }) => finding.number,
    },
    {
      key: 'class',
      head: heads.class,
      cell: ({ finding }) => <ClassBadge of={finding.class} />,
      sortBy: ({ finding }) => damageClasses.indexOf(finding.class),
    },
    {
      key: 'place',
      head: heads.place,
      cell: ({ finding }) => placeLabel(pack, finding),
      sortBy: ({ finding }) => placeLabel(pack, finding),
    },
    {
      key: 'kind',
      head: heads.kind,
      cell: ({ finding }) =>
        finding.severity === null
          ? kindLabel(pack, finding.kind)
          : `${kindLabel(pack, finding.kind)}, ${findingsTexts.severities[finding.severity]}`,
      sortBy: ({ finding }) => kindLabel(pack, finding.kind),
    },
    {
      key: 'presence',
      head: heads.presence,
      cell: ({ finding }) => commonTexts.presences[finding.presence],
      sortBy: ({ finding }) => finding.presence,
    },
    {
      key: 'extent',
      head: heads.extent,
      cell: ({ finding }) =>
        finding.extent === null ? commonTexts.none : extentLabel(pack, finding, finding.extent),
      sortBy: ({ finding }) => (finding.extent === null ? null : finding.extent.affected / finding.extent.of),
    },
    {
      key: 'note',
      head: heads.note,
      className: 'findings-note',
      cell: ({ finding }) => <span title={finding.note}>{finding.note}</span>,
    },
    {
      key: 'marks',
      head: heads.marks,
      cell: (row) => <MarkLinks caseId={caseId} row={row} />,
      sortBy: (row) => row.marks.length,
    },
  ];
}

/** Labels that lead to the marks on their photos. */
export function MarkLinks({ caseId, row }: { caseId: CaseId; row: FindingRow }) {
  if (row.marks.length === 0) return <span className="secondary-words">{findingsTexts.noMarks}</span>;
  return (
    <span className="mark-links">
      {row.marks.map((mark) => (
        <Link
          key={mark.id}
          href={photoAddress(caseId, mark.photoId)}
          title={findingsTexts.toMark(mark.label)}
          onClick={(event) => {
            // The row would choose its finding and stay here.
            event.stopPropagation();
            noteMarkToShow(caseId, mark.id);
          }}
        >
          {mark.label}
        </Link>
      ))}
    </span>
  );
}
