/**
 * The report as data: every word and line of it, before it is set on pages. Pure and plain JSON, so that the same
 * case gives the same model and the same model the same document. Sizes are PDF points.
 */
import type { Analyst } from '#shared-types/analyst.ts';
import type { TeardownCase } from '#shared-types/case.ts';
import type { Chain } from '#shared-types/chain.ts';
import type { CustodyEntry } from '#shared-types/custody.ts';
import type { DamageClass, Finding } from '#shared-types/finding.ts';
import type { JournalCheck } from '#shared-types/journal.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import type { Mark } from '#shared-types/mark.ts';
import type { Party } from '#shared-types/party.ts';
import type { Photo, RegisterEntry } from '#shared-types/photo.ts';
import type { OwnSection, ReportPlanFields } from '#shared-types/report-plan.ts';
import type { PaperSize } from '#shared-types/settings.ts';
import { reportTexts } from '#shared-types/texts/report.ts';
import type { Instant } from '#shared-types/times.ts';

import { classKey, type SizedDrawing } from './class-key.ts';
import { destinations } from './destinations.ts';
import { findingNotes, findingRows, type FindingNote, type FindingRow } from './finding-rows.ts';
import { markLabels } from './mark-labels.ts';
import { missingChain, reportChain, type ReportChain } from './report-chain.ts';
import { ownWords, type OwnBlock } from './own-words.ts';
import type { PlatesAPage } from './page-geometry.ts';
import {
  registerRows,
  sheetPhotos,
  sheetRemarks,
  type RegisterRow,
  type SheetPhoto,
} from './photo-annexes.ts';
import {
  referenceTargets,
  reportOutline,
  type OutlineInput,
  type ReportOutline,
  type SectionHeading,
  type TableName,
} from './report-outline.ts';
import { reportPlates, type ReportPlate } from './report-plates.ts';
import { standingOf, titleBlock, unitName, type LabelledValue } from './title-block.ts';
import { instantInWords } from './told-words.ts';
import {
  claimantsOf,
  custodyRows,
  instructionLines,
  interestLine,
  type CustodyRow,
} from './what-was-received.ts';

export type { LabelledValue } from './title-block.ts';

export type ReportInput = {
  /** Of the library of sample cases: said on every page, and no photo needs a stamp of its own. */
  readonly isSample: boolean;
  readonly teardownCase: TeardownCase;
  readonly parties: readonly Party[];
  /** In the order of the times told. */
  readonly custody: readonly CustodyEntry[];
  /** In the case's order: "photo 3 of 7" counts through it. */
  readonly photos: readonly Photo[];
  /** Every photo there ever was, in the order in which they came in. */
  readonly register: readonly RegisterEntry[];
  readonly marks: readonly Mark[];
  readonly findings: readonly Finding[];
  readonly chain: Chain;
  /** The machine kind's data as the case knows them. */
  readonly pack: KnowledgePack;
  readonly plan: ReportPlanFields;
  readonly analyst: Analyst;
  readonly paper: PaperSize;
  /** When the report is made. */
  readonly instant: Instant;
  readonly journal: Pick<JournalCheck, 'entries' | 'head'>;
};

/** A heading, and the words that stand under it. */
export type OwnWordsSection = SectionHeading & { readonly blocks: readonly OwnBlock[] };

/** What stands above a table, and the named place it stands at. */
export type TableCaption = { readonly name: string; readonly words: string; readonly destination: string };

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
  readonly claim: SectionHeading & {
    /** Who claims. */
    readonly lead: string;
    /** Word for word; empty where none was entered, then `none` is printed. */
    readonly words: string;
    readonly none: string;
  };
  readonly instruction: SectionHeading & { readonly lines: readonly LabelledValue[] };
  readonly received: SectionHeading & {
    /** As the analyst wrote it; empty where nothing was entered, then `stateNone` is printed. */
    readonly state: string;
    readonly stateNone: string;
    readonly custody: { readonly caption: TableCaption | null; readonly none: string };
    readonly rows: readonly CustodyRow[];
  };
  readonly beforeFindings: readonly OwnWordsSection[];
  readonly findings: SectionHeading & {
    readonly none: string;
    readonly caption: TableCaption | null;
    readonly key: SizedDrawing | null;
    readonly rows: readonly FindingRow[];
    /** Of numbers that no finding has any more; null where none is missing. */
    readonly remark: string | null;
    readonly notesHeading: string;
    readonly notes: readonly FindingNote[];
  };
  readonly plates: SectionHeading & {
    readonly none: string;
    readonly aPage: PlatesAPage;
    readonly plates: readonly ReportPlate[];
  };
  /** Null where no chain of cause and effect has been drawn. */
  readonly chain: (SectionHeading & ReportChain) | null;
  readonly beforeAnswer: readonly OwnWordsSection[];
  /** Printed also while the claim is not answered: it says so then. */
  readonly answer: SectionHeading & {
    readonly outcome: string;
    readonly conclusion: readonly OwnBlock[];
    /** That cause and liability are two questions; empty while nothing is answered. */
    readonly liability: string;
  };
  readonly limits: SectionHeading & {
    readonly sentences: readonly string[];
    /** What whoever takes the parts in hand should know. */
    readonly handling: string;
  };
  readonly record: SectionHeading & { readonly lines: readonly LabelledValue[] };
  readonly signature: SectionHeading & {
    readonly covers: string;
    readonly name: string;
    readonly qualification: string;
  };
  /** Null where no photo ever came into the case. */
  readonly register:
    | (SectionHeading & {
        readonly lead: string;
        readonly caption: TableCaption;
        readonly rows: readonly RegisterRow[];
      })
    | null;
  readonly sheet:
    | (SectionHeading & {
        readonly lead: string;
        readonly photos: readonly SheetPhoto[];
        readonly remarks: readonly string[];
      })
    | null;
};

export function buildReportModel(asked: ReportInput): ReportModel {
  const input = asked.isSample ? withoutOrigins(asked) : asked;
  const { teardownCase, photos, marks, pack, analyst, plan } = input;
  const findings = [...input.findings].sort((one, other) => one.number - other.number);
  const { platesAPage } = plan;
  const labels = markLabels(photos, marks, findings);
  const plates = reportPlates({ photos, marks, findings, pack, paper: input.paper, platesAPage, labels });
  const plateOf = new Map(plates.map((plate) => [photos[plate.photoNumber - 1]?.id, plate.number] as const));
  const photoOf = new Map(photos.map(({ id }, index) => [id, index + 1]));
  const unit = unitName(teardownCase);
  const drawnChain = reportChain({ chain: input.chain, findings, pack, claim: teardownCase.claim });
  const outlineInput = outlineInputOf(input);
  const outline = reportOutline(outlineInput);
  const targets = referenceTargets(outlineInput);
  const section = (place: Parameters<ReportOutline['fixed']['get']>[0]): SectionHeading => {
    const found = outline.fixed.get(place);
    if (found === undefined) throw new Error(`the report has no section ${place}`);
    return { heading: found.heading, destination: found.destination };
  };
  const numberOf = (place: 'limits' | 'record') => outline.fixed.get(place)?.number ?? '';
  const own = (where: OwnSection['place']) =>
    [...outline.own].flatMap(([place, { heading, destination }]): OwnWordsSection[] => {
      const written = plan.sections[place];
      return written?.place === where
        ? [{ heading, destination, blocks: ownWords(written.words, targets) }]
        : [];
    });
  const numbers = {
    photo: (id: Photo['id']) => photoOf.get(id) ?? null,
    plate: (id: Photo['id']) => plateOf.get(id) ?? null,
  };
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
      report: reportTexts.runningTitle(teardownCase.number, standingOf(input)),
      unit,
      foot: reportTexts.footer(numberOf('limits')),
    },
    title: reportTexts.title(teardownCase.number),
    titleBlock: titleBlock(input, numbers.plate),
    claim: { ...section('claim'), ...claim(input) },
    instruction: {
      ...section('instruction'),
      lines: [...instructionLines(input.parties), interestLine(teardownCase.interest)],
    },
    received: {
      ...section('received'),
      state: teardownCase.stateReceived,
      stateNone: reportTexts.received.stateNone,
      custody: {
        caption: captionOf(outline, 'custody', reportTexts.received.custody),
        none: reportTexts.received.custodyNone,
      },
      rows: custodyRows(input.custody),
    },
    beforeFindings: own('before-findings'),
    findings: {
      ...section('findings'),
      none: reportTexts.findings.none,
      caption: captionOf(outline, 'findings', reportTexts.tables.findings),
      key: classKey(classesOf(findings, marks)),
      rows: findingRows(findings, plates, pack),
      remark: remarkOnNumbers(findings),
      notesHeading: reportTexts.findings.notesHeading,
      notes: findingNotes(findings),
    },
    plates: { ...section('plates'), none: reportTexts.plates.none, aPage: platesAPage, plates },
    chain: drawnChain === null ? null : { ...section('chain'), ...drawnChain },
    beforeAnswer: own('before-answer'),
    answer: {
      ...section('answer'),
      outcome: reportTexts.outcomes[teardownCase.outcome],
      conclusion: ownWords(teardownCase.conclusion, targets),
      liability: teardownCase.outcome === 'not-answered' ? '' : reportTexts.answer.liability,
    },
    limits: {
      ...section('limits'),
      sentences: [...limits(findings, plates), ...missingChain(input)],
      handling: reportTexts.limits.handling,
    },
    record: { ...section('record'), lines: record(input) },
    signature: {
      ...section('signature'),
      covers: reportTexts.signature.covers(
        Number(numberOf('record')),
        outline.all.map(({ number }) => number).filter((number) => /^\D/.test(number)),
      ),
      name: analyst.name,
      qualification: analyst.qualification,
    },
    ...annexes(input, outline, numbers),
  };
}

/** What the numbering of the report needs to know of a case. */
function outlineInputOf(input: ReportInput): OutlineInput {
  const { plan, findings, photos, marks, register, custody } = input;
  return {
    sections: plan.sections,
    findings,
    photos,
    marks,
    register,
    hasCustody: custody.length > 0,
    hasChain: input.chain.nodes.length > 0,
  };
}

/** What is said of all of them on every page is not said of each. */
function withoutOrigins(input: ReportInput): ReportInput {
  return {
    ...input,
    photos: input.photos.map((photo) => ({ ...photo, declaredSynthetic: null })),
    register: input.register.map((entry) => ({
      ...entry,
      photo: { ...entry.photo, declaredSynthetic: null },
    })),
  };
}

function annexes(
  input: ReportInput,
  outline: ReportOutline,
  numbers: Parameters<typeof registerRows>[1],
): Pick<ReportModel, 'register' | 'sheet'> {
  const { register: entries, photos, plan } = input;
  const registerSection = outline.fixed.get('register');
  const sheetSection = outline.fixed.get('sheet');
  const caption = captionOf(outline, 'photos', reportTexts.tables.photos);
  if (registerSection === undefined || sheetSection === undefined || caption === null) {
    return { register: null, sheet: null };
  }
  return {
    register: {
      heading: registerSection.heading,
      destination: registerSection.destination,
      lead: reportTexts.register.lead,
      caption,
      rows: registerRows(entries, numbers, plan.printCameraPlaces),
    },
    sheet: {
      heading: sheetSection.heading,
      destination: sheetSection.destination,
      lead: reportTexts.sheet.lead,
      photos: sheetPhotos(photos),
      remarks: sheetRemarks(entries),
    },
  };
}

/** Whoever reads 1, 3, 4 asks for 2. */
function remarkOnNumbers(findings: readonly Pick<Finding, 'number'>[]): string | null {
  const given = new Set(findings.map(({ number }) => number));
  const gone = Array.from({ length: Math.max(0, ...given) }, (_, at) => at + 1).filter(
    (one) => !given.has(one),
  );
  return gone.length === 0 ? null : reportTexts.findings.gone(gone);
}

function captionOf({ tables }: ReportOutline, table: TableName, words: string): TableCaption | null {
  const number = tables.get(table);
  if (number === undefined) return null;
  return { name: reportTexts.tables.caption(number), words, destination: destinations.table(table) };
}

function claim({ teardownCase, parties }: ReportInput): Omit<ReportModel['claim'], keyof SectionHeading> {
  const claimants = claimantsOf(parties);
  return {
    lead: claimants === '' ? reportTexts.claim.leadOfNobody : reportTexts.claim.lead(claimants),
    words: teardownCase.claim,
    none: reportTexts.claim.none,
  };
}

/** Of what is there, and of whatever else a mark shows. */
function classesOf(findings: readonly Finding[], marks: readonly Mark[]): Set<DamageClass> {
  const marked = new Set(marks.map(({ findingId }) => findingId));
  return new Set(
    findings
      .filter(({ id, presence }) => presence === 'present' || marked.has(id))
      .map((finding) => finding.class),
  );
}

function limits(findings: readonly Finding[], plates: readonly ReportPlate[]): string[] {
  const notExamined = findings.filter((finding) => finding.presence === 'not-examined').length;
  const unassigned = plates.reduce(
    (count, plate) =>
      count + plate.marks.filter((mark) => mark.findingNumber === null && !mark.isNote).length,
    0,
  );
  return [
    reportTexts.limits.scope,
    ...(notExamined === 0 ? [] : [reportTexts.limits.notExamined(notExamined, findings.length)]),
    ...(unassigned === 0 ? [] : [reportTexts.limits.unassignedMarks(unassigned)]),
    reportTexts.limits.opinion,
  ];
}

function record({ teardownCase, instant, journal }: ReportInput): LabelledValue[] {
  const words = reportTexts.record;
  const { pack } = teardownCase;
  return [
    { label: words.madeAt, value: instantInWords(instant) },
    { label: words.pack, value: words.packValue(pack.id, pack.version) },
    { label: words.packHash, value: pack.sha256 },
    { label: words.journal, value: String(journal.entries) },
    { label: words.journalHead, value: journal.head },
  ];
}
