/** The machine kinds this program ships, and those that cases were opened with. */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

import { loadPack } from '#analysis/knowledge/load-pack.ts';
import type { PackReference } from '#shared-types/case.ts';
import { AppError } from '#shared-types/errors.ts';
import type { KnowledgePack, MachineKind } from '#shared-types/knowledge-pack.ts';

import type { Db } from '../database/open-library.ts';
import { keepPack, readKeptContent, readKeptPack } from '../database/repositories/packs.ts';

export type PackShelf = {
  list(): MachineKind[];
  /** As shipped now, or as kept at `version`. @throws AppError machine-kind-unknown */
  read(id: string, version: string | null): KnowledgePack;
  /** The kind a case was opened with, to the byte. @throws AppError machine-kind-unknown */
  ofCase(reference: PackReference): KnowledgePack;
  /** Row of the kept copy of the shipped kind, kept now if need be; inside the caller's transaction. */
  keep(id: string): number;
};

type Shipped = { readonly pack: KnowledgePack; readonly content: string; readonly sha256: string };

/** @throws AppError pack-invalid naming the file and the place in it */
export function openPackShelf(db: Db, folder: string): PackShelf {
  const shipped = new Map(
    readdirSync(folder)
      .filter((name) => name.endsWith('.json'))
      .sort()
      .map((name) => {
        const one = readShipped(join(folder, name), name);
        return [one.pack.id, one] as const;
      }),
  );
  const keptByHash = new Map<string, KnowledgePack>();
  const ofCase: PackShelf['ofCase'] = ({ id, version, sha256 }) => {
    const now = shipped.get(id);
    if (now?.sha256 === sha256) return now.pack;
    const known = keptByHash.get(sha256);
    if (known) return known;
    const content = readKeptContent(db, sha256);
    if (content === null) throw new AppError('machine-kind-unknown', { id });
    const pack = loadPack(content, `${id} ${version}`);
    keptByHash.set(sha256, pack);
    return pack;
  };
  const read: PackShelf['read'] = (id, version) => {
    const now = shipped.get(id);
    if (now && (version === null || version === now.pack.version)) return now.pack;
    const kept = version === null ? null : readKeptPack(db, { id, version });
    if (!kept) throw new AppError('machine-kind-unknown', { id });
    return loadPack(kept.content, `${id} ${kept.version}`);
  };
  return {
    list: () => [...shipped.values()].map(({ pack: { id, version, label } }) => ({ id, version, label })),
    read,
    ofCase,
    keep(id) {
      const one = shipped.get(id);
      if (!one) throw new AppError('machine-kind-unknown', { id });
      return keepPack(db, one);
    },
  };
}

function readShipped(file: string, name: string): Shipped {
  const content = readFileSync(file, 'utf8');
  return {
    pack: loadPack(content, name),
    content,
    sha256: createHash('sha256').update(content).digest('hex'),
  };
}
