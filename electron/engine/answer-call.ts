/** A call as it arrives -> an envelope: unknown channels and ill-formed requests are refused before any handler runs. */
import { apiContract, isChannel, type Channel } from '#shared-types/api-contract.ts';
import { AppError, type Envelope } from '#shared-types/errors.ts';
import { diskWhats } from '#shared-types/texts/disk.ts';

import type { Services } from '../services/services.ts';
import { toldError } from '../services/told-error.ts';
import type { Handler } from './handlers/handler-types.ts';
import { handlers } from './handlers/handlers.ts';

export async function answerCall(
  services: Services,
  channel: string,
  request: unknown,
): Promise<Envelope<unknown>> {
  return inEnvelope(services, channel, async () => {
    if (!isChannel(channel)) throw new AppError('request-invalid', { field: 'channel', reason: 'unknown' });
    const parsed = apiContract[channel].request.safeParse(request);
    if (!parsed.success) {
      const issue = parsed.error.issues[0];
      throw new AppError('request-invalid', {
        field: `${channel} ${issue?.path.join('.') ?? ''}`.trim(),
        reason: issue?.message ?? '',
      });
    }
    // The channel picks schema and handler together; TypeScript cannot follow that through the union.
    const handler: Handler<Channel> = handlers[channel];
    return handler(services, parsed.data);
  });
}

/** Expected failures travel as they are; anything else is logged and told without its insides. */
export async function inEnvelope(
  services: Pick<Services, 'log'>,
  where: string,
  work: () => Promise<unknown>,
): Promise<Envelope<unknown>> {
  try {
    return { ok: true, value: (await work()) ?? null };
  } catch (error) {
    if (!(error instanceof AppError)) services.log.fault(where, error);
    return { ok: false, error: toldError(error, diskWhats.library).toShape() };
  }
}
