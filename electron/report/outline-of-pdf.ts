/** The document's outline (bookmarks): ISO 32000-1, 12.3.3. Each entry leads to a named place on the pages. */
import type { ReportModel } from '#analysis/report/report-model.ts';
import type { SectionHeading } from '#analysis/report/report-outline.ts';
import { PDFHexString, PDFName, PDFString, type PDFDocument, type PDFRef } from 'pdf-lib';

/** Headings of the model in the order in which they stand. */
export function headingsOf(model: ReportModel): SectionHeading[] {
  return [
    model.claim,
    model.instruction,
    model.received,
    ...model.beforeFindings,
    model.findings,
    model.plates,
    ...(model.chain === null ? [] : [model.chain]),
    ...model.beforeAnswer,
    model.answer,
    model.limits,
    model.record,
    model.signature,
    ...(model.register === null ? [] : [model.register]),
    ...(model.sheet === null ? [] : [model.sheet]),
  ].map(({ heading, destination }) => ({ heading, destination }));
}

/** Gives the document an outline of these entries, shown when it is opened. */
export function addOutline(document: PDFDocument, entries: readonly SectionHeading[]): void {
  const { context, catalog } = document;
  const root = context.nextRef();
  const refs = entries.map(() => context.nextRef());
  entries.forEach(({ heading, destination }, index) => {
    context.assign(
      refs[index] as PDFRef,
      context.obj({
        Title: PDFHexString.fromText(heading),
        Parent: root,
        Dest: PDFString.of(destination),
        ...(index === 0 ? {} : { Prev: refs[index - 1] }),
        ...(index === refs.length - 1 ? {} : { Next: refs[index + 1] }),
      }),
    );
  });
  const first = refs[0];
  const last = refs.at(-1);
  if (first === undefined || last === undefined) return;
  context.assign(root, context.obj({ Type: 'Outlines', First: first, Last: last, Count: refs.length }));
  catalog.set(PDFName.of('Outlines'), root);
  catalog.set(PDFName.of('PageMode'), PDFName.of('UseOutlines'));
}
