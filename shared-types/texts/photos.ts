/** Words of the photos screen. */
import { reportTexts } from './report.ts';

const stageChoices = {
  'as-received': 'As received',
  stripped: 'Stripped',
  cleaned: 'Cleaned',
  sectioned: 'Sectioned',
} as const satisfies Record<keyof typeof reportTexts.stages, string>;

export const photosTexts = {
  heading: 'Photos',
  stages: reportTexts.stages,
  stageChoices,
  count: (n: string, one: boolean) => (one ? '1 photo' : `${n} photos`),
  choose: 'Choose photos…',
  chooseFolder: 'Choose a folder…',
  views: { label: 'What is shown', grid: 'Grid', register: 'Register' },
  dropNow: 'Let go to bring them in',
  keys: 'Drop JPEG or PNG files or a folder anywhere here. Ctrl or Shift chooses several; drag photos, or Alt with an arrow key, to move them; Delete takes them out of the case.',
  keysReading: 'Ctrl or Shift chooses several; Enter opens one at the marks.',
  emptyTitle: 'No photos yet',
  emptyWords:
    'Drop photos or a whole folder on this screen, or choose them. Nothing is cleaned before it is photographed: begin with the unit as received. The originals are kept untouched, each with its SHA-256.',
  nothingDropped: 'There were no files in what was dropped.',

  handingOver: 'Handing files over',
  stopping: 'Stopping…',
  results: 'What came of it',
  resultOf: {
    added: (n: number) => (n === 1 ? '1 photo added' : `${n} photos added`),
    putBack: (n: number) => (n === 1 ? '1 put back' : `${n} put back`),
    here: (n: number) => (n === 1 ? '1 was here already' : `${n} were here already`),
    failed: (n: number) => (n === 1 ? '1 file not taken in' : `${n} files not taken in`),
    notBegun: (n: number) => (n === 1 ? '1 not begun' : `${n} not begun`),
  },
  resultsBy: {
    stopped: 'Stopped.',
    interrupted: 'Interrupted; drop the rest again.',
    failed: 'It could not be finished.',
  },
  alreadyHere: 'already in this case',
  alreadyHereAs: (number: string, name: string) =>
    `already in this case: the same picture as photo ${number}, ${name}`,
  isPutBack: (reason: string | null) =>
    reason === null
      ? 'had been taken out of this case and is put back'
      : `had been taken out of this case (“${reason}”) and is put back`,
  notBegun: 'not begun',
  alsoIn: (cases: string) => `also in case ${cases}`,
  resultLine: (name: string, what: string) => `${name}: ${what}`,
  copyList: 'Copy the list',
  copied: 'The list is on the clipboard.',
  copyFailed: 'The list could not be copied. Select it and copy it by hand.',
  closeResults: 'Close the list',
  listLabel: 'Files with something to say',

  grid: 'Photos of this case',
  photo: (number: string) => `Photo ${number}:`,
  cell: (number: string, caption: string, facts: string) => `Photo ${number}: ${caption}; ${facts}`,
  noCaption: 'no caption yet',
  noPart: 'no part',
  noStage: 'no stage',
  synthetic: {
    short: 'computer-generated',
    origin: 'Origin',
    says: (words: string) => `computer-generated, as the file says: “${words}”`,
    result: 'its own file says that it is computer-generated: no evidence of a part',
    notice: (n: string, one: boolean) =>
      one
        ? '1 photo of this case is computer-generated, as its own file says. It is no evidence of a part: take it out, or it is stamped so in the report.'
        : `${n} photos of this case are computer-generated, as their own files say. They are no evidence of a part: take them out, or they are stamped so in the report.`,
    choose: (one: boolean) => (one ? 'Choose it' : 'Choose them'),
  },

  missing: {
    label: 'Choose those of which something is not said yet',
    part: 'without a part',
    stage: 'without a stage',
    caption: 'without a caption',
  },
  chosen: (n: string, one: boolean) => (one ? '1 photo chosen' : `${n} photos chosen`),
  moved: (n: string, one: boolean, place: string, of: string) =>
    one ? `Moved to place ${place} of ${of}` : `${n} photos moved, from place ${place} of ${of} on`,
  byTime: {
    do: 'Put in order of time taken',
    done: 'The photos are in order of the time taken.',
    already: 'The photos were in order of the time taken already.',
    timeless: (n: string, one: boolean) =>
      one ? '1 photo without a time stands at the end.' : `${n} photos without a time stand at the end.`,
  },

  together: {
    title: (n: string) => `${n} photos chosen`,
    asTheyAre: (now: string) => `as they are: ${now}`,
    several: 'several',
    noneOfThem: 'not entered',
    allOfThem: (value: string) => value,
    takeOff: 'not entered',
    onAll: 'on all',
    onSome: (on: string, of: string) => `on ${on} of ${of}`,
    toBeAdded: 'to be added',
    add: 'On all',
    addNamed: (part: string) => `On all: ${part}`,
    remove: 'Take off',
    removeNamed: (part: string) => `Take off: ${part}`,
    notAfterAll: (part: string) => `${part}: do not add it after all`,
    apply: (n: string) => `Apply to ${n} photos`,
    discard: 'Leave as they are',
    done: (n: string) => `Applied to ${n} photos.`,
    captions: 'Captions are written photo by photo.',
    waiting: {
      title: (n: string, one: boolean) =>
        one ? 'Not applied yet to 1 photo' : `Not applied yet to ${n} photos`,
      words: 'You chose this for the photos before these, and did not apply it:',
      what: (what: string, value: string) => `${what}: ${value}`,
      add: (part: string) => `add ${part}`,
      remove: (part: string) => `take off ${part}`,
      apply: 'Apply now',
      chooseAgain: 'Choose those photos again',
      drop: 'Leave them as they are',
    },
  },

  takeOut: {
    open: 'Take out of the case…',
    title: (n: string, one: boolean) =>
      one ? 'Take the photo out of the case' : `Take ${n} photos out of the case`,
    named: (number: string, file: string) => `Photo ${number}, ${file}`,
    andMore: (n: string) => `and ${n} more`,
    words:
      'Nothing is deleted: the originals stay, and the register keeps every line with the reason. From there a photo can be put back to its place.',
    noMarks: 'No marks go out of sight.',
    marks: (n: string, one: boolean) =>
      one ? '1 mark goes out of sight until then.' : `${n} marks go out of sight until then.`,
    reason: 'Reason',
    reasonHint: 'Kept in the register with your name and the time.',
    reasonMissing: 'Say why: whoever reads the register will ask.',
    do: 'Take out',
    done: (n: string, one: boolean) =>
      one
        ? 'The photo is out of the case; the register has it.'
        : `${n} photos are out of the case; the register has them.`,
  },

  register: {
    caption: 'Every photo that ever came into this case',
    order:
      'In the order in which they came in. The number is the photo’s place in the case as it is now put in order.',
    emptyTitle: 'Nothing in the register yet',
    emptyWords:
      'Every photo that is brought into this case gets a line here, and keeps it when it is taken out of the case.',
    number: 'Number',
    out: 'taken out',
    file: 'File, size',
    taken: 'Taken, camera',
    cameraPlace: 'Place of the camera',
    takenOut: 'Taken out',
    place: (latitude: string, ns: string, longitude: string, ew: string, altitude: string | null) =>
      `${latitude}° ${ns}, ${longitude}° ${ew}${altitude === null ? '' : `; ${altitude} m`}`,
    hashOf: (name: string, hash: string) => `SHA-256 of ${name}: ${hash}`,
    copyHash: 'Copy',
    copyHashOf: (name: string) => `Copy the SHA-256 of ${name}`,
    hashCopied: (name: string) => `The SHA-256 of ${name} is on the clipboard.`,
    hashNotCopied: 'The SHA-256 could not be copied. It is shown whole: select it and copy it by hand.',
    wasOut: (from: string, to: string, reason: string) => `Was out from ${from} to ${to}: ${reason}`,
    putBack: 'Put back',
    putBackNamed: (name: string) => `Put back ${name}`,
    isBack: (name: string) => `${name} is back in the case.`,
  },

  nothingChosen: 'No photo chosen',
  nothingChosenWords: 'Choose one to say what it shows. Enter or a double click opens it at the marks.',
  title: (number: string, of: string) => `Photo ${number} of ${of}`,
  open: 'Mark it',
  caption: 'Caption',
  captionHint: 'Printed under the plate.',
  stage: 'Stage',
  stageHint: 'What had been done to the part by then.',
  stageEmpty: 'not entered',
  seenFrom: 'Seen from',
  seenFromEmpty: 'not entered',
  parts: 'Parts shown',
  noParts: 'None named yet.',
  addPart: 'Add a part',
  choosePart: 'choose a part',
  addChosen: 'Add',
  removePart: (part: string) => `${part} is not shown: take it off`,
  mostParts: 'No more than 20 parts can be named.',
  file: 'File',
  taken: 'Taken',
  notKnown: 'not in the file',
  camera: 'Camera',
  size: 'Size',
  pixels: (width: string, height: string, bytes: string) => `${width} × ${height} px, ${bytes}`,
  sha256: 'SHA-256',
  added: 'Brought in',
  addedBy: (when: string, who: string) => `${when}, ${who}`,
} as const;
