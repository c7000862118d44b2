/** The register of all photos that ever came in, and the sheet that shows those of the case in small. */
import type { BlobId, PhotoId } from '#shared-types/ids.ts';
import type { CameraPlace, Photo, RegisterEntry } from '#shared-types/photo.ts';
import { reportTexts } from '#shared-types/texts/report.ts';

import { destinations } from './destinations.ts';
import { fileNumberGaps } from './file-number-gaps.ts';
import { instantInWords, numberInWords, toldTimeWithZone } from './told-words.ts';

export type RegisterRow = {
  /** The photo's number in the case, or "taken out". */
  readonly photo: string;
  readonly plate: string;
  readonly destination: string | null;
  readonly file: readonly string[];
  readonly taken: readonly string[];
  readonly sha256: string;
  /** By whom, when and why it was taken out; null for one that is in the case. */
  readonly takenOut: string | null;
};

export type Numbers = {
  /** The photo's place in the case, counted from 1; null for one that is not in it. */
  readonly photo: (id: PhotoId) => number | null;
  readonly plate: (id: PhotoId) => number | null;
};

/** Those in the case by their number, then those that were taken out in the order in which they came in. */
export function registerRows(
  register: readonly RegisterEntry[],
  numbers: Numbers,
  printCameraPlaces: boolean,
): RegisterRow[] {
  const words = reportTexts.register;
  const inCase = register.filter(({ takenOut }) => takenOut === null);
  const numberOf = ({ photo }: RegisterEntry) => numbers.photo(photo.id) ?? 0;
  const ordered = [
    ...inCase.sort((one, other) => numberOf(one) - numberOf(other)),
    ...register.filter(({ takenOut }) => takenOut !== null),
  ];
  return ordered.map(({ photo, cameraPlace, takenOut }) => {
    const plate = numbers.plate(photo.id);
    const number = numbers.photo(photo.id);
    return {
      photo: takenOut !== null || number === null ? words.out : String(number),
      plate: plate === null ? words.nowhere : String(plate),
      destination: plate === null ? null : destinations.plate(photo.id),
      file: [
        photo.sourceName,
        words.came(numberInWords(photo.bytes), instantInWords(photo.addedAt), photo.addedBy),
      ],
      taken: [
        photo.takenAt === null ? words.takenUnknown : toldTimeWithZone(photo.takenAt),
        ...(photo.camera === '' ? [] : [photo.camera]),
        ...(photo.declaredSynthetic === null
          ? []
          : [reportTexts.synthetic.register(photo.declaredSynthetic)]),
        ...(printCameraPlaces ? [cameraPlace === null ? words.noPlace : placeInWords(cameraPlace)] : []),
      ],
      sha256: photo.sha256,
      takenOut:
        takenOut === null
          ? null
          : words.takenOut(instantInWords(takenOut.at), takenOut.by, takenOut.reason.trim()),
    };
  });
}

/** Five decimals of a degree are about a metre; altitude in whole metres. */
function placeInWords({ latitude, longitude, altitude }: CameraPlace): string {
  return reportTexts.register.place(
    Math.abs(latitude).toFixed(5),
    latitude < 0 ? 'S' : 'N',
    Math.abs(longitude).toFixed(5),
    longitude < 0 ? 'W' : 'E',
    altitude === null ? null : altitude.toFixed(0).replace('-', '−'),
  );
}

export type SheetPhoto = {
  readonly number: number;
  readonly blobId: BlobId;
  readonly sourceName: string;
  /** What stands below it about its origin; null for what its file calls no other than a photograph. */
  readonly origin: string | null;
  /** Upright size in pixels: the picture's shape. */
  readonly picture: { readonly width: number; readonly height: number };
};

/** The case's photos in their order. */
export function sheetPhotos(photos: readonly Photo[]): SheetPhoto[] {
  return photos.map(({ blobId, sourceName, declaredSynthetic, width, height }, index) => ({
    number: index + 1,
    blobId,
    sourceName,
    origin: declaredSynthetic === null ? null : reportTexts.synthetic.sheet,
    picture: { width, height },
  }));
}

/** What the sheet does not show: photos that were taken out, and numbers of files that never came in. */
export function sheetRemarks(register: readonly RegisterEntry[]): string[] {
  const words = reportTexts.sheet;
  const out = register.filter(({ takenOut }) => takenOut !== null).map(({ photo }) => photo.sourceName);
  const gaps = fileNumberGaps(register.map(({ photo }) => photo.sourceName));
  return [
    out.length === 0 ? words.noneTakenOut : words.takenOut(out.length, out.join(', ')),
    gaps.length === 0
      ? words.noGaps
      : words.gaps(gaps.map(({ first, last, count }) => words.gap(first, last, count)).join(', ')),
  ];
}
