/** The report station: the real pages as they will print, made again whenever the case changes. */
import { useMemo, useState } from 'react';
import { Link } from 'wouter';
import type { TeardownCase } from '#shared-types/case.ts';
import { AppError } from '#shared-types/errors.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import { paperSizes, type PaperSize } from '#shared-types/settings.ts';
import { reportScreenTexts } from '#shared-types/texts/report-screen.ts';
import { deliver, documentAddress } from '../api/client.ts';
import { jobIsUnderWay } from '../api/job-store.ts';
import { useAnswer } from '../api/queries.ts';
import { stationAddress } from '../app/addresses.ts';
import { changeSettings } from '../app/settings-change.ts';
import { benchOfCase, useBench } from '../marks/bench-store.ts';
import { BusyState } from '../ui/busy-state.tsx';
import { Button } from '../ui/button.tsx';
import { EmptyState } from '../ui/empty-state.tsx';
import { ErrorState } from '../ui/error-state.tsx';
import { numberText } from '../ui/number-words.ts';
import { JobProgress } from '../ui/progress.tsx';
import { toast, toastError } from '../ui/toaster.tsx';
import { PdfPages } from './pdf-pages.tsx';
import { usePdf } from './use-pdf.ts';
import { useReport, type ReportMaking } from './use-report.ts';
import './report-screen.css';

const zoomStep = 1.25;

export function ReportScreen({ teardownCase }: { teardownCase: TeardownCase; pack: KnowledgePack }) {
  const caseId = teardownCase.id;
  const photos = useAnswer('photos.list', { caseId });
  const settings = useAnswer('settings.read', {});
  const { desk, error: benchError } = useBench(caseId);
  const [zoom, setZoom] = useState<number | 'fit'>('fit');
  const paper = settings.data?.paper ?? null;
  const bench = desk?.confirmed ?? null;
  const order = useMemo(
    () =>
      photos.data === undefined || bench === null || paper === null
        ? null
        : { caseRevision: teardownCase.revision, photos: photos.data, bench, paper },
    [teardownCase.revision, photos.data, bench, paper],
  );
  const report = useReport(teardownCase, order);
  const address = report.document === null ? null : documentAddress(report.document.token);
  const { opened, failed } = usePdf(address);
  const unread = photos.error ?? settings.error ?? benchError;

  const save = () => {
    if (report.document === null) return;
    deliver(report.document.token).then(
      (taken) => toast(taken ? reportScreenTexts.saved : reportScreenTexts.notSaved),
      toastError,
    );
  };

  return (
    <div className="report-screen">
      <div className="report-bar">
        <h1>{reportScreenTexts.heading}</h1>
        <PaperChoice
          value={paper}
          onValue={(chosen) => void changeSettings({ paper: chosen }).catch(toastError)}
        />
        <span className="report-state" role="status">
          {stateWords(report, opened?.address === address)}
        </span>
        <span className="report-zoom">
          <Button
            kind="quiet"
            aria-label={reportScreenTexts.smaller}
            title={reportScreenTexts.smaller}
            onClick={() => setZoom((now) => (now === 'fit' ? 1 : now) / zoomStep)}
          >
            −
          </Button>
          <span className="report-percent">
            {zoom === 'fit' ? null : reportScreenTexts.zoom(numberText(zoom * 100))}
          </span>
          <Button
            kind="quiet"
            aria-label={reportScreenTexts.larger}
            title={reportScreenTexts.larger}
            onClick={() => setZoom((now) => (now === 'fit' ? 1 : now) * zoomStep)}
          >
            +
          </Button>
          <Button kind="quiet" pressed={zoom === 'fit'} onClick={() => setZoom('fit')}>
            {reportScreenTexts.fit}
          </Button>
        </span>
        <Button kind="primary" disabled={report.document === null} onClick={save}>
          {reportScreenTexts.save}
        </Button>
      </div>
      <MakingState report={report} />
      {unread !== null ? (
        <ErrorState
          error={unread}
          onRetry={() => {
            void photos.refetch();
            void settings.refetch();
            if (benchError !== null) benchOfCase(caseId).retry();
          }}
        />
      ) : isEmpty(report.error) ? (
        <EmptyState
          title={reportScreenTexts.empty}
          actions={
            <Link className="button button-primary" href={stationAddress(caseId, 'photos')}>
              {reportScreenTexts.toPhotos}
            </Link>
          }
        >
          <p>{reportScreenTexts.emptyWords}</p>
        </EmptyState>
      ) : failed !== null && failed === address ? (
        <ErrorState error={new AppError('delivery-gone')} onRetry={report.make} />
      ) : opened !== null ? (
        <PdfPages opened={opened} zoom={zoom} />
      ) : report.error !== null || hasFailed(report) ? null : (
        <BusyState text={reportScreenTexts.making} />
      )}
    </div>
  );
}

function PaperChoice({ value, onValue }: { value: PaperSize | null; onValue: (paper: PaperSize) => void }) {
  return (
    <span className="report-paper" role="group" aria-label={reportScreenTexts.paper}>
      {paperSizes.map((paper) => (
        <Button key={paper} kind="quiet" pressed={value === paper} onClick={() => onValue(paper)}>
          {reportScreenTexts.papers[paper]}
        </Button>
      ))}
    </span>
  );
}

/** Progress where it takes long, and what went wrong; older pages stay in sight below. */
function MakingState({ report }: { report: ReportMaking }) {
  const { job, error } = report;
  if (error !== null && !isEmpty(error)) {
    return <ErrorState inline error={error} onRetry={report.make} />;
  }
  if (job === null) return null;
  if (jobIsUnderWay(job)) {
    return (
      <div className="report-progress">
        <JobProgress job={job} onStop={report.stop} />
      </div>
    );
  }
  if (job.state === 'stopped') {
    return (
      <div className="error-line">
        <p>{reportScreenTexts.stopped}</p>
        <Button onClick={report.make}>{reportScreenTexts.make}</Button>
      </div>
    );
  }
  return hasFailed(report) ? <ErrorState inline error={job.error} onRetry={report.make} /> : null;
}

function hasFailed({ job }: ReportMaking): boolean {
  return job?.state === 'failed' || job?.state === 'interrupted';
}

function isEmpty(error: unknown): boolean {
  return error instanceof AppError && error.code === 'report-empty';
}

function stateWords({ job, document }: ReportMaking, isOpen: boolean): string {
  if (job !== null && jobIsUnderWay(job)) return document === null ? '' : reportScreenTexts.makingAgain;
  if (document === null) return '';
  if (!isOpen) return reportScreenTexts.opening;
  return reportScreenTexts.pages(numberText(document.pages), document.pages === 1);
}
