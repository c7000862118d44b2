/** The text of a machine kind's file as JSON values, or the place where it stops being JSON. */
import { knowledgeTexts } from '#shared-types/texts/knowledge.ts';

import { jsonFaultAt } from './json-fault.ts';

const { refusals } = knowledgeTexts;

export type PackJson =
  | { readonly readable: true; readonly value: unknown }
  | { readonly readable: false; readonly place: string; readonly reason: string; readonly cause: unknown };

/** A byte order mark, which editors on some systems write, is passed over. Never throws. */
export function readPackJson(text: string): PackJson {
  const body = text.startsWith('\uFEFF') ? text.slice(1) : text;
  try {
    return { readable: true, value: JSON.parse(body) as unknown };
  } catch (cause) {
    const at = jsonFaultAt(body) ?? body.length;
    const reason = at === body.length ? refusals.endsEarly : refusals.notJson;
    return { readable: false, place: lineAndColumn(body, at), reason, cause };
  }
}

/** Both from 1, as editors count them. */
function lineAndColumn(body: string, at: number): string {
  const before = body.slice(0, at).split('\n');
  return refusals.line(before.length, (before.at(-1) ?? '').length + 1);
}
