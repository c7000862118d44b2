import type { Channel, ParsedRequestOf, ResponseOf } from '#shared-types/api-contract.ts';

import type { Services } from '../../services/services.ts';

/** Handlers never know who carries their messages: what comes in is parsed, what goes out is JSON. */
export type Handler<C extends Channel> = (
  services: Services,
  request: ParsedRequestOf<C>,
) => ResponseOf<C> | Promise<ResponseOf<C>>;

export type Handlers<C extends Channel = Channel> = { readonly [Key in C]: Handler<Key> };
