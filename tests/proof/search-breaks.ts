/** Breaks of what keeps the search true to what is written. */
import type { Break } from './break.ts';

const search = 'migrations/0003-search.sql';

export const searchBreaks: readonly Break[] = [
  {
    breaks: 'the trigger that keeps a caption to be found',
    file: search,
    find: 'WHEN (NEW.caption, NEW.removed_at) IS NOT (OLD.caption, OLD.removed_at) BEGIN',
    replace: 'WHEN false BEGIN',
    reddens: { file: 'database/search-text.test.ts', test: 'of a caption' },
  },
  {
    breaks: 'the trigger that keeps the index as what is written',
    file: search,
    find: 'CREATE TRIGGER search_page_before_a_document_less BEFORE DELETE ON search_document BEGIN',
    replace:
      'CREATE TRIGGER search_page_before_a_document_less BEFORE DELETE ON search_document WHEN false BEGIN',
    reddens: { file: 'database/random-work.test.ts', test: 'the full text index is whole' },
  },
  {
    breaks: 'the character that is wrong in a number',
    file: 'analysis/search/near-identifier.ts',
    find: 'sameFrom(one, first + 2, other, first + 2)',
    replace: 'false',
    reddens: { file: 'unit/search/near-identifier.test.ts', test: 'every wrong, missing' },
  },
  {
    breaks: 'that what is kept to search by follows the journal',
    file: 'electron/services/case-search-columns.ts',
    find: 'for (const row of casesWrittenSince(db, kept.line)) readCaseAgain(db, columns, row);',
    replace: '',
    reddens: { file: 'database/search-kept.test.ts', test: 'after random work' },
  },
  {
    breaks: 'that a newer request for counts overtakes the one before',
    file: 'electron/services/case-search-counts.ts',
    find: 'const overtaken = () => newest.get(request.asker) !== request;',
    replace: 'const overtaken = () => false;',
    reddens: { file: 'database/search-filters.test.ts', test: 'for an older request' },
  },
  {
    breaks: 'that what is not there has no class to be found by',
    file: 'analysis/search/case-columns.ts',
    find: "return field === 'class' && terms.presence !== 'present' ? null : terms[field];",
    replace: 'return terms[field];',
    reddens: { file: 'database/search-kept.test.ts', test: 'after random work the columns' },
  },
  {
    breaks: 'that the words of a claim stay words',
    file: 'analysis/search/understood-tag.ts',
    find: "return tag.component !== null && tag.kind !== null && rest === '';",
    replace: 'return true;',
    reddens: { file: 'unit/search/understood-tag.test.ts', test: 'are a damage and nothing else' },
  },
];
