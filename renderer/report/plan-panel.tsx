/** The panel beside the pages: how many plates on each, the analyst's own sections, and where the rest is written. */
import { useLayoutEffect, useRef, useState, type ReactNode } from 'react';
import { Link } from 'wouter';
import { looseReferences, type ReferenceTarget } from '#analysis/report/references.ts';
import type { TeardownCase } from '#shared-types/case.ts';
import { paragraphPlaces, plateCounts, type OwnSection, type ReportPlan } from '#shared-types/report-plan.ts';
import { reportTexts } from '#shared-types/texts/report.ts';
import { reportScreenTexts } from '#shared-types/texts/report-screen.ts';
import { stationAddress } from '../app/addresses.ts';
import { Button } from '../ui/button.tsx';
import { ErrorState } from '../ui/error-state.tsx';
import type { Choice } from '../ui/select.tsx';
import { SidePanel } from '../ui/side-panel.tsx';
import { StatusWord, type StatusTone } from '../ui/status-word.tsx';
import { toast } from '../ui/toaster.tsx';
import { LooseReferences, OwnSectionForm } from './own-section-form.tsx';
import type { PlanKeeper, PlanSaving, PlanView } from './plan-keeper.ts';
import { usePlanKeeper } from './use-plan-keeper.ts';

/** As the contract has it. */
const mostSections = 40;

const savingTones: Record<PlanSaving, StatusTone> = {
  saved: 'neutral',
  waiting: 'neutral',
  failed: 'bad',
  conflict: 'warn',
};

/** Where a section's fields stand, for whoever leads there. */
export function ownSectionFieldId(place: number): string {
  return `own-section-${place}`;
}

export function PlanPanel(props: {
  teardownCase: TeardownCase;
  plan: ReportPlan;
  /** With the sections as they stand in the panel. */
  targetsOf: (sections: readonly OwnSection[]) => readonly ReferenceTarget[];
  referencesOf: (targets: readonly ReferenceTarget[]) => readonly Choice<string>[];
  openPoints: ReactNode;
  contents: ReactNode;
}) {
  const { teardownCase, plan } = props;
  const { keeper, view } = usePlanKeeper(teardownCase.id, plan);
  const closed = teardownCase.status !== 'open';
  const texts = reportScreenTexts;
  const targets = props.targetsOf(view.fields.sections);
  return (
    <SidePanel
      title={texts.panel}
      note={
        closed ? undefined : (
          <span role="status">
            <StatusWord tone={savingTones[view.saving]}>{texts.saving[view.saving]}</StatusWord>
          </span>
        )
      }
    >
      {view.error === null ? null : (
        <ErrorState inline error={view.error} onRetry={() => void keeper.flush()} />
      )}
      <PlanConflict keeper={keeper} view={view} />
      <div className="plan-fields">
        <PlatesChoice keeper={keeper} view={view} closed={closed} />
        <CameraPlaces keeper={keeper} view={view} closed={closed} />
      </div>
      {props.openPoints}
      {props.contents}
      <OwnSections
        keeper={keeper}
        sections={view.fields.sections}
        closed={closed}
        targets={targets}
        references={props.referencesOf(targets)}
      />
      <Answer teardownCase={teardownCase} targets={targets} />
    </SidePanel>
  );
}

type PlanPart = { keeper: PlanKeeper; view: PlanView; closed: boolean };

function PlatesChoice({ keeper, view, closed }: PlanPart) {
  const texts = reportScreenTexts;
  return (
    <div className="plan-choice" role="group" aria-labelledby="plates-a-page">
      <span className="field-label" id="plates-a-page">
        {texts.platesAPage}
      </span>
      <span>
        {plateCounts.map((count) => (
          <Button
            key={count}
            kind="quiet"
            disabled={closed}
            pressed={view.fields.platesAPage === count}
            onClick={() => keeper.edit({ platesAPage: count }, 'at once')}
          >
            {texts.plates[count]}
          </Button>
        ))}
      </span>
    </div>
  );
}

function CameraPlaces({ keeper, view, closed }: PlanPart) {
  const texts = reportScreenTexts;
  return (
    <div className="plan-check">
      <label>
        <input
          type="checkbox"
          disabled={closed}
          checked={view.fields.printCameraPlaces}
          onChange={(event) => keeper.edit({ printCameraPlaces: event.currentTarget.checked }, 'at once')}
          aria-describedby="camera-places-hint"
        />
        {texts.cameraPlaces}
      </label>
      <p className="field-hint" id="camera-places-hint">
        {texts.cameraPlacesHint}
      </p>
    </div>
  );
}

let lastKey = 0;
const newKey = () => {
  lastKey += 1;
  return lastKey;
};

function OwnSections(props: {
  keeper: PlanKeeper;
  sections: readonly OwnSection[];
  closed: boolean;
  targets: readonly ReferenceTarget[];
  references: readonly Choice<string>[];
}) {
  const { keeper, sections, closed, targets, references } = props;
  const texts = reportScreenTexts;
  // Sections have no name of their own: keys go along when one is moved, so that its fields keep what they hold.
  const [keys, setKeys] = useState<readonly number[]>(() => sections.map(newKey));
  const known =
    keys.length === sections.length ? keys : sections.map((_, place) => keys[place] ?? -place - 1);

  /** The section to lead into as soon as its fields are there: the next key is meant for them. */
  const leadingTo = useRef<number | null>(null);
  useLayoutEffect(() => {
    if (leadingTo.current !== null && focusSection(leadingTo.current)) leadingTo.current = null;
  });

  const change = (list: readonly OwnSection[], listKeys: readonly number[]) => {
    setKeys(listKeys);
    keeper.edit({ sections: [...list] }, 'at once');
  };
  const nameOf = (place: number) => {
    const heading = sections[place]?.heading ?? '';
    return heading === '' ? texts.sectionNumber(place + 1) : heading;
  };
  const swap = (one: number, other: number) =>
    change(swapped(sections, one, other), swapped(known, one, other));
  const remove = (place: number) => {
    const removed = sections[place];
    const name = nameOf(place);
    change(sections.toSpliced(place, 1), known.toSpliced(place, 1));
    if (removed === undefined) return;
    toast(texts.removed(name), {
      action: {
        label: texts.putBack,
        run: () => {
          const now = keeper.view().fields.sections;
          keeper.edit({ sections: now.toSpliced(Math.min(place, now.length), 0, removed) }, 'at once');
        },
      },
    });
  };
  const add = (where: OwnSection['place']) => {
    const added: OwnSection = { place: where, heading: '', words: '' };
    leadingTo.current = sections.length;
    change([...sections, added], [...known, newKey()]);
  };

  return paragraphPlaces.map((where) => {
    const places = sections.flatMap((section, place) => (section.place === where ? [place] : []));
    return (
      <div className="plan-sections" key={where}>
        <h3>{texts.places[where]}</h3>
        {places.length === 0 ? <p className="field-hint">{texts.placesHint[where]}</p> : null}
        {places.map((place, index) => {
          const section = sections[place];
          const [earlier, later] = [places[index - 1], places[index + 1]];
          if (section === undefined) return null;
          return (
            <OwnSectionForm
              key={known[place]}
              section={section}
              name={nameOf(place)}
              fieldId={ownSectionFieldId(place)}
              closed={closed}
              references={references}
              loose={looseReferences(section.words, targets)}
              onWords={(words) =>
                keeper.edit({ sections: sections.with(place, { ...section, ...words }) }, 'after a pause')
              }
              onBlur={() => void keeper.leave()}
              onEarlier={earlier === undefined ? null : () => swap(place, earlier)}
              onLater={later === undefined ? null : () => swap(place, later)}
              onRemove={() => remove(place)}
            />
          );
        })}
        {closed ? null : sections.length < mostSections ? (
          <Button onClick={() => add(where)}>{texts.addTo[where]}</Button>
        ) : (
          <p className="field-hint">{texts.full}</p>
        )}
      </div>
    );
  });
}

function swapped<Item>(list: readonly Item[], one: number, other: number): Item[] {
  const copy = [...list];
  const [first, second] = [list[one], list[other]];
  if (first !== undefined && second !== undefined) {
    copy[one] = second;
    copy[other] = first;
  }
  return copy;
}

/**
 * Brings a section's fields into sight and leads into the words, or into the heading while there is none. Answers
 * whether they are there.
 */
export function focusSection(place: number): boolean {
  const form = document.getElementById(ownSectionFieldId(place));
  if (form === null) return false;
  const heading = form.querySelector('input');
  const field = heading?.value === '' ? heading : form.querySelector('textarea');
  form.scrollIntoView({ block: 'nearest' });
  field?.focus({ preventScroll: true });
  return true;
}

function Answer({
  teardownCase,
  targets,
}: {
  teardownCase: TeardownCase;
  targets: readonly ReferenceTarget[];
}) {
  const texts = reportScreenTexts.answer;
  const { conclusion, outcome } = teardownCase;
  return (
    <div className="plan-sections">
      <h3>{texts.head}</h3>
      <p>{reportTexts.outcomes[outcome]}</p>
      {conclusion.trim() === '' ? (
        <p className="field-hint">{texts.none}</p>
      ) : (
        <p className="plan-conclusion">{conclusion}</p>
      )}
      <LooseReferences loose={looseReferences(conclusion, targets)} />
      <p>
        <Link href={stationAddress(teardownCase.id, 'claim')}>{texts.link}</Link>
      </p>
    </div>
  );
}

function PlanConflict({ keeper, view }: { keeper: PlanKeeper; view: PlanView }) {
  const texts = reportScreenTexts.conflict;
  if (view.theirs === null) return null;
  return (
    <section className="plan-conflict" role="alert">
      <p>{texts.words}</p>
      <dl className="fact-list">
        <dt>{texts.theirs}</dt>
        <dd className="said">
          {view.theirs.length === 0
            ? texts.nothing
            : view.theirs.map(({ heading, words }) => `${heading}\n${words}`).join('\n\n')}
        </dd>
      </dl>
      <div className="state-actions">
        <Button kind="primary" onClick={() => void keeper.resolve('mine')}>
          {texts.mine}
        </Button>
        <Button onClick={() => void keeper.resolve('theirs')}>{texts.take}</Button>
      </div>
    </section>
  );
}
