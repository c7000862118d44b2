import type { Job } from '#shared-types/job.ts';
import { jobTexts } from '#shared-types/texts/jobs.ts';
import { Button } from './button.tsx';
import { numberText, durationText } from './number-words.ts';

export type ProgressProps = {
  /** What is going on: it names the bar. */
  label: string;
  phase?: string | undefined;
  done: number;
  /** 0 while it is not known how much there is. */
  total: number;
  /** Items a second; null until it is known. */
  rate: number | null;
  onStop?: (() => void) | undefined;
  stopping?: boolean;
};

/** Long work: how far, how fast, how long yet, and a way to stop it. */
export function Progress({ label, phase, done, total, rate, onStop, stopping = false }: ProgressProps) {
  const secondsLeft = rate !== null && rate > 0 && total > done ? (total - done) / rate : null;
  const facts = [
    total > 0 ? jobTexts.countOf(numberText(done), numberText(total)) : null,
    rate === null || rate <= 0 ? null : jobTexts.rate(numberText(rate, rate < 10 ? 1 : 0)),
    secondsLeft === null ? null : jobTexts.timeLeft(durationText(secondsLeft)),
  ].filter((fact) => fact !== null);

  return (
    <div className="progress">
      <div className="progress-words">
        <span className="progress-label">{label}</span>
        {phase === undefined || phase === '' ? null : <span className="progress-phase">{phase}</span>}
        <span className="progress-facts">{facts.join(' · ')}</span>
      </div>
      <progress
        className="progress-bar"
        aria-label={label}
        {...(total > 0 ? { max: total, value: Math.min(done, total) } : {})}
      />
      {onStop === undefined ? null : (
        <Button className="progress-stop" disabled={stopping} onClick={onStop}>
          {stopping ? jobTexts.stopping : jobTexts.stop}
        </Button>
      )}
    </div>
  );
}

/** The progress of a job as the program reports it. */
export function JobProgress({
  job,
  onStop,
  stopping,
}: {
  job: Job;
  onStop?: (() => void) | undefined;
  stopping?: boolean;
}) {
  return (
    <Progress
      label={jobTexts.kinds[job.kind]}
      phase={job.phase}
      done={job.done}
      total={job.total}
      rate={job.rate}
      onStop={onStop}
      stopping={stopping ?? false}
    />
  );
}
