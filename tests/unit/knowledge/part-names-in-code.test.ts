/** A machine kind is data: no code may know one of its parts by name. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';

import { loadPack } from '#analysis/knowledge/load-pack.ts';

const root = join(import.meta.dirname, '..', '..', '..');
const packsFolder = join(root, 'analysis', 'knowledge', 'packs');
const codeFolders = ['analysis', 'electron', 'renderer', 'shared-types'];

/** Words of the sample cases are about a certain machine, so they may name its parts. */
const isSampleText = (file: string) => /^shared-types\/texts\/sample[\w-]*\.ts$/.test(file);

/** Ids of one word ("shaft") are ordinary words as well; only those of several are looked for. */
function partIds(): Set<string> {
  const packs = readdirSync(packsFolder).filter((name) => name.endsWith('.json'));
  const ids = packs.flatMap((name) =>
    loadPack(readFileSync(join(packsFolder, name), 'utf8'), name).components.map(({ id }) => id),
  );
  return new Set(ids.filter((id) => id.includes('-')));
}

function codeFiles(): string[] {
  return codeFolders
    .flatMap((folder) => readdirSync(join(root, folder), { recursive: true, withFileTypes: true }))
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) => relative(root, join(entry.parentPath, entry.name)).replaceAll('\\', '/'))
    .filter((file) => !isSampleText(file));
}

/** Every string the code holds: literals, keys, attributes and the fixed pieces of templates; no comments. */
function stringsOf(file: string, code: string): string[] {
  const strings: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isStringLiteralLike(node) || ts.isTemplateHead(node) || ts.isTemplateMiddleOrTemplateTail(node)) {
      strings.push(node.text);
    }
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile(file, code, ts.ScriptTarget.Latest, false));
  return strings;
}

/** An id inside a longer string counts where it stands by itself: in a path, a list, a key made of several. */
function namedIn(strings: readonly string[], ids: ReadonlySet<string>): string[] {
  return [...ids].filter((id) => {
    const alone = new RegExp(`(?<![\\w-])${id}(?![\\w-])`);
    return strings.some((text) => alone.test(text));
  });
}

describe('part names', () => {
  const ids = partIds();

  test('the search has ids to look for and files to look in', () => {
    expect(ids).toContain('compressor-wheel');
    expect(codeFiles()).toContain('analysis/knowledge/load-pack.ts');
    expect(codeFiles().length).toBeGreaterThan(20);
  });

  test('the search finds a name in every way of writing it, and none in a comment or a longer word', () => {
    const code = [
      "const one = 'compressor-wheel';",
      'const two = { "thrust-bearing": 1 };',
      'const three = `${one}/journal-bearing/${two}`;',
      'const four = <p id="turbine-wheel">shaft</p>;',
      "// 'heat-shield'",
      "const five = 'my-seal-ring-note';",
    ].join('\n');
    expect(namedIn(stringsOf('page.tsx', code), ids).sort()).toEqual([
      'compressor-wheel',
      'journal-bearing',
      'thrust-bearing',
      'turbine-wheel',
    ]);
  });

  test('no code names a part', () => {
    const found = codeFiles().flatMap((file) =>
      namedIn(stringsOf(file, readFileSync(join(root, file), 'utf8')), ids).map((id) => `${file}: ${id}`),
    );
    expect(found).toEqual([]);
  });
});
