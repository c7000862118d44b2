/** One page of the report, drawn when it comes near the sight. */
import type { PDFDocumentProxy, RenderTask } from 'pdfjs-dist';
import { useEffect, useRef, useState } from 'react';
import { reportScreenTexts } from '#shared-types/texts/report-screen.ts';
import { numberText } from '../ui/number-words.ts';

/** Pages within so much of the window's height of what is in sight are drawn. */
const nearby = '100% 0px';
const laterMs = 250;

export function PdfPage(props: {
  pdf: PDFDocumentProxy;
  number: number;
  /** CSS pixels. */
  width: number;
  /** Taken for the page's own until it is drawn. */
  height: number;
  /** Where it was clicked, in points from its left and upper edge. */
  onPoint: (point: { x: number; y: number }) => void;
}) {
  const { pdf, number, width, height, onPoint } = props;
  const holder = useRef<HTMLElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const [near, setNear] = useState(false);
  const inSight = useRef(false);
  const [failed, setFailed] = useState(false);
  const [words, setWords] = useState<string | null>(null);
  /** Of the page itself, in points: one that lies is wider than it is high. */
  const [size, setSize] = useState<{ width: number; height: number } | null>(null);

  useEffect(() => {
    if (holder.current === null) return;
    // The window's own margin does not reach into what scrolls within it.
    const watch = new IntersectionObserver(([entry]) => setNear(entry?.isIntersecting === true), {
      rootMargin: nearby,
      scrollMargin: nearby,
    });
    const look = new IntersectionObserver(([entry]) => {
      inSight.current = entry?.isIntersecting === true;
    });
    watch.observe(holder.current);
    look.observe(holder.current);
    return () => {
      watch.disconnect();
      look.disconnect();
    };
  }, []);

  useEffect(() => {
    if (!near) return;
    let task: RenderTask | null = null;
    const ending = new AbortController();
    const { signal } = ending;
    const draw = async () => {
      const page = await pdf.getPage(number);
      const place = canvas.current;
      signal.throwIfAborted();
      if (place === null) return;
      const own = page.getViewport({ scale: 1 });
      const scale = (width / own.width) * window.devicePixelRatio;
      const viewport = page.getViewport({ scale });
      // Drawn aside and put in place whole: the page before stays in sight meanwhile.
      const aside = document.createElement('canvas');
      aside.width = Math.floor(viewport.width);
      aside.height = Math.floor(viewport.height);
      task = page.render({ canvas: aside, viewport });
      await task.promise;
      signal.throwIfAborted();
      place.width = aside.width;
      place.height = aside.height;
      place.getContext('2d')?.drawImage(aside, 0, 0);
      setSize({ width: own.width, height: own.height });
      const { items } = await page.getTextContent();
      signal.throwIfAborted();
      setFailed(false);
      setWords(items.map((item) => ('str' in item ? item.str + (item.hasEOL ? '\n' : '') : '')).join(''));
    };
    // The pages that are looked at go first: drawing one keeps the others waiting.
    const timer = window.setTimeout(
      () =>
        draw().catch(() => {
          if (!signal.aborted) setFailed(true);
        }),
      inSight.current ? 0 : laterMs,
    );
    return () => {
      window.clearTimeout(timer);
      ending.abort();
      task?.cancel();
    };
  }, [near, pdf, number, width]);

  const name = reportScreenTexts.pageOf(numberText(number), numberText(pdf.numPages));
  return (
    <section
      className="pdf-page"
      ref={holder}
      aria-label={name}
      data-page={number}
      data-drawn={words !== null}
    >
      <canvas
        ref={canvas}
        aria-hidden="true"
        style={{ width, height: size === null ? height : (width * size.height) / size.width }}
        onClick={({ nativeEvent: { offsetX, offsetY } }) => {
          const scale = (size?.width ?? 0) / width;
          if (size !== null) onPoint({ x: offsetX * scale, y: offsetY * scale });
        }}
      />
      <p className="only-read-out">{words}</p>
      {failed ? (
        <p className="pdf-page-failed" role="alert">
          {reportScreenTexts.pageFailed}
        </p>
      ) : null}
    </section>
  );
}
