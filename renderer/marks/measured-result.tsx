/** What was measured: the result, what it stands on, and what is not corrected in it. */
import type { Measurement } from '#analysis/measure/measured.ts';
import { readingWords, type ScaleOfPhoto } from '#analysis/measure/photo-readings.ts';
import { measureTexts } from '#shared-types/texts/measure.ts';
import { numberText } from '../ui/number-words.ts';

const sources = ['clicks', 'scale', 'tilt', 'offset'] as const;
/** A share below it is not worth a word. */
const leastShare = 0.005;

export function MeasuredResult({ measured, scale }: { measured: Measurement; scale: ScaleOfPhoto | null }) {
  return (
    <section className="marks-measured" aria-label={measureTexts.title}>
      <h3>{measureTexts.title}</h3>
      <p className="marks-reading">{readingWords(measured)}</p>
      {measured.kind === 'refused' ? null : scale === null ? (
        <p className="secondary-words">{measureTexts.setScale}</p>
      ) : (
        <>
          <p className="secondary-words">
            {scale.scale.kind === 'length'
              ? measureTexts.byScale(scale.words)
              : measureTexts.byRectangle(scale.words)}{' '}
            {measureTexts.coverage} {sharesOf(measured.parts)}
          </p>
          <ul className="secondary-words">
            {measured.warnings.map((warning) => (
              <li key={warning}>{measureTexts.warnings[warning]}</li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

function sharesOf(parts: Readonly<Record<(typeof sources)[number], number>>): string {
  const said = sources
    .filter((source) => parts[source] >= leastShare)
    .map((source) => measureTexts.share(numberText(100 * parts[source]), measureTexts.parts[source]));
  return measureTexts.shares(said.join(', '));
}
