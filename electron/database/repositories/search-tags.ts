/** Finding cases by damage tag, and what is shown of the cases that were found. */
import type { Presence, DamageClass } from '#shared-types/finding.ts';
import type { BlobId, FindingId } from '#shared-types/ids.ts';
import type { DamageTag, KnownTag, MatchedFinding } from '#shared-types/search.ts';

import type { Db } from '../open-library.ts';

const tagFields = ['component', 'kind', 'zone', 'class', 'presence'] as const satisfies (keyof DamageTag)[];

/**
 * Rows of the cases with a finding that fits the tag, newest case first. Only what the tag fills in is asked for, so
 * that the index by part or by kind answers it.
 */
export function casesWithTag(db: Db, tag: DamageTag): number[] {
  const filled = tagFields.filter((field) => tag[field] !== null);
  const conditions = filled.map((field) => `f.${field} = @${field}`);
  return db
    .prepare<[DamageTag], number>(
      `SELECT c.id FROM teardown_case c
       WHERE c.id IN (SELECT f.case_row FROM finding f ${conditions.length > 0 ? 'WHERE' : ''} ${conditions.join(' AND ')})
       ORDER BY c.opened_at DESC, c.id DESC`,
    )
    .pluck()
    .all(tag);
}

type FindingRow = {
  uuid: string;
  number: number;
  class: DamageClass;
  presence: Presence;
  component: string;
  zone: string | null;
  kind: string;
};

/** The findings of one case that fit the tag, named in the words of the case's machine kind. */
export function findingsWithTag(db: Db, input: { caseRow: number; tag: DamageTag }): MatchedFinding[] {
  return db
    .prepare<[DamageTag & { caseRow: number }], FindingRow>(
      `SELECT f.uuid, f.number, f.class, f.presence,
         coalesce(component.label, f.component) AS component, coalesce(zone.label, f.zone) AS zone,
         coalesce(kind.label, f.kind) AS kind
       FROM finding f JOIN teardown_case c ON c.id = f.case_row
       LEFT JOIN pack_term component ON component.pack_row = c.pack_row AND component.list = 'component'
         AND component.owner = '' AND component.term = f.component
       LEFT JOIN pack_term zone ON zone.pack_row = c.pack_row AND zone.list = 'zone'
         AND zone.owner = f.component AND zone.term = f.zone
       LEFT JOIN pack_term kind ON kind.pack_row = c.pack_row AND kind.list = 'kind'
         AND kind.owner = '' AND kind.term = f.kind
       WHERE f.case_row = @caseRow AND (@component IS NULL OR f.component = @component)
         AND (@zone IS NULL OR f.zone = @zone) AND (@kind IS NULL OR f.kind = @kind)
         AND (@class IS NULL OR f.class = @class) AND (@presence IS NULL OR f.presence = @presence) ORDER BY f.number`,
    )
    .all({ ...input.tag, caseRow: input.caseRow })
    .map((row) => ({
      findingId: row.uuid as FindingId,
      number: row.number,
      class: row.class,
      presence: row.presence,
      component: row.component,
      zone: row.zone,
      kind: row.kind,
    }));
}

/** Pictures to recognise a case by: those that carry marks first. */
export function thumbnailsOf(db: Db, input: { caseRow: number; most: number }): BlobId[] {
  return db
    .prepare<[number, number], BlobId>(
      `SELECT b.uuid FROM photo p JOIN blob b ON b.id = p.blob_row
       WHERE p.case_row = ? AND p.removed_at IS NULL
       ORDER BY EXISTS (SELECT 1 FROM mark m WHERE m.photo_row = p.id) DESC, p.place LIMIT ?`,
    )
    .pluck()
    .all(input.caseRow, input.most);
}

/**
 * Part and kind of every finding in the library, with the number of cases that have it; named as the newest of these
 * cases names them.
 */
export function listKnownTags(db: Db): KnownTag[] {
  return db
    .prepare<[], KnownTag>(
      `WITH tag AS (
         SELECT component, kind, count(DISTINCT case_row) AS cases, max(case_row) AS newest
         FROM finding GROUP BY component, kind
       )
       SELECT t.component, t.kind, coalesce(component.label, t.component) AS componentLabel,
         coalesce(kind.label, t.kind) AS kindLabel, t.cases
       FROM tag t JOIN teardown_case c ON c.id = t.newest
       LEFT JOIN pack_term component ON component.pack_row = c.pack_row AND component.list = 'component'
         AND component.owner = '' AND component.term = t.component
       LEFT JOIN pack_term kind ON kind.pack_row = c.pack_row AND kind.list = 'kind'
         AND kind.owner = '' AND kind.term = t.kind
       ORDER BY t.cases DESC, componentLabel, kindLabel`,
    )
    .all();
}
