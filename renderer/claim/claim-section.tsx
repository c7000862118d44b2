import { useId, type ReactNode } from 'react';
import { claimTexts } from '#shared-types/texts/claim.ts';
import { Button } from '../ui/button.tsx';
import { PanelHead } from '../ui/side-panel.tsx';

export type SectionPlace = { readonly id: string; readonly title: string };

/** A part of the claim station that the index leads to. */
export function ClaimSection({
  place,
  note,
  children,
}: {
  place: SectionPlace;
  note?: ReactNode;
  children: ReactNode;
}) {
  const headId = useId();
  return (
    <section className="claim-section" id={place.id} tabIndex={-1} aria-labelledby={headId}>
      <PanelHead id={headId} title={place.title} note={note} />
      {children}
    </section>
  );
}

/** Leads to the parts of a page that is longer than the window. */
export function ClaimIndex({ places }: { places: readonly SectionPlace[] }) {
  return (
    <nav className="claim-index" aria-label={claimTexts.index}>
      {places.map(({ id, title }) => (
        <Button
          key={id}
          kind="quiet"
          onClick={() => {
            const section = document.getElementById(id);
            section?.scrollIntoView({ block: 'start' });
            section?.focus({ preventScroll: true });
          }}
        >
          {title}
        </Button>
      ))}
    </nav>
  );
}
