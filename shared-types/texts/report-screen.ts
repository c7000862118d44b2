/** Words of the report screen, round the pages. */
import type { PaperSize } from '../settings.ts';

const papers = { A4: 'A4', Letter: 'Letter' } as const satisfies Record<PaperSize, string>;

export const reportScreenTexts = {
  heading: 'Report',
  papers,
  paper: 'Paper',
  save: 'Save the PDF…',
  saved: 'The report was saved.',
  notSaved: 'Not saved.',
  make: 'Make it again',
  stop: 'Stop',
  making: 'The pages are being made…',
  makingAgain: 'The case has changed; the pages are being made again…',
  opening: 'Opening the pages…',
  stopped: 'Making the pages was stopped.',
  pages: (n: string, one: boolean) => (one ? '1 page' : `${n} pages`),
  pageOf: (page: string, of: string) => `Page ${page} of ${of}`,
  pagesLabel: 'Pages of the report',
  fit: 'Fit width',
  larger: 'Larger',
  smaller: 'Smaller',
  zoom: (percent: string) => `${percent} %`,
  empty: 'Nothing to print yet',
  emptyWords: 'Pages appear here once the case has a photo or a finding.',
  toPhotos: 'Bring in photos',
  pageFailed: 'This page could not be drawn.',
} as const;
