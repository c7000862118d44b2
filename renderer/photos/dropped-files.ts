/** The files in a drop, those inside dropped folders too, in the order of their names. */

export async function droppedFiles(drop: DataTransfer): Promise<File[]> {
  // Entries have to be taken before anything is awaited: the drop is emptied afterwards.
  const entries = [...drop.items].map((item) => item.webkitGetAsEntry()).filter((entry) => entry !== null);
  const loose = [...drop.files];
  if (entries.length === 0) return sorted(loose);
  const files = await Promise.all(entries.map(filesIn));
  return sorted(files.flat());
}

export function sorted(files: readonly File[]): File[] {
  const byName = new Intl.Collator(undefined, { numeric: true });
  return files
    .filter((file) => !file.name.startsWith('.'))
    .sort((a, b) => byName.compare(a.webkitRelativePath + a.name, b.webkitRelativePath + b.name));
}

async function filesIn(entry: FileSystemEntry): Promise<File[]> {
  if (isFile(entry)) return [await new Promise<File>((give, fail) => entry.file(give, fail))];
  if (!isFolder(entry)) return [];
  const reader = entry.createReader();
  const files: File[] = [];
  for (;;) {
    // A folder is read in portions: it is through when a portion is empty.
    const portion = await new Promise<FileSystemEntry[]>((give, fail) => reader.readEntries(give, fail));
    if (portion.length === 0) return files;
    for (const inside of portion) files.push(...(await filesIn(inside)));
  }
}

function isFile(entry: FileSystemEntry): entry is FileSystemFileEntry {
  return entry.isFile;
}

function isFolder(entry: FileSystemEntry): entry is FileSystemDirectoryEntry {
  return entry.isDirectory;
}
