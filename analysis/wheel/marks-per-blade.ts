/**
 * What marks counted on each blade say together. All blades alike: it happened while the rotor turned. One blade or
 * two: at rest, or by a single strike. Common practice of the trade, without a published source.
 */
import { rayleighTest, type RayleighTest } from './rayleigh-test.ts';
import { wilsonInterval, type ShareInterval } from './wilson-interval.ts';

export type WheelBlades = {
  readonly full: number;
  /** Shorter blades between the full ones; they begin further in, and have no edge where the flow comes to the wheel. */
  readonly splitter: number;
};

/** Which blades have the edge on which marks were counted. */
export type EdgeOn = 'full-blades' | 'all-blades';

export function bladesWithEdge({ full, splitter }: WheelBlades, edge: EdgeOn): number {
  return edge === 'full-blades' ? full : full + splitter;
}

export type CountedMarks = {
  readonly blades: WheelBlades;
  readonly edge: EdgeOn;
  /** Marks on each blade that has the edge, in their order round the wheel, evenly spaced. */
  readonly perBlade: readonly number[];
};

/**
 * - few-blades: there are too few for a test of their angles; only k of n is given;
 * - full-blades-only: splitter blades have no such edge and were not counted;
 * - splitters-counted: a splitter stands behind its neighbours, so that blades are not hit independently;
 * - repeated-hits: a blade that was hit once may be hit again by the same thing, so that marks are not independent;
 * - opposite-groups-unseen: the test does not see groups that lie across from each other.
 */
export type WheelCaveat =
  'few-blades' | 'full-blades-only' | 'splitters-counted' | 'repeated-hits' | 'opposite-groups-unseen';

/**
 * - alike: nearly all blades carry marks, and they do not crowd to one side;
 * - grouped: they crowd to one side;
 * - one-or-two: one blade or two of many;
 * - not-decided: none of these can be said.
 */
export type WheelVerdict = 'alike' | 'grouped' | 'one-or-two' | 'not-decided';

export type MarksRoundWheel = {
  readonly kind: 'counted';
  /** Blades that carry a mark. */
  readonly hit: number;
  readonly of: number;
  /** 95 %. */
  readonly share: ShareInterval;
  readonly marks: number;
  /** Directions in radians from the first blade on, the way the blades are counted; null with few blades or no marks. */
  readonly rayleigh: RayleighTest | null;
  readonly verdict: WheelVerdict;
  readonly caveats: readonly WheelCaveat[];
};

/**
 * - blades: there are none, or their number is not whole;
 * - blades-and-counts: there is not one count for each blade that has the edge;
 * - count: one of them is below 0 or not whole.
 */
export type WheelFault = 'blades' | 'blades-and-counts' | 'count';

export type NotCounted = { readonly kind: 'refused'; readonly because: WheelFault };

/** Under so many blades their angles are not tested: they are too few directions to be uniform. Common practice, no source. */
export const fewestTested = 8;

/** Crowding that would come about by chance less often than this is taken as such. Common practice of statistics. */
const grouping = 0.05;

/** All that can be said of the true share of blades hit lies above this: our own rule for "nearly all". */
const nearlyAll = 0.5;

export function marksRoundWheel(counted: CountedMarks): MarksRoundWheel | NotCounted {
  const fault = faultOf(counted);
  if (fault !== null) return { kind: 'refused', because: fault };
  const { perBlade } = counted;
  const of = perBlade.length;
  const hit = perBlade.filter((count) => count > 0).length;
  const share = wilsonInterval(hit, of);
  const rayleigh =
    of < fewestTested
      ? null
      : rayleighTest(perBlade.map((count, at) => ({ angle: (at * 2 * Math.PI) / of, count })));
  return {
    kind: 'counted',
    hit,
    of,
    share,
    marks: perBlade.reduce((sum, count) => sum + count, 0),
    rayleigh,
    verdict: verdictOn(hit, of, share, rayleigh),
    caveats: caveatsOf(counted, hit, rayleigh),
  };
}

function faultOf({ blades, edge, perBlade }: CountedMarks): WheelFault | null {
  const isCount = (value: number) => Number.isInteger(value) && value >= 0;
  if (!isCount(blades.full) || !isCount(blades.splitter) || blades.full === 0) return 'blades';
  if (perBlade.length !== bladesWithEdge(blades, edge)) return 'blades-and-counts';
  return perBlade.every(isCount) ? null : 'count';
}

function verdictOn(
  hit: number,
  of: number,
  share: ShareInterval,
  rayleigh: RayleighTest | null,
): WheelVerdict {
  if (hit === 0) return 'not-decided';
  if (hit <= 2 && 2 * hit < of) return 'one-or-two';
  if (rayleigh === null) return hit === of ? 'alike' : 'not-decided';
  if (rayleigh.p < grouping) return 'grouped';
  return share.low > nearlyAll ? 'alike' : 'not-decided';
}

function caveatsOf(
  { blades, edge, perBlade }: CountedMarks,
  hit: number,
  rayleigh: RayleighTest | null,
): readonly WheelCaveat[] {
  const hasSplitters = blades.splitter > 0;
  const caveats: readonly (readonly [WheelCaveat, boolean])[] = [
    ['few-blades', perBlade.length < fewestTested],
    ['full-blades-only', hasSplitters && edge === 'full-blades'],
    ['splitters-counted', hasSplitters && edge === 'all-blades'],
    ['repeated-hits', perBlade.some((count) => count > 1)],
    ['opposite-groups-unseen', rayleigh !== null && hit < perBlade.length],
  ];
  return caveats.filter(([, holds]) => holds).map(([caveat]) => caveat);
}
