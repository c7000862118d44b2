/** The turbocharger's own file, as the program ships it. */
import { readFileSync } from 'node:fs';

import { loadPack } from '#analysis/knowledge/load-pack.ts';

export const turbochargerFile = 'turbocharger.json';
const place = new URL(`../../../analysis/knowledge/packs/${turbochargerFile}`, import.meta.url);

export const turbocharger = loadPack(readFileSync(place, 'utf8'), turbochargerFile);
