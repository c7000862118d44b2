import { readChain } from '../../database/repositories/chain.ts';
import { commitToChain, makeChainFigure } from '../../services/chain-work.ts';
import type { Handlers } from './handler-types.ts';

export const chainHandlers = {
  'chain.read': ({ db }, { caseId }) => readChain(db, caseId),
  'chain.commit': commitToChain,
  'chain.figure': makeChainFigure,
} satisfies Partial<Handlers>;
