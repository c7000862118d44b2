/** Numbers what the engine tells, keeps the last of it, and tells a window that missed more to read everything anew. */
import type { AppEvent, NumberedEvent } from '#shared-types/events.ts';

export type EventHub = {
  publish(event: AppEvent): void;
  /**
   * Receives everything after `after` (the last sequence number the window saw, 0 for none), then everything to come.
   * Answers a function that ends it.
   */
  subscribe(after: number, receive: (event: NumberedEvent) => void): () => void;
};

export function createEventHub(keep = 500): EventHub {
  const kept: NumberedEvent[] = [];
  const receivers = new Set<(event: NumberedEvent) => void>();
  let sequence = 0;
  return {
    publish(event) {
      sequence += 1;
      const numbered: NumberedEvent = { ...event, sequence };
      kept.push(numbered);
      if (kept.length > keep) kept.shift();
      for (const receive of receivers) receive(numbered);
    },
    subscribe(after, receive) {
      const oldest = kept[0]?.sequence ?? sequence + 1;
      const missedSome = after > sequence || after < oldest - 1;
      if (after !== 0 && missedSome) receive({ name: 'resync', payload: {}, sequence });
      else if (after !== 0) for (const event of kept) if (event.sequence > after) receive(event);
      receivers.add(receive);
      return () => receivers.delete(receive);
    },
  };
}
