/**
 * Stored geometry of any version, brought to the newest by pure steps of one version each.
 * A step is added when a geometry changes its shape; an old step is never changed, since libraries and issued
 * snapshots hold every version there ever was.
 */
import { markGeometrySchema, type MarkGeometry, type MarkKind } from '#shared-types/mark.ts';

type Stored = { readonly kind: string; readonly v: number } & Readonly<Record<string, unknown>>;
type Step = (stored: Stored) => Stored;

/** kind -> the steps from version 1 to 2, from 2 to 3 and so on. The newest version is one more than their count. */
export type UpgradeSteps = Readonly<Record<string, readonly Step[]>>;

const upgradeSteps: Readonly<Record<MarkKind, readonly Step[]>> = {
  arrow: [],
  ring: [],
  outline: [],
  line: [],
  text: [],
  dimension: [],
  scale: [],
  rectangle: [],
};

/** Why a geometry cannot be read: written by a newer program, or damaged. */
export class MarkGeometryError extends Error {
  readonly reason: 'newer' | 'unknown-kind' | 'damaged';

  constructor(reason: 'newer' | 'unknown-kind' | 'damaged', message: string) {
    super(message);
    this.name = 'MarkGeometryError';
    this.reason = reason;
  }
}

/**
 * The geometry as the newest version has it. Throws MarkGeometryError for a kind or version this program does not
 * know and for one that does not fit its schema; nothing is ever guessed.
 */
export function upgradeMark(stored: unknown): MarkGeometry {
  const parsed = markGeometrySchema.safeParse(runSteps(stored, upgradeSteps));
  if (!parsed.success) {
    throw new MarkGeometryError('damaged', parsed.error.issues.map((issue) => issue.message).join('; '));
  }
  return parsed.data;
}

/** Runs the steps that are missing; the result still has to be checked against the newest schema. */
export function runSteps(stored: unknown, steps: UpgradeSteps): unknown {
  if (!isStored(stored)) throw new MarkGeometryError('damaged', 'a geometry has a kind and a version');
  const ofKind = steps[stored.kind];
  if (ofKind === undefined) throw new MarkGeometryError('unknown-kind', `no mark is a ${stored.kind}`);
  const newest = ofKind.length + 1;
  if (stored.v > newest) {
    throw new MarkGeometryError('newer', `${stored.kind} version ${stored.v}, known up to ${newest}`);
  }
  return ofKind.slice(stored.v - 1).reduce((geometry, step) => step(geometry), stored);
}

function isStored(value: unknown): value is Stored {
  if (typeof value !== 'object' || value === null) return false;
  const { kind, v } = value as Record<string, unknown>;
  return typeof kind === 'string' && typeof v === 'number' && Number.isInteger(v) && v >= 1;
}
