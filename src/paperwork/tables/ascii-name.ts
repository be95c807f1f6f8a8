/** Names of files that every system takes, whatever a container is called. */

/** Names that Windows keeps for devices, with any ending: Microsoft, "Naming Files, Paths, and Namespaces" (memory). */
const devices = /^(con|prn|aux|nul|com\d|lpt\d)(?=\.|$)/i;
const longest = 100;

/** Letters, digits, hyphen, underline and points between them; never a path, never hidden, never nothing. */
export function asciiName(name: string): string {
  const [, stem = '', ending = ''] = /^(.*?)(\.[A-Za-z0-9]{1,8})?$/s.exec(name.normalize('NFKD')) ?? [];
  const plain = stem
    .replace(/\p{M}+/gu, '')
    .replace(/[^A-Za-z0-9_.-]+/g, '-')
    .replace(/[-.]*\.[-.]*/g, '.')
    .replace(/-{2,}/g, '-')
    .slice(0, longest)
    .replace(/^[-.]+|[-.]+$/g, '');
  return `${plain === '' ? 'file' : plain.replace(devices, 'file-$1')}${ending}`;
}

/** In the order given, a later one of the same name with a number; capitals make no difference. */
export function uniqueNames(names: readonly string[]): readonly string[] {
  const taken = new Set<string>();
  return names.map((name) => {
    const [, stem = '', ending = ''] = /^(.*?)(\.[^./]*)?$/s.exec(name) ?? [];
    let free = name;
    for (let n = 2; taken.has(free.toLowerCase()); n += 1) free = `${stem}-${n}${ending}`;
    taken.add(free.toLowerCase());
    return free;
  });
}
