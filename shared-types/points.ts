/** Coordinates, branded by the plane they are measured in; analysis/marks/planes.ts converts between them. */
import { z } from './schema.ts';

/** Upright image pixels: origin at the top left corner of the picture as a person sees it, x right, y down. */
export const imagePointSchema = z
  .strictObject({ x: z.number().min(-1e6).max(1e6), y: z.number().min(-1e6).max(1e6) })
  .brand<'ImagePoint'>();
export type ImagePoint = z.infer<typeof imagePointSchema>;

/** CSS pixels of the window, origin at the top left of the photo's well. */
export type ScreenPoint = { readonly x: number; readonly y: number; readonly __plane: 'screen' };
/** PDF points (1/72 inch) from the top left of the printed plate. */
export type PagePoint = { readonly x: number; readonly y: number; readonly __plane: 'page' };
