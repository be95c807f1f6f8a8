/**
 * The address that stands in a label's pattern, and what can be made of whatever a camera or a person reads off a label.
 * Pure text: no browser, no record.
 */

const uuid = /[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}/;

/**
 * The container's page in the app that stands at `appAddress`, whatever page of it that address names.
 * @example containerLink('https://a.example/book/#/today', id) // 'https://a.example/book/#/containers/' + id
 */
export const containerLink = (appAddress: string, containerId: string): string =>
  `${appAddress.replace(/[?#].*$/s, '')}#/containers/${containerId}`;

/** What was read: a container by its id, a code that somebody typed or scanned, or something that is no label of a container. */
export type ReadLabel =
  | { readonly by: 'id'; readonly id: string }
  | { readonly by: 'code'; readonly code: string }
  | { readonly by: 'nothing' };

/** Characters that look like a hyphen or a minus, and blanks that a keyboard may give. */
const hyphens = /[\u00ad\u058a\u05be\u2010-\u2015\u2043\u207b\u208b\u2212\ufe58\ufe63\uff0d]/g;
const unseen = /[\p{Cf}\p{Cc}]/gu;

const plain = (text: string): string =>
  text.normalize('NFKC').replace(hyphens, '-').replace(unseen, '').replace(/\s+/g, ' ').trim();

/** An address, not a code: it has a scheme, or a name with a folder behind it. */
const isAddress = (text: string): boolean => /^[a-z][a-z0-9+.-]*:|\/|#/i.test(text);

/** Longer than any code on a label: 16 in the record, and room for blanks between its letters. */
const longestCode = 40;

/** Tolerates another origin, anything behind the id, and letters of either case. */
export function readLabel(read: string): ReadLabel {
  const text = plain(read);
  const address = /containers(?:\/|%2f)([^/?#&\s%]+)/i.exec(text)?.[1]?.toLowerCase();
  const id = uuid.exec(address ?? (isAddress(text) ? '' : text.toLowerCase()))?.[0];
  if (id !== undefined) return { by: 'id', id };
  if (text === '' || isAddress(text) || text.length > longestCode) return { by: 'nothing' };
  return { by: 'code', code: text };
}

/** Letters and digits alone, without the zeros that a number begins with: "C‑04", "c 4" and "C4" are one. */
const loose = (code: string): string =>
  plain(code)
    .toLowerCase()
    .replace(/[-\s._]/g, '')
    .replace(/(?<!\d)0+(?=\d)/g, '');

const strict = (code: string): string => plain(code).toLowerCase();

/** What stands on a shelf, as far as a label names it. */
export type Named = { readonly containerId: string; readonly code: string };

/**
 * The containers that a label read may mean: none, one, or several whose codes look alike. Who typed the code exactly means
 * that one.
 */
export function labelled<T extends Named>(containers: readonly T[], label: ReadLabel): readonly T[] {
  if (label.by === 'nothing') return [];
  if (label.by === 'id')
    return containers.filter(({ containerId }) => containerId.toLowerCase() === label.id);
  const exact = containers.filter(({ code }) => strict(code) === strict(label.code));
  return exact.length > 0 ? exact : containers.filter(({ code }) => loose(code) === loose(label.code));
}
