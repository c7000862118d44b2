/** Words about a machine kind: how a finding is named, what its lists are called, why a file is refused. */

/** `term-unknown` says "The machine kind of this case has no {list} “…”". */
const lists = {
  component: 'part',
  zone: (component: string) => `zone of the ${component}`,
  kind: 'kind of damage',
  kindAt: (place: string) => `kind of damage at the ${place}`,
  position: 'position',
  positionOf: (component: string) => `position of the ${component}`,
  side: 'side to look from',
  quantity: 'quantity',
} as const;

/** `pack-invalid` says "{place}: {reason}." */
const refusals = {
  wholeFile: 'the whole file',
  line: (line: number, column: number) => `line ${line}, column ${column}`,
  notJson: 'this is not readable as JSON',
  endsEarly: 'the text ends before the JSON does',
  missing: 'this is missing',
  wrongType: (expected: string, found: string) => `${expected} is expected here, not ${found}`,
  types: {
    string: 'text',
    number: 'a number',
    boolean: 'true or false',
    array: 'a list',
    object: 'an object',
    null: 'null',
  },
  somethingElse: 'something else',
  unknownField: (names: string) => `nothing is known by the name ${names}`,
  emptyList: 'the list must not be empty',
  emptyText: 'the text must not be empty',
  textTooLong: (most: number) => `the text is longer than ${most} characters`,
  numberTooSmall: (least: number) => `the number must not be less than ${least}`,
  numberTooLarge: (most: number) => `the number must not be more than ${most}`,
  notAnId: 'an id is lower-case words joined by hyphens',
  notAVersion: 'a version is three numbers such as 1.0.0',
  notOneOf: (words: string) => `must be one of ${words}`,
  notAPredicate: 'the test must be one of finding, measurement, all, any',
  notUsable: 'this is not what belongs here',
  twice: (id: string) => `"${id}" stands here twice`,
  takenBy: (id: string, list: string) => `"${id}" is already the id of one of the ${list}`,
  unknownId: (what: string, id: string) => `there is no ${what} "${id}"`,
  notOfComponent: (what: string, id: string, component: string) => `"${component}" has no ${what} "${id}"`,
  zoneWithoutComponent: 'a zone needs the component that it belongs to',
  positionWithoutComponent: (quantity: string) =>
    `quantity "${quantity}" belongs to no component, so it has no positions`,
  kindNowhere: (id: string) => `kind "${id}" cannot occur in any of the zones named`,
  nothingCounted: (zone: string) => `nothing is counted in zone "${zone}", so a share of it has no meaning`,
  shareNeedsZones: 'a least share needs its zones named, because each counts its own blades or pads',
  loop: (path: string) => `this runs in a loop: ${path}`,
} as const;

export const knowledgeTexts = {
  lists,
  refusals,
  /** "journal bearing, turbine side, bore" */
  place: (parts: readonly string[]) => parts.join(', '),
  /** "Journal bearing, turbine side, bore: scoring" */
  findingTitle: (place: string, kind: string) =>
    `${place.slice(0, 1).toLocaleUpperCase('en')}${place.slice(1)}: ${kind}`,
} as const;
