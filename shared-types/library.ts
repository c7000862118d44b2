import type { Instant } from './times.ts';

/** The user's own library, or the one that holds nothing but the sample cases. */
export const libraryNames = ['own', 'samples'] as const;
export type LibraryName = (typeof libraryNames)[number];

export type LibraryOverview = {
  readonly library: LibraryName;
  readonly folder: string;
  readonly schemaNumber: number;
  readonly cases: number;
  readonly photos: number;
  readonly journal: { readonly entries: number; readonly head: string };
  /** What the sweep at start found; null until it has run. */
  readonly sweep: SweepReport | null;
};

/** Compares the photo store with the library's rows. It reports and deletes nothing. */
export type SweepReport = {
  readonly at: Instant;
  /** Original files on disk that no row names. */
  readonly strays: readonly string[];
  /** Originals that a row names and the disk has not got: the first thousand by name, and how many they are. */
  readonly missing: readonly { readonly sha256: string; readonly sourceName: string }[];
  readonly missingCount: number;
};

export type ProgramDescription = {
  readonly version: string;
  readonly sqlite: string;
  readonly node: string;
  readonly carrier: 'desktop' | 'loopback';
};
