/**
 * A machine kind as data: its parts, what can happen to them, what is measured on them and, for the weighing,
 * mechanisms, conditions and marks. No code knows a part by name. analysis/knowledge/load-pack.ts checks what
 * a schema cannot: that every id named exists, that nothing runs in a loop.
 */
import { packTermIdSchema } from './ids.ts';
import { z } from './schema.ts';

const label = z.string().min(1).max(120);
const sentence = z.string().min(1).max(600);
const id = packTermIdSchema;

/**
 * `axisEnd` is there for a side that looks along the axis: from which end of the machine. What turns clockwise from
 * the first end turns anticlockwise from the second.
 */
const sideSchema = z.strictObject({ id, label, axisEnd: z.enum(['first', 'second']).optional() });

/** A rotating part has blades to count; a pad bearing has pads; null where nothing repeats round the axis. */
const repeatedFeature = z.enum(['blades', 'pads', 'holes', 'vanes']);

export const kindSchema = z.strictObject({
  id,
  label,
  meaning: sentence,
  /** The wider kind of which this is a case: a rub all round is a rub, so "no rub" denies it as well. */
  narrows: id.optional(),
  /** Blades are out of their shape: which way, and seen from which side, is asked. */
  bends: z.literal(true).optional(),
  /** The kind says itself which way, so that the bend that was seen can be held against it. */
  bendIs: z.enum(['against', 'with']).optional(),
  /** Says that the part itself was not there, so that nothing else can have been seen on it. */
  partMissing: z.literal(true).optional(),
});

export const zoneSchema = z.strictObject({
  id,
  label,
  /** Kinds of damage that can occur here, by id. */
  kinds: z.array(id).min(1),
  /** What an extent "k of n" counts here. */
  counts: repeatedFeature.nullable(),
});

export const componentSchema = z.strictObject({
  id,
  label,
  /** Where it stands when there are several like it; empty where it is single. */
  positions: z.array(id),
  /** Not every unit of this kind has it: a nut where wheels are threaded, a vane ring. */
  optional: z.boolean(),
  zones: z.array(zoneSchema).min(1),
  /** Kinds that concern the part as a whole: not present, part not original. */
  kinds: z.array(id),
});

export const quantityDimensions = [
  'length',
  'angle',
  'mass',
  'torque',
  'temperature',
  'count',
  'ratio',
  /** Mass times radius, what a balancing machine shows. */
  'unbalance',
  /** Turns in a time. */
  'speed',
  'duration',
  'pressure',
] as const;

export const quantitySchema = z.strictObject({
  id,
  label,
  /** What is measured, from where to where, and how it is read. */
  meaning: sentence,
  dimension: z.enum(quantityDimensions),
  component: id.nullable(),
  zone: id.nullable(),
  /** Limits in a unit's data sheet are "not above", "not below" or both. */
  limited: z.enum(['above', 'below', 'both', 'none']),
});

const expectationWord = z.enum(['nearly-always', 'often', 'sometimes', 'rarely', 'practically-never']);

const causeSchema = z.strictObject({
  /** A mechanism or a condition, by id. */
  from: id,
  word: expectationWord,
  /** Why the cause leads to this: the report prints it. */
  because: sentence,
});

const findingPatternSchema = z.strictObject({
  test: z.literal('finding'),
  component: id,
  position: id.nullable(),
  /** Any of these zones; empty means any zone of the part. */
  zones: z.array(id),
  kinds: z.array(id).min(1),
  /** Least share of blades or pads affected, 0 to 1; null where the extent does not matter. */
  leastShare: z.number().min(0).max(1).nullable(),
});

const measurementPatternSchema = z.strictObject({
  test: z.literal('measurement'),
  quantity: id,
  position: id.nullable(),
  status: z.enum(['inside', 'outside']),
});

export type MarkPredicate =
  | z.infer<typeof findingPatternSchema>
  | z.infer<typeof measurementPatternSchema>
  | { test: 'all' | 'any'; of: MarkPredicate[] };

export const markPredicateSchema: z.ZodType<MarkPredicate> = z.lazy(() =>
  z.union([
    findingPatternSchema,
    measurementPatternSchema,
    z.strictObject({ test: z.enum(['all', 'any']), of: z.array(markPredicateSchema).min(1) }),
  ]),
);

export const knowledgePackSchema = z.strictObject({
  schema: z.literal(1),
  id,
  version: z.string().regex(/^\d+\.\d+\.\d+$/),
  label,
  /** Where the content comes from, said in the report. */
  source: sentence,
  positions: z.array(z.strictObject({ id, label })),
  /** Which way a photo can look at a part. */
  sides: z.array(sideSchema).min(1),
  kinds: z.array(kindSchema).min(1),
  /** In the order of assembly. */
  components: z.array(componentSchema).min(1),
  quantities: z.array(quantitySchema),
  mechanisms: z.array(z.strictObject({ id, label, meaning: sentence })),
  conditions: z.array(z.strictObject({ id, label, causes: z.array(causeSchema), leak: expectationWord })),
  marks: z.array(
    z.strictObject({
      id,
      label,
      predicate: markPredicateSchema,
      causes: z.array(causeSchema),
      leak: expectationWord,
    }),
  ),
});
export type KnowledgePack = z.infer<typeof knowledgePackSchema>;
export type PackComponent = KnowledgePack['components'][number];
export type PackZone = PackComponent['zones'][number];
export type PackKind = KnowledgePack['kinds'][number];
export type PackSide = KnowledgePack['sides'][number];
export type PackQuantity = KnowledgePack['quantities'][number];

export type MachineKind = { readonly id: string; readonly version: string; readonly label: string };
