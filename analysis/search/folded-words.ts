/**
 * Words as the full text index cuts and folds them: letters and digits, without accents and capitals. The index is
 * SQLite's, by its tokenizer unicode61 with remove_diacritics 2: https://sqlite.org/fts5.html#unicode61_tokenizer.
 * What it makes of scripts that are younger than its Unicode 6.1 may differ; then a match is found and not shown.
 */
export type FoldedWord = {
  readonly word: string;
  /** Where it stands in the text, in UTF-16 units. */
  readonly start: number;
  readonly end: number;
};

const wordPattern = /[\p{L}\p{N}\p{Co}\u0300-\u036F]+/gu;

export function foldWords(text: string): FoldedWord[] {
  return Array.from(text.matchAll(wordPattern), (match) => ({
    word: fold(match[0]),
    start: match.index,
    end: match.index + match[0].length,
  }));
}

export function foldedWords(text: string): string[] {
  return foldWords(text).map(({ word }) => word);
}

/** Text as the index compares it, still in one piece. */
export function fold(text: string): string {
  // Most text is plain, and there is much of it.
  if (/^[ -~\s]*$/.test(text)) return text.toLowerCase();
  return text.toLowerCase().normalize('NFD').replaceAll(/\p{M}/gu, '').normalize('NFC');
}
