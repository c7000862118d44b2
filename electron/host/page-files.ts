/** The built page: its files as they are, its document with the page token written in. */
import { readFile } from 'node:fs/promises';
import { extname, join, normalize, sep } from 'node:path';

import { shippedPath } from '../processes/entry-table.ts';
import { pageMediaTypes } from '../processes/page-policy.ts';

const root = shippedPath('dist', 'renderer');

export type PageFile = { readonly content: Buffer | string; readonly mediaType: string };

/** Null where the page has no such file; a path never leads out of the page's folder. */
export async function readPageFile(path: string, pageToken: string): Promise<PageFile | null> {
  const relative = normalize(path === '/' ? 'index.html' : path.slice(1));
  const mediaType = pageMediaTypes[extname(relative)];
  if (relative.startsWith('..') || relative.startsWith(sep) || mediaType === undefined) return null;
  const content = await readFile(join(root, relative)).catch(() => null);
  if (content === null) return null;
  if (relative !== 'index.html') return { content, mediaType };
  const token = `<meta name="docket-token" content="${pageToken}">`;
  return { content: content.toString('utf8').replace('<head>', `<head>${token}`), mediaType };
}
