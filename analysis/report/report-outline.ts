/** Which sections a report has, in their order, with their numbers; and what own words can refer to. */
import type { RegisterEntry, Photo } from '#shared-types/photo.ts';
import type { Finding } from '#shared-types/finding.ts';
import type { Mark } from '#shared-types/mark.ts';
import type { OwnSection } from '#shared-types/report-plan.ts';
import { chainReportTexts } from '#shared-types/texts/chain.ts';
import { reportTexts } from '#shared-types/texts/report.ts';

import { destinations, type FixedPlace } from './destinations.ts';
import type { ReferenceTarget } from './references.ts';

/** A heading as it is printed, and the named place it stands at. */
export type SectionHeading = { readonly heading: string; readonly destination: string };

export type NumberedSection = SectionHeading & {
  /** "3", or "A" for an annex. */
  readonly number: string;
  /** Without its number. */
  readonly title: string;
};

export type OutlineInput = {
  readonly sections: readonly OwnSection[];
  readonly findings: readonly Pick<Finding, 'number'>[];
  readonly photos: readonly Photo[];
  readonly marks: readonly Pick<Mark, 'photoId'>[];
  readonly register: readonly RegisterEntry[];
  readonly hasCustody: boolean;
  readonly hasChain: boolean;
};

export type ReportOutline = {
  /** The fixed sections that this report has. */
  readonly fixed: ReadonlyMap<FixedPlace, NumberedSection>;
  /** By their place in the plan; one without heading and words is left out. */
  readonly own: ReadonlyMap<number, NumberedSection>;
  /** In the order in which they stand. */
  readonly all: readonly NumberedSection[];
  readonly tables: ReadonlyMap<TableName, number>;
};

export type TableName = keyof typeof reportTexts.tables.names;

export function reportOutline(input: OutlineInput): ReportOutline {
  const fixed = new Map<FixedPlace, NumberedSection>();
  const own = new Map<number, NumberedSection>();
  const all: NumberedSection[] = [];
  let last = 0;
  const numbered = (title: string, destination: string): NumberedSection => {
    last += 1;
    const section = {
      number: String(last),
      title,
      heading: reportTexts.heading(last, title),
      destination,
    };
    all.push(section);
    return section;
  };
  const add = (place: FixedPlace, title: string) => fixed.set(place, numbered(title, place));
  const addOwn = (where: OwnSection['place']) => {
    input.sections.forEach((section, place) => {
      if (section.place !== where || isEmpty(section)) return;
      const title = section.heading.trim() === '' ? reportTexts.ownSection.untitled : section.heading;
      own.set(place, numbered(title, destinations.ownSection(place)));
    });
  };
  add('claim', reportTexts.claim.heading);
  add('instruction', reportTexts.instruction.heading);
  add('received', reportTexts.received.heading);
  addOwn('before-findings');
  add('findings', reportTexts.findings.heading);
  add('plates', reportTexts.plates.heading);
  if (input.hasChain) add('chain', chainReportTexts.heading);
  addOwn('before-answer');
  add('answer', reportTexts.answer.heading);
  add('limits', reportTexts.limits.heading);
  add('record', reportTexts.record.heading);
  add('signature', reportTexts.signature.heading);
  const letters = ['A', 'B'];
  const annex = (place: FixedPlace, title: string) => {
    const letter = letters.shift() ?? '';
    const section = {
      number: letter,
      title,
      heading: reportTexts.annex(letter, title),
      destination: place,
    };
    all.push(section);
    fixed.set(place, section);
  };
  if (input.register.length > 0) {
    annex('register', reportTexts.register.heading);
    annex('sheet', reportTexts.sheet.heading);
  }
  return { fixed, own, all, tables: tablesOf(input) };
}

function isEmpty({ heading, words }: OwnSection): boolean {
  return heading.trim() === '' && words.trim() === '';
}

/** In the order in which they stand: tables count through the report. */
function tablesOf({ hasCustody, findings, register }: OutlineInput): Map<TableName, number> {
  const present: TableName[] = [
    ...(hasCustody ? (['custody'] as const) : []),
    ...(findings.length > 0 ? (['findings'] as const) : []),
    ...(register.length > 0 ? (['photos'] as const) : []),
  ];
  return new Map(present.map((name, index) => [name, index + 1]));
}

/** Photos with marks first, then those without, each in the case's order: as the plates stand and are counted. */
export function platesInOrder<P extends Pick<Photo, 'id'>>(
  photos: readonly P[],
  marks: readonly Pick<Mark, 'photoId'>[],
): P[] {
  const marked = new Set(marks.map(({ photoId }) => photoId));
  return [...photos.filter(({ id }) => marked.has(id)), ...photos.filter(({ id }) => !marked.has(id))];
}

export function referenceTargets(input: OutlineInput): ReferenceTarget[] {
  const { tables, all } = reportOutline(input);
  const { names, figureNames } = reportTexts.tables;
  const figures = input.hasChain ? [figureNames.chain] : [];
  return [
    ...input.findings.map(({ number }): ReferenceTarget => ({
      kind: 'finding',
      names: [String(number)],
      number: String(number),
      destination: destinations.finding(number),
    })),
    ...platesInOrder(input.photos, input.marks).map(({ id, sourceName }, index): ReferenceTarget => ({
      kind: 'plate',
      names: [sourceName, sourceName.replace(/\.[^.]*$/, '')].map(inBrackets),
      number: String(index + 1),
      destination: destinations.plate(id),
    })),
    ...[...tables].map(([name, number]): ReferenceTarget => ({
      kind: 'table',
      names: [names[name]],
      number: String(number),
      destination: destinations.table(name),
    })),
    ...figures.map((name, index): ReferenceTarget => ({
      kind: 'figure',
      names: [name],
      number: String(index + 1),
      destination: 'chain',
    })),
    ...all.map(({ title, number, destination }): ReferenceTarget => ({
      kind: 'section',
      names: [inBrackets(title)],
      ...(/^\d/.test(number) ? {} : { word: reportTexts.references.annex }),
      number,
      destination,
    })),
  ];
}

/** A name as it can stand within the brackets of a reference: without brackets and line breaks of its own. */
export function inBrackets(name: string): string {
  return name
    .replace(/[[\]\r\n]/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
}
