/** Random gestures at the bench, made so that each fits the state it is carried out on. */
import fc from 'fast-check';
import type { BenchPatch, BenchState } from '#analysis/marks/bench-state.ts';
import { imagePoint } from '#analysis/marks/planes.ts';
import { damageClasses, type FindingFields } from '#shared-types/finding.ts';
import type { FindingId, MarkId, PhotoId } from '#shared-types/ids.ts';
import type { MarkFields } from '#shared-types/mark.ts';

export const photoId = '00000000-0000-4000-8000-000000000001' as PhotoId;

export function markId(n: number): MarkId {
  return `00000000-0000-4000-8000-1${String(n).padStart(11, '0')}` as MarkId;
}

export function findingId(n: number): FindingId {
  return `00000000-0000-4000-8000-2${String(n).padStart(11, '0')}` as FindingId;
}

export function findingFields(fields: Partial<FindingFields> = {}): FindingFields {
  return {
    component: 'wheel',
    position: null,
    zone: null,
    kind: 'dent',
    class: 'primary',
    presence: 'present',
    severity: null,
    extent: null,
    bend: null,
    note: '',
    ...fields,
  };
}

export function markFields(id: MarkId, tipX: number, ofFinding: FindingId | null): MarkFields {
  return {
    id,
    photoId,
    findingId: ofFinding,
    geometry: { kind: 'arrow', v: 1, tail: imagePoint(0, 0), tip: imagePoint(tipX, 10) },
    order: 0,
  };
}

type Seeded = { readonly what: number; readonly pick: number; readonly value: number };

const seeded = fc.record({
  what: fc.integer({ min: 0, max: 5 }),
  pick: fc.nat(7),
  value: fc.nat(5000),
});

/** One gesture is a handful of steps; the steps are turned into patches against the state. */
export const gestures = fc.array(fc.array(seeded, { minLength: 1, maxLength: 4 }), {
  minLength: 1,
  maxLength: 12,
});

export function patchesOf(steps: readonly Seeded[], state: BenchState): BenchPatch[] {
  return steps.map(({ what, pick, value }): BenchPatch => {
    const mark = markId(pick);
    const finding = findingId(pick % 4);
    const damageClass = damageClasses[value % damageClasses.length] ?? 'primary';
    switch (what) {
      case 0:
        return { patch: 'remove-mark', markId: mark };
      case 1:
        return { patch: 'remove-finding', findingId: finding };
      case 2:
        return {
          patch: 'put-finding',
          findingId: finding,
          fields: findingFields({ note: `note ${value}`, class: damageClass }),
        };
      default:
        return {
          patch: 'put-mark',
          mark: markFields(mark, value, state.findings.has(finding) ? finding : null),
        };
    }
  });
}

/** What a user sees of a state: revisions and order of arrival left out. */
export function contentOf(state: BenchState): unknown {
  const byId = (a: { readonly id: string }, b: { readonly id: string }) => a.id.localeCompare(b.id);
  return {
    marks: [...state.marks.values()].map((mark) => ({ ...mark, revision: null })).sort(byId),
    findings: [...state.findings.values()]
      .map((finding) => ({ ...finding, revision: null, number: null }))
      .sort(byId),
  };
}
