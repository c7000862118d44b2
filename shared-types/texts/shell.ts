/** Words of the frame round every screen. */
import type { ProgramDescription } from '../library.ts';
import type { SettingsFields } from '../settings.ts';

const carriers = {
  desktop: 'desktop window',
  loopback: 'in a browser, served by this computer to itself',
} as const satisfies Record<ProgramDescription['carrier'], string>;

const themes = {
  system: 'as the system',
  light: 'light',
  dark: 'dark',
} as const satisfies Record<SettingsFields['theme'], string>;

const papers = { A4: 'A4', Letter: 'Letter' } as const satisfies Record<SettingsFields['paper'], string>;

const lengthUnits = {
  mm: 'millimetres',
  inch: 'inches',
} as const satisfies Record<SettingsFields['lengthUnit'], string>;

export const shellTexts = {
  skipToWork: 'Skip to the work',
  shelf: 'All cases',
  backToShelf: 'Back to all cases',
  stations: 'Stations of the case',
  station: {
    claim: 'Claim',
    photos: 'Photos',
    marks: 'Marks',
    findings: 'Findings',
    chain: 'Chain',
    report: 'Report',
  },
  stationState: { empty: 'nothing yet', begun: 'begun', done: 'done' },
  journalEntries: (n: string, one: boolean) => `Journal ${n} ${one ? 'entry' : 'entries'}`,
  savedAt: (clock: string) => `saved ${clock}`,
  nothingSaved: 'nothing written yet',
  serial: (serial: string) => `serial ${serial}`,
  wholeClaim: 'Show the whole claim',
  claimAsReceived: 'The claim, word for word',
  noClaim: 'No claim entered yet',
  find: 'Find in all cases…',
  findLabel: 'Find in all cases',
  samples: 'Sample cases',
  samplesHint: 'These are the sample cases, in a library of their own.',

  hostGone: 'the program that served this page does not answer any more.',
  unexpected: 'Something went wrong that the program did not expect. Nothing that was saved is lost.',
  fault: {
    heading: 'This screen stopped',
    words: 'The program made a mistake while drawing this screen. What was saved is there.',
    noted: 'It has been written to the log.',
    again: 'Draw the screen again',
  },
  engine: {
    starting: 'Opening the library…',
    restarting: 'The part of the program that holds the library stopped; starting it again…',
    stopped: 'The part of the program that holds the library stopped and could not be started again.',
    switching: 'Opening the other library…',
    whatToDo:
      'Start the program again; in a browser, open the address that it prints. Everything that was saved before is in the library.',
  },

  settings: {
    open: 'Settings',
    title: 'Settings',
    theme: 'Colours',
    themes,
    paper: 'Paper of the report',
    papers,
    lengthUnit: 'Lengths in',
    lengthUnits,
    analyst: 'Who works here now',
    analystHint: 'The journal and the report name this person.',
    addAnalyst: 'Add a person…',
  },
  analyst: {
    title: 'Who works here?',
    intro:
      'Every entry in the journal and every report names the person who made it. Enter yourself before the first case.',
    name: 'Name',
    nameMissing: 'Enter a name.',
    qualification: 'Qualification',
    qualificationHint: 'As it shall stand under the signature; may stay empty.',
    enter: 'Begin work',
    add: 'Add',
    choose: 'Work as',
    someoneElse: 'Someone else…',
  },
  about: {
    open: 'About',
    title: 'About this program',
    words:
      'For the analyst who strips failed turbochargers and other rotating machines and has to say in writing what began the failure. The opinion is the analyst’s: the program keeps, computes and checks; it does not conclude.',
    version: 'Version',
    carrier: 'Running as',
    carriers,
    node: 'Node',
    sqlite: 'SQLite',
    library: 'Library folder',
    schema: 'Library structure',
    libraryCases: 'Cases',
    libraryPhotos: 'Photos',
    journal: 'Journal entries',
    offline: 'It works without a network and sends nothing anywhere.',
    desktopNote:
      'Where the desktop runtime is installed the same program opens in a window of its own; nothing is missing here.',
  },
  notFound: {
    title: 'There is nothing at this address',
    words: 'Go back to the list of cases and open the case again.',
  },
} as const;
