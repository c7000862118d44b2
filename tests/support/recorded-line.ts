/**
 * The desktop's line between page and shell, without the desktop: messages are copied by structured clone as the
 * runtime copies them, and every one is kept for the tests to look at.
 */
import type { RendererLine } from '../../electron/shell/bridge.ts';
import type { CallEvent, MainLine } from '../../electron/shell/registration.ts';

export type RecordedMessage = {
  readonly channel: string;
  readonly way: 'in' | 'out';
  readonly message: unknown;
};

export type RecordedLine = {
  readonly renderer: RendererLine;
  readonly main: MainLine;
  readonly messages: RecordedMessage[];
  readonly registered: () => string[];
  /** Where the page says it is; a test may put it elsewhere. */
  pageUrl: string;
};

export function createRecordedLine(pageUrl: string): RecordedLine {
  const answers = new Map<string, (event: CallEvent, ...values: unknown[]) => unknown>();
  const receivers = new Map<string, Set<(event: unknown, ...values: unknown[]) => void>>();
  const messages: RecordedMessage[] = [];
  const copy = (channel: string, way: 'in' | 'out', message: unknown): unknown => {
    messages.push({ channel, way, message });
    return structuredClone(message);
  };
  const sender: CallEvent['sender'] = {
    send(channel, ...values) {
      const copied = values.map((value) => copy(channel, 'out', value));
      for (const receive of receivers.get(channel) ?? []) receive({}, ...copied);
    },
    once: () => undefined,
    isDestroyed: () => false,
  };
  const line: RecordedLine = {
    pageUrl,
    messages,
    registered: () => [...answers.keys()],
    main: {
      handle(channel, answer) {
        if (answers.has(channel)) throw new Error(`${channel} is registered twice`);
        answers.set(channel, answer);
      },
    },
    renderer: {
      async invoke(channel, ...values) {
        const answer = answers.get(channel);
        if (!answer) throw new Error(`nobody answers ${channel}`);
        const copied = values.map((value) => copy(channel, 'in', value));
        const event: CallEvent = { senderFrame: { url: line.pageUrl }, sender };
        return copy(channel, 'out', await answer(event, ...copied));
      },
      on(channel, receive) {
        const known = receivers.get(channel) ?? new Set();
        receivers.set(channel, known.add(receive));
      },
      removeListener: (channel, receive) => receivers.get(channel)?.delete(receive),
    },
  };
  return line;
}
