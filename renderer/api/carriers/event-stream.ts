/** The host's events as one stream a page. After a break it is opened again from the last event that came through. */
import { AppError } from '#shared-types/errors.ts';
import type { AppEvent, NumberedEvent } from '#shared-types/events.ts';
import { shellTexts } from '#shared-types/texts/shell.ts';

const openAgainAfterMs = 1_000;
/** One break is a hiccup; when it cannot be opened again either, the host is gone. */
const breaksUntilGone = 2;

/** Receives every event from now on. Answers a function that ends it. */
export function listenToStream(receive: (event: NumberedEvent) => void): () => void {
  let last = 0;
  let openedBefore = false;
  let breaks = 0;
  let ended = false;
  let source: EventSource | null = null;
  let timer: number | undefined;

  const tell = (event: AppEvent) => receive({ ...event, sequence: last });

  const onOpen = () => {
    if (breaks >= breaksUntilGone) tell({ name: 'engine-state', payload: { state: 'ready', error: null } });
    // Without a sequence number the host cannot know what was missed.
    if (openedBefore && last === 0) tell({ name: 'resync', payload: {} });
    openedBefore = true;
    breaks = 0;
  };

  const onBreak = () => {
    source?.close();
    if (ended) return;
    breaks += 1;
    if (breaks === breaksUntilGone) {
      const error = new AppError('engine-unavailable', { reason: shellTexts.hostGone });
      tell({ name: 'engine-state', payload: { state: 'stopped', error: error.toShape() } });
    }
    timer = window.setTimeout(open, openAgainAfterMs);
  };

  function open() {
    source = new EventSource(`/events?after=${last}`);
    source.onopen = onOpen;
    source.onerror = onBreak;
    source.onmessage = (message: MessageEvent<string>) => {
      const event = JSON.parse(message.data) as NumberedEvent;
      last = event.sequence;
      receive(event);
    };
  }
  open();

  return () => {
    ended = true;
    window.clearTimeout(timer);
    source?.close();
  };
}
