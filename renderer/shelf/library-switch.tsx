import { useState } from 'react';
import { useLocation } from 'wouter';
import type { LibraryName } from '#shared-types/library.ts';
import { shelfTexts } from '#shared-types/texts/shelf.ts';
import { useEngineStore } from '../api/engine-store.ts';
import { jobIsUnderWay } from '../api/job-news.ts';
import { useJobsOf } from '../api/job-store.ts';
import { useAnswer, useSend } from '../api/queries.ts';
import { queryClient } from '../api/query-client.ts';
import { shelfAddress } from '../app/addresses.ts';
import { Button } from '../ui/button.tsx';
import { JobProgress } from '../ui/progress.tsx';
import { toastError } from '../ui/toaster.tsx';

/** From the user's own library to the sample cases and back. */
export function LibrarySwitch() {
  const [, navigate] = useLocation();
  const library = useAnswer('library.overview', {}).data?.library;
  const open = useSend('library.open');
  const stop = useSend('jobs.stop');
  const job = useJobsOf(null, 'sample-cases').find(jobIsUnderWay);
  const [busy, setBusy] = useState(false);

  const switchTo = async (other: LibraryName) => {
    setBusy(true);
    useEngineStore.setState({ switching: true });
    try {
      await open.mutateAsync({ library: other });
      navigate(shelfAddress);
      // Nothing read from one library may be shown for the other.
      await queryClient.resetQueries();
    } catch (error) {
      toastError(error);
    } finally {
      setBusy(false);
      useEngineStore.setState({ switching: false });
    }
  };

  if (job !== undefined) {
    return (
      <JobProgress
        job={job}
        stopping={stop.isPending}
        onStop={() => stop.mutate({ jobId: job.id }, { onError: toastError })}
      />
    );
  }
  if (library === undefined) return null;
  const other = library === 'samples' ? 'own' : 'samples';
  return (
    <Button disabled={busy} aria-busy={busy} onClick={() => void switchTo(other)}>
      {busy ? shelfTexts.opening : other === 'samples' ? shelfTexts.openSamples : shelfTexts.openOwn}
    </Button>
  );
}
