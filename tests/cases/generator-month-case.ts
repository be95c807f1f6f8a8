/**
 * Cases of kind `generator-month`: what arose in a month, in words and kilograms or pounds. What is counted, the category by
 * federal limits at the high end, and which events count, from 0. `countedKg` is all that is counted; where a case asks for
 * acute waste apart, that is left out of it, as the category counts it.
 */
import * as z from 'zod/mini';
import { meaningOf, type Unit } from '../../src/quantities/unit';
import type { Arising } from '../../src/rules/quantities/counting';
import { type GeneratorMonth, generatorMonth } from '../../src/rules/quantities/generator-month';
import { Amount, figureOf } from './amount';
import { acuteOf, originOf } from './origin-words';
import { type Check, compared, type Outcome, relative } from './outcome';
import { sameSet } from './sets';

/** How much, by the name of the field; the first that is told counts. */
const masses: Readonly<Record<string, Unit>> = {
  ...({ kg: 'kg', massKg: 'kg', lb: 'lb', lbs: 'lb', pounds: 'lb', g: 'g' } as const),
  ...({ L: 'L', litre: 'L', litres: 'L', liters: 'L', gal: 'US gal', gallons: 'US gal' } as const),
};

const Mass = z.optional(z.nullable(Amount));
const Event = z.looseObject({
  what: z.string(),
  densityKgPerL: z.optional(z.union([z.string(), z.number()])),
  /** Day or moment. */
  at: z.optional(z.string()),
  date: z.optional(z.string()),
  acute: z.optional(z.boolean()),
});
type Event = z.infer<typeof Event>;
const Places = z.array(z.int().check(z.nonnegative()));

export const GeneratorMonthCase = z.object({
  id: z.string(),
  kind: z.literal('generator-month'),
  input: z.looseObject({
    month: z.string().check(z.regex(/^\d{4}-\d{2}$/)),
    zone: z._default(z.string(), 'UTC'),
    events: z.array(Event),
  }),
  expected: z.looseObject({
    countedKg: z.optional(Amount),
    acuteKg: z.optional(Amount),
    category: z.optional(z.string()),
    countedEvents: z.optional(Places),
    notCountedEvents: z.optional(Places),
  }),
});
type GeneratorMonthCase = z.infer<typeof GeneratorMonthCase>;

/** "alreadyCounted" as "already counted". */
const inWords = (key: string): string => key.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

/** Every word of an event: of what it is, where it went, and of any note, code or kind beside it. */
const wordsOf = (event: Event): string =>
  Object.entries(event)
    .filter(([key]) => !(key in masses) && !['at', 'date', 'densityKgPerL'].includes(key))
    .flatMap(([key, value]): unknown[] => {
      if (typeof value === 'boolean') return [`${value ? '' : 'not '}${inWords(key)}`];
      const all = Array.isArray(value) ? value : [value];
      return /^(to|into|destination|sentTo)$/.test(key) ? all.map((one) => `into ${one}`) : all;
    })
    .filter((value) => typeof value === 'string')
    .join('; ');

/** Mass in kilograms, of a volume by its density; null where none is told. */
function massOf(event: Event, name: string): Arising['kg'] {
  for (const [key, unit] of Object.entries(masses)) {
    const amount = z.parse(Mass, event[key]);
    if (amount === undefined || amount === null) continue;
    const { factor, dimension } = meaningOf(unit);
    const isVolume = dimension.dm === 3;
    if (isVolume && event.densityKgPerL === undefined) return null;
    const toKg = isVolume ? factor.times(String(event.densityKgPerL)) : factor.div(meaningOf('kg').factor);
    return figureOf(name, amount, 'kg', toKg);
  }
  return null;
}

/** Noon of a day alone. */
function momentOf(event: Event, month: string): string {
  const written = event.at ?? event.date ?? `${month}-15`;
  return /T/.test(written) ? new Date(written).toISOString() : `${written}T12:00:00.000Z`;
}

function arisingsOf({ events, month }: GeneratorMonthCase['input']): Arising[] {
  const read =
    (othersCount: boolean) =>
    (event: Event, index: number): Arising => {
      const words = wordsOf(event);
      return {
        id: String(index),
        at: momentOf(event, month),
        what: event.what,
        kg: massOf(event, `${index}: ${event.what}`),
        acute: event.acute === true && acuteOf(words) === 'no' ? 'acute' : acuteOf(words),
        origin: originOf(words, othersCount, month),
      };
    };
  const anyCounts = events.map(read(false)).some(({ origin }) => origin.kind === 'generated');
  return events.map(read(anyCounts));
}

const categoryName = (written: string): string =>
  ({ cesqg: 'VSQG' })[written.toLowerCase()] ?? written.toUpperCase();

const reasons = ({ judged }: GeneratorMonth): string[] =>
  judged.map(({ arising, counts, rule, lacks }) =>
    [`${arising.id} ${counts ? 'counts' : 'does not count'}: ${rule}`, ...lacks].join(', '),
  );

export function evaluateGeneratorMonth({ input, expected }: GeneratorMonthCase): Outcome {
  // A day alone has no zone, and is that day everywhere; only a moment needs one.
  const zone = input.events.some(({ at, date }) => /T/.test(at ?? date ?? '')) ? input.zone : 'UTC';
  const found = generatorMonth(arisingsOf(input), input.month, zone);
  const acute = found.acute.value.plus(found.acuteSpill.value);
  const counted = expected.acuteKg === undefined ? found.nonAcute.value.plus(acute) : found.nonAcute.value;
  const places = (counts: boolean): number[] =>
    found.judged.flatMap((one, index) => (one.counts === counts ? [index] : []));
  const computed = {
    countedKg: counted.toString(),
    acuteKg: acute.toString(),
    category: found.category.atHigh,
    categoryLikely: found.category.likely,
    countedEvents: places(true),
    notCountedEvents: places(false),
    unweighed: found.unweighed.map(({ id }) => Number(id)),
  };
  const checks: Check[] = [];
  const mass = (name: string, wanted: Amount | undefined, value: string): void => {
    if (wanted !== undefined) checks.push(compared(name, Number(wanted), Number(value), relative, 0.01));
  };
  const set = (name: string, wanted: readonly number[] | undefined, value: readonly number[]): void => {
    if (wanted) checks.push(sameSet(name, wanted.map(String), value.map(String)));
  };
  mass('counted kg', expected.countedKg, computed.countedKg);
  mass('acute kg', expected.acuteKg, computed.acuteKg);
  set('counted events', expected.countedEvents, computed.countedEvents);
  set('events not counted', expected.notCountedEvents, computed.notCountedEvents);
  if (expected.category !== undefined)
    checks.push({
      ok: categoryName(expected.category) === computed.category,
      line: `category: expected ${expected.category}, computed ${computed.category}`,
    });
  if (checks.length === 0) checks.push({ ok: false, line: 'nothing expected' });
  const known = ['countedKg', 'acuteKg', 'category', 'countedEvents', 'notCountedEvents'];
  const left = Object.keys(expected).filter((key) => !known.includes(key));
  return {
    checks,
    computed,
    notes: [...left.map((key) => `not compared: ${key}`), ...reasons(found)],
  };
}
