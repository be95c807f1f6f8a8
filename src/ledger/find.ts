/**
 * Finding by typing: several words narrow, capital letters, accents and dashes do not matter, a code that is typed whole comes
 * first, then a day that is typed in digits: the same digits stand in many codes. An index is made once for a state, in parts that a page can make one after the other; each key then only goes
 * through texts that are long but few.
 */
import { type AskedDay, type DayNumber, dayAtStart, dayWithin } from './asked-days';
import type { FoundRow } from './found-rows';

/**
 * Some rows with all that is looked through in one go: `codes` and `texts` hold one line a row, which ends at its `…Ends`. A code
 * is without what stands between its letters and digits ("c04"); before each word of a text is a gap.
 */
export type IndexPart = {
  readonly rows: readonly FoundRow[];
  readonly codes: string;
  readonly codeEnds: Uint32Array;
  readonly texts: string;
  readonly textEnds: Uint32Array;
  readonly first: Uint32Array;
  readonly last: Uint32Array;
};

/** Small letters without accents. */
const plain = (text: string): string => text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();

const wordsIn = (text: string): readonly string[] => plain(text).match(/[\p{L}\p{N}]+/gu) ?? [];

/** "C-04" is asked for as "c04", too. */
function wordsAndCode(part: string): readonly string[] {
  const words = wordsIn(part);
  return words.length > 1 && /\d/.test(part) ? [...words, words.join('')] : words;
}

/** How an index is made. `say` gives what a person calls a word or a symbol of the record; undefined where it is no name. */
export type Indexing = {
  readonly say: (word: string) => string | undefined;
  /** The calendar day of a moment where the workshop is. */
  readonly dayOf: (at: string) => DayNumber;
  /** What lasts is there until today. */
  readonly today: DayNumber;
};

/** The newest first: the order in which rows are to be given to `indexPart`, and are found. */
export const newestFirst = (rows: readonly FoundRow[]): readonly FoundRow[] =>
  rows.toSorted((a, b) => (a.from < b.from ? 1 : a.from > b.from ? -1 : 0));

export function indexPart(rows: readonly FoundRow[], { say, dayOf, today }: Indexing): IndexPart {
  const known = new Map<string, readonly string[]>();
  const wordsOf = (part: string): readonly string[] => {
    const words = known.get(part) ?? [...wordsAndCode(part), ...wordsIn(say(part) ?? '')];
    known.set(part, words);
    return words;
  };
  let [codes, texts] = ['', ''];
  const codeEnds = new Uint32Array(rows.length);
  const textEnds = new Uint32Array(rows.length);
  for (const [i, { is, code, words, metals }] of rows.entries()) {
    codes += `\n${wordsIn(code).join('')}\n`;
    codeEnds[i] = codes.length;
    const all = new Set([code, is, ...words, ...metals].flatMap(wordsOf));
    texts += ` ${[...all].join(' ')}\n`;
    textEnds[i] = texts.length;
  }
  return {
    rows,
    codes,
    codeEnds,
    texts,
    textEnds,
    first: Uint32Array.from(rows, ({ from }) => dayOf(from)),
    last: Uint32Array.from(rows, ({ to }) => (to === null ? today : dayOf(to))),
  };
}

/** One thing that was asked for: words that stand in it, or a day. */
type Term = {
  readonly words: readonly string[];
  readonly days: readonly AskedDay[];
  /** A month or a day in digits, which hardly means anything else. */
  readonly digits: boolean;
};

function termsIn(typed: string): readonly Term[] {
  const terms: Term[] = [];
  let rest = plain(typed).trim();
  while (rest !== '') {
    const day = dayAtStart(rest);
    const [word = rest] = rest.split(/\s/);
    const text = day ? rest.slice(0, day.length) : word;
    const words = wordsIn(text);
    const days = day?.days ?? [];
    const digits = /^[\d./-]+$/.test(text) && days.some(({ month }) => month !== null);
    if (words.length > 0) terms.push({ words, days, digits });
    rest = rest.slice(text.length).trim();
  }
  return terms;
}

/** How well something fits a row, the best last. */
const [none, within, end, inText, codeBegins, withinDigits, endDigits, codeWhole] = [
  0, 1, 2, 3, 4, 5, 6, 7,
] as const;

/** Calls for each row whose line holds the text, once. */
function eachLineWith(lines: string, ends: Uint32Array, text: string, found: (row: number) => void): void {
  let row = 0;
  for (let at = lines.indexOf(text); at >= 0; ) {
    while ((ends[row] ?? Number.POSITIVE_INFINITY) <= at) row += 1;
    found(row);
    at = lines.indexOf(text, (ends[row] ?? lines.length) - 1);
  }
}

/** How well one term fits each row. */
function fitsOf({ words, days, digits }: Term, part: IndexPart): Uint8Array {
  const { rows, codes, codeEnds, texts, textEnds, first, last } = part;
  const fits = new Uint8Array(rows.length);
  const atLeast = (row: number, fit: number): void => {
    fits[row] = Math.max(fits[row] ?? none, fit);
  };
  const [asWithin, asEnd] = digits ? [withinDigits, endDigits] : [within, end];
  for (const day of days)
    for (let row = 0; row < fits.length; row += 1) {
      const lies = dayWithin(day, first[row] ?? 0, last[row] ?? 0);
      if (lies !== null) atLeast(row, lies === 'end' ? asEnd : asWithin);
    }
  const counts = new Uint8Array(rows.length);
  for (const word of words)
    eachLineWith(texts, textEnds, ` ${word}`, (row) => {
      counts[row] = (counts[row] ?? 0) + 1;
      if (counts[row] === words.length) atLeast(row, inText);
    });
  const joined = words.join('');
  eachLineWith(codes, codeEnds, `\n${joined}`, (row) => atLeast(row, codeBegins));
  eachLineWith(codes, codeEnds, `\n${joined}\n`, (row) => atLeast(row, codeWhole));
  return fits;
}

/** Everything that fits all that was typed, the best first and of these the newest; nothing where nothing was typed. */
export function found(index: readonly IndexPart[], typed: string): readonly FoundRow[] {
  const terms = termsIn(typed);
  if (terms.length === 0) return [];
  // "c 04" is one code that was typed in two words.
  const whole = wordsIn(typed).join('');
  const byRank: FoundRow[][] = Array.from({ length: codeWhole + 1 }, () => []);
  for (const part of index) {
    const [best = new Uint8Array(), ...others] = terms.map((term) => fitsOf(term, part));
    for (const other of others)
      for (let row = 0; row < best.length; row += 1) {
        const [a, b] = [best[row] ?? none, other[row] ?? none];
        best[row] = a === none || b === none ? none : Math.max(a, b);
      }
    eachLineWith(part.codes, part.codeEnds, `\n${whole}\n`, (row) => {
      best[row] = codeWhole;
    });
    for (const [row, fit] of best.entries()) if (fit !== none) byRank[fit]?.push(part.rows[row] as FoundRow);
  }
  return byRank.toReversed().flat();
}
