/** Words of the claim station: who claims what about which unit, and how it was answered. */
export const claimTexts = {
  title: 'Claim',
  claimHead: 'The claim',
  claim: 'Word for word, as received',
  claimHint: 'With its mistakes: the report quotes it and answers exactly this.',
  claimEmpty: 'Nothing entered yet. Copy it from the letter, message or job card.',
  customer: 'Customer',
  customerHint: 'As on the job card. Who claims, instructs and pays stands under the parties.',
  unitHead: 'The unit on the bench',
  number: 'Case number',
  numberMissing: 'A case needs its number. The last one stays until you enter another.',
  maker: 'Maker',
  model: 'Model',
  serial: 'Serial number',
  serialHint: 'Shows in a dispute that the unit examined is the one claimed for.',
  partNumber: 'Part number',
  answerHead: 'The answer',
  outcome: 'State of the answer',
  outcomeHint:
    'What the examination says of the cause. Who is liable is another question: “settled as goodwill” only says how the claim was closed; the cause stands in the conclusion.',
  conclusion: 'Conclusion, in your own words',
  conclusionHint: 'The opinion is yours: the report prints it as you write it.',
  caseHead: 'The case',
  machineKind: 'Kind of machine',
  packVersion: (label: string, version: string) => `${label}, version ${version}`,
  openedAt: 'Opened',
  openedBy: 'Opened by',
  status: 'Status',

  stateHead: 'As it arrived',
  stateReceived: 'State as received',
  stateReceivedHint:
    'Unit and packing before anything was opened or cleaned: seals, plugs, oil, loose parts.',

  seen: {
    head: 'What was seen of the unit',
    hint: 'Rotation and thread are two observations. Neither is taken from the other, and neither has a usual value here: enter what was seen, with the photo that shows it.',
    rotation: 'Turns, as seen',
    rotationEmpty: 'not observed yet',
    senses: { clockwise: 'clockwise', anticlockwise: 'anticlockwise' },
    turning: (sense: string, side: string) => `${sense}, seen ${side}`,
    thread: 'Hand of the shaft’s thread',
    threadEmpty: 'not observed yet',
    hands: {
      right: 'right-hand',
      left: 'left-hand',
      'no-thread': 'no thread on the shaft',
    },
    photo: 'Photo that shows it',
    rotationPhoto: 'Photo that shows the rotation',
    threadPhoto: 'Photo that shows the thread',
    photoEmpty: 'none chosen',
    photoFirst: 'Enter what was seen first.',
    photoNone: 'This case has no photos yet.',
    photoMissing: 'Without a photo this is word against word.',
    photoChoice: (number: string, words: string) =>
      words === '' ? `Photo ${number}` : `Photo ${number}: ${words}`,
    photoGone: 'a photo taken out of the case',
    anotherPhoto: 'another photo',
  },

  service: {
    head: 'Service life, as told',
    fittedOn: 'Fitted on',
    failedOn: 'Failed on',
    timeHint: 'A day, a month or a year, as exactly as it was told.',
    timeInService: 'Time in service, as told',
    timeInServiceHint: 'Such as 4 months or 10 days.',
    runningHours: 'Running hours',
    runningHoursHint: 'Hours from the counter or the log, without a unit.',
    days: (least: string, most: string) => (least === most ? `${least} days` : `${least} to ${most} days`),
    months: (least: string, most: string) =>
      least === most ? `about ${least} months` : `about ${least} to ${most} months`,
    between: (words: string) => `From the two dates: ${words}.`,
    backwards:
      'By these dates it failed before it was fitted. One of them is wrong, or was told wrongly: ask.',
    contradicts: 'The time told does not fit the two dates. Ask which of the three is wrong.',
    hours: (words: string) => `${words} h`,
    durations: {
      days: (count: string, isOne: boolean) => (isOne ? `${count} day` : `${count} days`),
      weeks: (count: string, isOne: boolean) => (isOne ? `${count} week` : `${count} weeks`),
      months: (count: string, isOne: boolean) => (isOne ? `${count} month` : `${count} months`),
      years: (count: string, isOne: boolean) => (isOne ? `${count} year` : `${count} years`),
    },
  },

  interest: {
    head: 'Declaration of interest',
    standing: 'Interest in the answer',
    standings: {
      'not-stated': 'not stated yet',
      none: 'none',
      declared: 'declared',
    },
    meanings: {
      'not-stated':
        'Whoever gives the opinion may also be the one accused, or paid by one side. Say which it is.',
      none: 'Neither the analyst nor the shop made, rebuilt, sold, fitted or insured this unit, or gains by the answer.',
      declared: 'There is a stake. Say it in words, so that a reader can weigh it.',
    },
    words: 'In words',
    wordsHint: 'Such as: this shop rebuilt the unit and stands to pay for it.',
    notStated:
      'Not stated. An opinion whose writer may have a stake in it is the first thing the other side attacks.',
    wordsMissing: 'An interest is declared but not described.',
  },

  typed: {
    understood: (words: string) => `Understood: ${words}`,
    question: 'This can be read in two ways. Which is meant?',
  },

  index: 'On this page',

  saving: {
    saved: 'Everything here is saved',
    'form-open': 'A form is open: what is in it is not saved yet',
    waiting: 'Saving…',
    unfinished: 'Not all of it is saved: see the marked fields',
    failed: 'Not saved yet',
    conflict: 'Changed in two places: choose which stands',
  },
  conflict: {
    words: (field: string) =>
      `“${field}” was changed in another window while you were writing. Yours is not saved yet. Choose which one stands.`,
    theirs: 'In the library now',
    nothing: '(nothing)',
    keepMine: 'Save mine',
    takeTheirs: 'Take the one in the library',
  },

  withdraw: {
    open: 'Withdraw this case…',
    title: 'Withdraw the case',
    words:
      'A withdrawn case stays in the library with everything in it, but can no longer be changed. The reason goes into the journal.',
    reason: 'Reason',
    reasonMissing: 'Enter the reason.',
    do: 'Withdraw the case',
    done: (number: string) => `Case ${number} is withdrawn.`,
  },
  closed: (status: string) => `This case is ${status}: it can be read but no longer changed.`,
} as const;
