/** Marks show what is there: a finding that has some is not said to be absent without a question. */
import type { FindingRow } from './finding-rows.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { findingsTexts } from '#shared-types/texts/findings.ts';
import { Button } from '../ui/button.tsx';
import { Dialog } from '../ui/dialog.tsx';

const texts = findingsTexts.denying;

export function DenyingDialog(props: { row: FindingRow; onDeny: () => void; onClose: () => void }) {
  const { row, onDeny, onClose } = props;
  return (
    <Dialog
      open
      title={texts.title(row.finding.number)}
      onClose={onClose}
      onSubmit={onDeny}
      foot={
        <>
          <Button onClick={onClose}>{commonTexts.cancel}</Button>
          <Button kind="primary" type="submit">
            {texts.confirm}
          </Button>
        </>
      }
    >
      <p>{texts.words(row.marks.map((mark) => mark.label))}</p>
      <p className="secondary-words">{texts.kept}</p>
    </Dialog>
  );
}
