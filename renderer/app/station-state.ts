/** What the spine says of each station. */
import { awaitsFinding, type GivenOrNot } from '#analysis/marks/notes.ts';
import type { TeardownCase } from '#shared-types/case.ts';
import type { ChainLink, ChainNode } from '#shared-types/chain.ts';
import type { Finding } from '#shared-types/finding.ts';
import type { Photo } from '#shared-types/photo.ts';
import type { Station } from './addresses.ts';

export type StationState = 'empty' | 'begun' | 'done';
export type StationSign = { readonly state: StationState; readonly count: number | null };

export type CaseContents = {
  readonly photos: readonly Pick<Photo, 'parts'>[];
  readonly marks: readonly GivenOrNot[];
  readonly findings: readonly Pick<Finding, 'id' | 'presence' | 'class'>[];
  readonly chain: {
    readonly nodes: readonly Pick<ChainNode, 'findingId'>[];
    readonly links: readonly Pick<ChainLink, 'reason'>[];
  };
  /** Whether findings say the same twice, or cannot all be right as they stand. */
  readonly toSettle: boolean;
};

/**
 * When a station's work counts as done:
 * - claim: it has its words, a model, a serial number and the declaration of interest;
 * - photos: each shows a part;
 * - marks: each that points at damage is given to a finding;
 * - findings: none that is present is undecided (what is not there has no class), and nothing is to settle among them;
 * - chain: every link has its reason, and every primary and secondary finding stands in it;
 * - report: begun when the claim is answered, done when issued.
 * Contents are null while they are read; the counts then come from the case.
 */
export function stationSigns(
  teardownCase: TeardownCase,
  contents: CaseContents | null,
): Readonly<Record<Station, StationSign>> {
  const { counts, unit, claim, interest, outcome, status } = teardownCase;
  const claimIsThere = claim.trim() !== '';
  const allHaveParts = contents?.photos.every((photo) => photo.parts.length > 0) ?? false;
  const allGiven = contents?.marks.every((mark) => !awaitsFinding(mark)) ?? false;
  const allDecided =
    contents?.findings.every((one) => one.presence !== 'present' || one.class !== 'undecided') ?? false;
  const settled = contents?.toSettle === false;
  return {
    claim: {
      state: reached(
        claimIsThere || unit.model !== '',
        claimIsThere && unit.model !== '' && unit.serial !== '' && interest.standing !== 'not-stated',
      ),
      count: null,
    },
    photos: counted(counts.photos, allHaveParts),
    marks: counted(counts.marks, allGiven),
    findings: counted(counts.findings, allDecided && settled),
    chain: chainSign(contents),
    report: {
      state: reached(outcome !== 'not-answered', status === 'issued' || status === 'superseded'),
      count: null,
    },
  };
}

function counted(count: number, complete: boolean): StationSign {
  return { state: reached(count > 0, count > 0 && complete), count };
}

function reached(begun: boolean, done: boolean): StationState {
  return done ? 'done' : begun ? 'begun' : 'empty';
}

function chainSign(contents: CaseContents | null): StationSign {
  if (contents === null) return { state: 'empty', count: null };
  const { nodes, links } = contents.chain;
  const standing = new Set(nodes.map((node) => node.findingId));
  const belongs = ({ presence, class: of }: CaseContents['findings'][number]) =>
    presence === 'present' && (of === 'primary' || of === 'secondary');
  const complete =
    links.length > 0 &&
    links.every((link) => link.reason !== '') &&
    contents.findings.every((finding) => !belongs(finding) || standing.has(finding.id));
  return counted(nodes.length, complete);
}
