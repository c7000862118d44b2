/** What stands at the head of the report: the case, the unit as it was seen, and its life as told. */
import type { Analyst } from '#shared-types/analyst.ts';
import type { TeardownCase } from '#shared-types/case.ts';
import type { PhotoId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import { reportTexts } from '#shared-types/texts/report.ts';
import type { Instant } from '#shared-types/times.ts';

import { bendLabel, capitalised } from './term-labels.ts';
import { durationInWords, instantInWords, numberInWords, toldTime } from './told-words.ts';

/** A line of a two-column block: what it is, and its value. */
export type LabelledValue = { readonly label: string; readonly value: string };

export type TitleInput = {
  readonly teardownCase: TeardownCase;
  readonly pack: KnowledgePack;
  readonly analyst: Analyst;
  readonly instant: Instant;
  /** Of the library of sample cases. */
  readonly isSample: boolean;
};

/** "working copy, not issued"; of a sample case that it is one. */
export function standingOf({
  teardownCase,
  isSample,
}: Pick<TitleInput, 'teardownCase' | 'isSample'>): string {
  return isSample ? reportTexts.sampleStanding : reportTexts.standings[teardownCase.status];
}

/**
 * What identifies the unit is always there, "not entered" where it is not known; what was seen or told of it only
 * where it was entered. `plateOf` answers the plate that shows a photo, null for one that is no longer in the case.
 */
export function titleBlock(
  { teardownCase, pack, analyst, instant, isSample }: TitleInput,
  plateOf: (photoId: PhotoId) => number | null,
): LabelledValue[] {
  const { block } = reportTexts;
  const { unit, service } = teardownCase;
  const { rotation, thread } = unit;
  const seen = (what: string, photoId: PhotoId | null) => {
    const plate = photoId === null ? null : plateOf(photoId);
    if (plate !== null) return reportTexts.seenOn(what, plate);
    return photoId === null ? reportTexts.seenOnNone(what) : reportTexts.seenOnTakenOut(what);
  };
  const told = <Value>(label: string, value: Value | null, words: (value: Value) => string) =>
    value === null ? [] : [{ label, value: words(value) }];
  return [
    { label: block.caseNumber, value: teardownCase.number },
    { label: block.standing, value: standingOf({ teardownCase, isSample }) },
    { label: block.machine, value: capitalised(pack.label) },
    { label: block.unit, value: orNotEntered(makerAndModel(teardownCase)) },
    { label: block.serial, value: orNotEntered(unit.serial) },
    { label: block.partNumber, value: orNotEntered(unit.partNumber) },
    ...told(block.rotation, rotation, (turning) => seen(bendLabel(pack, turning), turning.photoId)),
    ...told(block.thread, thread, ({ hand, photoId }) => seen(reportTexts.threadHands[hand], photoId)),
    ...told(block.fittedOn, service.fittedOn, toldTime),
    ...told(block.failedOn, service.failedOn, toldTime),
    ...told(block.timeInService, service.timeInService, durationInWords),
    ...told(block.runningHours, service.runningHours, (hours) => reportTexts.hours(numberInWords(hours))),
    { label: block.customer, value: orNotEntered(teardownCase.customer) },
    {
      label: block.analyst,
      value: [analyst.name, analyst.qualification].filter((part) => part !== '').join(', '),
    },
    { label: block.date, value: instantInWords(instant) },
  ];
}

/** "Maker model, serial 30771", of what is known. */
export function unitName(teardownCase: TeardownCase): string {
  const { serial } = teardownCase.unit;
  return [makerAndModel(teardownCase), serial === '' ? '' : reportTexts.serial(serial)]
    .filter((part) => part !== '')
    .join(', ');
}

function makerAndModel({ unit: { maker, model } }: TeardownCase): string {
  return [maker, model].filter((part) => part !== '').join(' ');
}

function orNotEntered(value: string): string {
  return value === '' ? reportTexts.notEntered : value;
}
