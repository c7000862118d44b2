/**
 * What several statements about several places make of one question: is it so at any of these places?
 * Knows nothing of parts or quantities: a place is a text, a statement names the places it speaks of.
 */
import type { MarkState } from './mark-state.ts';

type Says = 'present' | 'absent' | 'not-examined';

/**
 * - present: it is so at one of the places at least; which one is not said where there are several;
 * - absent: it is so at none of them;
 * - not-examined: nothing could be seen there. It says nothing either way, so any other statement outweighs it.
 */
export type Testimony<Source> = {
  readonly source: Source;
  readonly says: Says;
  readonly places: ReadonlySet<string>;
  /** What part of the blades or pads it is so on, 0 to 1; null where that was not said. */
  readonly share: number | null;
};

export type Hearing<Source> = {
  readonly state: MarkState;
  /** Whose statements touch the question, in the order they were handed in. */
  readonly heard: readonly Source[];
  /** Those among them that contradict each other. A mark may be present all the same, by another one. */
  readonly disputed: readonly Source[];
};

/**
 * The rules, in order:
 * 1. A place is denied when an absent statement covers it.
 * 2. A present statement whose every place is denied is disputed, and so are those that deny it. Any other
 *    stands at the places left to it, and bears witness when all of those are places asked about.
 * 3. A witness makes the question present. Where a least share is asked, only one that reaches it does.
 * 4. Otherwise a disputed statement makes it a conflict.
 * 5. Otherwise a witness that says no share, or several that may reach it together on different blades, leave it unknown.
 * 6. Otherwise it is absent when every place is denied, or has a witness of too small a share.
 * 7. Otherwise it is not examined when every place left was recorded as not examined, and else unknown.
 *
 * Without a least share this is exactly what follows from the statements: present and absent are said when, and
 * only when, nothing else can be true of statements that do not contradict each other.
 */
export function hear<Source>(
  asked: ReadonlySet<string>,
  testimonies: readonly Testimony<Source>[],
  leastShare: number | null,
): Hearing<Source> {
  const saying = (says: Says) => testimonies.filter((testimony) => testimony.says === says);
  const denied = placesOf(saying('absent'));
  const stated = saying('present').filter((testimony) => meets(testimony.places, asked));
  const contradictions = contradictionsAmong(testimonies).filter(({ stated: each }) => stated.includes(each));
  const contradicted = contradictions.map((each) => each.stated);
  const witnesses = stated.filter(
    (testimony) => !contradicted.includes(testimony) && isWithin(without(testimony.places, denied), asked),
  );

  const disputed = testimonies.filter((each) =>
    contradictions.some((one) => one.stated === each || one.deniedBy.includes(each)),
  );
  const heard = testimonies.filter((each) => meets(each.places, asked) || disputed.includes(each));
  return { state: stateOf(), heard: heard.map(sourceOf), disputed: disputed.map(sourceOf) };

  function stateOf(): MarkState {
    if (witnesses.some((witness) => reaches(witness, leastShare))) return 'present';
    if (contradicted.length > 0) return 'conflict';
    if (leastShare !== null && mayReachTogether(witnesses, leastShare)) return 'unknown';
    const settled = together(denied, placesOf(witnesses));
    if (isWithin(asked, settled)) return 'looked-for-absent';
    const unseen = placesOf(saying('not-examined'));
    return isWithin(asked, together(settled, unseen)) ? 'not-examined' : 'unknown';
  }
}

/** A present statement that others deny. */
export type Contradiction<Source> = {
  readonly stated: Testimony<Source>;
  /** Each covers one of its places at least, together they cover all. */
  readonly deniedBy: readonly Testimony<Source>[];
};

/** Rules 1 and 2 alone: the present statements that have no place left, each with those that deny it. */
export function contradictionsAmong<Source>(
  testimonies: readonly Testimony<Source>[],
): Contradiction<Source>[] {
  const absent = testimonies.filter((testimony) => testimony.says === 'absent');
  const denied = placesOf(absent);
  return testimonies
    .filter(({ says, places }) => says === 'present' && places.size > 0 && isWithin(places, denied))
    .map((stated) => ({
      stated,
      deniedBy: absent.filter((testimony) => meets(testimony.places, stated.places)),
    }));
}

/** Shares are quotients of small whole numbers: this far apart they are different ones. */
const shareStep = 1e-9;

function reaches<Source>(witness: Testimony<Source>, leastShare: number | null): boolean {
  if (leastShare === null) return true;
  return witness.share !== null && witness.share >= leastShare - shareStep;
}

/** Two findings on different blades add up; on the same blades they do not. Nobody said which, so: they may. */
function mayReachTogether<Source>(witnesses: readonly Testimony<Source>[], leastShare: number): boolean {
  const most = witnesses.reduce((sum, witness) => sum + (witness.share ?? 1), 0);
  return witnesses.length > 0 && most >= leastShare - shareStep;
}

function sourceOf<Source>(testimony: Testimony<Source>): Source {
  return testimony.source;
}

/** All places that any of them speaks of. */
export function placesOf(testimonies: readonly { readonly places: ReadonlySet<string> }[]): Set<string> {
  return new Set(testimonies.flatMap((testimony) => [...testimony.places]));
}

function isWithin(some: ReadonlySet<string>, others: ReadonlySet<string>): boolean {
  return [...some].every((place) => others.has(place));
}

function meets(some: ReadonlySet<string>, others: ReadonlySet<string>): boolean {
  return [...some].some((place) => others.has(place));
}

function without(some: ReadonlySet<string>, others: ReadonlySet<string>): Set<string> {
  return new Set([...some].filter((place) => !others.has(place)));
}

function together(some: ReadonlySet<string>, others: ReadonlySet<string>): Set<string> {
  return new Set([...some, ...others]);
}
