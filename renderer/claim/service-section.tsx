import { contradictsDates, timeBetween } from '#analysis/claim/time-in-service.ts';
import type { TypedReading } from '#analysis/text/typed-reading.ts';
import { claimTexts } from '#shared-types/texts/claim.ts';
import { numberText } from '../ui/number-words.ts';
import { claimPlaces } from './claim-places.ts';
import { ClaimSection } from './claim-section.tsx';
import { KeptTyped, type Kept } from './kept-field.tsx';
import { durationWords, toldNumberWords, toldTimeWords } from './told-words.ts';

const texts = claimTexts.service;

/** The unit's life between fitting and failure, as told, beside what the two dates come to. */
export function ServiceSection({ kept }: { kept: Kept }) {
  return (
    <ClaimSection place={claimPlaces.service}>
      <div className="claim-fields">
        <div className="claim-pair">
          <KeptTyped
            kept={kept}
            name="fittedOn"
            label={texts.fittedOn}
            hint={texts.timeHint}
            words={toldTimeWords}
          />
          <KeptTyped
            kept={kept}
            name="failedOn"
            label={texts.failedOn}
            hint={texts.timeHint}
            words={toldTimeWords}
          />
          <KeptTyped
            kept={kept}
            name="timeInService"
            label={texts.timeInService}
            hint={texts.timeInServiceHint}
            words={durationWords}
          />
          <KeptTyped
            kept={kept}
            name="runningHours"
            label={texts.runningHours}
            hint={texts.runningHoursHint}
            words={(hours) => texts.hours(toldNumberWords(hours))}
          />
        </div>
        <TimeBetween kept={kept} />
      </div>
    </ClaimSection>
  );
}

const meanMonth = 146_097 / 4_800;

function TimeBetween({ kept }: { kept: Kept }) {
  const { fittedOn, failedOn, timeInService } = kept.view.readings;
  const between = timeBetween({ fittedOn: valueOf(fittedOn), failedOn: valueOf(failedOn) });
  if (between === null) return null;
  if (between.kind === 'backwards') return <p className="claim-warning">{texts.backwards}</p>;
  const { least, most } = between;
  const days = texts.days(numberText(least), numberText(most));
  const inMonths = (count: number) => numberText(count / meanMonth, 1);
  const words = most < 60 ? [days] : [days, texts.months(inMonths(least), inMonths(most))];
  const told = valueOf(timeInService);
  return (
    <div className="claim-between" aria-live="polite">
      <p>{texts.between(words.join(', '))}</p>
      {told !== null && contradictsDates(told, between) ? (
        <p className="claim-warning">{texts.contradicts}</p>
      ) : null}
    </div>
  );
}

function valueOf<Value>(reading: TypedReading<Value>): Value | null {
  return reading.kind === 'understood' ? reading.value : null;
}
