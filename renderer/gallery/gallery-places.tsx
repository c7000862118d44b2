import { useState } from 'react';
import { AppError } from '#shared-types/errors.ts';
import type { DamageClass } from '#shared-types/finding.ts';
import { galleryTexts } from '#shared-types/texts/gallery.ts';
import { jobTexts } from '#shared-types/texts/jobs.ts';
import { BusyState } from '../ui/busy-state.tsx';
import { Button } from '../ui/button.tsx';
import { ClassBadge } from '../ui/class-badge.tsx';
import { DataTable, type Column } from '../ui/data-table.tsx';
import { EmptyState } from '../ui/empty-state.tsx';
import { ErrorState } from '../ui/error-state.tsx';
import { Progress } from '../ui/progress.tsx';
import { SidePanel } from '../ui/side-panel.tsx';
import { GallerySection } from './gallery-section.tsx';

const texts = galleryTexts;
type Row = {
  readonly number: number;
  readonly part: string;
  readonly kind: string;
  readonly class: DamageClass;
  readonly extent: string;
};

const columns: readonly Column<Row>[] = [
  {
    key: 'number',
    head: texts.tableHeads.number,
    align: 'end',
    sortBy: (row) => row.number,
    cell: (row) => row.number,
  },
  { key: 'part', head: texts.tableHeads.part, sortBy: (row) => row.part, cell: (row) => row.part },
  { key: 'kind', head: texts.tableHeads.kind, sortBy: (row) => row.kind, cell: (row) => row.kind },
  {
    key: 'class',
    head: texts.tableHeads.class,
    sortBy: (row) => row.class,
    cell: (row) => <ClassBadge of={row.class} named />,
  },
  { key: 'extent', head: texts.tableHeads.extent, cell: (row) => row.extent },
];

const brokenPicture = new AppError('picture-broken', { name: 'IMG_2231.jpg', reason: 'it ends too early' });

/** Table, long work, and what stands where nothing is. */
export function GalleryPlaces({ theme }: { theme: 'light' | 'dark' }) {
  const [selected, setSelected] = useState<string | null>('9');
  return (
    <>
      <GallerySection title={texts.sections.table}>
        <DataTable<Row>
          caption={texts.tableCaption}
          columns={columns}
          rows={texts.tableRows}
          rowKey={(row) => String(row.number)}
          sortedBy={{ key: 'number', descending: false }}
          selectedKey={selected}
          onSelect={(row) => setSelected(String(row.number))}
        />
      </GallerySection>
      <GallerySection title={texts.sections.progress}>
        <Progress
          label={jobTexts.kinds['photo-import']}
          phase={jobTexts.phases.decoding}
          done={87}
          total={300}
          rate={3.4}
          onStop={nothing}
        />
        <Progress label={jobTexts.kinds.report} done={0} total={0} rate={null} onStop={nothing} stopping />
      </GallerySection>
      <GallerySection title={texts.sections.states}>
        <EmptyState title={texts.emptyTitle} actions={<Button kind="primary">{texts.emptyAction}</Button>}>
          <p>{texts.emptyWords}</p>
        </EmptyState>
        <BusyState text={texts.busy} atOnce />
        <ErrorState error={brokenPicture} onRetry={nothing} />
        <ErrorState error={brokenPicture} onRetry={nothing} inline />
      </GallerySection>
      <GallerySection title={texts.sections.panel}>
        <SidePanel title={`${texts.panelTitle}, ${texts[theme]}`} note={texts.panelNote}>
          <p>{texts.panelWords}</p>
        </SidePanel>
      </GallerySection>
    </>
  );
}

function nothing(): void {
  return;
}
