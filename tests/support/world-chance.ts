/** Chance for tests: the same seed draws the same, on every machine. */
export type Chance = {
  /** A whole number from 0 up to, not including, `below`. */
  integer(below: number): number;
  /** A whole number within both bounds. */
  between(range: readonly [least: number, most: number]): number;
  /** True in this share of cases, 0 to 1. */
  happens(share: number): boolean;
  pick<Item>(items: readonly Item[]): Item;
  /** A UUID of version 4 by its form (RFC 9562, 5.4). */
  uuid(): string;
  /** A generator of its own for a part of the work: what the part draws does not move what follows. */
  branch(): Chance;
};

export function chanceFrom(seed: number): Chance {
  return chanceOf([seed >>> 0, 0x9e3779b9, 0x243f6a88]);
}

function chanceOf([first, second, third]: readonly [number, number, number]): Chance {
  let [a, b, c, count] = [first, second, third, 1];
  /** sfc32 (C. Doty-Humphrey, PractRand), from memory: 128 bits of state, so that no two of its ids meet. */
  const bits = () => {
    const drawn = (a + b + count) >>> 0;
    count = (count + 1) >>> 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) >>> 0;
    c = (((c << 21) | (c >>> 11)) + drawn) >>> 0;
    return drawn;
  };
  // What a seed gives first still looks like the seed.
  for (let round = 0; round < 15; round += 1) bits();
  const integer = (below: number) => Math.floor((bits() / 2 ** 32) * below);
  return {
    integer,
    between: ([least, most]) => least + integer(most - least + 1),
    happens: (share) => bits() / 2 ** 32 < share,
    pick: (items) => {
      const item = items[integer(items.length)];
      if (item === undefined) throw new Error('nothing to pick from');
      return item;
    },
    uuid: () => {
      const hex = Array.from({ length: 4 }, () => bits().toString(16).padStart(8, '0')).join('');
      const variant = '89ab'.charAt(integer(4));
      return [
        hex.slice(0, 8),
        hex.slice(8, 12),
        `4${hex.slice(13, 16)}`,
        `${variant}${hex.slice(17, 20)}`,
        hex.slice(20, 32),
      ].join('-');
    },
    branch: () => chanceOf([bits(), bits(), bits()]),
  };
}
