/** Debian's exiftool (libimage-exiftool-perl): a reader and writer of EXIF independent of this program's. */
import { spawnSync } from 'node:child_process';

function run(input: readonly string[]): string {
  const { status, stdout, stderr, error } = spawnSync('exiftool', input, { encoding: 'utf8' });
  if (error !== undefined || status !== 0) {
    throw new Error(`exiftool is needed for these tests and failed: ${error?.message ?? stderr}`);
  }
  return stdout;
}

export type Tagging = { readonly path: string; readonly tags: Readonly<Record<string, string>> };

/** Writes tags into each file, as numbers where they are numbers: { Orientation: '6' }. One process for all. */
export function writeTags(...taggings: readonly Tagging[]): void {
  const commands = taggings.map(({ path, tags }) => [
    ...Object.entries(tags).map(([tag, value]) => `-${tag}=${value}`),
    path,
  ]);
  const joined = commands.flatMap((command, index) => (index === 0 ? command : ['-execute', ...command]));
  run([...joined, '-common_args', '-q', '-n', '-overwrite_original']);
}

export type ReadTags = Readonly<Record<string, unknown>>;

/** The asked-for tags of each file, in order, as numbers where they are numbers. One process for all. */
export function readTagsOfEach(paths: readonly string[], ...tags: readonly string[]): readonly ReadTags[] {
  const read = JSON.parse(run(['-j', '-n', ...tags.map((tag) => `-${tag}`), ...paths])) as ReadTags[];
  if (read.length !== paths.length) throw new Error(`exiftool read ${read.length} of ${paths.length} files`);
  return read;
}

export function readTags(path: string, ...tags: readonly string[]): ReadTags {
  const [read = {}] = readTagsOfEach([path], ...tags);
  return read;
}
