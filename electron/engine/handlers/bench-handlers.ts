import { listFindings } from '../../database/repositories/findings.ts';
import { listMarks } from '../../database/repositories/marks.ts';
import { listPhotos } from '../../database/repositories/photos.ts';
import { changeClass, commitAtBench } from '../../services/bench-work.ts';
import { importPhotos } from '../../services/photo-import.ts';
import { changePhoto } from '../../services/photo-work.ts';
import type { Handlers } from './handler-types.ts';

export const benchHandlers = {
  'photos.list': ({ db }, { caseId }) => listPhotos(db, caseId),
  'photos.import': importPhotos,
  'photos.change': changePhoto,
  'bench.read': ({ db }, { caseId }) => ({
    marks: listMarks(db, caseId),
    findings: listFindings(db, caseId),
  }),
  'bench.commit': commitAtBench,
  'findings.classify': changeClass,
} satisfies Partial<Handlers>;
