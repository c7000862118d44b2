import { reportTexts } from '#shared-types/texts/report.ts';

/**
 * "P 7.1", "P 7.1, P 7.2" or, from three on, "P 7.1 to P 7.5": the marks of one finding on one plate. Their ordinals
 * follow each other, since a finding's marks are counted photo by photo.
 */
export function labelRange(labels: readonly string[]): string {
  const first = labels[0];
  const last = labels.at(-1);
  if (first === undefined || last === undefined) return '';
  return labels.length < 3 ? labels.join(', ') : reportTexts.plates.markRange(first, last);
}
