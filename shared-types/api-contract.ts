/**
 * The one contract between the page and the engine: channel -> request schema and response type.
 * The preload, the registration, the loopback host, the page's client and the handlers all derive from it.
 * Messages are JSON values only; bytes travel by intake and delivery tokens, photos by derivative addresses.
 */
import { analystDraftSchema, type Analyst } from './analyst.ts';
import { benchCommitSchema, type BenchOutcome } from './bench-change.ts';
import { caseChangeSchema, caseDraftSchema, type CaseSummary, type TeardownCase } from './case.ts';
import { chainCommitSchema, type Chain, type ChainOutcome } from './chain.ts';
import { custodyAddSchema, custodyStrikeSchema, type CustodyEntry } from './custody.ts';
import { damageClassSchema, type ClassChange, type Finding } from './finding.ts';
import {
  analystIdSchema,
  caseIdSchema,
  findingIdSchema,
  intakeTokenSchema,
  jobIdSchema,
  packTermIdSchema,
  partyIdSchema,
  photoIdSchema,
  revisionSchema,
  type CaseId,
} from './ids.ts';
import type { FinishedDocument, Job } from './job.ts';
import type { JournalCheck, JournalEntry } from './journal.ts';
import type { KnowledgePack, MachineKind } from './knowledge-pack.ts';
import { libraryNames, type LibraryOverview, type ProgramDescription } from './library.ts';
import type { Mark } from './mark.ts';
import { partyPutSchema, type Party } from './party.ts';
import {
  photoChangeSchema,
  photosAssignSchema,
  photosReorderSchema,
  photosTakeOutSchema,
  type Photo,
  type RegisterEntry,
} from './photo.ts';
import { reportPlanChangeSchema, type ReportPlan } from './report-plan.ts';
import { reportRequestSchema } from './report.ts';
import { z } from './schema.ts';
import {
  searchCountsRequestSchema,
  searchRequestSchema,
  type KnownTag,
  type SearchAnswer,
  type SearchCounts,
} from './search.ts';
import { settingsFieldsSchema, type Settings } from './settings.ts';

type Entry<Request extends z.ZodType, Response> = {
  readonly request: Request;
  /** Carries the response's type; never present at run time. */
  readonly response?: Response;
};

function channel<Request extends z.ZodType>(request: Request) {
  return { answers: <Response>(): Entry<Request, Response> => ({ request }) };
}

const nothing = z.strictObject({});
const ofCase = z.strictObject({ caseId: caseIdSchema });
const ofJob = z.strictObject({ jobId: jobIdSchema });

export const apiContract = {
  'program.describe': channel(nothing).answers<ProgramDescription>(),
  'program.note-fault': channel(
    z.strictObject({ where: z.string().max(200), message: z.string().max(2_000) }),
  ).answers<null>(),
  'library.overview': channel(nothing).answers<LibraryOverview>(),
  'library.open': channel(z.strictObject({ library: z.enum(libraryNames) })).answers<null>(),
  'settings.read': channel(nothing).answers<Settings>(),
  'settings.change': channel(
    z.strictObject({ revision: revisionSchema, fields: settingsFieldsSchema.partial() }),
  ).answers<Settings>(),
  'analysts.list': channel(nothing).answers<Analyst[]>(),
  'analysts.add': channel(analystDraftSchema).answers<Analyst>(),
  'analysts.change': channel(
    z.strictObject({ analystId: analystIdSchema, revision: revisionSchema, fields: analystDraftSchema }),
  ).answers<Analyst>(),
  'machine-kinds.list': channel(nothing).answers<MachineKind[]>(),
  'machine-kinds.read': channel(
    z.strictObject({ id: packTermIdSchema, version: z.string().max(40).nullable() }),
  ).answers<KnowledgePack>(),
  /** The newest first; only so many of them where `latest` says so. */
  'cases.list': channel(z.strictObject({ latest: z.int().min(1).optional() })).answers<CaseSummary[]>(),
  'cases.open': channel(caseDraftSchema).answers<{ caseId: CaseId }>(),
  'cases.read': channel(ofCase).answers<TeardownCase>(),
  'cases.change': channel(caseChangeSchema).answers<TeardownCase>(),
  'cases.withdraw': channel(
    z.strictObject({
      caseId: caseIdSchema,
      revision: revisionSchema,
      reason: z.string().trim().min(1).max(2_000),
    }),
  ).answers<TeardownCase>(),
  'parties.list': channel(ofCase).answers<Party[]>(),
  'parties.put': channel(partyPutSchema).answers<Party>(),
  'parties.remove': channel(
    z.strictObject({ partyId: partyIdSchema, revision: revisionSchema }),
  ).answers<null>(),
  'custody.list': channel(ofCase).answers<CustodyEntry[]>(),
  'custody.add': channel(custodyAddSchema).answers<CustodyEntry>(),
  'custody.strike': channel(custodyStrikeSchema).answers<CustodyEntry>(),
  'photos.list': channel(ofCase).answers<Photo[]>(),
  'photos.import': channel(
    z.strictObject({ caseId: caseIdSchema, tokens: z.array(intakeTokenSchema).min(1).max(2_000) }),
  ).answers<Job>(),
  'photos.change': channel(photoChangeSchema).answers<Photo>(),
  'photos.assign': channel(photosAssignSchema).answers<Photo[]>(),
  'photos.reorder': channel(photosReorderSchema).answers<null>(),
  'photos.take-out': channel(photosTakeOutSchema).answers<null>(),
  'photos.put-back': channel(
    z.strictObject({ photoId: photoIdSchema, revision: revisionSchema }),
  ).answers<Photo>(),
  'photos.register': channel(ofCase).answers<RegisterEntry[]>(),
  'bench.read': channel(ofCase).answers<{ marks: Mark[]; findings: Finding[] }>(),
  'bench.commit': channel(benchCommitSchema).answers<BenchOutcome>(),
  'findings.classify': channel(
    z.strictObject({
      findingId: findingIdSchema,
      revision: revisionSchema,
      class: damageClassSchema,
      reason: z.string().trim().min(1).max(2_000),
    }),
  ).answers<Finding>(),
  'findings.class-history': channel(ofCase).answers<ClassChange[]>(),
  'chain.read': channel(ofCase).answers<Chain>(),
  'chain.commit': channel(chainCommitSchema).answers<ChainOutcome>(),
  /** The chain's figure as an SVG document. */
  'chain.figure': channel(ofCase).answers<FinishedDocument>(),
  'jobs.list': channel(nothing).answers<Job[]>(),
  'jobs.read': channel(ofJob).answers<Job>(),
  'jobs.stop': channel(ofJob).answers<Job>(),
  'report-plan.read': channel(ofCase).answers<ReportPlan>(),
  'report-plan.change': channel(reportPlanChangeSchema).answers<ReportPlan>(),
  'reports.make': channel(reportRequestSchema).answers<Job>(),
  'search.cases': channel(searchRequestSchema).answers<SearchAnswer>(),
  /** Null where a newer request of the same page has overtaken this one. */
  'search.counts': channel(searchCountsRequestSchema).answers<SearchCounts | null>(),
  'search.known-tags': channel(nothing).answers<KnownTag[]>(),
  'journal.list': channel(
    z.strictObject({ caseId: caseIdSchema.nullable(), most: z.int().min(1).max(1_000) }),
  ).answers<JournalEntry[]>(),
  'journal.check': channel(nothing).answers<JournalCheck>(),
} as const satisfies Record<string, Entry<z.ZodType, unknown>>;

export type ApiContract = typeof apiContract;
export type Channel = keyof ApiContract;
export type RequestOf<C extends Channel> = z.input<ApiContract[C]['request']>;
export type ParsedRequestOf<C extends Channel> = z.output<ApiContract[C]['request']>;
export type ResponseOf<C extends Channel> = Exclude<ApiContract[C]['response'], undefined>;

export const channels = Object.keys(apiContract) as Channel[];

export function isChannel(name: string): name is Channel {
  return Object.hasOwn(apiContract, name);
}

/** Largest request in bytes of JSON that a carrier passes on: the largest bench commit fits many times over. */
export const largestRequestBytes = 8 * 1024 * 1024;
