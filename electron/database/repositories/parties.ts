import { AppError } from '#shared-types/errors.ts';
import type { CaseId, PartyId } from '#shared-types/ids.ts';
import { partyRoles, type Party, type PartyFields, type PartyRole } from '#shared-types/party.ts';

import type { Db } from '../open-library.ts';
import { assertOneRow, refuseRowThere, rowAtRevision, rowOf } from './written-row.ts';

type Row = { id: number; uuid: string; name: string; details: string; revision: number };
type RoleRow = { party: number; role: PartyRole };

const toParty = (row: Row, roles: readonly PartyRole[]): Party => ({
  id: row.uuid as PartyId,
  revision: row.revision,
  name: row.name,
  roles: inTheirOrder(roles),
  details: row.details,
});

/** Each once, in the order of partyRoles. */
const inTheirOrder = (roles: readonly PartyRole[]) => partyRoles.filter((role) => roles.includes(role));

/** In the order in which they were entered. @throws AppError not-found */
export function listParties(db: Db, caseId: CaseId): Party[] {
  const caseRow = rowOf(db, 'case', caseId);
  const roles = db
    .prepare<[number], RoleRow>(
      `SELECT r.party_row AS party, r.role FROM party_role r JOIN party p ON p.id = r.party_row WHERE p.case_row = ?`,
    )
    .all(caseRow);
  const rolesOf = Map.groupBy(roles, (row) => row.party);
  return db
    .prepare<[number], Row>(
      'SELECT id, uuid, name, details, revision FROM party WHERE case_row = ? ORDER BY id',
    )
    .all(caseRow)
    .map((row) =>
      toParty(
        row,
        (rolesOf.get(row.id) ?? []).map(({ role }) => role),
      ),
    );
}

/** @throws AppError not-found */
export function readParty(db: Db, id: PartyId): Party {
  const row = db
    .prepare<[string], Row>('SELECT id, uuid, name, details, revision FROM party WHERE uuid = ?')
    .get(id);
  if (!row) throw new AppError('not-found', { thing: 'party' });
  const roles = db
    .prepare<[number], PartyRole>('SELECT role FROM party_role WHERE party_row = ?')
    .pluck()
    .all(row.id);
  return toParty(row, roles);
}

/** @throws AppError not-found */
export function caseOfParty(db: Db, id: PartyId): CaseId {
  const found = db
    .prepare<[string], CaseId>(
      'SELECT c.uuid FROM party p JOIN teardown_case c ON c.id = p.case_row WHERE p.uuid = ?',
    )
    .pluck()
    .get(id);
  if (found === undefined) throw new AppError('not-found', { thing: 'party' });
  return found;
}

/** @throws AppError not-found, stale-revision when it is there already */
export function addParty(db: Db, input: { id: PartyId; caseId: CaseId; fields: PartyFields }): void {
  const caseRow = rowOf(db, 'case', input.caseId);
  refuseRowThere(db, 'party', input.id);
  const result = db
    .prepare('INSERT INTO party (uuid, case_row, name, details, revision) VALUES (?, ?, ?, ?, 1)')
    .run(input.id, caseRow, input.fields.name, input.fields.details);
  assertOneRow(result, 'party entered');
  writeRoles(db, rowOf(db, 'party', input.id), input.fields.roles);
}

/** @throws AppError not-found, stale-revision */
export function writeParty(db: Db, input: { id: PartyId; revision: number; fields: PartyFields }): void {
  const row = rowAtRevision(db, 'party', input.id, input.revision);
  const result = db
    .prepare('UPDATE party SET name = ?, details = ?, revision = revision + 1 WHERE id = ?')
    .run(input.fields.name, input.fields.details, row);
  assertOneRow(result, 'party changed');
  db.prepare('DELETE FROM party_role WHERE party_row = ?').run(row);
  writeRoles(db, row, input.fields.roles);
}

/** @throws AppError not-found, stale-revision */
export function removeParty(db: Db, input: { id: PartyId; revision: number }): void {
  const row = rowAtRevision(db, 'party', input.id, input.revision);
  assertOneRow(db.prepare('DELETE FROM party WHERE id = ?').run(row), 'party removed');
}

function writeRoles(db: Db, partyRow: number, roles: readonly PartyRole[]): void {
  const insert = db.prepare('INSERT INTO party_role (party_row, role) VALUES (?, ?)');
  for (const role of inTheirOrder(roles)) assertOneRow(insert.run(partyRow, role), 'role of a party');
}
