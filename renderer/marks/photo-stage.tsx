/** The photo in its well with its line of words below: all that changes while it is zoomed and panned. */
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import { MarksFoot, zoomStep } from './marks-foot.tsx';
import { PhotoWell, type PhotoWellProps } from './photo-well.tsx';
import { useKeys } from './use-keys.ts';
import { usePhotoView } from './use-photo-view.ts';

export function PhotoStage({
  pack,
  saving,
  ...well
}: Omit<PhotoWellProps, 'photoView'> & { pack: KnowledgePack; saving: boolean }) {
  const { photo } = well;
  const photoView = usePhotoView(photo.id, photo);
  const larger = () => photoView.zoom(zoomStep);
  const smaller = () => photoView.zoom(1 / zoomStep);
  useKeys({ '+': larger, '=': larger, '-': smaller, '−': smaller, '0': photoView.fit });
  return (
    <>
      <PhotoWell {...well} photoView={photoView} />
      <MarksFoot
        photo={photo}
        pack={pack}
        saving={saving}
        scale={photoView.view?.scale ?? null}
        onZoom={photoView.zoom}
        onFit={photoView.fit}
      />
    </>
  );
}
