import type { FilterCount, FilterName } from '#shared-types/search.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { searchTexts } from '#shared-types/texts/search.ts';

const wordsOf: Partial<Record<FilterName, Readonly<Record<string, string>>>> = {
  class: commonTexts.damageClasses,
  presence: commonTexts.presences,
  outcome: commonTexts.outcomes,
};

/** A value of a filter in words. */
export function valueLabel(name: FilterName, { value, label }: Pick<FilterCount, 'value' | 'label'>): string {
  if (name !== 'period') return wordsOf[name]?.[value] ?? label;
  const [year = '', quarter] = value.split('-Q');
  return quarter === undefined ? year : searchTexts.quarter(quarter, year);
}
