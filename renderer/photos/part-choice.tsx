import { useImperativeHandle, useRef, useState, type Ref } from 'react';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import type { PartShown } from '#shared-types/photo.ts';
import { photosTexts } from '#shared-types/texts/photos.ts';
import { partKey, partOfKey, partsOf } from '../findings/finding-draft.ts';
import { Button } from '../ui/button.tsx';
import { Select } from '../ui/select.tsx';

/** Walking through the list with the keyboard chooses; Add, Enter or going elsewhere adds what is chosen. */
export function PartChoice(props: {
  pack: KnowledgePack;
  /** Not offered. */
  known: readonly PartShown[];
  emptyChoice: string;
  full: boolean;
  onAdd: (part: PartShown) => void;
  focus: Ref<{ focus: () => void }>;
}) {
  const { pack, known, emptyChoice, full, onAdd, focus } = props;
  const [chosen, setChosen] = useState('');
  const choosing = useRef<HTMLSelectElement>(null);
  useImperativeHandle(focus, () => ({ focus: () => choosing.current?.focus() }), []);
  const take = () => {
    const part = partOfKey(chosen);
    if (part === null) return false;
    onAdd(part);
    setChosen('');
    return true;
  };
  const add = () => {
    if (take()) choosing.current?.focus();
  };
  const shown = new Set(known.map(partKey));
  const choices = partsOf(pack)
    .map(({ part, label }) => ({ value: partKey(part), label }))
    .filter(({ value }) => !shown.has(value));
  return (
    <div
      className="photo-part-choice"
      onBlur={(event) => {
        if (!event.currentTarget.contains(event.relatedTarget)) take();
      }}
    >
      <Select
        ref={choosing}
        label={photosTexts.addPart}
        labelHidden
        value={chosen}
        choices={choices}
        emptyChoice={emptyChoice}
        disabled={full}
        hint={full ? photosTexts.mostParts : undefined}
        onValue={setChosen}
        onKeyDown={(event) => {
          if (event.key === 'Enter') add();
        }}
      />
      <Button onClick={add} disabled={chosen === ''}>
        {photosTexts.addChosen}
      </Button>
    </div>
  );
}
