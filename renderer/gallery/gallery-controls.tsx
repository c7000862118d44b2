import { useState } from 'react';
import type { DamageClass } from '#shared-types/finding.ts';
import { commonTexts } from '#shared-types/texts/common.ts';
import { galleryTexts } from '#shared-types/texts/gallery.ts';
import { Button, type ButtonKind } from '../ui/button.tsx';
import { ClassBadge } from '../ui/class-badge.tsx';
import { Kbd } from '../ui/kbd.tsx';
import { Select } from '../ui/select.tsx';
import { StatusWord, type StatusTone } from '../ui/status-word.tsx';
import { TextArea, TextField } from '../ui/text-field.tsx';
import { GallerySection } from './gallery-section.tsx';

const texts = galleryTexts;
const kinds = Object.keys(texts.buttonKinds) as ButtonKind[];
const classes = Object.keys(commonTexts.damageClasses) as DamageClass[];
const tones = Object.keys(texts.tones) as StatusTone[];
type Choice = keyof typeof texts.selectChoices;

/** Buttons, fields, badges: each in each state. */
export function GalleryControls() {
  const [pressed, setPressed] = useState(true);
  const [line, setLine] = useState<string>(texts.fieldValue);
  const [long, setLong] = useState<string>(texts.fieldLongValue);
  const [stage, setStage] = useState<Choice | ''>('');
  const stages = (Object.keys(texts.selectChoices) as Choice[]).map((value) => ({
    value,
    label: texts.selectChoices[value],
  }));

  return (
    <>
      <GallerySection title={texts.sections.buttons}>
        {kinds.map((kind) => (
          <Button key={kind} kind={kind}>
            {texts.buttonKinds[kind]}
          </Button>
        ))}
        {kinds.map((kind) => (
          <Button key={kind} kind={kind} disabled>
            {texts.disabled}
          </Button>
        ))}
        <Button kind="quiet" shortcut="R" pressed={pressed} onClick={() => setPressed(!pressed)}>
          {texts.pressed}
        </Button>
        <Button kind="quiet" shortcut="W" pressed={!pressed} onClick={() => setPressed(!pressed)}>
          {texts.withKey}
        </Button>
        <Kbd>Esc</Kbd>
      </GallerySection>
      <GallerySection title={texts.sections.fields}>
        <TextField label={texts.field} hint={texts.fieldHint} required value={line} onValue={setLine} />
        <TextField label={texts.field} error={texts.fieldError} value={line} onValue={setLine} />
        <TextField label={texts.readOnly} readOnly value={texts.fieldValue} onValue={setLine} />
        <Select
          label={texts.select}
          emptyChoice={texts.selectEmpty}
          value={stage}
          choices={stages}
          onValue={setStage}
        />
        <TextArea label={texts.fieldLong} value={long} onValue={setLong} />
        <TextArea label={texts.fieldLong} controlClassName="control-said" value={long} onValue={setLong} />
      </GallerySection>
      <GallerySection title={texts.sections.classes}>
        {classes.map((one) => (
          <ClassBadge key={one} of={one} named />
        ))}
        {classes.map((one) => (
          <ClassBadge key={one} of={one} />
        ))}
        {tones.map((tone) => (
          <StatusWord key={tone} tone={tone}>
            {texts.tones[tone]}
          </StatusWord>
        ))}
      </GallerySection>
    </>
  );
}
