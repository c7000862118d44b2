/**
 * Findings that say the same thing twice, and findings that cannot both be right. They are shown, never settled: which
 * of them is wrong is the analyst's to say. Who denies whom is asked of knowledge/testimony.ts.
 */
import { findingTestimony, type FindingEvidence } from '#analysis/knowledge/finding-testimony.ts';
import { contradictionsAmong } from '#analysis/knowledge/testimony.ts';
import { bendAgainstRotation } from '#analysis/rotation/bend-against-rotation.ts';
import type { Finding } from '#shared-types/finding.ts';
import type { FindingId } from '#shared-types/ids.ts';
import type { KnowledgePack, PackComponent } from '#shared-types/knowledge-pack.ts';
import type { Mark } from '#shared-types/mark.ts';
import type { SeenTurning } from '#shared-types/rotation.ts';

/** What of a finding is compared; `number` orders what is told. */
export type ComparedFinding = FindingEvidence & Pick<Finding, 'bend'> & { readonly number: number };

/**
 * - same: both say that the same kind is there;
 * - narrower: both say something is there, and the second one's kind is a case of the first one's. Never certain:
 *   the imprint of a nut may stand among other dents of the same edge;
 * - denied: the first says present what the second looked for and did not find;
 * - not-examined: the first says something of a place at which the second could not look;
 * - part-missing: the first says that the part was not there, the second says what was or was not seen on it;
 * - marks-of-absent: one finding alone: marks show it, and it is said not to be there;
 * - bend-otherwise: one finding alone: its kind says one way of bending, its bend and the unit's rotation the other.
 */
export type ConflictKind =
  'same' | 'narrower' | 'denied' | 'not-examined' | 'part-missing' | 'marks-of-absent' | 'bend-otherwise';

export type Conflict = {
  readonly conflict: ConflictKind;
  /** One for those of one finding alone, else two, in the order in which `conflict` speaks of them. */
  readonly findings: readonly ComparedFinding[];
  /** False where they only may speak of the same damage: one does not say at which position or zone, say. */
  readonly certain: boolean;
};

/** What findings are held against beside each other. */
export type ComparedWith = {
  /** How many marks show a finding; none where it is left out. */
  readonly markCounts: ReadonlyMap<FindingId, number>;
  /** Which way the unit's rotor turns, where it was entered. */
  readonly rotation: SeenTurning | null;
};

/** How many marks show each finding. */
export function markCountsOf(marks: Iterable<Pick<Mark, 'findingId'>>): ReadonlyMap<FindingId, number> {
  const counts = new Map<FindingId, number>();
  for (const { findingId } of marks) {
    if (findingId !== null) counts.set(findingId, (counts.get(findingId) ?? 0) + 1);
  }
  return counts;
}

/**
 * The certain ones first, then by the numbers of the findings; the order of `findings` does not matter.
 * Findings of parts, zones or kinds that the pack does not have are passed over.
 */
export function conflictsAmong(
  pack: KnowledgePack,
  findings: readonly ComparedFinding[],
  { markCounts, rotation }: ComparedWith,
): readonly Conflict[] {
  const wider = widerKinds(pack);
  const ofComponent = Map.groupBy(findings, (finding) => finding.component);
  const found = pack.components.flatMap((component) => {
    const here = (ofComponent.get(component.id) ?? [])
      .filter((finding) => wider.has(finding.kind))
      .filter(({ zone }) => zone === null || component.zones.some((each) => each.id === zone))
      .sort((one, other) => one.number - other.number);
    const ground = { component, wider };
    return [...denials(pack, here, ground), ...pairs(here, ground), ...seenOnMissing(pack, here, ground)];
  });
  const marked = findings
    .filter(({ id, presence }) => presence === 'looked-for-absent' && (markCounts.get(id) ?? 0) > 0)
    .map((finding) => alone('marks-of-absent', finding));
  const bent = findings
    .filter((finding) => isBentOtherwise(pack, rotation, finding))
    .map((finding) => alone('bend-otherwise', finding));
  return [...found, ...marked, ...bent].sort(inOrder);
}

function alone(conflict: ConflictKind, finding: ComparedFinding): Conflict {
  return { conflict, findings: [finding], certain: true };
}

function isBentOtherwise(
  pack: KnowledgePack,
  rotation: SeenTurning | null,
  { kind, bend, presence }: ComparedFinding,
): boolean {
  const said = pack.kinds.find((known) => known.id === kind)?.bendIs;
  if (said === undefined || bend === null || presence !== 'present') return false;
  const { reads } = bendAgainstRotation(pack, rotation, bend);
  return reads !== 'not-decided' && reads !== said;
}

type Ground = {
  readonly component: PackComponent;
  /** Each kind with itself and every kind of which it is a case. */
  readonly wider: ReadonlyMap<string, ReadonlySet<string>>;
};

function widerKinds(pack: KnowledgePack): Map<string, Set<string>> {
  const narrows = new Map(pack.kinds.map((kind) => [kind.id, kind.narrows]));
  return new Map(
    pack.kinds.map((kind) => {
      const upwards = new Set<string>();
      for (let id: string | undefined = kind.id; id !== undefined && !upwards.has(id); id = narrows.get(id)) {
        upwards.add(id);
      }
      return [kind.id, upwards];
    }),
  );
}

/** Present ones that have no place left, and those that may lose theirs. */
function denials(pack: KnowledgePack, findings: readonly ComparedFinding[], ground: Ground): Conflict[] {
  const byId = new Map(findings.map((finding) => [finding.id, finding]));
  const contradictions = contradictionsAmong(
    findings.flatMap((finding) => findingTestimony(pack, finding) ?? []),
  );
  const certain = contradictions.flatMap(({ stated, deniedBy }) =>
    deniedBy.map((denier) => ({ stated: byId.get(stated.source), denier: byId.get(denier.source) })),
  );
  const contradicted = new Set(contradictions.map(({ stated }) => stated.source));
  const absent = findings.filter((finding) => finding.presence === 'looked-for-absent');
  const possible = findings
    .filter((finding) => finding.presence === 'present' && !contradicted.has(finding.id))
    .flatMap((stated) =>
      absent
        .filter((denier) => isCaseOf(ground, stated, denier) && meeting(ground, stated, denier) === 'maybe')
        .map((denier) => ({ stated, denier })),
    );
  const told = (pair: (typeof possible)[number], isCertain: boolean): Conflict => ({
    conflict: 'denied',
    findings: [pair.stated, pair.denier],
    certain: isCertain,
  });
  return [
    ...certain.flatMap(({ stated, denier }) =>
      stated === undefined || denier === undefined ? [] : [told({ stated, denier }, true)],
    ),
    ...possible.map((pair) => told(pair, false)),
  ];
}

/** Twice the same, and looked at although it could not be. */
function pairs(findings: readonly ComparedFinding[], ground: Ground): Conflict[] {
  return findings.flatMap((one, at) =>
    findings.slice(at + 1).flatMap((other): Conflict[] => {
      const met = meeting(ground, one, other);
      if (met === 'apart') return [];
      const certain = met === 'same';
      if (one.presence === 'present' && other.presence === 'present') {
        if (one.kind === other.kind) return [{ conflict: 'same', findings: [one, other], certain }];
        if (isCaseOf(ground, other, one))
          return [{ conflict: 'narrower', findings: [one, other], certain: false }];
        if (isCaseOf(ground, one, other))
          return [{ conflict: 'narrower', findings: [other, one], certain: false }];
        return [];
      }
      const [said, unseen] = one.presence === 'not-examined' ? [other, one] : [one, other];
      if (unseen.presence !== 'not-examined' || said.presence === 'not-examined') return [];
      // A rub can be seen where it cannot be seen whether it goes all round.
      const speaksOfIt =
        isCaseOf(ground, said, unseen) ||
        (said.presence === 'looked-for-absent' && isCaseOf(ground, unseen, said));
      return speaksOfIt ? [{ conflict: 'not-examined', findings: [said, unseen], certain }] : [];
    }),
  );
}

/** What was or was not seen on a part that was not there. */
function seenOnMissing(
  pack: KnowledgePack,
  findings: readonly ComparedFinding[],
  ground: Ground,
): Conflict[] {
  const saysMissing = ({ kind }: ComparedFinding) =>
    pack.kinds.some((known) => known.id === kind && known.partMissing === true);
  const missing = findings.filter((finding) => finding.presence === 'present' && saysMissing(finding));
  const seen = findings.filter((finding) => finding.presence !== 'not-examined' && !saysMissing(finding));
  const oneOnly = ground.component.positions.length === 0;
  return missing.flatMap((gone) =>
    seen.flatMap((finding): Conflict[] => {
      const met = between(gone.position, finding.position, oneOnly);
      if (met === 'apart') return [];
      return [{ conflict: 'part-missing', findings: [gone, finding], certain: met === 'same' }];
    }),
  );
}

type Meeting = 'same' | 'maybe' | 'apart';

/** Whether two findings of a part speak of the same place of it. */
function meeting({ component }: Ground, one: ComparedFinding, other: ComparedFinding): Meeting {
  const ofTheWhole = component.kinds.includes(one.kind) && component.kinds.includes(other.kind);
  const positions = between(one.position, other.position, component.positions.length === 0);
  const zones = between(one.zone, other.zone, ofTheWhole);
  if (positions === 'apart' || zones === 'apart') return 'apart';
  return positions === 'same' && zones === 'same' ? 'same' : 'maybe';
}

/** `nullSays`: that nothing is named says which it is, because there is but one. */
function between(one: string | null, other: string | null, nullSays: boolean): Meeting {
  if (one === null && other === null) return nullSays ? 'same' : 'maybe';
  if (one === null || other === null) return 'maybe';
  return one === other ? 'same' : 'apart';
}

/** Whether the first one's kind is the second one's, or a case of it. */
function isCaseOf({ wider }: Ground, one: ComparedFinding, other: ComparedFinding): boolean {
  return wider.get(one.kind)?.has(other.kind) ?? false;
}

function inOrder(one: Conflict, other: Conflict): number {
  if (one.certain !== other.certain) return one.certain ? -1 : 1;
  const [ones, others] = [one, other].map(({ findings }) =>
    findings.map(({ number }) => number).sort(byNumber),
  );
  const at = (ones ?? []).findIndex((number, place) => number !== others?.[place]);
  if (at >= 0) return (ones?.[at] ?? 0) - (others?.[at] ?? 0);
  return one.conflict < other.conflict ? -1 : one.conflict > other.conflict ? 1 : 0;
}

function byNumber(one: number, other: number): number {
  return one - other;
}
