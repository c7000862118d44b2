/** A case's fields one by one, the unit's beside the others, each as the text that its control holds. */
import type { CaseFields, Interest, Outcome, ThreadHand, Unit } from '#shared-types/case.ts';
import type { PhotoId } from '#shared-types/ids.ts';
import type { SeenTurning, TurningSense } from '#shared-types/rotation.ts';
import { isTypedName, typedFields, typedNames } from './service-text.ts';

const unitNames = ['maker', 'model', 'serial', 'partNumber'] as const satisfies readonly (keyof Unit)[];
const plainNames = ['number', 'customer', 'claim', 'stateReceived', 'conclusion'] as const;
/** Texts that say one of a list, or the empty text. */
const chosenNames = [
  'outcome',
  'rotation',
  'rotationPhoto',
  'threadHand',
  'threadPhoto',
  'interest',
] as const;

export const fieldNames = [
  ...plainNames,
  ...unitNames,
  ...chosenNames,
  'interestWords',
  ...typedNames,
] as const;
export type FieldName = (typeof fieldNames)[number];
export type FlatFields = Readonly<Record<FieldName, string>>;

export function flatFields(fields: CaseFields): FlatFields {
  const { unit, interest } = fields;
  return {
    number: fields.number,
    customer: fields.customer,
    claim: fields.claim,
    stateReceived: fields.stateReceived,
    outcome: fields.outcome,
    conclusion: fields.conclusion,
    maker: unit.maker,
    model: unit.model,
    serial: unit.serial,
    partNumber: unit.partNumber,
    rotation: unit.rotation === null ? '' : turningKey(unit.rotation),
    rotationPhoto: unit.rotation?.photoId ?? '',
    threadHand: unit.thread?.hand ?? '',
    threadPhoto: unit.thread?.photoId ?? '',
    interest: interest.standing,
    interestWords: interest.words,
    fittedOn: typedFields.fittedOn.text(fields),
    failedOn: typedFields.failedOn.text(fields),
    timeInService: typedFields.timeInService.text(fields),
    runningHours: typedFields.runningHours.text(fields),
  };
}

/** A sense and the side it was seen from in one text: neither says anything without the other. */
export const turningKey = ({ sense, seenFrom }: SeenTurning) => `${sense} ${seenFrom}`;

export function turningOfKey(key: string): SeenTurning | null {
  const [sense, seenFrom] = key.split(' ');
  return sense === undefined || seenFrom === undefined ? null : { sense: sense as TurningSense, seenFrom };
}

/** The change that brings these texts into the case. What is part of a whole goes with the rest of it, as known. */
export function requestFields(known: CaseFields, texts: ReadonlyMap<FieldName, string>): Partial<CaseFields> {
  const request: Partial<CaseFields> = {};
  for (const [name, text] of texts) {
    const now = { ...known, ...request };
    if (isOneOf(plainNames, name)) request[name] = text;
    else if (name === 'outcome') request.outcome = text as Outcome;
    else if (name === 'interest') {
      request.interest = { ...now.interest, standing: text as Interest['standing'] };
    } else if (name === 'interestWords') request.interest = { ...now.interest, words: text };
    else if (isTypedName(name)) request.service = typedFields[name].put(now.service, text);
    else request.unit = { ...now.unit, ...unitPart(name, text, now.unit) };
  }
  return request;
}

type UnitPart = Exclude<FieldName, (typeof plainNames)[number] | 'outcome' | 'interest' | 'interestWords'>;

/** A photo belongs to what it shows: where nothing was seen it goes too. */
function unitPart(name: UnitPart, text: string, { rotation, thread }: Unit): Partial<Unit> {
  const photoId = text === '' ? null : (text as PhotoId);
  switch (name) {
    case 'rotation': {
      const turning = turningOfKey(text);
      return { rotation: turning && { ...turning, photoId: rotation?.photoId ?? null } };
    }
    case 'rotationPhoto':
      return { rotation: rotation && { ...rotation, photoId } };
    case 'threadHand':
      return {
        thread: text === '' ? null : { hand: text as ThreadHand, photoId: thread?.photoId ?? null },
      };
    case 'threadPhoto':
      return { thread: thread && { ...thread, photoId } };
    default:
      return { [name]: text };
  }
}

function isOneOf<Name extends string>(names: readonly Name[], name: string): name is Name {
  return names.some((known) => known === name);
}
