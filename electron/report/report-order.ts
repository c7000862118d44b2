/** What the engine asks of the report's worker, and what comes back. Plain values: they cross a thread. */
import type { ReportModel } from '#analysis/report/report-model.ts';
import type { Envelope } from '#shared-types/errors.ts';
import type { BlobId } from '#shared-types/ids.ts';

export type ReportOrder = {
  readonly model: ReportModel;
  /** Absolute path of the upright JPEG of every picture the model's plates show. */
  readonly pictures: Readonly<Record<BlobId, string>>;
  /** The same in small, for every picture of the model's contact sheet. */
  readonly thumbnails: Readonly<Record<BlobId, string>>;
  /** Absolute path; written beside it first and renamed, so that it is whole or not there. */
  readonly outFile: string;
};

/** Where the report is written before it is whole. */
export function partFile(order: Pick<ReportOrder, 'outFile'>): string {
  return `${order.outFile}.part`;
}

export type MadeReport = { readonly pages: number; readonly bytes: number };

export const reportPhases = ['layingOut', 'finishing'] as const;
/** Names of jobTexts.phases. */
export type ReportPhase = (typeof reportPhases)[number];

/** One message a phase begun, then one with the result. The worker does one order at a time. */
export type ReportWorkerMessage = { readonly phase: ReportPhase } | { readonly result: Envelope<MadeReport> };
