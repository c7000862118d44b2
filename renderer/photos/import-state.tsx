import type { CaseId } from '#shared-types/ids.ts';
import type { Photo } from '#shared-types/photo.ts';
import { photosTexts } from '#shared-types/texts/photos.ts';
import { jobIsUnderWay } from '../api/job-news.ts';
import { useJobsOf } from '../api/job-store.ts';
import { useSend } from '../api/queries.ts';
import { JobProgress, Progress } from '../ui/progress.tsx';
import { toastError } from '../ui/toaster.tsx';
import { forgetResults, stopHandingOver, useHandingOver } from './handing-over.ts';
import { ImportResults } from './import-results.tsx';

/** Files on their way, the import under way, or what came of the last one. */
export function ImportState({ caseId, photos }: { caseId: CaseId; photos: readonly Photo[] }) {
  const handing = useHandingOver(caseId);
  const jobs = useJobsOf(caseId, 'photo-import');
  const stop = useSend('jobs.stop');
  const job = jobs.find(jobIsUnderWay);
  const ended = jobs.filter((known) => handing.jobIds.includes(known.id)).reverse();

  if (handing.underWay) {
    return (
      <div className="import-state">
        <Progress
          label={photosTexts.handingOver}
          done={handing.done}
          total={handing.total}
          rate={handing.rate}
          stopping={handing.stopping}
          onStop={() => stopHandingOver(caseId)}
        />
      </div>
    );
  }
  if (job !== undefined) {
    return (
      <div className="import-state">
        <JobProgress
          job={job}
          stopping={stop.isPending}
          onStop={() => stop.mutate({ jobId: job.id }, { onError: toastError })}
        />
      </div>
    );
  }
  if (ended.length === 0 && handing.refused.length === 0) return null;
  return (
    <ImportResults
      caseId={caseId}
      jobs={ended}
      refused={handing.refused}
      photos={photos}
      onClose={() => forgetResults(caseId)}
    />
  );
}
