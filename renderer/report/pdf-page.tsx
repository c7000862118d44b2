/** One page of the report, drawn when it comes near the sight. */
import type { PDFDocumentProxy, RenderTask } from 'pdfjs-dist';
import { useEffect, useRef, useState } from 'react';
import { reportScreenTexts } from '#shared-types/texts/report-screen.ts';
import { numberText } from '../ui/number-words.ts';

export function PdfPage(props: {
  pdf: PDFDocumentProxy;
  number: number;
  /** CSS pixels. */
  width: number;
  /** Taken for the page's own until it is drawn. */
  height: number;
}) {
  const { pdf, number, width, height } = props;
  const holder = useRef<HTMLElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const [near, setNear] = useState(false);
  const [failed, setFailed] = useState(false);
  const [words, setWords] = useState<string | null>(null);

  useEffect(() => {
    if (holder.current === null) return;
    const watch = new IntersectionObserver(
      ([entry]) => {
        if (entry?.isIntersecting === true) setNear(true);
      },
      { rootMargin: '150% 0px' },
    );
    watch.observe(holder.current);
    return () => watch.disconnect();
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
      const scale = (width / page.getViewport({ scale: 1 }).width) * window.devicePixelRatio;
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
      const { items } = await page.getTextContent();
      signal.throwIfAborted();
      setFailed(false);
      setWords(items.map((item) => ('str' in item ? item.str + (item.hasEOL ? '\n' : '') : '')).join(''));
    };
    draw().catch(() => {
      if (!signal.aborted) setFailed(true);
    });
    return () => {
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
      <canvas ref={canvas} aria-hidden="true" style={{ width, height }} />
      <p className="only-read-out">{words}</p>
      {failed ? (
        <p className="pdf-page-failed" role="alert">
          {reportScreenTexts.pageFailed}
        </p>
      ) : null}
    </section>
  );
}
