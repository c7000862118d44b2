/** Opens a finished document for the preview. Everything is read by our own page and worker; nothing is evaluated. */
import { getDocument, GlobalWorkerOptions, PDFWorker, type PDFDocumentProxy } from 'pdfjs-dist';
import workerAddress from 'pdfjs-dist/build/pdf.worker.min.mjs?url';
import { useEffect, useState } from 'react';
import { placesOfPdf, type PlaceOnPage } from './places-of-pdf.ts';

GlobalWorkerOptions.workerSrc = workerAddress;

/** One for all documents: it takes longer to start than a document to open. */
let worker: PDFWorker | null = null;

export type OpenedPdf = {
  readonly address: string;
  readonly pdf: PDFDocumentProxy;
  /** Size of the first page in points. */
  readonly page: { readonly width: number; readonly height: number };
  /** Its named places; read after it is shown, those of the document before until then. */
  readonly places: readonly PlaceOnPage[];
  readonly contents: readonly ContentsEntry[];
  /** Whether places and contents are its own by now. */
  readonly isRead: boolean;
};

/** An entry of the document's outline. */
export type ContentsEntry = { readonly title: string; readonly name: string };

type Opening = { readonly opened: OpenedPdf | null; readonly failed: string | null };

/** Keeps showing the document before until the new one is open. `failed` is the address that could not be opened. */
export function usePdf(address: string | null): Opening {
  const [opening, setOpening] = useState<Opening>({ opened: null, failed: null });

  useEffect(() => {
    if (address === null) return;
    let current = true;
    worker ??= new PDFWorker();
    const loading = getDocument({
      url: address,
      worker,
      disableRange: true,
      disableStream: true,
      useWasm: false,
      enableXfa: false,
      useSystemFonts: false,
    });
    const open = async () => {
      const pdf = await loading.promise;
      const first = (await pdf.getPage(1)).getViewport({ scale: 1 });
      if (!current) return;
      const opened = { address, pdf, page: { width: first.width, height: first.height } };
      // Until they are read, what is known of the document before stands for them: nothing jumps or closes.
      setOpening(({ opened: before }) => ({
        opened: {
          ...opened,
          places: before?.places ?? [],
          contents: before?.contents ?? [],
          isRead: false,
        },
        failed: null,
      }));
      const [places, contents] = await Promise.all([placesOfPdf(pdf), contentsOf(pdf)]);
      setOpening((now) =>
        now.opened?.address === address
          ? { ...now, opened: { ...opened, places, contents, isRead: true } }
          : now,
      );
    };
    open().catch(() => {
      // One that was replaced meanwhile is closed, and cannot be read any more.
      if (current) setOpening((before) => ({ ...before, failed: address }));
    });
    return () => {
      current = false;
    };
  }, [address]);

  const pdf = opening.opened?.pdf ?? null;
  useEffect(() => {
    if (pdf === null) return;
    return () => void pdf.loadingTask.destroy();
  }, [pdf]);

  return opening;
}

async function contentsOf(pdf: PDFDocumentProxy): Promise<ContentsEntry[]> {
  const outline = (await pdf.getOutline()) as readonly { title: string; dest: unknown }[] | null;
  return (outline ?? []).map(({ title, dest }) => ({ title, name: typeof dest === 'string' ? dest : '' }));
}
