/** A case's fields one by one, the unit's beside the others, each as the text that its control holds. */
import type { CaseFields, Outcome, Unit } from '#shared-types/case.ts';

export const fieldNames = [
  'number',
  'maker',
  'model',
  'serial',
  'partNumber',
  'customer',
  'claim',
  'outcome',
  'conclusion',
] as const;
export type FieldName = (typeof fieldNames)[number];
export type FlatFields = Readonly<Record<FieldName, string>>;

const unitNames = ['maker', 'model', 'serial', 'partNumber'] as const satisfies readonly (keyof Unit)[];

export function flatFields({ unit, ...fields }: CaseFields): FlatFields {
  return {
    number: fields.number,
    customer: fields.customer,
    claim: fields.claim,
    outcome: fields.outcome,
    conclusion: fields.conclusion,
    ...unit,
  };
}

/** The change that brings these values into the case. A unit goes whole, with what else it has. */
export function requestFields(
  known: CaseFields,
  values: ReadonlyMap<FieldName, string>,
): Partial<CaseFields> {
  const fields: Partial<CaseFields> = {};
  const unit: Partial<Unit> = {};
  for (const [name, value] of values) {
    if (isUnitName(name)) unit[name] = value;
    else if (name === 'outcome') fields.outcome = value as Outcome;
    else fields[name] = value;
  }
  return Object.keys(unit).length === 0 ? fields : { ...fields, unit: { ...known.unit, ...unit } };
}

function isUnitName(name: FieldName): name is (typeof unitNames)[number] {
  return unitNames.some((known) => known === name);
}
