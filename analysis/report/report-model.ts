/**
 * The report as data: every word and line of it, before it is set on pages. Pure and plain JSON, so that the same
 * case gives the same model and the same model the same document. Sizes are PDF points.
 */
import type { Analyst } from '#shared-types/analyst.ts';
import type { TeardownCase } from '#shared-types/case.ts';
import type { DamageClass, Finding } from '#shared-types/finding.ts';
import type { JournalCheck } from '#shared-types/journal.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import type { Mark } from '#shared-types/mark.ts';
import type { Photo } from '#shared-types/photo.ts';
import type { PaperSize } from '#shared-types/settings.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { reportTexts } from '#shared-types/texts/report.ts';
import type { Instant } from '#shared-types/times.ts';

import { classKey, type SizedDrawing } from './class-key.ts';
import { findingNotes, findingRows, type FindingNote, type FindingRow } from './finding-rows.ts';
import { markLabels } from './mark-labels.ts';
import { reportPlates, type ReportPlate } from './report-plates.ts';

export type ReportInput = {
  readonly teardownCase: TeardownCase;
  /** In the case's order: "photo 3 of 7" counts through it. */
  readonly photos: readonly Photo[];
  readonly marks: readonly Mark[];
  readonly findings: readonly Finding[];
  /** The machine kind's data as the case knows them. */
  readonly pack: KnowledgePack;
  readonly analyst: Analyst;
  readonly paper: PaperSize;
  /** When the report is made. */
  readonly instant: Instant;
  readonly journal: Pick<JournalCheck, 'entries' | 'head'>;
};

/** A line of a two-column block: what it is, and its value. */
export type LabelledValue = { readonly label: string; readonly value: string };

export type ReportModel = {
  readonly model: 1;
  readonly paper: PaperSize;
  readonly madeAt: Instant;
  /** What a document's properties say of it. */
  readonly properties: {
    readonly title: string;
    readonly subject: string;
    readonly author: string;
    readonly language: string;
    readonly producer: string;
  };
  /** Left and right of every page's head, left of its foot. */
  readonly running: { readonly report: string; readonly unit: string; readonly foot: string };
  readonly title: string;
  readonly titleBlock: readonly LabelledValue[];
  readonly claim: {
    readonly heading: string;
    readonly lead: string;
    /** Word for word; empty where none was entered, then `none` is printed. */
    readonly words: string;
    readonly none: string;
  };
  /** Printed also while the claim is not answered: it says so then. */
  readonly answer: {
    readonly heading: string;
    readonly outcome: string;
    readonly conclusion: string;
  };
  readonly findings: {
    readonly heading: string;
    readonly none: string;
    readonly key: SizedDrawing | null;
    readonly rows: readonly FindingRow[];
    readonly notesHeading: string;
    readonly notes: readonly FindingNote[];
  };
  readonly plates: {
    readonly heading: string;
    readonly none: string;
    readonly plates: readonly ReportPlate[];
  };
  readonly limits: { readonly heading: string; readonly sentences: readonly string[] };
  readonly signature: { readonly name: string; readonly qualification: string };
  readonly record: { readonly heading: string; readonly lines: readonly LabelledValue[] };
};

export function buildReportModel(input: ReportInput): ReportModel {
  const { teardownCase, photos, marks, pack, analyst } = input;
  const findings = [...input.findings].sort((one, other) => one.number - other.number);
  const labels = markLabels(photos, marks, findings);
  const plates = reportPlates({ photos, marks, findings, pack, paper: input.paper, labels });
  const unit = unitName(teardownCase);
  const sections = ['claim', 'answer', 'findings', 'plates', 'limits', 'record'];
  const section = (name: string) => sections.indexOf(name) + 1;
  const heading = (name: 'claim' | 'answer' | 'findings' | 'plates' | 'limits' | 'record') =>
    reportTexts.heading(section(name), reportTexts[name].heading);
  const classes = new Set<DamageClass>(findings.map((finding) => finding.class));
  return {
    model: 1,
    paper: input.paper,
    madeAt: input.instant,
    properties: {
      title: reportTexts.documentTitle(teardownCase.number, unit),
      subject: reportTexts.subject(pack.label, unit),
      author: analyst.name,
      language: reportTexts.language,
      producer: reportTexts.producer,
    },
    running: {
      report: reportTexts.runningTitle(teardownCase.number, reportTexts.standings[teardownCase.status]),
      unit,
      foot: reportTexts.footer(section('limits')),
    },
    title: reportTexts.title(teardownCase.number),
    titleBlock: titleBlock(input),
    claim: {
      heading: heading('claim'),
      lead: reportTexts.claim.lead,
      words: teardownCase.claim,
      none: reportTexts.claim.none,
    },
    answer: {
      heading: heading('answer'),
      outcome: commonTexts.outcomes[teardownCase.outcome],
      conclusion: teardownCase.conclusion,
    },
    findings: {
      heading: heading('findings'),
      none: reportTexts.findings.none,
      key: classKey(classes),
      rows: findingRows(findings, plates, pack),
      notesHeading: reportTexts.findings.notesHeading,
      notes: findingNotes(findings),
    },
    plates: { heading: heading('plates'), none: reportTexts.plates.none, plates },
    limits: { heading: heading('limits'), sentences: limits(findings, plates) },
    signature: { name: analyst.name, qualification: analyst.qualification },
    record: { heading: heading('record'), lines: record(input, plates) },
  };
}

/** "Maker model, serial 30771", of what is known. */
function unitName(teardownCase: TeardownCase): string {
  const { maker, model, serial } = teardownCase.unit;
  const name = [maker, model].filter((part) => part !== '').join(' ');
  return [name, serial === '' ? '' : reportTexts.serial(serial)].filter((part) => part !== '').join(', ');
}

function titleBlock({ teardownCase, pack, analyst, instant }: ReportInput): LabelledValue[] {
  const { block } = reportTexts;
  const partNumber =
    teardownCase.unit.partNumber === '' ? '' : reportTexts.partNumber(teardownCase.unit.partNumber);
  const unit = [unitName(teardownCase), partNumber].filter((part) => part !== '').join(', ');
  return [
    { label: block.caseNumber, value: teardownCase.number },
    { label: block.standing, value: reportTexts.standings[teardownCase.status] },
    { label: block.machine, value: pack.label },
    { label: block.unit, value: orNotEntered(unit) },
    { label: block.customer, value: orNotEntered(teardownCase.customer) },
    {
      label: block.analyst,
      value: [analyst.name, analyst.qualification].filter((part) => part !== '').join(', '),
    },
    { label: block.date, value: dateInWords(instant) },
  ];
}

function orNotEntered(value: string): string {
  return value === '' ? reportTexts.notEntered : value;
}

/** An instant is written YYYY-MM-DDThh:mm:ss.sssZ; the date is that of UTC, and says so. */
export function dateInWords(instant: Instant): string {
  const [year, month, day] = instant.slice(0, 10).split('-').map(Number);
  return reportTexts.date(day ?? 0, month ?? 0, year ?? 0, instant.slice(11, 16));
}

function limits(findings: readonly Finding[], plates: readonly ReportPlate[]): string[] {
  const notExamined = findings.filter((finding) => finding.presence === 'not-examined').length;
  const unassigned = plates.reduce(
    (count, plate) => count + plate.marks.filter((mark) => mark.findingNumber === null).length,
    0,
  );
  return [
    reportTexts.limits.scope,
    ...(notExamined === 0 ? [] : [reportTexts.limits.notExamined(notExamined, findings.length)]),
    ...(unassigned === 0 ? [] : [reportTexts.limits.unassignedMarks(unassigned)]),
    reportTexts.limits.opinion,
  ];
}

function record(
  { teardownCase, instant, journal, photos }: ReportInput,
  plates: readonly ReportPlate[],
): LabelledValue[] {
  const words = reportTexts.record;
  const { pack } = teardownCase;
  return [
    { label: words.madeAt, value: dateInWords(instant) },
    { label: words.pack, value: words.packValue(pack.id, pack.version) },
    { label: words.packHash, value: pack.sha256 },
    { label: words.journal, value: String(journal.entries) },
    { label: words.journalHead, value: journal.head },
    ...plates.flatMap((plate) => originalOf(plate, photos)),
  ];
}

/** What a plate was made from: the file as it came, by its name and its hash. */
function originalOf(plate: ReportPlate, photos: readonly Photo[]): LabelledValue[] {
  const photo = photos[plate.photoNumber - 1];
  if (photo === undefined) return [];
  const { original, originalValue } = reportTexts.record;
  return [{ label: original(plate.number), value: originalValue(photo.sourceName, photo.sha256) }];
}
