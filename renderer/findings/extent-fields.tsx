/** How many of how many: two whole numbers or nothing. */
import { useId, useState } from 'react';
import { extentSchema, type Extent } from '#shared-types/finding.ts';
import { findingsTexts } from '#shared-types/texts/findings.ts';

type Written = { readonly affected: string; readonly of: string };

export function ExtentFields(props: {
  extent: Extent | null;
  /** What is counted here, blades say; empty where nothing is. */
  counted: string;
  disabled: boolean;
  onExtent: (extent: Extent | null) => void;
}) {
  const { extent, counted, disabled, onExtent } = props;
  const [written, setWritten] = useState<Written | null>(null);
  const wrongId = useId();
  const [left, setLeft] = useState(false);
  const shown = written ?? {
    affected: extent === null ? '' : String(extent.affected),
    of: extent === null ? '' : String(extent.of),
  };
  const read = readExtent(shown);
  const halfWritten = shown.affected.trim() === '' || shown.of.trim() === '';
  // One number alone is no fault while the other is still to come; left like that it is.
  const wrong = written !== null && read === 'wrong' && (left || !halfWritten);

  const leave = () => {
    setLeft(true);
    if (written === null || read === 'wrong') return;
    setWritten(null);
    if (read?.affected !== extent?.affected || read?.of !== extent?.of) onExtent(read);
  };
  const box = (which: keyof Written, label: string) => (
    <input
      className="control extent-number"
      inputMode="numeric"
      aria-label={label}
      aria-invalid={wrong || undefined}
      value={shown[which]}
      disabled={disabled}
      aria-describedby={wrong ? wrongId : undefined}
      onChange={(event) => setWritten({ ...shown, [which]: event.currentTarget.value })}
    />
  );

  return (
    <fieldset
      className="extent-fields"
      onFocus={() => setLeft(false)}
      onBlur={(event) => {
        if (!event.currentTarget.contains(event.relatedTarget)) leave();
      }}
      onKeyDown={(event) => {
        if (event.key === 'Enter') leave();
        else if (event.key === 'Escape' && written !== null) {
          event.preventDefault();
          setWritten(null);
        }
      }}
    >
      <legend className="field-label">{findingsTexts.extentOf(counted)}</legend>
      <div className="extent-row">
        {box('affected', findingsTexts.affected)}
        <span>{findingsTexts.of}</span>
        {box('of', findingsTexts.outOf)}
      </div>
      {wrong ? (
        <p className="field-error" role="alert" id={wrongId}>
          {halfWritten ? findingsTexts.extentHalf : findingsTexts.extentWrong}
        </p>
      ) : null}
    </fieldset>
  );
}

function readExtent({ affected, of }: Written): Extent | null | 'wrong' {
  if (affected.trim() === '' && of.trim() === '') return null;
  if (!/^\s*\d{1,3}\s*$/.test(affected) || !/^\s*\d{1,3}\s*$/.test(of)) return 'wrong';
  const parsed = extentSchema.safeParse({ affected: Number(affected), of: Number(of) });
  return parsed.success ? parsed.data : 'wrong';
}
