import type { UnitNames } from '#shared-types/case.ts';
import { shellTexts } from '#shared-types/texts/shell.ts';

/** Maker and model; empty where neither is entered. */
export function unitName(unit: UnitNames): string {
  return [unit.maker, unit.model].filter(Boolean).join(' ');
}

/** Maker, model and serial number in one line; what is not entered is left out. */
export function unitText(unit: UnitNames): string {
  const serial = unit.serial === '' ? '' : shellTexts.serial(unit.serial);
  return [unitName(unit), serial].filter(Boolean).join(' · ');
}
