/** The list of breaks keeps up with the program: npm run proof can carry out each of them. */
import { existsSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

import { shippedPath } from '../../electron/processes/entry-table.ts';
import { breaks } from '../proof/breaks.ts';

test.each(breaks.map((one) => [one.breaks, one] as const))('%s', (_what, one) => {
  const text = readFileSync(shippedPath(one.file), 'utf8');
  expect(text.split(one.find)).toHaveLength(2);
  expect(one.replace).not.toBe(one.find);
  expect(existsSync(shippedPath('tests', one.reddens.file))).toBe(true);
});

test('no two breaks are the same', () => {
  const places = breaks.map(({ file, find, replace }) => `${file} ${find} ${replace}`);
  expect(new Set(places).size).toBe(breaks.length);
});
