import { damageClassSchema, presenceSchema, type DamageClass, type Presence } from './finding.ts';
import { packTermIdSchema } from './ids.ts';
import type { BlobId, FindingId } from './ids.ts';
import type { CaseSummary } from './case.ts';
import { z } from './schema.ts';

/** A damage tag: any finding that agrees in everything that is filled in. */
export const damageTagSchema = z.strictObject({
  component: packTermIdSchema.nullable(),
  zone: packTermIdSchema.nullable(),
  kind: packTermIdSchema.nullable(),
  class: damageClassSchema.nullable(),
  presence: presenceSchema.nullable(),
});
export type DamageTag = z.infer<typeof damageTagSchema>;

export const searchRequestSchema = z.strictObject({
  text: z.string().max(400),
  /** A case is found when each tag fits one of its findings. */
  tags: z.array(damageTagSchema).max(12),
});
export type SearchRequest = z.infer<typeof searchRequestSchema>;

export type MatchedFinding = {
  readonly findingId: FindingId;
  readonly number: number;
  readonly class: DamageClass;
  readonly presence: Presence;
  readonly component: string;
  readonly zone: string | null;
  readonly kind: string;
};

/** Text around a match: the pieces in order, those that matched flagged. */
export type Excerpt = readonly { readonly text: string; readonly matched: boolean }[];

export type FoundExcerpt = {
  readonly where: string;
  readonly excerpt: Excerpt;
  /** Of the finding it stands in: words about damage do not say that it is there. Null outside findings. */
  readonly presence: Presence | null;
};

export type SearchHit = {
  readonly case: CaseSummary;
  readonly excerpts: readonly FoundExcerpt[];
  readonly findings: readonly MatchedFinding[];
  readonly thumbnails: readonly BlobId[];
};

export type SearchAnswer = { readonly hits: readonly SearchHit[]; readonly total: number };

/** A tag that at least one finding of the library carries, with how many cases have it. */
export type KnownTag = {
  readonly component: string;
  readonly componentLabel: string;
  readonly kind: string;
  readonly kindLabel: string;
  readonly cases: number;
};
