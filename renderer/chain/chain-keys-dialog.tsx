import { chainTexts } from '#shared-types/texts/chain.ts';
import { Dialog } from '../ui/dialog.tsx';

export function ChainKeysDialog({ onClose }: { onClose: () => void }) {
  const { title, rows } = chainTexts.keysDialog;
  return (
    <Dialog open title={title} onClose={onClose} reading>
      <dl className="fact-list">
        {rows.map(([keys, what]) => (
          <div key={keys} className="chain-key">
            <dt>{keys}</dt>
            <dd>{what}</dd>
          </div>
        ))}
      </dl>
    </Dialog>
  );
}
