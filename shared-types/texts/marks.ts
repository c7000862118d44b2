/** Words of the marks screen, where the analyst draws on photos. */
import type { MarkKind } from '../mark.ts';
import { reportTexts } from './report.ts';

const kinds = {
  arrow: 'arrow',
  ring: 'ring',
  outline: 'outline',
  line: 'line',
  text: 'text',
  dimension: 'length',
  scale: 'scale',
  rectangle: 'rectangle',
} as const satisfies Record<MarkKind, string>;

const tools = {
  select: 'Select',
  arrow: 'Arrow',
  ring: 'Ring',
  outline: 'Outline',
  line: 'Line',
  text: 'Text',
  dimension: 'Length',
  scale: 'Scale',
  rectangle: 'Rectangle',
} as const satisfies Record<MarkKind | 'select', string>;

const toolHints = {
  select:
    'Click a mark to take hold of it; Shift and click, or Shift and drag a box, for several. Drag the ground to move the picture, turn the wheel to zoom.',
  arrow: 'Drag from where the label shall stand to what the arrow points at.',
  ring: 'Drag from corner to corner of the box round it; Shift keeps it a circle.',
  outline: 'Click corner by corner; click the first again, double-click or press Enter to close it.',
  line: 'Drag from end to end.',
  text: 'Click where the words shall begin, write, press Enter.',
  dimension: 'Drag from end to end of what is to be measured.',
  scale: 'Drag between two points a known length apart, on a rule say; then enter the length.',
  rectangle:
    'Click the four corners of a rectangle whose sides are known, one after the other; then enter the sides. Lengths in its plane come out right although the camera was tilted.',
} as const satisfies Record<MarkKind | 'select', string>;

/** What a step of the history was about: marks ("arrow", or nothing), where (" on photo 3"), the number of a finding. */
type StepAbout = { readonly marks: string; readonly where: string; readonly finding: string };

const countOfMarks = (count: number) => (count === 1 ? '1 mark' : `${count} marks`);

export const marksTexts = {
  heading: 'Marks',
  stages: reportTexts.stages,
  kinds,
  tools,
  toolHints,
  toolsLabel: 'Tools',
  undo: 'Undo',
  redo: 'Redo',
  zoomIn: 'Larger',
  zoomOut: 'Smaller',
  fit: 'Fit',
  fitHint: 'Show the whole photo',
  zoom: (percent: string) => `${percent} %`,
  zoomLabel: (percent: string) => `${percent} % of the photo’s own pixels`,
  saving: 'saving…',

  photosTitle: 'Photos',
  photoKeys: ['PgUp', 'PgDn'],
  photoOf: (number: string, of: string) => `${number} of ${of}`,
  photoName: (number: string, caption: string, marks: number) =>
    [`Photo ${number}`, caption, marks === 0 ? '' : countOfMarks(marks)]
      .filter((part) => part !== '')
      .join(', '),
  noCaption: 'no caption yet',
  noPart: 'no part named yet',
  noStage: 'stage not entered',
  seenFrom: (side: string) => `seen ${side}`,

  noPhotos: 'No photos to mark yet',
  noPhotosWords:
    'Marks are drawn on the case’s photos: an arrow, a ring or an outline shows where the damage is, and belongs to a finding that says what it is.',
  toPhotos: 'Bring in photos',
  photoGone: 'That photo is not in the case any more; this is the first one.',
  pictureFailed: 'The picture could not be loaded. Its original is kept; reload the window to try again.',
  pictureComing: 'Loading the picture…',
  dropElsewhere: 'Photos are brought in at the Photos station.',
  toPhotosStation: 'Go to Photos',

  well: (photo: string, marks: string) => `${photo}. ${marks}`,
  picture: (name: string) => `Picture of ${name}`,
  marksOnPicture: (labels: readonly string[]) =>
    labels.length === 0 ? 'No marks on it.' : `Marks on it: ${labels.join(', ')}.`,
  wellKeys:
    'Plus and minus zoom, 0 fits, arrow keys move the picture or what is chosen. V chooses; W draws an arrow, R a ring, O an outline, L a line, T writes, D measures a length, B sets a scale, P a rectangle of known sides. Arrow keys move a cross, Enter sets each point. M goes to the next mark. Page up and page down change the photo. Question mark shows all keys.',
  wordsField: 'Words on the picture',

  said: {
    selected: (label: string) =>
      `Mark ${label} chosen. Arrow keys move it, Enter takes the next part of it, S gives it to a finding, Delete removes it.`,
    severalSelected: (count: number) => `${count} marks chosen. Arrow keys move them together.`,
    deselected: 'No mark chosen.',
    holds: {
      whole: 'Arrow keys move the whole mark.',
      tip: 'Arrow keys move the tip.',
      tail: 'Arrow keys move the tail.',
      from: 'Arrow keys move the beginning.',
      to: 'Arrow keys move the end.',
      'first-axis': 'Arrow keys change the width.',
      'second-axis': 'Arrow keys change the height.',
      turn: 'Arrow keys turn it.',
    },
    holdsCorner: (number: number) => `Arrow keys move corner ${number}.`,
    fromSet: {
      arrow: 'Tail set. Move to the tip and press Enter.',
      ring: 'Centre set. Move to the rim and press Enter.',
      line: 'Beginning set. Move to the end and press Enter.',
      dimension: 'Beginning set. Move to the end and press Enter.',
      scale: 'Beginning set. Move to the end and press Enter.',
    },
    corners: (count: number, of: 'outline' | 'rectangle') =>
      of === 'rectangle'
        ? `Corner ${count} of 4. Move to the next and press Enter.`
        : count === 1
          ? '1 corner. Move to the next and press Enter.'
          : `${count} corners. Enter twice at one place closes the outline, Backspace takes the last back.`,
    drawn: (kind: MarkKind) => `${tools[kind]} drawn.`,
    noteWritten: 'Words written on the photo. S gives them to a finding, if they speak of damage.',
    cancelled: 'Not drawn.',
    tooSmall: 'Too small: move further and press Enter.',
    tooFewCorners: 'There are corners missing yet.',
    tooManyCorners: 'This outline has as many corners as it can.',
    removed: (label: string) => `Mark ${label} deleted.`,
    severalRemoved: (count: number) => `${count} marks deleted.`,
    duplicated: (count: number) => `${countOfMarks(count)} duplicated; the copies are chosen.`,
    toFront: 'Brought to the front.',
    toBack: 'Sent to the back.',
    hidden: (count: number) => `${countOfMarks(count)} hidden.`,
    allHidden: 'All marks hidden.',
    allShown: 'All marks shown.',
    undone: (step: string) => `Taken back: ${step}.`,
    redone: (step: string) => `Done again: ${step}.`,
    nothingToUndo: 'Nothing to take back.',
    nothingToRedo: 'Nothing to do again.',
  },

  steps: {
    marks: (count: number, kind: MarkKind | null) =>
      count === 1 && kind !== null ? kinds[kind] : countOfMarks(count),
    where: (photo: string) => ` on photo ${photo}`,
    drawn: ({ marks, where }: StepAbout) => `${marks} drawn${where}`,
    deleted: ({ marks, where }: StepAbout) => `${marks} deleted${where}`,
    given: ({ marks, where, finding }: StepAbout) => `${marks}${where} given to finding ${finding}`,
    'taken-from-finding': ({ marks, where }: StepAbout) => `${marks}${where} taken from the finding`,
    reshaped: ({ marks, where }: StepAbout) => `${marks} changed${where}`,
    stacked: ({ where }: StepAbout) => `marks put in another order${where}`,
    'finding-entered': ({ marks, where, finding }: StepAbout) =>
      marks === '' ? `finding ${finding} entered` : `finding ${finding} entered for the ${marks}${where}`,
    'finding-deleted': ({ marks, where, finding }: StepAbout) =>
      marks === '' ? `finding ${finding} deleted` : `finding ${finding} deleted with the ${marks}${where}`,
    'finding-changed': ({ finding }: StepAbout) => `finding ${finding} changed`,
  },

  findingsHere: 'Findings on this photo',
  noFindingsHere: 'None yet. Draw an arrow or a ring at what you see.',
  loose: 'Given to no finding yet',
  notes: 'Words, lengths and scales',
  lengthName: (reading: string) => `length ${reading}`,
  scaleName: (reading: string) => (reading === '' ? 'scale' : `scale ${reading}`),
  noteName: (words: string) => `“${words}”`,
  marksOf: (finding: string) => `Marks of finding ${finding}`,
  markButton: (label: string) => `Mark ${label}`,
  hiddenMarkButton: (label: string) => `Mark ${label}, hidden`,
  editFinding: 'Edit finding',
  changeClass: 'Change class…',
  elsewhere: (count: number) => (count === 1 ? '1 mark on another photo' : `${count} marks on other photos`),

  chosen: {
    title: (label: string, kind: MarkKind) => (label === '' ? tools[kind] : `${tools[kind]} ${label}`),
    several: (count: number) => `${count} marks chosen`,
    give: 'Shows…',
    giveHint: 'Say which finding it shows',
    rewrite: 'Write again',
    duplicate: 'Duplicate',
    toFront: 'To front',
    toBack: 'To back',
    hide: 'Hide',
    hideHint: 'Out of sight in this window only: hidden marks are still saved and printed.',
    remove: 'Delete',
  },
  hidden: (count: number) => `${count} hidden`,
  hiddenAll: 'Marks hidden',
  showAll: 'Show all',
  hiddenHint: 'Hidden in this window only: the marks are still saved and printed.',

  giving: {
    title: (label: string, kind: MarkKind) =>
      label === '?' || label === '' ? `What does the ${kinds[kind]} show?` : `What does mark ${label} show?`,
    several: (count: number) => `What do these ${count} marks show?`,
    box: 'Finding: type its number or words',
    boxHint: 'number or words',
    list: 'Findings to give it to',
    groups: {
      numbered: 'Findings by number',
      given: 'Given to last',
      shown: 'Findings at what the photo shows',
      elsewhere: 'Other findings',
      new: 'New, at the part shown',
    },
    nothing: 'Nothing fits. “More…” has every part.',
    noPart: 'No part is named for this photo, so no new finding is offered here: “More…” has every part.',
    given: 'given now',
    newFinding: (kind: string, place: string) => `New: ${kind} · ${place}`,
    choose: 'Give',
    more: 'More…',
    moreHint: 'A new finding of any part',
    back: 'Back',
    class: 'What is it to the failure?',
    classHint: 'A letter decides; Enter leaves it undecided.',
    save: 'Save',
    later: 'Later',
    laterHint: 'The mark stays on the photo until you give it to a finding.',
  },

  keys: {
    button: 'Keys',
    title: 'Keys at the marks',
    draw: 'Draw with the mouse',
    drawByKeys: 'Draw with the keyboard',
    drawByKeysWords: [
      'Choose a tool by its letter, then press an arrow key: a cross appears on the photo.',
      'Arrow, line, length, scale: move the cross to the beginning, Enter, move to the end, Enter.',
      'Ring: Enter at the centre, move to the rim, Enter. Then V, and Enter goes round its handles: width, height, turning.',
      'Outline: Enter at each corner; Enter again without moving, or at the first corner, closes it.',
      'Rectangle: Enter at each of the four corners, one after the other.',
      'Text: Enter where the words begin, write them, Enter.',
      'Escape drops what is being drawn; nothing of it is kept.',
    ],
    choose: 'Choose and change',
    look: 'Look',
    names: {
      step: 'Move the cross, what is chosen, or the picture; ten times as far with Shift',
      point: 'Set a point; with a mark chosen: take its next part, or write its words again',
      lastPoint: 'Take the last corner back',
      escape: 'Drop what is being drawn; choose nothing',
      add: 'Choose one more, or one fewer',
      box: 'Choose all in a box',
      all: 'Choose all on this photo',
      next: 'Next mark',
      previous: 'Previous mark',
      give: 'Say what it shows',
      duplicate: 'Duplicate',
      toFront: 'To the front',
      toBack: 'To the back',
      remove: 'Delete',
      undo: 'Undo',
      redo: 'Redo',
      hide: 'Hide what is chosen',
      hideAll: 'Hide all marks, or show them again',
      zoom: 'Larger, smaller',
      fit: 'Fit the whole photo',
      pan: 'Move the picture',
      photo: 'Photo before, photo after',
      keys: 'This list',
    },
    caps: {
      step: '← ↑ ↓ →',
      enter: 'Enter',
      backspace: 'Backspace',
      escape: 'Esc',
      shiftClick: 'Shift + click',
      shiftDrag: 'Shift + drag',
      remove: 'Del',
      drag: 'drag, or Space + drag',
    },
  },
} as const;
