import { config, z } from 'zod';

// The page runs under a content security policy without unsafe-eval: zod must not try to compile.
config({ jitless: true });

export { z };
