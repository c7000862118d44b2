import { analystIdSchema, revisionSchema } from './ids.ts';
import { z } from './schema.ts';

export const themes = ['light', 'dark', 'system'] as const;
export const paperSizes = ['A4', 'Letter'] as const;
export const lengthUnits = ['mm', 'inch'] as const;

export const paperSizeSchema = z.enum(paperSizes);
export type PaperSize = z.infer<typeof paperSizeSchema>;

export const settingsFieldsSchema = z.strictObject({
  theme: z.enum(themes),
  paper: paperSizeSchema,
  lengthUnit: z.enum(lengthUnits),
  /** Who sits at the workstation now; null until the first analyst is entered. */
  currentAnalystId: analystIdSchema.nullable(),
});
export type SettingsFields = z.infer<typeof settingsFieldsSchema>;
export type Settings = SettingsFields & { readonly revision: number };
export const settingsRevisionSchema = revisionSchema;
