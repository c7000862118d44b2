/** What came of an import: counts, and every file that has something to say, by name. */
import type { CaseId, PhotoId } from '#shared-types/ids.ts';
import type { Job, JobItem } from '#shared-types/job.ts';
import type { Photo } from '#shared-types/photo.ts';
import { photosTexts } from '#shared-types/texts/photos.ts';
import { useAnswer } from '../api/queries.ts';
import { Button } from '../ui/button.tsx';
import { numberText } from '../ui/number-words.ts';
import { PanelHead } from '../ui/side-panel.tsx';
import { toast } from '../ui/toaster.tsx';
import type { RefusedFile } from './handing-over.ts';

const { resultOf, resultsBy } = photosTexts;

type Line = { readonly name: string; readonly what: string; readonly bad: boolean };

export function ImportResults(props: {
  caseId: CaseId;
  /** In the order in which they were begun. */
  jobs: readonly Job[];
  refused: readonly RefusedFile[];
  /** Of the case now, in its order: to say which one a file is the same picture as. */
  photos: readonly Photo[];
  onClose: () => void;
}) {
  const { caseId, jobs, refused, photos, onClose } = props;
  const items = jobs.flatMap((job) => job.items);
  const count = (outcome: JobItem['outcome']) => items.filter((item) => item.outcome === outcome).length;
  const failed = count('failed') + refused.length;
  const putBack = items.filter((item) => item.putBack).length;
  const reasons = useReasonsTakenOut(putBack > 0 ? caseId : null);
  const lines = [
    ...refused.map(({ name, sentence }): Line => ({ name, what: sentence, bad: true })),
    ...items.flatMap((item) => lineOf(item, photos, reasons)),
  ].sort((one, other) => Number(other.bad) - Number(one.bad));
  const sums = [
    jobs.length === 0 ? null : resultOf.added(count('added') - putBack),
    putBack === 0 ? null : resultOf.putBack(putBack),
    count('already-here') === 0 ? null : resultOf.here(count('already-here')),
    failed === 0 ? null : resultOf.failed(failed),
    count('not-begun') === 0 ? null : resultOf.notBegun(count('not-begun')),
  ].filter((sum) => sum !== null);

  const copy = async () => {
    const text = lines
      .map(({ name, what }) => (what.startsWith(name) ? what : photosTexts.resultLine(name, what)))
      .join('\n');
    try {
      await navigator.clipboard.writeText(text);
      toast(photosTexts.copied);
    } catch (refusal) {
      if (!(refusal instanceof DOMException)) throw refusal;
      toast(photosTexts.copyFailed, { kind: 'error' });
    }
  };

  return (
    <section className="import-results" aria-label={photosTexts.results}>
      <PanelHead
        title={[...jobs.map(endWords), sums.join(', ')].filter((words) => words !== '').join(' ')}
        note={
          <span className="import-results-actions">
            {lines.length === 0 ? null : (
              <Button kind="quiet" onClick={() => void copy()}>
                {photosTexts.copyList}
              </Button>
            )}
            <Button kind="quiet" onClick={onClose}>
              {photosTexts.closeResults}
            </Button>
          </span>
        }
      />
      {jobs.map((job) =>
        job.error === null ? null : (
          <p key={job.id} className="import-line-bad">
            {job.error.message}
          </p>
        ),
      )}
      {lines.length === 0 ? null : (
        <ul aria-label={photosTexts.listLabel}>
          {lines.map((line, index) => (
            <li key={`${index} ${line.name}`}>
              {line.what.startsWith(line.name) ? null : <b>{line.name} </b>}
              <span className={line.bad ? 'import-line-bad' : ''}>{line.what}</span>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

function endWords(job: Job): string {
  switch (job.state) {
    case 'stopped':
      return resultsBy.stopped;
    case 'interrupted':
      return resultsBy.interrupted;
    case 'failed':
      return resultsBy.failed;
    default:
      return '';
  }
}

/** Why photos had been taken out that are back, the last time for each. */
function useReasonsTakenOut(caseId: CaseId | null): ReadonlyMap<PhotoId, string> {
  const register = useAnswer('photos.register', caseId === null ? null : { caseId }).data ?? [];
  return new Map(
    register.flatMap(({ photo, absences }) => absences.map(({ reason }) => [photo.id, reason] as const)),
  );
}

function alreadyHere(id: PhotoId | null, photos: readonly Photo[]): string {
  const place = photos.findIndex((photo) => photo.id === id);
  const photo = photos[place];
  if (photo === undefined) return photosTexts.alreadyHere;
  return photosTexts.alreadyHereAs(numberText(place + 1), photo.sourceName);
}

function lineOf(item: JobItem, photos: readonly Photo[], reasons: ReadonlyMap<PhotoId, string>): Line[] {
  const name = item.sourceName;
  const also = item.alsoIn.length === 0 ? [] : [photosTexts.alsoIn(item.alsoIn.join(', '))];
  switch (item.outcome) {
    case 'failed':
      return [{ name, what: item.error?.message ?? '', bad: true }];
    case 'already-here':
      return [{ name, what: [alreadyHere(item.photoId, photos), ...also].join('; '), bad: false }];
    case 'not-begun':
      return [{ name, what: photosTexts.notBegun, bad: false }];
    case 'added': {
      const reason = item.photoId === null ? undefined : reasons.get(item.photoId);
      const back = item.putBack ? [photosTexts.isPutBack(reason ?? null)] : [];
      const photo = photos.find(({ id }) => id === item.photoId);
      const isSynthetic = photo !== undefined && photo.declaredSynthetic !== null;
      const said = [...back, ...also, ...(isSynthetic ? [photosTexts.synthetic.result] : [])];
      return said.length === 0 ? [] : [{ name, what: said.join('; '), bad: false }];
    }
  }
}
