import { useEffect, useState } from 'react';

/** The value once it has not changed for the given time (milliseconds). */
export function useSettledValue<Value>(value: Value, quietForMs: number): Value {
  const [settled, setSettled] = useState(value);
  useEffect(() => {
    const timer = window.setTimeout(() => setSettled(value), quietForMs);
    return () => window.clearTimeout(timer);
  }, [value, quietForMs]);
  return settled;
}
