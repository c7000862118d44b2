/** Words of the parties to a case. */
import type { PartyRole } from '../party.ts';

/** What a party is said to do, as a list: "claims, pays". */
const roles = {
  claims: 'claims',
  instructs: 'instructs',
  pays: 'pays',
  owns: 'owns the unit',
  operates: 'operates it',
  fitted: 'fitted it',
  rebuilt: 'rebuilt it',
  supplied: 'supplied it',
  insures: 'insures',
  other: 'other',
} as const satisfies Record<PartyRole, string>;

export const partiesTexts = {
  head: 'The parties',
  roles,
  /** The three that every case has, each with what it leaves open when nobody is entered. */
  leading: {
    claims: {
      label: 'Claims',
      missing: 'The report answers a claim: a dispute first asks whose it is.',
    },
    instructs: {
      label: 'Instructs the examination',
      missing: 'Whoever asked for the opinion is owed it; the other side will ask who that was.',
    },
    pays: {
      label: 'Pays for it',
      missing: 'Who pays for an opinion bears on how it is read: say it before somebody asks.',
    },
  },
  nobody: 'nobody entered',
  nobodyAtAll: 'No party is entered yet.',
  add: 'Enter a party',
  edit: 'Change',
  editOf: (name: string) => `Change ${name}`,
  remove: 'Remove',
  removeOf: (name: string) => `Remove ${name}`,
  removed: (name: string) => `${name} is removed.`,
  putBack: 'Put back',
  formNew: 'A new party',
  formOf: (name: string) => `Changing ${name}`,
  name: 'Name of the person or firm',
  nameMissing: 'Enter the name.',
  rolesLegend: 'What they have to do with the case',
  rolesHint: 'One may stand in several roles; leave it open where it is not known yet.',
  roleUnknown: 'role not known yet',
  details: 'Details',
  detailsHint: 'How to reach them, their own reference number.',
  save: 'Save the party',
  inLibrary: 'In the library now',
} as const;
