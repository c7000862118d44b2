import type { Carrier } from '#shared-types/carrier.ts';
import { desktopCarrier } from './desktop-carrier.ts';
import { createLoopbackCarrier, pageToken } from './loopback-carrier.ts';

/** The desktop bridge where there is one, else the host that served this page. */
export function chooseCarrier(): Carrier<File> {
  return desktopCarrier() ?? createLoopbackCarrier(pageToken() ?? '');
}
