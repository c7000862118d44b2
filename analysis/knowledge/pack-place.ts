/** Where in a machine kind's file something stands, as its editor would look for it. */
import { knowledgeTexts } from '#shared-types/texts/knowledge.ts';

/** Keys and list indices from the top of the file down, as zod gives them. */
export type PackPath = readonly PropertyKey[];

/** What is wrong at one place of the file. */
export type PackFault = { readonly path: PackPath; readonly reason: string };

/**
 * `components[3] "thrust-bearing" / zones[1] "oil-holes" / kinds`: indices count from 0, and an entry that has
 * an id shows it, because nobody counts to the 40th entry of a list.
 */
export function placeOf(file: unknown, path: PackPath): string {
  if (path.length === 0) return knowledgeTexts.refusals.wholeFile;
  const steps: string[] = [];
  let here: unknown = file;
  for (const key of path) {
    here = childOf(here, key);
    if (typeof key !== 'number') {
      steps.push(String(key));
      continue;
    }
    const list = steps.pop() ?? '';
    const entryId = childOf(here, 'id');
    steps.push(typeof entryId === 'string' ? `${list}[${key}] "${entryId}"` : `${list}[${key}]`);
  }
  return steps.join(' / ');
}

/** What the file holds at the path; undefined where there is nothing. */
export function valueAt(file: unknown, path: PackPath): unknown {
  return path.reduce(childOf, file);
}

function childOf(value: unknown, key: PropertyKey): unknown {
  if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return undefined;
  return (value as Record<PropertyKey, unknown>)[key];
}
