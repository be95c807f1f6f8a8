/** Days as people type them into a search: "2026-03", "March 2026", "14 March", "14.3.2026", "3/14/2026", "2026". */

/** What of a day was typed. */
export type AskedDay = {
  readonly year: number | null;
  readonly month: number | null;
  readonly day: number | null;
};

const months = [
  'january',
  'february',
  'march',
  'april',
  'may',
  'june',
  'july',
  'august',
  'september',
  'october',
  'november',
  'december',
];

/** Months whose name begins so, as numbers. @param least so many letters at least */
const monthsNamed = (word: string, least: number): readonly string[] =>
  word.length < least ? [] : months.flatMap((name, at) => (name.startsWith(word) ? [String(at + 1)] : []));

const within = (value: number | null, most: number): boolean =>
  value === null || (value >= 1 && value <= most);

const numberOf = (digits: string | undefined): number | null =>
  digits === undefined ? null : Number(digits);

function asked(...digits: readonly (string | undefined)[]): readonly AskedDay[] {
  const [year = null, month = null, day = null] = digits.map(numberOf);
  return within(month, 12) && within(day, 31) ? [{ year, month, day }] : [];
}

/** "26" is 2026; a year that is half typed ("2", "202") is not known yet, and "20" may be that or 2020. */
function yearsOf(digits: string | undefined): readonly (string | undefined)[] {
  if (digits?.length === 4) return [digits];
  if (digits?.length === 2) return digits === '20' ? ['2020', undefined] : [`20${digits}`];
  return [undefined];
}

type Shape = readonly [RegExp, (...parts: (string | undefined)[]) => readonly AskedDay[]];

/** A name of three letters is a month; beside a day one is enough. */
const named = (
  name: string | undefined,
  year: string | undefined,
  day?: string | undefined,
): readonly AskedDay[] =>
  monthsNamed(name ?? '', day === undefined ? 3 : 1).flatMap((month) =>
    yearsOf(year).flatMap((one) => asked(one, month, day)),
  );

/** The first that fits counts; the text has small letters only. What is half typed is asked for as far as it goes. */
const shapes: readonly Shape[] = [
  [/^(\d{4})-(\d{1,2})-(\d{2})(?!\d)/, (_, y, m, d) => asked(y, m, d)],
  [/^(\d{4})-(\d{2}|\d(?=-))-?\d?(?!\d)/, (_, y, m) => asked(y, m)],
  [/^(\d{4})-\d?(?!\d)/, (_, y) => asked(y)],
  [
    /^(\d{1,2})\.\s?(\d{1,2})(?:\.\s?(\d{0,4}))?(?!\d)/,
    (_, d, m, y) => yearsOf(y).flatMap((year) => asked(year, m, d)),
  ],
  [
    /^(\d{1,2})\/(\d{1,2})(?:\/(\d{0,4}))?(?!\d)/,
    // As in Britain, or as in America.
    (_, a, b, y) =>
      yearsOf(y).flatMap((year) => [...asked(year, b, a), ...(a === b ? [] : asked(year, a, b))]),
  ],
  [
    /^(\d{1,2})(?:st|nd|rd|th|\.)?\s(?:of\s)?([a-z]+)\.?,?(?:\s(\d{1,4}))?(?![\da-z])/,
    (_, d, name, y) => named(name, y, d),
  ],
  [
    /^([a-z]+)\.?\s(\d{1,2})(?:st|nd|rd|th)?(?:,?\s(\d{1,4}))?(?![\da-z])/,
    (_, name, d, y) => named(name, y, d),
  ],
  [/^([a-z]+)\.?,?\s(\d{3,4})(?![\da-z])/, (_, name, y) => named(name, y)],
  [/^([a-z]+)(?![\da-z])/, (_, name) => named(name, undefined)],
  [/^((?:19|20)\d{2})(?![\d-])/, (_, y) => asked(y)],
];

/** The day that a text begins with, in all that it may mean, and how many letters say so; null where it begins with none. */
export function dayAtStart(
  text: string,
): { readonly days: readonly AskedDay[]; readonly length: number } | null {
  for (const [shape, read] of shapes) {
    const found = shape.exec(text);
    const days = found ? read(...found) : [];
    if (found && days.length > 0) return { days, length: found[0].length };
  }
  return null;
}

/** A calendar day as one number, 20260331, so that many are compared at once. */
export type DayNumber = number;

const fits = ({ year, month, day }: AskedDay, at: DayNumber): boolean =>
  (year === null || Math.floor(at / 10_000) === year) &&
  (month === null || Math.floor(at / 100) % 100 === month) &&
  (day === null || at % 100 === day);

/**
 * How a day that was asked for lies to a thing that lasted from one day to another: `end` where it is the first or the last of
 * them, `within` where it lies between.
 */
export function dayWithin(asked: AskedDay, first: DayNumber, last: DayNumber): 'end' | 'within' | null {
  if (fits(asked, first) || fits(asked, last)) return 'end';
  const { year, month, day } = asked;
  const from = (month ?? 1) * 100 + (day ?? 1);
  const to = (month ?? 12) * 100 + (day ?? 31);
  const firstYear = year ?? Math.floor(first / 10_000);
  const lastYear = year ?? Math.floor(last / 10_000);
  for (let one = firstYear; one <= lastYear; one += 1)
    if (one * 10_000 + from <= last && one * 10_000 + to >= first) return 'within';
  return null;
}
