/** The pages one under the other on a quiet ground. */
import { useCallback, useState } from 'react';
import { reportScreenTexts } from '#shared-types/texts/report-screen.ts';
import { PdfPage } from './pdf-page.tsx';
import type { OpenedPdf } from './use-pdf.ts';

/** CSS pixels for each printed point at 100 %: 96 to 72. */
const pixelsPerPoint = 96 / 72;
const edge = 24;
const widestFit = 1_000;

export function PdfPages({
  opened,
  zoom,
  onPoint,
}: {
  opened: OpenedPdf;
  zoom: number | 'fit';
  onPoint: (point: { page: number; x: number; y: number }) => void;
}) {
  const { pdf, page } = opened;
  const [room, setRoom] = useState(0);
  const measure = useCallback((element: HTMLElement | null) => {
    if (element === null) return undefined;
    const observer = new ResizeObserver(() => setRoom(element.clientWidth));
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  const width =
    zoom === 'fit'
      ? Math.max(160, Math.min(room - 2 * edge, widestFit))
      : Math.round(page.width * pixelsPerPoint * zoom);
  const height = (width * page.height) / page.width;
  return (
    <div
      className="pdf-pages"
      ref={measure}
      tabIndex={0}
      role="region"
      aria-label={reportScreenTexts.pagesLabel}
    >
      {room === 0
        ? null
        : Array.from({ length: pdf.numPages }, (_, index) => (
            <PdfPage
              key={index}
              pdf={pdf}
              number={index + 1}
              width={width}
              height={height}
              onPoint={(point) => onPoint({ page: index + 1, ...point })}
            />
          ))}
    </div>
  );
}
