import { listRegister } from '../../database/repositories/photo-register.ts';
import { listPhotos } from '../../database/repositories/photos.ts';
import { importPhotos } from '../../services/photo-import.ts';
import {
  assignPhotos,
  changePhoto,
  putPhotoBack,
  reorderPhotos,
  takePhotosOut,
} from '../../services/photo-work.ts';
import type { Handlers } from './handler-types.ts';

export const photoHandlers = {
  'photos.list': ({ db }, { caseId }) => listPhotos(db, caseId),
  'photos.import': importPhotos,
  'photos.change': changePhoto,
  'photos.assign': assignPhotos,
  'photos.reorder': reorderPhotos,
  'photos.take-out': takePhotosOut,
  'photos.put-back': putPhotoBack,
  'photos.register': ({ db }, { caseId }) => listRegister(db, caseId),
} satisfies Partial<Handlers>;
