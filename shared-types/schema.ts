import { config, z } from 'zod';

// The page runs under a content security policy without unsafe-eval: zod must not try to compile.
config({ jitless: true });

export { z };

/** A name or number that something is called by: never empty, and no NUL, at which SQLite would end it. */
export const nameLine = (most: number) =>
  z
    .string()
    .trim()
    .min(1)
    .max(most)
    .refine((text) => !text.includes('\0'), { message: 'a NUL character' });
