/** The report station: the real pages as they will print, made again whenever the case changes. */
import { useRef, useState } from 'react';
import { Link, useLocation } from 'wouter';
import { meaningOf } from '#analysis/report/destinations.ts';
import type { TeardownCase } from '#shared-types/case.ts';
import { AppError } from '#shared-types/errors.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import { paperSizes, type PaperSize } from '#shared-types/settings.ts';
import { reportScreenTexts } from '#shared-types/texts/report-screen.ts';
import { carrier, deliver, documentAddress } from '../api/client.ts';
import { jobIsUnderWay } from '../api/job-news.ts';
import { stationAddress } from '../app/addresses.ts';
import { changeSettings } from '../app/settings-change.ts';
import { BusyState } from '../ui/busy-state.tsx';
import { Button } from '../ui/button.tsx';
import { EmptyState } from '../ui/empty-state.tsx';
import { ErrorState } from '../ui/error-state.tsx';
import { numberText } from '../ui/number-words.ts';
import { JobProgress } from '../ui/progress.tsx';
import { toast, toastError } from '../ui/toaster.tsx';
import { OpenPoints } from './open-points.tsx';
import { PdfPages } from './pdf-pages.tsx';
import { placeAt } from './places-of-pdf.ts';
import { PlanPanel } from './plan-panel.tsx';
import { leadToWriting, ReportContents } from './report-contents.tsx';
import { usePdf } from './use-pdf.ts';
import { useReportOrder } from './use-report-order.ts';
import { useReportTargets } from './use-report-targets.ts';
import { useReport, type ReportMaking } from './use-report.ts';
import './report-screen.css';

const zoomStep = 1.25;

export function ReportScreen({ teardownCase, pack }: { teardownCase: TeardownCase; pack: KnowledgePack }) {
  const caseId = teardownCase.id;
  const { order, error: unread, retry } = useReportOrder(teardownCase);
  const [zoom, setZoom] = useState<number | 'fit'>('fit');
  const [, navigate] = useLocation();
  const pages = useRef<HTMLDivElement>(null);
  const report = useReport(teardownCase, order);
  const { targetsOf, referencesOf } = useReportTargets(order, pack);
  const address = report.document === null ? null : documentAddress(report.document.token);
  const { opened, failed } = usePdf(address);

  const save = () => {
    if (report.document === null) return;
    deliver(report.document.token).then(
      (taken) => toast(taken ? reportScreenTexts.saved : reportScreenTexts.notSaved),
      toastError,
    );
  };
  const findingIdOf = (number: number) =>
    [...(order?.bench.findings.values() ?? [])].find((finding) => finding.number === number)?.id ?? null;
  const leadTo = (point: { page: number; x: number; y: number }) => {
    const place = opened === null ? null : placeAt(opened.places, point);
    const meaning = place === null ? null : meaningOf(place.name);
    if (meaning !== null) leadToWriting(meaning, caseId, findingIdOf, navigate);
  };
  const show = (name: string) => {
    const place = opened?.places.find((known) => known.name === name);
    const sheet = pages.current?.querySelector(`[data-page="${place?.page ?? 0}"]`);
    sheet?.scrollIntoView({ block: 'start' });
  };

  return (
    <div className="report-screen">
      <div className="report-bar">
        <h1>{reportScreenTexts.heading}</h1>
        <PaperChoice
          value={order?.paper ?? null}
          onValue={(chosen) => void changeSettings({ paper: chosen }).catch(toastError)}
        />
        <span className="report-state" role="status">
          {stateWords(report, opened?.address === address && opened.isRead)}
        </span>
        <ZoomChoice zoom={zoom} onZoom={setZoom} />
        {address !== null && carrier.kind === 'loopback' ? (
          <a
            className="button button-plain"
            href={address}
            target="_blank"
            rel="noopener"
            title={reportScreenTexts.printHint}
          >
            {reportScreenTexts.print}
          </a>
        ) : null}
        <Button kind="primary" disabled={report.document === null} onClick={save}>
          {reportScreenTexts.save}
        </Button>
      </div>
      <MakingState report={report} />
      <div className="report-work">
        <div className="report-sheets" ref={pages}>
          {unread !== null ? (
            <ErrorState error={unread} onRetry={retry} />
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
            <PdfPages opened={opened} zoom={zoom} onPoint={leadTo} />
          ) : report.error !== null || hasFailed(report) ? null : (
            <BusyState text={reportScreenTexts.making} />
          )}
        </div>
        {order === null ? null : (
          <PlanPanel
            teardownCase={teardownCase}
            plan={order.plan}
            targetsOf={targetsOf}
            referencesOf={referencesOf}
            openPoints={<OpenPoints teardownCase={teardownCase} order={order} pack={pack} />}
            contents={<ReportContents caseId={caseId} contents={opened?.contents ?? []} onShow={show} />}
          />
        )}
      </div>
    </div>
  );
}

function ZoomChoice({ zoom, onZoom }: { zoom: number | 'fit'; onZoom: (zoom: number | 'fit') => void }) {
  const now = zoom === 'fit' ? 1 : zoom;
  return (
    <span className="report-zoom">
      <Button
        kind="quiet"
        aria-label={reportScreenTexts.smaller}
        title={reportScreenTexts.smaller}
        onClick={() => onZoom(now / zoomStep)}
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
        onClick={() => onZoom(now * zoomStep)}
      >
        +
      </Button>
      <Button kind="quiet" pressed={zoom === 'fit'} onClick={() => onZoom('fit')}>
        {reportScreenTexts.fit}
      </Button>
    </span>
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
