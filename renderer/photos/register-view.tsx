/**
 * Every photo that ever came into the case, in the order in which they came in, those taken out with the reason. Only
 * the lines in sight are there at all. The one place where the camera's own place is shown.
 */
import { useVirtualizer } from '@tanstack/react-virtual';
import { useId, useMemo, useRef } from 'react';
import type { CaseId } from '#shared-types/ids.ts';
import type { Photo, RegisterEntry } from '#shared-types/photo.ts';
import { photosTexts } from '#shared-types/texts/photos.ts';
import { useAnswer } from '../api/queries.ts';
import { BusyState } from '../ui/busy-state.tsx';
import { EmptyState } from '../ui/empty-state.tsx';
import { ErrorState } from '../ui/error-state.tsx';
import { RegisterLine, registerColumns } from './register-line.tsx';

const texts = photosTexts.register;
const linesAhead = 6;
/** Of a line with two rows of words, pixels at the usual text size; each is measured once it is there. */
const likelyHeight = 48;

export function RegisterView({
  caseId,
  photos,
  readOnly,
}: {
  caseId: CaseId;
  /** Those in the case, in its order: their numbers come from it. */
  photos: readonly Photo[];
  readOnly: boolean;
}) {
  const answer = useAnswer('photos.register', { caseId });
  const numbers = useMemo(() => new Map(photos.map(({ id }, place) => [id, place + 1])), [photos]);
  if (answer.error !== null) {
    return <ErrorState error={answer.error} onRetry={() => void answer.refetch()} />;
  }
  if (answer.data === undefined) return <BusyState />;
  if (answer.data.length === 0) {
    return (
      <div className="photos-empty">
        <EmptyState title={texts.emptyTitle}>
          <p>{texts.emptyWords}</p>
        </EmptyState>
      </div>
    );
  }
  return <RegisterTable entries={answer.data} {...{ caseId, numbers, readOnly }} />;
}

function RegisterTable(props: {
  caseId: CaseId;
  entries: readonly RegisterEntry[];
  numbers: ReadonlyMap<Photo['id'], number>;
  readOnly: boolean;
}) {
  const { caseId, entries, numbers, readOnly } = props;
  const box = useRef<HTMLDivElement>(null);
  const orderId = useId();
  // eslint-disable-next-line react-hooks/incompatible-library -- this page is not compiled by that compiler
  const lines = useVirtualizer({
    count: entries.length,
    getScrollElement: () => box.current,
    getItemKey: (index) => entries[index]?.photo.id ?? index,
    estimateSize: () => likelyHeight,
    overscan: linesAhead,
  });
  const inSight = lines.getVirtualItems();
  const above = inSight[0]?.start ?? 0;
  const below = lines.getTotalSize() - (inSight.at(-1)?.end ?? 0);
  return (
    <>
      <p id={orderId} className="register-order">
        {texts.order}
      </p>
      <div
        className="register-box"
        ref={box}
        role="region"
        aria-label={texts.caption}
        aria-describedby={orderId}
        tabIndex={0}
      >
        <table className="data-table register" aria-rowcount={entries.length + 1}>
          <caption className="only-read-out">{texts.caption}</caption>
          <thead>
            <tr aria-rowindex={1}>
              {registerColumns.map(({ key, head }) => (
                <th key={key} scope="col" className={`register-${key}`}>
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            <Gap height={above} />
            {inSight.map(({ index, key }) => {
              const entry = entries[index];
              return entry === undefined ? null : (
                <RegisterLine
                  key={key}
                  ref={lines.measureElement}
                  {...{ caseId, entry, index, readOnly }}
                  number={numbers.get(entry.photo.id) ?? null}
                />
              );
            })}
            <Gap height={below} />
          </tbody>
        </table>
      </div>
    </>
  );
}

/** Stands for the lines that are not there. */
function Gap({ height }: { height: number }) {
  return height <= 0 ? null : (
    <tr aria-hidden="true" className="register-gap">
      <td colSpan={registerColumns.length} style={{ height }} />
    </tr>
  );
}
