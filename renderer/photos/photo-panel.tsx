/** What is said of the chosen photo, changed in place, and what its file says of itself. */
import { useRef, type ReactNode } from 'react';
import { Link } from 'wouter';
import { partLabel } from '#analysis/report/term-labels.ts';
import type { CaseId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import { stages, type Photo, type PhotoFields, type Stage } from '#shared-types/photo.ts';
import { photosTexts } from '#shared-types/texts/photos.ts';
import { photoAddress } from '../app/addresses.ts';
import { partKey } from '../findings/finding-draft.ts';
import { useWrittenText } from '../findings/use-written-text.ts';
import { Button } from '../ui/button.tsx';
import { bytesText, dayAndClockText, numberText, wallTimeText } from '../ui/number-words.ts';
import { Select } from '../ui/select.tsx';
import { SidePanel } from '../ui/side-panel.tsx';
import { TextArea } from '../ui/text-field.tsx';
import { PartChoice } from './part-choice.tsx';
import { writePhoto } from './photo-writer.ts';
import { useSettledChoice } from './use-settled-choice.ts';

const stageChoices = stages.map((value) => ({ value, label: photosTexts.stageChoices[value] }));
const mostParts = 20;

export function PhotoPanel(props: {
  caseId: CaseId;
  pack: KnowledgePack;
  photo: Photo;
  number: number;
  of: number;
  readOnly: boolean;
  /** What is still to be settled about other photos. */
  waiting: ReactNode;
  onTakeOut: () => void;
}) {
  const { caseId, pack, photo, number, of, readOnly, waiting, onTakeOut } = props;
  const change = (fields: Partial<PhotoFields>) => writePhoto(caseId, photo.id, fields);
  const caption = useWrittenText(photo.caption, (text) => change({ caption: text }));
  const stage = useSettledChoice<Stage>(photo.stage ?? '', (value) =>
    change({ stage: value === '' ? null : value }),
  );
  const seenFrom = useSettledChoice(photo.seenFrom ?? '', (value) =>
    change({ seenFrom: value === '' ? null : value }),
  );
  return (
    <SidePanel
      title={photosTexts.title(numberText(number), numberText(of))}
      note={
        <Link className="button button-primary" href={photoAddress(caseId, photo.id)}>
          {photosTexts.open}
        </Link>
      }
    >
      {waiting}
      <fieldset className="photo-panel" disabled={readOnly}>
        <TextArea
          label={photosTexts.caption}
          hint={photosTexts.captionHint}
          maxLength={2_000}
          rows={2}
          controlClassName="photo-caption"
          value={caption.value}
          onValue={caption.onValue}
          onBlur={caption.onBlur}
        />
        <Select
          label={photosTexts.stage}
          hint={photosTexts.stageHint}
          choices={stageChoices}
          emptyChoice={photosTexts.stageEmpty}
          {...stage}
        />
        <Select
          label={photosTexts.seenFrom}
          choices={pack.sides.map(({ id, label }) => ({ value: id, label }))}
          emptyChoice={photosTexts.seenFromEmpty}
          {...seenFrom}
        />
        <PartsShown pack={pack} photo={photo} onChange={(parts) => void change({ parts })} />
      </fieldset>
      <PhotoFacts photo={photo} />
      {readOnly ? null : (
        <div className="photo-take-out">
          <Button onClick={onTakeOut}>{photosTexts.takeOut.open}</Button>
        </div>
      )}
    </SidePanel>
  );
}

function PartsShown(props: {
  pack: KnowledgePack;
  photo: Photo;
  onChange: (parts: PhotoFields['parts']) => void;
}) {
  const { pack, photo, onChange } = props;
  const choosing = useRef<{ focus: () => void }>(null);
  return (
    <div className="photo-parts">
      <span className="field-label">{photosTexts.parts}</span>
      {photo.parts.length === 0 ? (
        <p className="secondary-words">{photosTexts.noParts}</p>
      ) : (
        <ul>
          {photo.parts.map((part) => {
            const label = partLabel(pack, part);
            return (
              <li key={partKey(part)}>
                <span>{label}</span>
                <Button
                  kind="quiet"
                  aria-label={photosTexts.removePart(label)}
                  onClick={() => {
                    onChange(photo.parts.filter((known) => known !== part));
                    choosing.current?.focus();
                  }}
                >
                  ×
                </Button>
              </li>
            );
          })}
        </ul>
      )}
      <PartChoice
        pack={pack}
        known={photo.parts}
        emptyChoice={photo.parts.length === 0 ? photosTexts.choosePart : photosTexts.addPart}
        full={photo.parts.length >= mostParts}
        onAdd={(part) => onChange([...photo.parts, part])}
        focus={choosing}
      />
    </div>
  );
}

function PhotoFacts({ photo }: { photo: Photo }) {
  const facts = [
    [photosTexts.file, photo.sourceName],
    [photosTexts.taken, photo.takenAt === null ? photosTexts.notKnown : wallTimeText(photo.takenAt)],
    [photosTexts.camera, photo.camera === '' ? photosTexts.notKnown : photo.camera],
    ...(photo.declaredSynthetic === null
      ? []
      : [[photosTexts.synthetic.origin, photosTexts.synthetic.says(photo.declaredSynthetic)] as const]),
    [
      photosTexts.size,
      photosTexts.pixels(numberText(photo.width), numberText(photo.height), bytesText(photo.bytes)),
    ],
    [photosTexts.added, photosTexts.addedBy(dayAndClockText(photo.addedAt), photo.addedBy)],
    [photosTexts.sha256, photo.sha256],
  ] as const;
  return (
    <dl className="fact-list photo-facts">
      {facts.map(([name, value]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}
