/**
 * References in the analyst's own words, in a form of ours: "[finding 3]", "[plate IMG_2041.jpg]",
 * "[table custody]", "[figure chain]", "[section Oil supply]". They name what does not change (a finding by its number,
 * which is never given twice; a photo by its file's name; the rest by its own name) and are printed with the number
 * it has in this report.
 */
import { reportTexts } from '#shared-types/texts/report.ts';

export const referenceKinds = ['finding', 'plate', 'table', 'figure', 'section'] as const;
export type ReferenceKind = (typeof referenceKinds)[number];

/** What a reference can lead to: of one kind, by any of its names, with its number and its place in the PDF. */
export type ReferenceTarget = {
  readonly kind: ReferenceKind;
  readonly names: readonly string[];
  /** What it is called where that is not its kind: "annex" for a section that is one. */
  readonly word?: string;
  /** As it is printed: "3", or "A" for an annex. */
  readonly number: string;
  readonly destination: string;
};

export type Reference = { readonly raw: string; readonly kind: ReferenceKind; readonly name: string };

/** `words` as they are printed: the kind as it was written, a capital too, and the number. */
export type ResolvedReference = { readonly words: string; readonly destination: string };

/** Why a reference leads nowhere. */
export type LooseReason = 'unknown' | 'ambiguous' | 'plate-by-number';

const pattern = new RegExp(`\\[(${referenceKinds.join('|')}) ([^\\[\\]\\r\\n]{1,300})\\]`, 'giu');

/** References in a text, in their order, with where each begins. */
export function referencesIn(text: string): (Reference & { readonly at: number })[] {
  return [...text.matchAll(pattern)].map((match) => ({
    at: match.index,
    raw: match[0],
    kind: (match[1] ?? '').toLowerCase() as ReferenceKind,
    name: (match[2] ?? '').replace(/\s+/g, ' ').trim(),
  }));
}

/** A name that fits to the letter goes before one that differs in capitals only. */
export function resolveReference(
  reference: Reference,
  targets: readonly ReferenceTarget[],
): ResolvedReference | LooseReason {
  const ofKind = targets.filter(({ kind }) => kind === reference.kind);
  const named = (alike: (name: string) => boolean) => ofKind.filter(({ names }) => names.some(alike));
  const exact = named((name) => name === reference.name);
  const folded = reference.name.toLowerCase();
  const found = exact.length > 0 ? exact : named((name) => name.toLowerCase() === folded);
  const [target] = found;
  if (target === undefined) {
    return reference.kind === 'plate' && /^\d+$/.test(reference.name) ? 'plate-by-number' : 'unknown';
  }
  if (found.length > 1) return 'ambiguous';
  const written = reference.raw.slice(1, 1 + reference.kind.length);
  const word = target.word === undefined ? written : inCaseOf(written, target.word);
  return { words: reportTexts.references.printed(word, target.number), destination: target.destination };
}

function inCaseOf(written: string, word: string): string {
  return /^\p{Lu}/u.test(written) ? word.charAt(0).toUpperCase() + word.slice(1) : word;
}

/** Those of a text that lead nowhere, each once. */
export function looseReferences(
  text: string,
  targets: readonly ReferenceTarget[],
): { readonly raw: string; readonly reason: LooseReason }[] {
  const loose = new Map<string, LooseReason>();
  for (const reference of referencesIn(text)) {
    const resolved = resolveReference(reference, targets);
    if (typeof resolved === 'string') loose.set(reference.raw, resolved);
  }
  return [...loose].map(([raw, reason]) => ({ raw, reason }));
}
