import { useRef } from 'react';
import { photosTexts } from '#shared-types/texts/photos.ts';
import { Button } from '../ui/button.tsx';
import { sorted } from './dropped-files.ts';

/** Photos chosen from the disk, one by one or a folder of them. */
export function ChooseButtons({ onFiles }: { onFiles: (files: readonly File[]) => void }) {
  const files = useRef<HTMLInputElement>(null);
  const folder = useRef<HTMLInputElement>(null);
  const taken = (input: HTMLInputElement) => {
    onFiles(sorted([...(input.files ?? [])]));
    input.value = '';
  };
  return (
    <div className="screen-head-actions">
      <input
        ref={files}
        type="file"
        multiple
        hidden
        aria-label={photosTexts.choose}
        data-choose="files"
        onChange={(event) => taken(event.currentTarget)}
      />
      <input
        ref={(input) => {
          folder.current = input;
          if (input !== null) input.webkitdirectory = true;
        }}
        type="file"
        hidden
        aria-label={photosTexts.chooseFolder}
        data-choose="folder"
        onChange={(event) => taken(event.currentTarget)}
      />
      <Button onClick={() => folder.current?.click()}>{photosTexts.chooseFolder}</Button>
      <Button kind="primary" onClick={() => files.current?.click()}>
        {photosTexts.choose}
      </Button>
    </div>
  );
}
