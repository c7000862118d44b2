/** Words of the chain of cause and effect: on the screen, in the figure, and of what is to be settled in it. */
import type { ChainNodeKind, LinkCertainty } from '../chain.ts';

const kinds = {
  'root-cause': 'Root cause',
  condition: 'Condition',
  event: 'Event',
  finding: 'Finding',
  claim: 'Claim',
} as const satisfies Record<ChainNodeKind, string>;

const certainties = {
  established: 'established',
  likely: 'likely',
  possible: 'possible',
} as const satisfies Record<LinkCertainty, string>;

const nodesAndLinks = (nodes: number, links: number) =>
  `${nodes} ${nodes === 1 ? 'box' : 'boxes'}, ${links} ${links === 1 ? 'link' : 'links'}`;

/** How the things of a chain are called within a sentence. */
export const chainNames = {
  finding: (number: number) => `finding ${number}`,
  claim: 'the claim',
  words: (words: string) => `“${words}”`,
  path: (names: readonly string[]) => names.join(' → '),
  link: (cause: string, effect: string) => `${cause} → ${effect}`,
  gone: 'a finding that is gone',
  mechanism: 'mechanism',
  condition: 'condition',
  nodes: 'boxes',
  links: 'links',
} as const;

/** What stands in the figure: on screen, on paper and in the SVG. */
export const chainFigureTexts = {
  kinds,
  certainties,
  findingHead: (number: number, word: string) => `Finding ${number}, ${word}`,
  said: (words: string) => `“${words}”`,
  noClaim: 'no claim entered',
  note: (number: number) => `(${number})`,
  /** A reason below the figure, where its link has room for a number only. */
  surely: (certainty: string, reason: string) => `${certainty}: ${reason}`,
  document: (caseNumber: string) => `Cause and effect, case ${caseNumber}`,
} as const;

/** In the printed report. */
export const chainReportTexts = {
  heading: 'Cause and effect',
  none: 'No chain of cause and effect has been drawn.',
  figure: (number: number) => `Figure ${number}.`,
  caption:
    'Cause and effect as the analyst sees it: each arrow leads from a cause to its effect and says how sure the step is.',
  captionWithoutLinks: 'What the analyst has to do with so far; no cause has been linked to its effect yet.',
  lines: 'Unbroken lines are established, broken ones likely, dotted ones possible.',
  reasons: 'Numbers in brackets stand for the reasons below.',
  scaled: (percent: number) => `Printed at ${percent} % of its size.`,
} as const;

export const chainFlagTexts = {
  primaryFollows: (finding: string, causes: string) =>
    `${finding} is primary, yet it is drawn as following from ${causes}.`,
  rootFollows: (root: string, causes: string) =>
    `${root} is said to be the root cause, yet it is drawn as following from ${causes}.`,
  secondaryAlone: (finding: string) => `${finding} is secondary, yet nothing leads to it.`,
  rootWithoutFinding: (root: string) => `No finding that is present follows from ${root}.`,
  rootWithoutReason: (root: string) => `${root} reaches what was found only over links that give no reason.`,
  findingOutside: (finding: string, damageClass: string) =>
    `${finding}, ${damageClass}, is not in the chain.`,
  unlinked: (name: string) => `${name} stands in the chain without a link.`,
  noReason: (cause: string, effect: string) => `The link ${cause} → ${effect} gives no reason.`,
  claimAlone: 'Nothing leads to the claim or from it.',
  absentCause: (finding: string) => `${finding} was looked for and is not there, yet it is drawn as a cause.`,
  finding: chainNames.finding,
  and: ' and ',
  comma: ', ',
} as const;

export const chainTexts = {
  heading: 'Chain',
  toolbar: 'Work on the chain',
  emptyTitle: 'No chain yet',
  emptyWords:
    'What began the failure, what it made possible, and what followed: boxes for causes, conditions, events and findings, with an arrow from each cause to its effect. Begin with the findings, or with the root cause as you see it.',
  count: nodesAndLinks,
  add: 'Add…',
  bringIn: (count: number) => `Bring in ${count} ${count === 1 ? 'finding' : 'findings'}`,
  bringInHint: 'All primary and secondary findings that do not stand in the chain yet',
  link: 'Link from here',
  undo: 'Undo',
  redo: 'Redo',
  fit: 'Fit',
  larger: 'Larger',
  smaller: 'Smaller',
  save: 'Save the figure as SVG',
  saved: 'The figure was saved.',
  keys: 'Keys',
  saving: 'saving…',
  figure: (nodes: number, links: number) => `The chain: ${nodesAndLinks(nodes, links)}`,
  nodeName: (head: string, words: string, causes: number, effects: number) =>
    `${head}: ${words}. ${causes === 0 ? 'No cause' : causes === 1 ? '1 cause' : `${causes} causes`}, ${
      effects === 0 ? 'no effect' : effects === 1 ? '1 effect' : `${effects} effects`
    }`,
  linkName: (cause: string, effect: string, certainty: string) => `${cause} leads to ${effect}, ${certainty}`,

  linking: {
    begun: (name: string) =>
      `Link from ${name}: go to its effect with the arrow keys and press Enter, or press on it. Escape leaves it.`,
    over: (name: string) => `Effect: ${name}. Enter links it, Escape leaves it.`,
    left: 'No link was made.',
    none: 'Choose the cause first.',
  },
  linkForm: {
    title: 'Why the one led to the other',
    titleChange: 'Change the link',
    cause: 'Cause',
    effect: 'Effect',
    reason: 'Reason',
    reasonHint: 'What on the parts, or in the physics, makes this step. Printed with the figure.',
    certainty: 'How sure',
    hints: {
      established: 'unbroken line',
      likely: 'broken line',
      possible: 'dotted line',
    } satisfies Record<LinkCertainty, string>,
    make: 'Link',
    change: 'Change',
  },
  nodeForm: {
    title: 'Add to the chain',
    titleChange: 'Change the box',
    kind: 'What it is',
    kindHints: {
      'root-cause': 'what began it',
      condition: 'a state that it brought about: end float too large, oil film lost',
      event: 'something that happened: the rotor touched, the nut came off',
      finding: 'what is seen on a part',
      claim: 'what the other side says, in its words',
    } satisfies Record<ChainNodeKind, string>,
    words: 'In words',
    wordsMissing: 'Say in a few words what it is.',
    term: 'From the machine kind',
    noTerm: 'in words of my own',
    finding: 'Finding',
    findingMissing: 'Choose a finding.',
    noFindings: 'Every finding of the case stands in the chain already.',
    claimThere: 'The claim stands in the chain already.',
    noClaim: 'The case has no claim yet: enter it at the station Claim.',
    claimWords: 'The claim comes word for word from the station Claim.',
    make: 'Add',
    change: 'Change',
  },
  panel: {
    name: 'About the chain',
    chosenNode: 'Chosen',
    chosenLink: 'Chosen link',
    nothingChosen: 'Nothing chosen',
    nothingChosenWords:
      'Press a box to choose it. Drag from a cause to its effect to link them; by keys: L, the arrow keys, Enter.',
    causes: 'Follows from',
    effects: 'Leads to',
    noCauses: 'nothing',
    noEffects: 'nothing',
    reason: 'Reason',
    noReason: 'no reason given',
    change: 'Change…',
    remove: 'Take out of the chain',
    removeLink: 'Delete the link',
    toFinding: 'To the finding',
    flags: 'To settle',
    noFlags: 'Nothing to settle.',
    moreFlags: (count: number) => `${count} more`,
    flagCount: (count: number) => String(count),
    nodes: 'Boxes',
    links: 'Links',
    noLinks: 'No links yet.',
  },
  said: {
    added: (name: string) => `${name} was added.`,
    broughtIn: (count: number) => `${count} ${count === 1 ? 'finding was' : 'findings were'} brought in.`,
    removed: (name: string) => `${name} was taken out.`,
    linked: (cause: string, effect: string) => `${cause} now leads to ${effect}.`,
    linkRemoved: 'The link was deleted.',
    undone: 'Taken back.',
    redone: 'Done again.',
  },
  keysDialog: {
    title: 'Keys of the chain',
    rows: [
      ['Arrow keys', 'choose the box beside, above or below'],
      ['Enter', 'change what the chosen box says'],
      ['L', 'link from the chosen box: arrow keys to the effect, Enter ends it, Escape leaves it'],
      ['N', 'add a box'],
      ['Delete', 'take the chosen box or link out'],
      ['Ctrl+Z, Ctrl+Shift+Z', 'take back, do again'],
      ['+, −, 0', 'larger, smaller, fit'],
      ['Shift+arrow keys', 'move the sheet'],
    ] as readonly (readonly [keys: string, what: string])[],
  },
} as const;
