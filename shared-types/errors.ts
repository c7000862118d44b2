/**
 * Everything that can go wrong on purpose. Codes are closed: a new one needs its sentence in texts/errors.ts.
 * Custom fields of an Error do not survive the way between processes, so an error travels as ErrorShape
 * and the page's client makes an AppError of it again.
 */
import { errorSentences } from './texts/errors.ts';

export type ErrorCode = keyof typeof errorSentences;

/** Values that a sentence names: a file, a field, a limit. JSON values only, no case text. */
export type ErrorDetails = Readonly<Record<string, string | number | null>>;

export type ErrorShape = {
  readonly code: ErrorCode;
  /** What happened, to which file or field, and what to do: ready to be shown. */
  readonly message: string;
  readonly details: ErrorDetails;
  /** The same request may go through later. */
  readonly retryable: boolean;
};

export class AppError extends Error {
  readonly code: ErrorCode;
  readonly details: ErrorDetails;
  readonly retryable: boolean;

  constructor(
    code: ErrorCode,
    details: ErrorDetails = {},
    options: { retryable?: boolean; cause?: unknown } = {},
  ) {
    super(sentence(code, details), options.cause === undefined ? undefined : { cause: options.cause });
    this.name = 'AppError';
    this.code = code;
    this.details = details;
    this.retryable = options.retryable ?? false;
  }

  toShape(): ErrorShape {
    return { code: this.code, message: this.message, details: this.details, retryable: this.retryable };
  }

  static fromShape(shape: ErrorShape): AppError {
    return new AppError(shape.code, shape.details, { retryable: shape.retryable });
  }
}

/** Fills the code's sentence: `{name}` stands for details.name; a missing one is left visible as `{name}`. */
export function sentence(code: ErrorCode, details: ErrorDetails): string {
  return errorSentences[code].replace(/\{(\w+)\}/g, (whole, key: string) => {
    const value = details[key];
    return value === undefined || value === null ? whole : String(value);
  });
}

/** What a handler's answer looks like on its way. */
export type Envelope<Value> =
  { readonly ok: true; readonly value: Value } | { readonly ok: false; readonly error: ErrorShape };
