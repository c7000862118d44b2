/** What a case still leaves open, said on the report screen. */
const findings = (numbers: readonly number[]) =>
  numbers.length === 1 ? `Finding ${numbers.join('')}` : `Findings ${numbers.join(', ')}`;

export const openPointTexts = {
  head: 'Still open',
  count: (n: number) => (n === 1 ? '1 point' : `${n} points`),
  none: 'Nothing that the program can see. Whether the opinion holds is yours to judge.',
  showAll: (n: number) => `Show all ${n}`,
  showFewer: 'Show fewer',
  claim: {
    noClaim: 'The claim is not entered, so the report answers nothing.',
    noModel: 'The model is not entered.',
    noSerial: 'The serial number is not entered: nothing shows that this is the unit claimed for.',
    noInterest: 'Whether you have an interest in the outcome is not declared.',
    backwards: 'The unit failed before it was fitted, by the dates entered.',
    otherTime: 'The time in service does not fit the dates of fitting and failure.',
    gaps: (n: number) => (n === 1 ? 'The custody has a gap.' : `The custody has ${n} gaps.`),
    notAnswered: 'The claim is not answered.',
    noConclusion: 'No conclusion is written.',
  },
  photosWithoutPart: (n: number) =>
    n === 1 ? 'One photo does not say which part it shows.' : `${n} photos do not say which part they show.`,
  photosSynthetic: (n: number) =>
    n === 1
      ? 'One photo is computer-generated, as its own file says: it shows no part of this unit.'
      : `${n} photos are computer-generated, as their own files say: they show no part of this unit.`,
  marksWithoutFinding: (n: number) =>
    n === 1 ? 'One mark is given to no finding.' : `${n} marks are given to no finding.`,
  findings: {
    none: 'There is no finding.',
    undecided: (numbers: readonly number[]) =>
      `${findings(numbers)}: undecided whether primary, secondary or unrelated.`,
    withoutMark: (numbers: readonly number[]) =>
      `${findings(numbers)}: said to be there, and no mark on a photo shows it.`,
    toSettle: (n: number) =>
      n === 1
        ? 'One thing is to be settled among the findings.'
        : `${n} things are to be settled among the findings.`,
  },
  noChain: 'No chain of cause and effect is drawn.',
} as const;
