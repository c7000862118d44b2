/**
 * The one contract between the page and the engine: channel -> request schema and response type.
 * The preload, the registration, the loopback host, the page's client and the handlers all derive from it.
 * Messages are JSON values only; bytes travel by intake and delivery tokens, photos by derivative addresses.
 */
import { analystDraftSchema, type Analyst } from './analyst.ts';
import { benchCommitSchema, type BenchOutcome } from './bench-change.ts';
import { caseChangeSchema, caseDraftSchema, type CaseSummary, type TeardownCase } from './case.ts';
import { damageClassSchema, type Finding } from './finding.ts';
import {
  analystIdSchema,
  caseIdSchema,
  findingIdSchema,
  intakeTokenSchema,
  jobIdSchema,
  packTermIdSchema,
  revisionSchema,
  type CaseId,
} from './ids.ts';
import type { Job } from './job.ts';
import type { JournalCheck, JournalEntry } from './journal.ts';
import type { KnowledgePack, MachineKind } from './knowledge-pack.ts';
import { libraryNames, type LibraryOverview, type ProgramDescription } from './library.ts';
import type { Mark } from './mark.ts';
import { photoChangeSchema, type Photo } from './photo.ts';
import { reportRequestSchema } from './report.ts';
import { z } from './schema.ts';
import { searchRequestSchema, type KnownTag, type SearchAnswer } from './search.ts';
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
  'cases.list': channel(nothing).answers<CaseSummary[]>(),
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
  'photos.list': channel(ofCase).answers<Photo[]>(),
  'photos.import': channel(
    z.strictObject({ caseId: caseIdSchema, tokens: z.array(intakeTokenSchema).min(1).max(2_000) }),
  ).answers<Job>(),
  'photos.change': channel(photoChangeSchema).answers<Photo>(),
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
  'jobs.list': channel(nothing).answers<Job[]>(),
  'jobs.read': channel(ofJob).answers<Job>(),
  'jobs.stop': channel(ofJob).answers<Job>(),
  'reports.make': channel(reportRequestSchema).answers<Job>(),
  'search.cases': channel(searchRequestSchema).answers<SearchAnswer>(),
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
