/** A box of the chain: what it is, and its words, its finding or a term of the machine kind. */
import { useState } from 'react';
import {
  chainNodeKinds,
  mostNodeWords,
  writtenNodeKinds,
  type ChainNodeFields,
  type ChainNodeKind,
  type WrittenNodeKind,
} from '#shared-types/chain.ts';
import type { ChainNodeId, FindingId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import { chainFigureTexts, chainTexts } from '#shared-types/texts/chain.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { Button } from '../ui/button.tsx';
import { Dialog } from '../ui/dialog.tsx';
import { Select } from '../ui/select.tsx';
import { TextField } from '../ui/text-field.tsx';

export type OfferedFinding = { readonly id: FindingId; readonly words: string };

const texts = chainTexts.nodeForm;

export function NodeDialog(props: {
  pack: KnowledgePack;
  /** Of the box to be changed, or for the new one. */
  id: ChainNodeId;
  said: Extract<ChainNodeFields, { kind: WrittenNodeKind }> | null;
  /** Findings that do not stand in the chain. */
  findings: readonly OfferedFinding[];
  /** Why the claim cannot be added; null where it can. */
  claimRefused: string | null;
  onClose: () => void;
  onDone: (node: ChainNodeFields) => void;
}) {
  const { pack, id, said, findings, claimRefused, onClose, onDone } = props;
  const [kind, setKind] = useState<ChainNodeKind>(said?.kind ?? 'root-cause');
  const [words, setWords] = useState(said?.words ?? '');
  const [term, setTerm] = useState(said?.term ?? '');
  const [findingId, setFindingId] = useState<FindingId | ''>(findings[0]?.id ?? '');
  const [tried, setTried] = useState(false);

  const terms = kind === 'root-cause' ? pack.mechanisms : kind === 'condition' ? pack.conditions : [];
  const chosenTerm = terms.some((entry) => entry.id === term) ? term : '';

  const done = () => {
    setTried(true);
    const node = nodeOf(id, kind, { words: words.trim(), term: chosenTerm, findingId });
    if (node !== null && (kind !== 'claim' || claimRefused === null)) onDone(node);
  };

  return (
    <Dialog
      open
      title={said === null ? texts.title : texts.titleChange}
      onClose={onClose}
      onSubmit={done}
      foot={
        <>
          <Button onClick={onClose}>{commonTexts.cancel}</Button>
          <Button kind="primary" type="submit">
            {said === null ? texts.make : texts.change}
          </Button>
        </>
      }
    >
      <Select
        label={texts.kind}
        hint={texts.kindHints[kind]}
        value={kind}
        choices={(said === null ? chainNodeKinds : writtenNodeKinds).map((each) => ({
          value: each,
          label: chainFigureTexts.kinds[each],
        }))}
        onValue={(next) => {
          if (next !== '') setKind(next);
        }}
      />
      {kind === 'finding' ? (
        <FindingChoice findings={findings} value={findingId} tried={tried} onValue={setFindingId} />
      ) : kind === 'claim' ? (
        <p role={tried && claimRefused !== null ? 'alert' : undefined}>{claimRefused ?? texts.claimWords}</p>
      ) : (
        <>
          {terms.length === 0 ? null : (
            <Select
              label={texts.term}
              emptyChoice={texts.noTerm}
              value={chosenTerm}
              choices={terms.map((entry) => ({ value: entry.id, label: entry.label }))}
              onValue={setTerm}
            />
          )}
          <TextField
            label={texts.words}
            value={words}
            maxLength={mostNodeWords}
            required={chosenTerm === ''}
            error={tried && words.trim() === '' && chosenTerm === '' ? texts.wordsMissing : null}
            onValue={setWords}
          />
        </>
      )}
    </Dialog>
  );
}

function FindingChoice(props: {
  findings: readonly OfferedFinding[];
  value: FindingId | '';
  tried: boolean;
  onValue: (id: FindingId | '') => void;
}) {
  const { findings, value, tried, onValue } = props;
  if (findings.length === 0) return <p role={tried ? 'alert' : undefined}>{texts.noFindings}</p>;
  return (
    <Select
      label={texts.finding}
      value={value}
      choices={findings.map((finding) => ({ value: finding.id, label: finding.words }))}
      error={tried && value === '' ? texts.findingMissing : null}
      onValue={onValue}
    />
  );
}

/** Null where something is missing. */
function nodeOf(
  id: ChainNodeId,
  kind: ChainNodeKind,
  said: { readonly words: string; readonly term: string; readonly findingId: FindingId | '' },
): ChainNodeFields | null {
  const { words, term, findingId } = said;
  if (kind === 'finding') {
    return findingId === '' ? null : { id, kind, findingId, term: null, words: '' };
  }
  if (kind === 'claim') return { id, kind, findingId: null, term: null, words: '' };
  if (words === '' && term === '') return null;
  return { id, kind, findingId: null, term: term === '' ? null : term, words };
}
