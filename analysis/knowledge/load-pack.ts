/** A machine kind's file becomes a pack that the rest of the program may trust, or is refused with its place. */
import { AppError } from '#shared-types/errors.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';

import { duplicateIds } from './pack-duplicates.ts';
import { readPackJson } from './pack-json.ts';
import { packLoops } from './pack-loops.ts';
import { placeOf, type PackFault } from './pack-place.ts';
import { brokenReferences } from './pack-references.ts';
import { readPackShape } from './pack-shape.ts';

/**
 * `text` is the file's content; `fileName` is only said in the refusal. In a loaded pack every id is unique in
 * its list, every id named exists and belongs where it is named, and nothing is its own cause.
 *
 * @throws AppError `pack-invalid` {file, place, reason} for the first thing wrong, in the order of the file
 * within each check.
 */
export function loadPack(text: string, fileName: string): KnowledgePack {
  const refusal = (place: string, reason: string, cause?: unknown) =>
    new AppError('pack-invalid', { file: fileName, place, reason }, { cause });

  const json = readPackJson(text);
  if (!json.readable) throw refusal(json.place, json.reason, json.cause);
  const shape = readPackShape(json.value);
  if (!shape.fits) throw refusal(placeOf(json.value, shape.fault.path), shape.fault.reason);
  const fault = firstFault(shape.pack);
  if (fault !== null) throw refusal(placeOf(json.value, fault.path), fault.reason);
  return shape.pack;
}

function firstFault(pack: KnowledgePack): PackFault | null {
  for (const check of [duplicateIds, brokenReferences, packLoops]) {
    const first = check(pack).next();
    if (first.done !== true) return first.value;
  }
  return null;
}
