/** The windlass broken in one place, and what the loader says to it. */
import { loadPack } from '#analysis/knowledge/load-pack.ts';
import { AppError } from '#shared-types/errors.ts';
import type { KnowledgePack, MarkPredicate } from '#shared-types/knowledge-pack.ts';

import { windlass, windlassFile } from './small-pack.ts';

type Loose = Record<string, unknown>;

export function refusalOf(text: string): AppError {
  try {
    loadPack(text, windlassFile);
  } catch (error) {
    if (error instanceof AppError) return error;
    throw error;
  }
  throw new Error('the pack was loaded');
}

/** The windlass with one thing made wrong, by types or against them. */
export function broken(change: (pack: KnowledgePack) => void): string {
  const pack = windlass();
  change(pack);
  return JSON.stringify(pack);
}

export function entry<Thing>(list: readonly Thing[], index: number): Thing {
  const found = list[index];
  if (found === undefined) throw new Error(`no entry ${index}`);
  return found;
}

export const loosely = (thing: object) => thing as Loose;

export const rimFinding: Extract<MarkPredicate, { test: 'finding' }> = {
  test: 'finding',
  component: 'drum',
  position: null,
  zones: ['rim'],
  kinds: ['rub'],
  leastShare: null,
};

export function withPredicate(predicate: unknown): string {
  return broken((pack) => {
    loosely(entry(pack.marks, 0)).predicate = predicate;
  });
}
