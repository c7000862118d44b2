/** Where the camera stood, from its lens and from a scale in the picture: it need not be measured on the bench. */
import { courseOf } from '../marks/mark-kinds/segment.ts';
import { imagePoint, type Size } from '../marks/planes.ts';
import type { CameraPlace, LengthScale } from './photo-scale.ts';

/** Diagonal of the film that focal lengths are told for, 24 by 36 mm. */
const filmDiagonal = Math.hypot(24, 36);

/**
 * Millimetres on that film: the main lens of a phone, or a wider one than most cameras carry. The wider the lens, the
 * nearer the camera and the more a tilt does. Common practice, no source.
 */
export const usualFocalLength = 26;

/**
 * To some percent, which is enough to say what a tilt or an offset may do.
 *
 * @param picture the whole of it as it was taken, in image pixels: not one that was cropped or zoomed into
 * @param focalLength in mm on 24 by 36 film, as EXIF tells it (FocalLengthIn35mmFilm, 0xA405)
 */
export function cameraByLens(
  picture: Size,
  focalLength: number,
  { ends, length }: Pick<LengthScale, 'ends' | 'length'>,
): CameraPlace {
  const inPixels = (focalLength / filmDiagonal) * Math.hypot(picture.width, picture.height);
  return {
    distanceMm: (inPixels * length.mm) / courseOf(...ends).length,
    middle: imagePoint(picture.width / 2, picture.height / 2),
  };
}
