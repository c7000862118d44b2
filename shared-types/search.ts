import { outcomeSchema, type CaseSummary } from './case.ts';
import { damageClassSchema, presenceSchema, type DamageClass, type Presence } from './finding.ts';
import { packTermIdSchema } from './ids.ts';
import type { BlobId, FindingId, PhotoId } from './ids.ts';
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

/** A year or a quarter of one, by the instant a case was opened, in UTC: 2026, 2026-Q1. */
export const periodSchema = z.string().regex(/^\d{4}(-Q[1-4])?$/, 'a year or a quarter of one');

const oneOf = <Value extends z.ZodType>(value: Value) => z.array(value).max(60);

/**
 * What was chosen of each filter: a case passes with any of the values; one of which nothing is chosen passes all.
 * Part, kind, class and presence speak of one and the same finding.
 */
export const searchFiltersSchema = z
  .strictObject({
    component: oneOf(packTermIdSchema),
    kind: oneOf(packTermIdSchema),
    class: oneOf(damageClassSchema),
    presence: oneOf(presenceSchema),
    model: oneOf(z.string().max(120)),
    customer: oneOf(z.string().max(160)),
    outcome: oneOf(outcomeSchema),
    period: oneOf(periodSchema),
  })
  .partial();
export type SearchFilters = z.infer<typeof searchFiltersSchema>;
export type FilterName = keyof SearchFilters;
export const filterNames = [
  'component',
  'kind',
  'class',
  'presence',
  'model',
  'customer',
  'outcome',
  'period',
] as const satisfies readonly FilterName[];

export const lookedForSchema = z.strictObject({
  text: z.string().max(400),
  /** A case is found when each tag fits one of its findings. */
  tags: z.array(damageTagSchema).max(12),
  filters: searchFiltersSchema.default({}),
});
export type LookedFor = z.infer<typeof lookedForSchema>;

/** Cases are answered page by page: how many were shown already. */
export const searchRequestSchema = z.strictObject({
  ...lookedForSchema.shape,
  from: z.int().min(0).max(10_000_000).default(0),
});
export type SearchRequest = z.infer<typeof searchRequestSchema>;

/** Cases in one answer. */
export const hitsAPage = 20;

export type MatchedFinding = {
  readonly findingId: FindingId;
  readonly number: number;
  readonly class: DamageClass;
  readonly presence: Presence;
  /** Words of the case's own machine kind. */
  readonly component: string;
  readonly zone: string | null;
  readonly kind: string;
  /** Its part and kind by their ids: what other cases with this damage are looked for by. */
  readonly componentId: string;
  readonly kindId: string;
};

/** Text around a match: the pieces in order, those that matched flagged. */
export type Excerpt = readonly { readonly text: string; readonly matched: boolean }[];

/** What cases are called by and looked for by, letter by letter. */
export const identifierKinds = ['number', 'model', 'serial', 'part-number'] as const;
export type IdentifierKind = (typeof identifierKinds)[number];

export type FoundExcerpt = {
  readonly where: 'case' | 'finding' | 'photo' | 'party' | 'custody' | 'photo-name' | IdentifierKind;
  readonly excerpt: Excerpt;
  /** True where an identifier is not what was typed, but one character away from it. */
  readonly near: boolean;
  /** Of the finding it stands in: words about damage do not say that it is there. Null outside findings. */
  readonly presence: Presence | null;
  readonly finding: MatchedFinding | null;
  readonly photoId: PhotoId | null;
};

export type SearchHit = {
  readonly case: CaseSummary;
  readonly excerpts: readonly FoundExcerpt[];
  readonly findings: readonly MatchedFinding[];
  readonly thumbnails: readonly BlobId[];
};

export type NearIdentifier = {
  readonly kind: IdentifierKind;
  readonly written: string;
  readonly cases: number;
};

/** One word, or one phrase in quotes, as it was understood. */
export type UnderstoodWord = {
  readonly written: string;
  readonly phrase: boolean;
  /** Cases that have it, whatever else is looked for. */
  readonly cases: number;
  /** Identifiers one character away, those of most cases first; asked only where nothing was found. */
  readonly near: readonly NearIdentifier[];
};

export type SearchAnswer = {
  readonly hits: readonly SearchHit[];
  readonly total: number;
  readonly words: readonly UnderstoodWord[];
  /** Cases that have each of the tags, whatever else is looked for; asked only where nothing was found. */
  readonly casesOfTags: readonly number[];
};

/**
 * Counts are asked apart from the cases. `asker` is one page's own name: the newest request of an asker overtakes its
 * earlier ones, and those are answered with null.
 */
export const searchCountsRequestSchema = z.strictObject({ ...lookedForSchema.shape, asker: z.uuid() });
export type SearchCountsRequest = z.infer<typeof searchCountsRequestSchema>;

export type FilterCount = { readonly value: string; readonly label: string; readonly cases: number };

/** How many cases each value of a filter would leave, the text, the tags and the other filters being as they are. */
export type FilterCounts = {
  /** Those of most cases first; periods the newest first. What was chosen is there even with no case. */
  readonly values: readonly FilterCount[];
  /** Values that are not listed, for there are too many. */
  readonly more: number;
};
export type SearchCounts = Readonly<Record<FilterName, FilterCounts>>;

/** A tag that at least one finding of the library carries, with how many cases have it. */
export type KnownTag = {
  readonly component: string;
  readonly componentLabel: string;
  readonly kind: string;
  readonly kindLabel: string;
  readonly cases: number;
};
