import { AppError } from '#shared-types/errors.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { shellTexts } from '#shared-types/texts/shell.ts';
import { Button } from './button.tsx';

/** Stands where something should be that could not be had: the sentence of the error, and another try. */
export function ErrorState({
  error,
  onRetry,
  inline = false,
}: {
  error: unknown;
  onRetry?: (() => void) | undefined;
  /** One line beside the action that failed, not a whole place. */
  inline?: boolean;
}) {
  const words = error instanceof AppError ? error.message : shellTexts.unexpected;
  const retry = onRetry === undefined ? null : <Button onClick={onRetry}>{commonTexts.tryAgain}</Button>;
  if (inline) {
    return (
      <div className="error-line" role="alert">
        <p>{words}</p>
        {retry}
      </div>
    );
  }
  return (
    <section className="state-place" role="alert">
      <h2>{commonTexts.errorHeading}</h2>
      <div className="state-words">
        <p>{words}</p>
      </div>
      {retry === null ? null : <div className="state-actions">{retry}</div>}
    </section>
  );
}
