/**
 * What a case still leaves open before its report is signed. A point refuses nothing: the analyst settles it, or signs
 * as it is. In the order of the work, so that the list is walked as the case was.
 */
import { chainFlags } from '#analysis/chain/chain-flags.ts';
import { chainStateOf } from '#analysis/chain/chain-state.ts';
import { contradictsDates, timeBetween } from '#analysis/claim/time-in-service.ts';
import { custodyGaps } from '#analysis/custody/custody-gaps.ts';
import { conflictsAmong, markCountsOf } from '#analysis/findings/conflicts.ts';
import { awaitsFinding, type GivenOrNot } from '#analysis/marks/notes.ts';
import type { CaseFields } from '#shared-types/case.ts';
import type { Chain } from '#shared-types/chain.ts';
import type { CustodyEntry } from '#shared-types/custody.ts';
import type { Finding } from '#shared-types/finding.ts';
import type { FindingId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import type { Photo } from '#shared-types/photo.ts';
import { openPointTexts } from '#shared-types/texts/open-points.ts';

/** Where a point is settled. */
export type OpenAt = 'claim' | 'photos' | 'marks' | 'findings' | 'chain';

export type OpenPoint = {
  readonly at: OpenAt;
  /** Ready to be shown. */
  readonly sentence: string;
  /** The one finding that it is about, to be led to. */
  readonly findingId: FindingId | null;
};

export type WhatIsIn = {
  readonly teardownCase: CaseFields;
  readonly custody: readonly CustodyEntry[];
  readonly photos: readonly Pick<Photo, 'parts' | 'declaredSynthetic'>[];
  readonly marks: readonly GivenOrNot[];
  readonly findings: readonly Omit<Finding, 'revision'>[];
  readonly chain: Chain;
  readonly pack: KnowledgePack;
};

export function openPoints(content: WhatIsIn): readonly OpenPoint[] {
  return [
    ...ofTheClaim(content),
    ...ofThePhotos(content),
    ...ofTheMarks(content),
    ...ofTheFindings(content),
    ...ofTheChain(content),
  ];
}

function point(at: OpenAt, sentence: string, findingId: FindingId | null = null): OpenPoint {
  return { at, sentence, findingId };
}

function ofTheClaim({ teardownCase, custody }: WhatIsIn): OpenPoint[] {
  const { claim, unit, interest, outcome, conclusion, service } = teardownCase;
  const texts = openPointTexts.claim;
  const between = timeBetween(service);
  const { timeInService } = service;
  const gaps = custodyGaps(custody).length;
  const sentences = [
    claim.trim() === '' ? texts.noClaim : null,
    unit.model.trim() === '' ? texts.noModel : null,
    unit.serial.trim() === '' ? texts.noSerial : null,
    interest.standing === 'not-stated' ? texts.noInterest : null,
    between?.kind === 'backwards' ? texts.backwards : null,
    timeInService !== null && contradictsDates(timeInService, between) ? texts.otherTime : null,
    gaps > 0 ? texts.gaps(gaps) : null,
    outcome === 'not-answered' ? texts.notAnswered : null,
    conclusion.trim() === '' ? texts.noConclusion : null,
  ];
  return sentences.flatMap((sentence) => (sentence === null ? [] : [point('claim', sentence)]));
}

function ofThePhotos({ photos }: WhatIsIn): OpenPoint[] {
  const without = photos.filter(({ parts }) => parts.length === 0).length;
  const synthetic = photos.filter(({ declaredSynthetic }) => declaredSynthetic !== null).length;
  return [
    ...(without === 0 ? [] : [point('photos', openPointTexts.photosWithoutPart(without))]),
    ...(synthetic === 0 ? [] : [point('photos', openPointTexts.photosSynthetic(synthetic))]),
  ];
}

function ofTheMarks({ marks }: WhatIsIn): OpenPoint[] {
  const without = marks.filter(awaitsFinding).length;
  return without === 0 ? [] : [point('marks', openPointTexts.marksWithoutFinding(without))];
}

function ofTheFindings({ findings, marks, pack, teardownCase }: WhatIsIn): OpenPoint[] {
  const texts = openPointTexts.findings;
  if (findings.length === 0) return [point('findings', texts.none)];
  const markCounts = markCountsOf(marks);
  const inOrder = [...findings].sort((one, other) => one.number - other.number);
  const present = inOrder.filter(({ presence }) => presence === 'present');
  const undecided = present.filter((finding) => finding.class === 'undecided');
  const missing = new Set(pack.kinds.filter((kind) => kind.partMissing).map(({ id }) => id));
  // No photo shows a part that was not there.
  const unshown = present.filter(({ id, kind }) => !markCounts.has(id) && !missing.has(kind));
  const { rotation } = teardownCase.unit;
  const toSettle = conflictsAmong(pack, findings, { markCounts, rotation }).filter(({ certain }) => certain);
  const told = (list: readonly (typeof inOrder)[number][], words: (numbers: readonly number[]) => string) => {
    const [first] = list;
    if (first === undefined) return [];
    const only = list.length === 1 ? first.id : null;
    return [point('findings', words(list.map(({ number }) => number)), only)];
  };
  return [
    ...told(undecided, texts.undecided),
    ...told(unshown, texts.withoutMark),
    ...(toSettle.length === 0 ? [] : [point('findings', texts.toSettle(toSettle.length))]),
  ];
}

/** A chain that was not begun is one point, not one for each finding that is outside it. */
function ofTheChain({ chain, findings, pack, teardownCase }: WhatIsIn): OpenPoint[] {
  if (chain.nodes.length === 0) return findings.length === 0 ? [] : [point('chain', openPointTexts.noChain)];
  const subject = {
    findings: new Map(findings.map((finding) => [finding.id, finding])),
    pack,
    claim: teardownCase.claim,
  };
  return chainFlags(chainStateOf(chain), subject).map(({ sentence }) => point('chain', sentence));
}
