/** Words of the search over all cases. */
export const searchTexts = {
  title: 'Find in all cases',
  inputHint: 'Words or a serial number; ↓ takes the damage offered',
  suggestions: 'Damage that findings in this library carry',
  tag: (component: string, kind: string) => `${component}: ${kind}`,
  anyPart: 'any part',
  anyKind: 'any damage',
  casesWithTag: (n: string, one: boolean) => `${n} ${one ? 'case' : 'cases'}`,
  chosenTags: 'Damage looked for',
  classLabel: (tag: string) => `Class of ${tag}`,
  anyClass: 'any class',
  presenceLabel: (tag: string) => `Presence of ${tag}`,
  anyPresence: 'present or not',
  removeTag: (tag: string) => `Leave out ${tag}`,
  clear: 'Clear',
  resultCount: (shown: string, total: string) =>
    shown === total ? `${total} found` : `the best ${shown} of ${total} found`,
  nothing: {
    title: 'No case fits',
    words:
      'Every word must occur and every damage must be carried by a finding of the same case. Try fewer words, the beginning of a word, or leave a damage out.',
  },
  begin: {
    title: 'Find in everything that was written',
    words:
      'Type in the box above: words of claims, findings, captions and conclusions, serial and part numbers. While you type, damage that findings carry is offered below the box; choose it to find every case with that damage, whatever words were used.',
    examples: 'Add “primary”, “secondary”, “absent” to a damage to narrow it at once: “nut missing primary”.',
  },
  matchedFindings: 'Findings that match',
  findingName: (number: number, component: string, kind: string) => `${number} ${component}: ${kind}`,
  /** Where a piece of text stands. */
  excerptWhere: { case: 'case', photo: 'photo', finding: 'finding' } as Readonly<Record<string, string>>,
} as const;
