/** What the schema says against a machine kind's file, in words of the file instead of the schema's own. */
import { knowledgePackSchema, type KnowledgePack } from '#shared-types/knowledge-pack.ts';
import type { z } from '#shared-types/schema.ts';
import { knowledgeTexts } from '#shared-types/texts/knowledge.ts';

import { valueAt, type PackFault, type PackPath } from './pack-place.ts';

const { refusals } = knowledgeTexts;

type SchemaIssue = z.core.$ZodIssue;
type PackShape =
  { readonly fits: true; readonly pack: KnowledgePack } | { readonly fits: false; readonly fault: PackFault };

/** The file's values as a pack, or the first thing the schema says against them. */
export function readPackShape(file: unknown): PackShape {
  const parsed = knowledgePackSchema.safeParse(file);
  if (parsed.success) return { fits: true, pack: parsed.data };
  const first = parsed.error.issues[0];
  const fault = first === undefined ? { path: [], reason: refusals.notUsable } : faultOf(file, first, []);
  return { fits: false, fault };
}

function faultOf(file: unknown, issue: SchemaIssue, above: PackPath): PackFault {
  const path = [...above, ...issue.path];
  const value = valueAt(file, path);
  switch (issue.code) {
    case 'invalid_type':
      return { path, reason: wrongType(issue.expected, value) };
    case 'unrecognized_keys':
      return { path, reason: refusals.unknownField(quotedList(issue.keys)) };
    case 'too_small':
      return { path, reason: tooSmall(issue) };
    case 'too_big':
      return { path, reason: tooBig(issue) };
    case 'invalid_format':
      return { path, reason: path.at(-1) === 'version' ? refusals.notAVersion : refusals.notAnId };
    case 'invalid_value':
      if (value === undefined) return { path, reason: refusals.missing };
      return { path, reason: refusals.notOneOf(quotedList(issue.values)) };
    case 'invalid_union':
      return predicateFault(file, issue, path);
    default:
      return { path, reason: refusals.notUsable };
  }
}

/**
 * A mark's predicate may have one of three forms, told apart by `test`. The form that has nothing against the
 * `test` is the one that was meant, and what it has against the rest is what there is to say.
 */
function predicateFault(
  file: unknown,
  issue: Extract<SchemaIssue, { code: 'invalid_union' }>,
  path: PackPath,
): PackFault {
  const value = valueAt(file, path);
  if (value === undefined) return { path, reason: refusals.missing };
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    return { path, reason: wrongType('object', value) };
  }
  const meant = issue.errors.find((issues) => !issues.some((each) => each.path[0] === 'test'));
  const first = meant?.[0];
  if (first === undefined) return { path: [...path, 'test'], reason: refusals.notAPredicate };
  return faultOf(file, first, path);
}

function wrongType(expected: string, value: unknown): string {
  if (value === undefined) return refusals.missing;
  return refusals.wrongType(typeWord(expected), typeWord(typeOf(value)));
}

function typeOf(value: unknown): string {
  if (value === null) return 'null';
  return Array.isArray(value) ? 'array' : typeof value;
}

function typeWord(type: string): string {
  const words: Readonly<Record<string, string>> = refusals.types;
  return words[type] ?? refusals.somethingElse;
}

function tooSmall(issue: Extract<SchemaIssue, { code: 'too_small' }>): string {
  if (issue.origin === 'array') return refusals.emptyList;
  if (issue.origin === 'string') return refusals.emptyText;
  return refusals.numberTooSmall(Number(issue.minimum));
}

function tooBig(issue: Extract<SchemaIssue, { code: 'too_big' }>): string {
  if (issue.origin === 'string') return refusals.textTooLong(Number(issue.maximum));
  return refusals.numberTooLarge(Number(issue.maximum));
}

function quotedList(words: readonly unknown[]): string {
  return words.map((word) => JSON.stringify(word)).join(', ');
}
