import { commonTexts } from '#shared-types/texts/common.ts';
import { shellTexts } from '#shared-types/texts/shell.ts';
import { useAnswer } from '../api/queries.ts';
import { BusyState } from '../ui/busy-state.tsx';
import { Button } from '../ui/button.tsx';
import { Dialog } from '../ui/dialog.tsx';
import { ErrorState } from '../ui/error-state.tsx';
import { numberText } from '../ui/number-words.ts';

/** What this program is, which version runs, how the page reaches it, and where the library lies. */
export function AboutDialog({ open, onClose }: { open: boolean; onClose: () => void }) {
  return (
    <Dialog
      open={open}
      reading
      title={shellTexts.about.title}
      onClose={onClose}
      foot={<Button onClick={onClose}>{commonTexts.close}</Button>}
    >
      <p>{shellTexts.about.words}</p>
      <p>{shellTexts.about.offline}</p>
      <ProgramFacts />
    </Dialog>
  );
}

function ProgramFacts() {
  const program = useAnswer('program.describe', {});
  const library = useAnswer('library.overview', {});
  const error = program.error ?? library.error;
  if (error !== null) {
    return (
      <ErrorState
        inline
        error={error}
        onRetry={() => {
          void program.refetch();
          void library.refetch();
        }}
      />
    );
  }
  if (program.data === undefined || library.data === undefined) return <BusyState />;
  const { version, carrier, node, sqlite } = program.data;
  const { folder, schemaNumber, cases, photos, journal } = library.data;
  const texts = shellTexts.about;
  return (
    <>
      {carrier === 'loopback' ? <p className="secondary-words">{texts.desktopNote}</p> : null}
      <dl className="fact-list">
        <Fact name={texts.version}>{version}</Fact>
        <Fact name={texts.carrier}>{texts.carriers[carrier]}</Fact>
        <Fact name={texts.library}>{folder}</Fact>
        <Fact name={texts.schema}>{schemaNumber}</Fact>
        <Fact name={texts.libraryCases}>{numberText(cases)}</Fact>
        <Fact name={texts.libraryPhotos}>{numberText(photos)}</Fact>
        <Fact name={texts.journal}>{numberText(journal.entries)}</Fact>
        <Fact name={texts.node}>{node}</Fact>
        <Fact name={texts.sqlite}>{sqlite}</Fact>
      </dl>
    </>
  );
}

function Fact({ name, children }: { name: string; children: string | number }) {
  return (
    <>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </>
  );
}
