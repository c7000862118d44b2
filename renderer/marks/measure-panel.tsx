/** What the one chosen mark measures, or what is to be known of it as a scale. */
import type { Reshape } from '#analysis/marks/bench-deeds.ts';
import { measurementOf, type PhotoReadings } from '#analysis/measure/photo-readings.ts';
import type { LabelledMark } from './labelled-marks.ts';
import { MeasuredResult } from './measured-result.tsx';
import { ScaleForm } from './scale-form.tsx';

export function MeasurePanel(props: {
  marks: readonly LabelledMark[];
  readings: PhotoReadings;
  readOnly: boolean;
  onReshaped: (changes: readonly Reshape[]) => void;
  onDone: () => void;
}) {
  const { marks, readings, readOnly, onReshaped, onDone } = props;
  const [one] = marks;
  if (one === undefined || marks.length > 1) return null;
  const { id, geometry } = one.mark;
  if (geometry.kind === 'scale' || geometry.kind === 'rectangle') {
    return (
      <ScaleForm
        key={id}
        {...{ id, geometry, readings, readOnly, onDone }}
        onGeometry={(changed) => onReshaped([{ id, geometry: changed }])}
      />
    );
  }
  const measured = measurementOf(geometry, readings.scale);
  return measured === null ? null : <MeasuredResult measured={measured} scale={readings.scale} />;
}
