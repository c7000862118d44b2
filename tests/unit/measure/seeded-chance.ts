/** Chance that comes out the same at every run. */

/** Numbers from 0 up to 1: mulberry32, a generator of 32 bits in the public domain. */
export function seededChance(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** Normally distributed, mean 0 and standard deviation 1: Box & Muller, Ann. Math. Stat. 29 (1958) 610-611, from memory. */
export function seededNormal(chance: () => number): () => number {
  return () => Math.sqrt(-2 * Math.log(1 - chance())) * Math.cos(2 * Math.PI * chance());
}
