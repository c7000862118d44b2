/** Words of the marks screen, where the analyst draws on photos. */
import { reportTexts } from './report.ts';

const tools = {
  select: 'Select',
  arrow: 'Arrow',
} as const;

const toolHints = {
  select: 'Click a mark to take hold of it. Drag the ground to move the picture, turn the wheel to zoom.',
  arrow: 'Drag from where the label shall stand to what the arrow points at. By keyboard: arrow keys, Enter.',
} as const;

export const marksTexts = {
  heading: 'Marks',
  stages: reportTexts.stages,
  tools,
  toolHints,
  toolsLabel: 'Tools',
  undo: 'Undo',
  redo: 'Redo',
  remove: 'Delete mark',
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
    [`Photo ${number}`, caption, marks === 0 ? '' : marks === 1 ? '1 mark' : `${marks} marks`]
      .filter((part) => part !== '')
      .join(', '),
  noCaption: 'no caption yet',
  noPart: 'no part named yet',
  noStage: 'stage not entered',
  seenFrom: (side: string) => `seen ${side}`,

  noPhotos: 'No photos to mark yet',
  noPhotosWords:
    'Marks are drawn on the case’s photos: an arrow shows where the damage is, and belongs to a finding that says what it is.',
  toPhotos: 'Bring in photos',
  photoGone: 'This photo is not in the case any more',
  photoGoneWords: 'Choose another from the row of photos.',
  firstPhoto: 'Show the first photo',
  pictureFailed: 'The picture could not be loaded. Its original is kept; reload the window to try again.',
  pictureComing: 'Loading the picture…',

  well: (photo: string, marks: string) => `${photo}. ${marks}`,
  picture: (name: string) => `Picture of ${name}`,
  marksOnPicture: (labels: readonly string[]) =>
    labels.length === 0 ? 'No marks on it.' : `Marks on it: ${labels.join(', ')}.`,
  wellKeys:
    'Plus and minus zoom, 0 fits, arrow keys move the picture or the chosen mark. W draws an arrow: arrow keys move the cross, Enter sets the tail, then the tip. Page up and page down change the photo.',

  said: {
    selected: (label: string) =>
      `Mark ${label} chosen. Arrow keys move it, Enter takes one end, Delete removes it.`,
    deselected: 'No mark chosen.',
    holds: {
      whole: 'Arrow keys move the whole mark.',
      tip: 'Arrow keys move the tip.',
      tail: 'Arrow keys move the tail.',
    },
    crossAt: (x: string, y: string) => `Cross at ${x}, ${y}. Enter sets the tail.`,
    tailSet: 'Tail set. Move to the tip and press Enter.',
    drawn: 'Arrow drawn.',
    cancelled: 'Not drawn.',
    removed: (label: string) => `Mark ${label} deleted.`,
    undone: 'Taken back.',
    redone: 'Done again.',
    nothingToUndo: 'Nothing to take back.',
    nothingToRedo: 'Nothing to do again.',
  },

  findingsHere: 'Findings on this photo',
  noFindingsHere: 'None yet. Draw an arrow at what you see.',
  loose: 'Given to no finding yet',
  marksOf: (finding: string) => `Marks of finding ${finding}`,
  markButton: (label: string) => `Mark ${label}`,
  give: 'Give to a finding…',
  giveOther: 'Other finding…',
  editFinding: 'Edit finding',
  changeClass: 'Change class…',
  elsewhere: (count: number) => (count === 1 ? '1 mark on another photo' : `${count} marks on other photos`),

  giving: {
    title: (label: string) => (label === '?' ? 'What does the arrow show?' : `What does mark ${label} show?`),
    finding: 'Finding',
    fresh: 'A new finding',
    save: 'Save',
    later: 'Later',
    laterHint: 'The mark stays on the photo until you give it to a finding.',
  },
} as const;
