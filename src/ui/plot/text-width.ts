/**
 * How wide a text will be before it is drawn: the geometry is made without a page. Widths of a bold upright sans, a little
 * on the wide side, so that what finds room on the drawing finds it in any font of the stack and in that of the papers.
 */

/** From one base line to the next, in heights of the type. */
export const lineHeight = 1.15;

/** In hundredths of the height of the type. */
const classes: readonly (readonly [signs: RegExp, width: number])[] = [
  [/[\u202f\u2009 ]/u, 27],
  [/[ijl.,:;|!'’]/u, 31],
  [/[ft()r\-‑[\]/]/u, 42],
  [/[mwMWµ%@—]/u, 94],
  [/[⁻⁰¹²³⁴⁵⁶⁷⁸⁹₀-₉]/u, 42],
  [/[A-Z]/u, 70],
  [/[0-9a-z]/u, 61],
];

const widthOfSign = (sign: string): number => classes.find(([signs]) => signs.test(sign))?.[1] ?? 72;

/** @returns in the unit of `size` */
export const textWidth = (text: string, size: number): number =>
  ([...text].reduce((sum, sign) => sum + widthOfSign(sign), 0) * size) / 100;

/** Cuts a word that no line of `room` holds. */
function pieces(word: string, size: number, room: number): string[] {
  const cut = [''];
  for (const sign of word) {
    const longer = (cut.at(-1) ?? '') + sign;
    if (cut.at(-1) !== '' && textWidth(longer, size) > room) cut.push(sign);
    else cut[cut.length - 1] = longer;
  }
  return cut;
}

/** Lines no wider than `room`; broken at plain spaces, inside a word only where it would not fit alone. */
export function wrapped(text: string, size: number, room: number): readonly string[] {
  const lines: string[] = [];
  for (const word of text.split(' ').flatMap((one) => pieces(one, size, room))) {
    const last = lines.at(-1);
    const longer = last === undefined ? word : `${last} ${word}`;
    if (last !== undefined && textWidth(longer, size) <= room) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}
