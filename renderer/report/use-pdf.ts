/** Opens a finished document for the preview. Everything is read by our own page and worker; nothing is evaluated. */
import { getDocument, GlobalWorkerOptions, PDFWorker, type PDFDocumentProxy } from 'pdfjs-dist';
import workerAddress from 'pdfjs-dist/build/pdf.worker.min.mjs?url';
import { useEffect, useState } from 'react';

GlobalWorkerOptions.workerSrc = workerAddress;

/** One for all documents: it takes longer to start than a document to open. */
let worker: PDFWorker | null = null;

export type OpenedPdf = {
  readonly address: string;
  readonly pdf: PDFDocumentProxy;
  /** Size of the first page in points. */
  readonly page: { readonly width: number; readonly height: number };
};

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
      setOpening({
        opened: { address, pdf, page: { width: first.width, height: first.height } },
        failed: null,
      });
    };
    open().catch(() => {
      if (current) setOpening((before) => ({ ...before, failed: address }));
    });
    return () => {
      current = false;
    };
  }, [address]);

  const opened = opening.opened;
  useEffect(() => {
    if (opened === null) return;
    return () => void opened.pdf.loadingTask.destroy();
  }, [opened]);

  return opening;
}
