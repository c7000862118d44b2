/** What is known of a scale: its length, or the sides of its rectangle. */
import { useRef, useState } from 'react';
import type { PhotoReadings } from '#analysis/measure/photo-readings.ts';
import { mostTilt } from '#analysis/measure/photo-scale.ts';
import type { KnownLength, MarkGeometry, RectangleGeometry, ScaleGeometry } from '#shared-types/mark.ts';
import type { MarkId } from '#shared-types/ids.ts';
import { measureTexts } from '#shared-types/texts/measure.ts';
import { numberText } from '../ui/number-words.ts';
import { MeasuredNumber } from './measured-number.tsx';

const texts = measureTexts.scale;
const mostMm = 1e5;
const mostExpanded = 1e4;
/** Of a steel rule read by eye, k = 2; common practice, no source. */
const usualExpanded = 0.2;

type Scale = ScaleGeometry | RectangleGeometry;

export function ScaleForm(props: {
  id: MarkId;
  geometry: Scale;
  readings: PhotoReadings;
  readOnly: boolean;
  onGeometry: (geometry: MarkGeometry) => void;
  /** Enter was pressed on what was asked: back to the photo. */
  onDone: () => void;
}) {
  const { id, geometry, readings, readOnly, onGeometry, onDone } = props;
  return (
    <section className="marks-scale" aria-label={titleOf(geometry)}>
      <h3>{titleOf(geometry)}</h3>
      {geometry.kind === 'scale' ? (
        <>
          <Known
            label={texts.length}
            known={geometry.known}
            readOnly={readOnly}
            autoFocus={geometry.known === null && !readOnly}
            onKnown={(known) => onGeometry({ ...geometry, known })}
            onDone={onDone}
          />
          <MeasuredNumber
            label={texts.tilt}
            hint={texts.tiltHint}
            value={geometry.greatestTilt}
            readOnly={readOnly}
            fault={between(0, mostTilt)}
            onNumber={(greatestTilt) => onGeometry({ ...geometry, greatestTilt })}
          />
        </>
      ) : (
        <Sides {...{ geometry, readOnly, onGeometry, onDone }} />
      )}
      <p className="secondary-words" role="status">
        {stateWords(id, geometry, readings)}
      </p>
    </section>
  );
}

/** Both sides are one thing to the measuring: neither counts before the other is entered too. */
function Sides(props: {
  geometry: RectangleGeometry;
  readOnly: boolean;
  onGeometry: (geometry: MarkGeometry) => void;
  onDone: () => void;
}) {
  const { geometry, readOnly, onGeometry, onDone } = props;
  const [entered, setEntered] = useState<Partial<Record<'along' | 'across', KnownLength>>>({});
  const second = useRef<HTMLDivElement>(null);
  const along = geometry.sides?.[0] ?? entered.along ?? null;
  const across = geometry.sides?.[1] ?? entered.across ?? null;
  const put = (one: 'along' | 'across', known: KnownLength) => {
    setEntered((before) => ({ ...before, [one]: known }));
    const sides = { along, across, [one]: known };
    if (sides.along !== null && sides.across !== null) {
      onGeometry({ ...geometry, sides: [sides.along, sides.across] });
    }
  };
  return (
    <>
      <Known
        label={texts.along}
        known={along}
        readOnly={readOnly}
        autoFocus={along === null}
        onKnown={(known) => put('along', known)}
        onDone={() => second.current?.querySelector('input')?.focus()}
      />
      <div ref={second}>
        <Known
          label={texts.across}
          known={across}
          readOnly={readOnly}
          onKnown={(known) => put('across', known)}
          onDone={onDone}
        />
      </div>
    </>
  );
}

function Known(props: {
  label: string;
  known: KnownLength | null;
  readOnly: boolean;
  autoFocus?: boolean;
  onKnown: (known: KnownLength) => void;
  onDone: () => void;
}) {
  const { label, known, readOnly, autoFocus = false, onKnown, onDone } = props;
  return (
    <>
      <MeasuredNumber
        label={label}
        hint={texts.lengthHint}
        value={known?.mm ?? null}
        readOnly={readOnly}
        autoFocus={autoFocus}
        onDone={onDone}
        fault={(mm) => (mm <= 0 ? texts.aboveZero : between(0, mostMm)(mm))}
        onNumber={(mm) => onKnown({ mm, expandedMm: known?.expandedMm ?? usualExpanded })}
      />
      {known === null ? null : (
        <MeasuredNumber
          label={texts.expanded}
          hint={texts.expandedHint}
          value={known.expandedMm}
          readOnly={readOnly}
          fault={between(0, mostExpanded)}
          onNumber={(expandedMm) => onKnown({ ...known, expandedMm })}
        />
      )}
    </>
  );
}

const between = (least: number, most: number) => (value: number) =>
  value < least || value > most ? texts.within(numberText(least), numberText(most)) : null;

function titleOf(geometry: Scale): string {
  return geometry.kind === 'scale' ? texts.title : texts.rectangleTitle;
}

function stateWords(id: MarkId, geometry: Scale, { scale, faults }: PhotoReadings): string {
  const fault = faults.get(id);
  if (fault !== undefined) {
    return fault in texts.faults ? texts.faults[fault as keyof typeof texts.faults] : texts.faults.other;
  }
  if (geometry.kind === 'scale' && geometry.known === null) return texts.missing;
  if (geometry.kind === 'rectangle' && geometry.sides === null) return texts.missingSides;
  return scale?.id === id ? texts.used : texts.other;
}
