/** What became of something a person typed. The same for numbers, times and durations. */
export type TypedReading<Value> =
  /** Nothing but blanks was typed. */
  | { readonly kind: 'nothing' }
  | { readonly kind: 'understood'; readonly value: Value }
  /** It can be read in two ways and only whoever typed it knows which was meant. */
  | { readonly kind: 'ambiguous'; readonly values: readonly [Value, Value] }
  /** A sentence that says why not and how to write it. */
  | { readonly kind: 'wrong'; readonly reason: string };

export const nothingTyped = { kind: 'nothing' } as const;

export const understood = <Value>(value: Value) => ({ kind: 'understood', value }) as const;

export const wrong = (reason: string) => ({ kind: 'wrong', reason }) as const;

/** The same reading with each of its values made into something else. */
export function withValues<From, To>(
  reading: TypedReading<From>,
  make: (value: From) => To,
): TypedReading<To> {
  if (reading.kind === 'understood') return understood(make(reading.value));
  if (reading.kind === 'ambiguous') {
    const [first, second] = reading.values;
    return { kind: 'ambiguous', values: [make(first), make(second)] };
  }
  return reading;
}

/**
 * Keeps to what may be entered: a value that `fault` objects to is wrong with its sentence; of two readings one that
 * is objected to falls away.
 */
export function keptWithin<Value>(
  reading: TypedReading<Value>,
  fault: (value: Value) => string | null,
): TypedReading<Value> {
  if (reading.kind === 'ambiguous') {
    const [first, second] = reading.values;
    const fault1 = fault(first);
    if (fault1 === null && fault(second) === null) return reading;
    return keptWithin(understood(fault1 === null ? first : second), fault);
  }
  if (reading.kind !== 'understood') return reading;
  const reason = fault(reading.value);
  return reason === null ? reading : wrong(reason);
}
