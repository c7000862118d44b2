/**
 * Works through items with at most `most` at a time, in order of beginning. After the first thrown error no further
 * item is begun; it is thrown when those at work have ended, so that nothing goes on behind the caller's back.
 */
export async function inParallel<Item>(
  items: readonly Item[],
  most: number,
  work: (item: Item, place: number) => Promise<void>,
): Promise<void> {
  const queue = items.entries();
  let failed = false;
  const lane = async () => {
    try {
      for (const [place, item] of queue) {
        if (failed) return;
        await work(item, place);
      }
    } catch (error) {
      failed = true;
      throw error;
    }
  };
  const lanes = await Promise.allSettled(Array.from({ length: Math.min(most, items.length) }, lane));
  for (const one of lanes) if (one.status === 'rejected') throw one.reason;
}
