/** The list of what can occur as lines: parts, their zones, and what to look for in each. */
import type { ExpectedKind, ExpectedPart } from '#analysis/findings/expectations.ts';
import { partLabel, placeLabel } from '#analysis/report/term-labels.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import type { PartShown } from '#shared-types/photo.ts';
import { expectationTexts } from '#shared-types/texts/expectations.ts';
import { partKey } from './finding-draft.ts';

export type ExpectationLine =
  | {
      readonly line: 'part';
      readonly key: string;
      readonly part: PartShown;
      readonly label: string;
      readonly open: number;
      readonly all: number;
      readonly unfolded: boolean;
    }
  | { readonly line: 'zone'; readonly key: string; readonly label: string }
  | {
      readonly line: 'kind';
      readonly key: string;
      readonly part: PartShown;
      readonly place: string;
      readonly expected: ExpectedKind;
    };

export type ExpectationCounts = {
  readonly all: number;
  readonly open: number;
  readonly present: number;
  readonly absent: number;
  readonly unseen: number;
};

export type ExpectationChoice = {
  /** Every one of these words stands in part, position, zone or kind. */
  readonly words: string;
  readonly openOnly: boolean;
  /** Shown although they are answered: answered just now, and not to vanish under the hand. */
  readonly kept: ReadonlySet<string>;
  readonly folded: ReadonlySet<string>;
};

export function expectationLines(
  pack: KnowledgePack,
  parts: readonly ExpectedPart[],
  choice: ExpectationChoice,
): { readonly lines: readonly ExpectationLine[]; readonly counts: ExpectationCounts } {
  const words = choice.words.toLocaleLowerCase().split(/\s+/).filter(Boolean);
  const filters = words.length > 0 || choice.openOnly;
  const counts = { all: 0, open: 0, present: 0, absent: 0, unseen: 0 };
  const lines = parts.flatMap(({ part, zones }): ExpectationLine[] => {
    const label = partLabel(pack, part);
    let open = 0;
    let all = 0;
    const inside = zones.flatMap(({ zone, label: zoneLabel, kinds }): ExpectationLine[] => {
      const place = placeLabel(pack, { ...part, zone });
      const shown = kinds.filter(({ key, kind, state }) => {
        const said = `${place} ${kind.label}`.toLocaleLowerCase();
        if (!words.every((word) => said.includes(word))) return false;
        all += 1;
        counts.all += 1;
        if (state === 'unknown') {
          open += 1;
          counts.open += 1;
        } else if (state === 'present') counts.present += 1;
        else if (state === 'looked-for-absent') counts.absent += 1;
        else if (state === 'not-examined') counts.unseen += 1;
        return !choice.openOnly || state === 'unknown' || choice.kept.has(key);
      });
      if (shown.length === 0) return [];
      return [
        {
          line: 'zone',
          key: `${partKey(part)} ${zone ?? ''}`,
          label: zoneLabel ?? expectationTexts.wholePart,
        },
        ...shown.map((expected): ExpectationLine => ({
          line: 'kind',
          key: expected.key,
          part,
          place,
          expected,
        })),
      ];
    });
    if (filters && inside.length === 0) return [];
    const unfolded = !choice.folded.has(partKey(part));
    const head: ExpectationLine = { line: 'part', key: partKey(part), part, label, open, all, unfolded };
    return unfolded ? [head, ...inside] : [head];
  });
  return { lines, counts };
}
