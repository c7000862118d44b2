import { useState } from 'react';
import { commonTexts } from '#shared-types/texts/common.ts';
import { galleryTexts } from '#shared-types/texts/gallery.ts';
import { Button } from '../ui/button.tsx';
import { Dialog } from '../ui/dialog.tsx';
import { TextField } from '../ui/text-field.tsx';
import { toast } from '../ui/toaster.tsx';
import { GallerySection } from './gallery-section.tsx';

const themes = ['light', 'dark'] as const;

/** What floats over the page takes the page's own theme, which can be switched here. */
export function GalleryOverlays() {
  const [open, setOpen] = useState(false);
  const [value, setValue] = useState<string>(galleryTexts.fieldValue);
  const close = () => setOpen(false);
  return (
    <GallerySection level={2} title={galleryTexts.sections.overlays}>
      {themes.map((theme) => (
        <Button key={theme} onClick={() => (document.documentElement.dataset.theme = theme)}>
          {galleryTexts[theme]}
        </Button>
      ))}
      <Button onClick={() => setOpen(true)}>{galleryTexts.openDialog}</Button>
      <Button onClick={() => toast(galleryTexts.said, { action: { label: galleryTexts.undo, run: close } })}>
        {galleryTexts.say}
      </Button>
      <Button onClick={() => toast(galleryTexts.fieldError, { kind: 'error' })}>
        {galleryTexts.sayError}
      </Button>
      <Dialog
        open={open}
        title={galleryTexts.dialogTitle}
        onClose={close}
        onSubmit={close}
        foot={
          <>
            <Button onClick={close}>{commonTexts.cancel}</Button>
            <Button type="submit" kind="primary">
              {commonTexts.save}
            </Button>
          </>
        }
      >
        <p>{galleryTexts.dialogWords}</p>
        <TextField label={galleryTexts.field} value={value} onValue={setValue} />
      </Dialog>
    </GallerySection>
  );
}
