/** What is shown of the cases that were found: findings in the words of their machine kind, and pictures. */
import type { FindingTerms } from '#analysis/search/case-columns.ts';
import type { BlobId, FindingId } from '#shared-types/ids.ts';
import type { MatchedFinding } from '#shared-types/search.ts';

import type { Db } from '../open-library.ts';

export type NamedFinding = { readonly terms: FindingTerms; readonly finding: MatchedFinding };

type FindingRow = FindingTerms & { readonly uuid: string; readonly number: number };

const columns = 'f.uuid, f.number, f.component, f.zone, f.kind, f.class, f.presence';

type LabelRow = { list: string; owner: string; term: string; label: string };
/** Words of one machine kind by list, owner and id. */
type Labels = ReadonlyMap<string, string>;
/** A machine kind is never changed once cases were opened with it: its words are read once. */
const labelsOf = new WeakMap<Db, Map<number, Labels>>();

function labelsOfPack(db: Db, packRow: number): Labels {
  const known = labelsOf.get(db) ?? new Map<number, Labels>();
  labelsOf.set(db, known);
  const labels =
    known.get(packRow) ??
    new Map(
      db
        .prepare<[number], LabelRow>('SELECT list, owner, term, label FROM pack_term WHERE pack_row = ?')
        .all(packRow)
        .map(({ list, owner, term, label }) => [`${list} ${owner} ${term}`, label]),
    );
  known.set(packRow, labels);
  return labels;
}

function toNamed(labels: Labels, row: FindingRow): NamedFinding {
  const { uuid, number, ...terms } = row;
  const labelOf = (list: string, owner: string, term: string) =>
    labels.get(`${list} ${owner} ${term}`) ?? term;
  return {
    terms,
    finding: {
      findingId: uuid as FindingId,
      number,
      class: terms.class,
      presence: terms.presence,
      component: labelOf('component', '', terms.component),
      zone: terms.zone === null ? null : labelOf('zone', terms.component, terms.zone),
      kind: labelOf('kind', '', terms.kind),
      componentId: terms.component,
      kindId: terms.kind,
    },
  };
}

/** All findings of a case by their numbers, in the words of its machine kind. */
export function namedFindingsOf(db: Db, input: { caseRow: number; packRow: number }): NamedFinding[] {
  const labels = labelsOfPack(db, input.packRow);
  return db
    .prepare<[number], FindingRow>(`SELECT ${columns} FROM finding f WHERE f.case_row = ? ORDER BY f.number`)
    .all(input.caseRow)
    .map((row) => toNamed(labels, row));
}

/** One finding by its row. */
export function namedFinding(db: Db, packRow: number, row: number): NamedFinding | null {
  const found = db.prepare<[number], FindingRow>(`SELECT ${columns} FROM finding f WHERE f.id = ?`).get(row);
  return found === undefined ? null : toNamed(labelsOfPack(db, packRow), found);
}

/** Pictures to recognise a case by: those that carry marks first. */
export function thumbnailsOf(db: Db, input: { caseRow: number; most: number }): BlobId[] {
  return db
    .prepare<[number, number], BlobId>(
      // Only of those that are shown the blob is looked up.
      `WITH shown AS MATERIALIZED (
         SELECT p.blob_row, p.place, EXISTS (SELECT 1 FROM mark m WHERE m.photo_row = p.id) AS marked
         FROM photo p WHERE p.case_row = ? AND p.removed_at IS NULL ORDER BY marked DESC, p.place LIMIT ?
       )
       SELECT b.uuid FROM shown s JOIN blob b ON b.id = s.blob_row ORDER BY s.marked DESC, s.place`,
    )
    .pluck()
    .all(input.caseRow, input.most);
}
