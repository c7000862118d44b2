/** A file dropped here means a photo for the case: it is not taken, and said where photos are. */
import { useEffect, useEffectEvent } from 'react';
import { marksTexts } from '#shared-types/texts/marks.ts';
import { toast } from '../ui/toaster.tsx';

export function useForeignDrop(toPhotos: () => void): void {
  const dropped = useEffectEvent((event: DragEvent) => {
    if (event.dataTransfer?.types.includes('Files') !== true) return;
    event.preventDefault();
    if (event.type !== 'drop') return;
    toast(marksTexts.dropElsewhere, { action: { label: marksTexts.toPhotosStation, run: toPhotos } });
  });

  useEffect(() => {
    const listen = (event: DragEvent) => dropped(event);
    window.addEventListener('dragover', listen);
    window.addEventListener('drop', listen);
    return () => {
      window.removeEventListener('dragover', listen);
      window.removeEventListener('drop', listen);
    };
  }, []);
}
