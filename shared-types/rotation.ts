/** A sense of turning is always told with the side it was seen from: from the other end it is the other way round. */
import { packTermIdSchema } from './ids.ts';
import { z } from './schema.ts';

export const turningSenses = ['clockwise', 'anticlockwise'] as const;
export const turningSenseSchema = z.enum(turningSenses);
export type TurningSense = z.infer<typeof turningSenseSchema>;

/** As it was seen; `seenFrom` is one of the machine kind's sides. */
export const seenTurningSchema = z.strictObject({
  sense: turningSenseSchema,
  seenFrom: packTermIdSchema,
});
export type SeenTurning = z.infer<typeof seenTurningSchema>;
