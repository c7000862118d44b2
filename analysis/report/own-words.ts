/**
 * The analyst's own words with their simple formatting, read by CommonMark 0.31.2: paragraphs, emphasis, strong
 * emphasis, bulleted and numbered lists. Whatever else that language knows (links, headings, code, HTML) is kept as it
 * was typed, and so are line breaks. A list's marker is kept too: the plus of "+ 0.02 mm" is not lost as a bullet.
 */
import { Lexer, type Token, type Tokens } from 'marked';

import { referencesIn, resolveReference, type ReferenceTarget } from './references.ts';

export type OwnRun = {
  readonly text: string;
  readonly strong: boolean;
  readonly emphasis: boolean;
  /** Where in the PDF it leads; null for words that are no reference. */
  readonly to: string | null;
};

export type OwnBlock =
  | { readonly type: 'paragraph'; readonly runs: readonly OwnRun[] }
  | { readonly type: 'list'; readonly items: readonly OwnItem[] };

/** `marker`: "•", "–", "+", or a number with its sign, "3." */
export type OwnItem = { readonly marker: string; readonly blocks: readonly OwnBlock[] };

const bullets: Readonly<Record<string, string>> = { '*': '•', '-': '–', '+': '+' };

export function ownWords(text: string, targets: readonly ReferenceTarget[]): OwnBlock[] {
  const kept = keepReferences(text.replaceAll('\r\n', '\n').replaceAll('\r', '\n'));
  const tokens = new Lexer({ gfm: false, breaks: false, pedantic: false }).lex(kept.text);
  return blocksOf(tokens, { kept, targets });
}

type Reading = { readonly kept: KeptReferences; readonly targets: readonly ReferenceTarget[] };

type KeptReferences = {
  readonly text: string;
  /** The text as it was typed. */
  typed(text: string): string;
  /** Pieces of a text: what was typed, and the numbers of references in between. */
  parts(text: string): (string | ReturnType<typeof referencesIn>[number])[];
};

/**
 * A reference may hold signs that would be taken for emphasis ("[plate _DSC_0042_.jpg]"): while the text is read, a
 * character that does not occur in it stands round the reference's number instead.
 */
function keepReferences(text: string): KeptReferences {
  const references = referencesIn(text);
  const guard = firstUnused(text);
  let guarded = '';
  let end = 0;
  references.forEach(({ at, raw }, index) => {
    guarded += `${text.slice(end, at)}${guard}${index}${guard}`;
    end = at + raw.length;
  });
  const pattern = new RegExp(`${guard}(\\d+)${guard}`, 'u');
  const parts = (piece: string) =>
    piece.split(pattern).map((part, place) => {
      const reference = place % 2 === 1 ? references[Number(part)] : undefined;
      return reference ?? part;
    });
  return {
    text: guarded + text.slice(end),
    parts,
    typed: (piece) =>
      parts(piece)
        .map((part) => (typeof part === 'string' ? part : part.raw))
        .join(''),
  };
}

/** Unicode's private use area: U+E000 to U+F8FF, 6 400 characters. */
function firstUnused(text: string): string {
  for (let code = 0xe000; code <= 0xf8ff; code += 1) {
    const character = String.fromCharCode(code);
    if (!text.includes(character)) return character;
  }
  throw new RangeError('the text holds every character of the private use area');
}

function blocksOf(tokens: readonly Token[], reading: Reading): OwnBlock[] {
  return tokens.flatMap((token): OwnBlock[] => {
    switch (token.type) {
      case 'space':
        return [];
      case 'paragraph':
      case 'text':
        return paragraph(runsOf(inlineOf(token), plain, reading));
      case 'list':
        return [{ type: 'list', items: itemsOf(token as Tokens.List, reading) }];
      default:
        return paragraph([asTyped(token.raw.replace(/\n+$/, ''), plain, reading)]);
    }
  });
}

function paragraph(runs: readonly OwnRun[]): OwnBlock[] {
  return runs.every((run) => run.text.trim() === '') ? [] : [{ type: 'paragraph', runs }];
}

function itemsOf(list: Tokens.List, reading: Reading): OwnItem[] {
  return list.items.map((item, index) => {
    const sign = /^\s*(?:\d+([.)])|([-+*]))/.exec(item.raw);
    const marker = list.ordered
      ? `${Number(list.start) + index}${sign?.[1] ?? '.'}`
      : (bullets[sign?.[2] ?? '*'] ?? '•');
    return { marker, blocks: blocksOf(item.tokens, reading) };
  });
}

type Style = { readonly strong: boolean; readonly emphasis: boolean };
const plain: Style = { strong: false, emphasis: false };

/** A text's own tokens; a plain one has none. */
function inlineOf(token: Token): readonly Token[] {
  const { tokens } = token as Tokens.Generic;
  return tokens ?? [{ type: 'text', raw: token.raw, text: token.raw }];
}

function runsOf(tokens: readonly Token[], style: Style, reading: Reading): OwnRun[] {
  return joined(
    tokens.flatMap((token): OwnRun[] => {
      switch (token.type) {
        case 'strong':
          return runsOf(inlineOf(token), { ...style, strong: true }, reading);
        case 'em':
          return runsOf(inlineOf(token), { ...style, emphasis: true }, reading);
        case 'br':
          return [{ text: '\n', ...style, to: null }];
        case 'escape':
          return [asTyped(/^\\[*_]$/.test(token.raw) ? token.raw.slice(1) : token.raw, style, reading)];
        case 'text':
        case 'link':
          return referring(token.raw, style, reading);
        default:
          return [asTyped(token.raw, style, reading)];
      }
    }),
  );
}

function asTyped(raw: string, style: Style, { kept }: Reading): OwnRun {
  return { text: kept.typed(raw), ...style, to: null };
}

function referring(raw: string, style: Style, { kept, targets }: Reading): OwnRun[] {
  return kept.parts(raw).map((part): OwnRun => {
    if (typeof part === 'string') return { text: part, ...style, to: null };
    const resolved = resolveReference(part, targets);
    return typeof resolved === 'string'
      ? { text: part.raw, ...style, to: null }
      : { text: resolved.words, ...style, to: resolved.destination };
  });
}

/** Neighbours in the same style as one run. */
function joined(runs: readonly OwnRun[]): OwnRun[] {
  const list: OwnRun[] = [];
  for (const run of runs) {
    if (run.text === '') continue;
    const last = list.at(-1);
    const alike =
      last?.to === null && run.to === null && last.strong === run.strong && last.emphasis === run.emphasis;
    if (alike) list[list.length - 1] = { ...last, text: last.text + run.text };
    else list.push(run);
  }
  return list;
}
