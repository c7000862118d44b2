/** Takes out what differs between two runs of the same work: ids and hashes by their order of appearance, instants. */
const uuid = /[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}/g;
const hash = /\b[0-9a-f]{64}\b/g;
const instant = /\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z/g;

export function sameButForChance(value: unknown): unknown {
  const names = new Map<string, string>();
  const named = (prefix: string) => (found: string) => {
    const known = names.get(found);
    if (known !== undefined) return known;
    const name = `${prefix}${String(names.size)}`;
    names.set(found, name);
    return name;
  };
  const text = JSON.stringify(value)
    .replace(uuid, named('id'))
    .replace(hash, named('hash'))
    .replace(instant, 'instant');
  return JSON.parse(text) as unknown;
}
