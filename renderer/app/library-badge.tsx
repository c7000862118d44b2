import { shellTexts } from '#shared-types/texts/shell.ts';
import { useAnswer } from '../api/queries.ts';

/** Says on every screen when what is on it is not the user's own. */
export function LibraryBadge() {
  const library = useAnswer('library.overview', {}).data?.library;
  if (library !== 'samples') return null;
  return (
    <span className="library-badge" title={shellTexts.samplesHint}>
      {shellTexts.samples}
    </span>
  );
}
