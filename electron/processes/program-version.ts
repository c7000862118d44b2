import { readFileSync } from 'node:fs';

import { shippedPath } from './entry-table.ts';

/** The version this program was shipped as. */
export function programVersion(): string {
  const text = readFileSync(shippedPath('package.json'), 'utf8');
  return (JSON.parse(text) as { version: string }).version;
}
