import { useId, type ReactNode } from 'react';

/** The panel beside the work, about what is selected. `note` stands at the right end of its head. */
export function SidePanel({
  title,
  note,
  children,
}: {
  title: ReactNode;
  note?: ReactNode;
  children: ReactNode;
}) {
  const id = useId();
  return (
    <aside className="side-panel" aria-labelledby={id}>
      <PanelHead id={id} title={title} note={note} />
      {children}
    </aside>
  );
}

/** A head inside a panel or a sheet: what it is, and at the right how many or where from. */
export function PanelHead({ title, note, id }: { title: ReactNode; note?: ReactNode; id?: string }) {
  return (
    <div className="panel-head">
      <h2 id={id}>{title}</h2>
      {note === undefined ? null : <span className="panel-note">{note}</span>}
    </div>
  );
}
