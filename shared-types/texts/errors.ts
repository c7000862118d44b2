/** One sentence a code: what happened, to what, and what to do. Braces hold details of the error. */
export const errorSentences = {
  'request-invalid':
    'The program sent itself a request it does not understand ({field}: {reason}). Nothing was changed. Reload the window; if it happens again, report it.',
  unexpected:
    'Something went wrong that the program did not expect. Nothing that was saved is lost. Reload the window; details are in the log.',
  'engine-stopped':
    'The part of the program that holds the library stopped while this was being done. It is being started again; look whether the change is there, and repeat it if not.',
  'engine-unavailable': 'The part of the program that holds the library could not be started again: {reason}',
  'not-found': 'This {thing} is not in the library any more. Go back to the list and open it again.',
  'stale-revision':
    'This {thing} was changed in another window since you opened it. What is there now has been loaded; make your change again.',
  'case-number-taken': 'Case number {number} is already used in this library. Give another number.',
  'case-closed': 'Case {number} is {status} and can no longer be changed.',
  'analyst-needed': 'Enter who is working here first: the journal and the report name the analyst.',
  'machine-kind-unknown': 'The machine kind “{id}” is not installed. Choose another.',
  'pack-invalid': 'The machine kind file {file} cannot be used: {place}: {reason}.',
  'term-unknown': 'The machine kind of this case has no {list} “{id}”.',
  'mark-photo-mismatch': 'The mark belongs to a photo of another case. Nothing was changed.',
  'photo-taken-out':
    'The photo {name} was taken out of the case. Put it back in the register of photos first; nothing was changed.',
  'parts-too-many':
    'The photo {name} would show more than {limit} parts. Take some off it first; nothing was changed.',
  'finding-in-use': 'Finding {number} still has marks. Give them to another finding or delete them first.',
  'finding-in-chain':
    'Finding {number} stands in the chain of cause and effect. Take it out of the chain first, at the station Chain.',
  'chain-loop':
    'That would close a loop: {path}. What follows from a thing cannot have led to it; nothing was changed.',
  'chain-self-link': '{name} cannot be its own cause. Nothing was changed.',
  'chain-link-twice': 'There is a link from {cause} to {effect} already. Nothing was changed.',
  'chain-claim-twice':
    'The claim stands in the chain already, and it can stand there once. Nothing was changed.',
  'chain-finding-twice':
    'Finding {number} stands in the chain already, and it can stand there once. Nothing was changed.',
  'chain-finding-elsewhere': 'That finding belongs to another case. Nothing was changed.',
  'chain-link-loose':
    'A link would begin or end at something that does not stand in the chain of this case. Nothing was changed.',
  'chain-link-turned':
    'A link keeps its cause and its effect. Delete it and draw the other one; nothing was changed.',
  'chain-too-large':
    'The chain would hold more than {limit} {what}. Leave out what decides nothing; nothing was changed.',
  'chain-empty': 'There is no chain to draw yet: add a cause and what followed from it first.',
  'class-change-needs-reason':
    'Finding {number} has its class already. A change of class is entered with its reason.',
  'file-unreadable':
    '{name} cannot be read ({reason}). See whether the card or folder it lies on is still there, then drop it again.',
  'file-empty': '{name} is empty. Copy it from the camera again.',
  'file-too-large':
    '{name} is {megabytes} MB; the limit is {limit} MB. Export a smaller copy and keep the large one with the evidence.',
  'file-not-a-picture':
    '{name} is not a JPEG or PNG picture, whatever its name says. Export it as JPEG or PNG.',
  'picture-too-large':
    '{name} has {megapixels} megapixels; the limit is {limit}. Export a smaller copy and keep the large one with the evidence.',
  'picture-broken':
    '{name} cannot be decoded ({reason}). Copy it from the camera again; if it stays broken, the original on the card may still be readable.',
  'picture-killed-decoder':
    '{name} brought the picture decoder down, so it was left out. Open it in another program and export it as a new JPEG.',
  'picture-too-slow':
    '{name} took longer than {seconds} seconds to decode, so it was left out. Export it as a plain JPEG.',
  'intake-gone': 'The dropped file is no longer at hand. Drop it again.',
  'disk-full':
    'The disk that holds the library is full: {what} could not be written. Free some space and do it again; nothing that was there is lost.',
  'disk-refused': 'The library folder refuses to be written to ({what}: {reason}). Check its permissions.',
  'decoder-unavailable':
    'The picture decoder does not start, so {name} was left out. Start the program again; if that does not help, install it anew.',
  'original-altered':
    'The photo store already has an original under the hash of {name} ({sha256}), but {reason}. It was left as it is; restore it from a backup.',
  'original-missing': 'The original of {name} is not in the photo store. Restore it from a backup.',
  'library-locked':
    'This library is already open: {program} with process number {pid} on {host}, since {since}. Close it there first.',
  'library-newer':
    'The library at {folder} was written by a newer version of the program (its structure is number {found}, this version knows up to {known}). Install the newer version; nothing was changed.',
  'library-not-ours':
    'The file {file} is not a Teardown Docket library. Choose another folder; nothing was changed.',
  'library-damaged':
    'The library at {folder} does not open cleanly ({reason}). It was left as it is; restore a backup from its backups folder.',
  'migration-edited':
    'Migration {name} of this program is not the one that was applied to the library. The library was not opened; install the program anew.',
  'migration-failed':
    'The library could not be brought to the new version at migration {name} ({reason}). It was left as it was; a backup is at {backup}.',
  'job-stopped': 'Stopped before it was done. What was finished stays.',
  'report-empty': 'There is nothing to print yet: add a photo or a finding first.',
  'report-picture-missing':
    'The picture of photo {number} could not be put into the report ({reason}). Nothing in the case was changed; look at the photo, then make the report again.',
  'report-stopped':
    'The part of the program that lays out the report stopped before it was done ({reason}). Nothing in the case was changed; make the report again.',
  'delivery-gone': 'This document is no longer at hand. Make it again.',
  'carrier-refused': 'The request did not come from this program’s own window and was refused.',
} as const;
