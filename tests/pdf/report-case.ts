/** An invented case to print: ids count up, so that a test can name what it looks for. */
import type { ReportInput } from '#analysis/report/report-model.ts';
import { imagePoint } from '#analysis/marks/planes.ts';
import type { Finding } from '#shared-types/finding.ts';
import type { BlobId, CaseId, AnalystId, FindingId, MarkId, PhotoId } from '#shared-types/ids.ts';
import type { KnowledgePack } from '#shared-types/knowledge-pack.ts';
import type { Mark } from '#shared-types/mark.ts';
import type { Photo, RegisterEntry } from '#shared-types/photo.ts';
import type { Instant } from '#shared-types/times.ts';

import { fieldsAfterOpening } from '../support/case-fields.ts';

const uuid = (block: number, number: number) =>
  `${String(block).padStart(8, '0')}-0000-4000-8000-${String(number).padStart(12, '0')}`;

export const photoId = (number: number) => uuid(1, number) as PhotoId;
export const blobId = (number: number) => uuid(2, number) as BlobId;
export const findingId = (number: number) => uuid(3, number) as FindingId;
export const markId = (number: number) => uuid(4, number) as MarkId;

const instant = '2026-03-04T09:15:00.000Z' as Instant;

export const pack: KnowledgePack = {
  schema: 1,
  id: 'sample-machine',
  version: '1.2.0',
  label: 'Turbocharger',
  source: 'Invented for tests.',
  positions: [
    { id: 'compressor-side', label: 'compressor side' },
    { id: 'turbine-side', label: 'turbine side' },
  ],
  sides: [{ id: 'from-turbine', label: 'from the turbine end' }],
  kinds: [
    { id: 'worn', label: 'worn away', meaning: 'Material is gone.' },
    { id: 'heat-tint', label: 'heat tint, smeared metal', meaning: 'Colour of an oxide film.' },
    { id: 'rub', label: 'rub marks', meaning: 'Touched while turning.' },
  ],
  components: [
    {
      id: 'thrust-bearing',
      label: 'Thrust bearing',
      positions: [],
      optional: false,
      zones: [{ id: 'front-pads', label: 'front pads', kinds: ['worn', 'heat-tint'], counts: 'pads' }],
      kinds: [],
    },
    {
      id: 'journal-bearing',
      label: 'Journal bearing',
      positions: ['compressor-side', 'turbine-side'],
      optional: false,
      zones: [{ id: 'bore', label: 'bore', kinds: ['worn', 'rub'], counts: null }],
      kinds: [],
    },
  ],
  quantities: [],
  mechanisms: [],
  conditions: [],
  marks: [],
};

export function photo(number: number, change: Partial<Photo> = {}): Photo {
  return {
    id: photoId(number),
    blobId: blobId(number),
    revision: 1,
    caption: '',
    stage: 'stripped',
    seenFrom: null,
    parts: [],
    sha256: String(number).padStart(64, '0'),
    bytes: 1000,
    width: 1600,
    height: 1200,
    mediaType: 'image/jpeg',
    sourceName: `photo-${number}.jpg`,
    takenAt: null,
    camera: '',
    declaredSynthetic: null,
    addedAt: instant,
    addedBy: 'A. Analyst',
    derivatives: { thumbnail: '', display: '' },
    displayWidth: 1600,
    displayHeight: 1200,
    ...change,
  };
}

export function finding(number: number, change: Partial<Finding> = {}): Finding {
  return {
    id: findingId(number),
    number,
    revision: 1,
    component: 'thrust-bearing',
    position: null,
    zone: 'front-pads',
    kind: 'worn',
    class: 'primary',
    presence: 'present',
    severity: null,
    extent: null,
    bend: null,
    note: '',
    ...change,
  };
}

type XY = readonly [x: number, y: number];

/** An arrow on photo `photoNumber`, in upright image pixels. */
export function arrow(
  number: number,
  photoNumber: number,
  findingNumber: number | null,
  tail: XY,
  tip: XY,
  order = number,
): Mark {
  return {
    id: markId(number),
    photoId: photoId(photoNumber),
    findingId: findingNumber === null ? null : findingId(findingNumber),
    geometry: { kind: 'arrow', v: 1, tail: imagePoint(...tail), tip: imagePoint(...tip) },
    order,
    revision: 1,
  };
}

export function reportInput(change: Partial<ReportInput> = {}): ReportInput {
  const input: ReportInput = {
    isSample: false,
    teardownCase: {
      id: uuid(5, 1) as CaseId,
      revision: 3,
      ...fieldsAfterOpening({
        number: '26-0147',
        unit: { maker: 'Sample Works', model: 'R45', serial: '30771', partNumber: 'SW-1180-4' },
        customer: 'Example Haulage',
        claim:
          'The turbo was noisy from the first hour. The supplier says dirt in the oil, we say the thrust bearing was made wrong.',
      }),
      status: 'open',
      pack: { id: pack.id, version: pack.version, sha256: 'ab'.repeat(32) },
      openedAt: instant,
      openedBy: 'A. Analyst',
      counts: { photos: 0, marks: 0, findings: 0, journalEntries: 0 },
    },
    parties: [],
    custody: [],
    photos: [],
    register: [],
    marks: [],
    findings: [],
    plan: { platesAPage: 1, printCameraPlaces: false, sections: [] },
    chain: { nodes: [], links: [] },
    pack,
    analyst: { id: uuid(6, 1) as AnalystId, name: 'A. Analyst', qualification: 'Dipl.-Ing.', revision: 1 },
    paper: 'A4',
    instant,
    journal: { entries: 143, head: 'cd'.repeat(32) },
  };
  const register = (change.photos ?? []).map(registered);
  return { ...input, register, ...change };
}

/** A photo's line in the register: it came in and stayed. */
export function registered(photo: Photo): RegisterEntry {
  return { photo, cameraPlace: null, takenOut: null, absences: [] };
}
