/**
 * Thumbnails asked for before their cells come into sight, the nearest first. What was fetched is held for a while, so
 * that a cell that comes again has its picture at once; encoded pictures only, some tens of kilobytes each.
 */
import { useEffect } from 'react';

const atOnce = 4;
/** The least recently wanted go first. */
const mostHeld = 1_200;

const held = new Map<string, HTMLImageElement>();
let wanted: readonly string[] = [];
let underWay = 0;

function fetchNext(): void {
  while (underWay < atOnce) {
    const address = wanted.find((each) => !held.has(each));
    if (address === undefined) return;
    const picture = new Image();
    held.set(address, picture);
    underWay += 1;
    picture.onload = picture.onerror = () => {
      underWay -= 1;
      fetchNext();
    };
    picture.src = address;
  }
}

function want(addresses: readonly string[]): void {
  wanted = addresses;
  for (const address of addresses.toReversed()) {
    const picture = held.get(address);
    if (picture === undefined) continue;
    held.delete(address);
    held.set(address, picture);
  }
  for (const address of [...held.keys()].slice(0, Math.max(0, held.size - mostHeld))) held.delete(address);
  fetchNext();
}

/** @param from and `to`: the places now in the page; as many again on either side are fetched, those after first. */
export function usePicturesAhead(addresses: readonly string[], from: number, to: number): void {
  useEffect(() => {
    const around = 2 * (to - from);
    want([
      ...addresses.slice(to, to + around),
      ...addresses.slice(Math.max(0, from - around), from).toReversed(),
    ]);
  }, [addresses, from, to]);
}
