/** What a checklist file may say. The fields are told for people in `checklists/README.md`. */
import Decimal from 'decimal.js';
import * as z from 'zod/mini';
import { cited, Line, Slug } from './cited';

/** A reading's limit, as digits: compared as written, never as a floating number. */
const Limit = z.string().check(z.regex(/^-?\d{1,6}(\.\d{1,6})?$/));

const some = z.array(Line).check(z.minLength(1), z.maxLength(6));

export const Door = z.strictObject({
  /** Which stops it belongs to: an answer, "no", "below" or "above". Absent: every stop of the item. */
  for: z.optional(some),
  do: z.string().check(z.minLength(1), z.maxLength(70)),
  leads: z.enum(['answer-again', 'put-off', 'open-card']),
});

export const Choice = z.strictObject({
  answer: Line,
  stops: z.optional(z.literal(true)),
  asksReason: z.optional(z.literal(true)),
  names: z.optional(z.enum(['person', 'person-and-time'])),
});

const asked = {
  id: Slug,
  ask: Line,
  look: Line,
  when: z.optional(z.enum(['during', 'after'])),
  onlyIf: z.optional(z.strictObject({ item: Slug, answer: Line })),
  stop: z.boolean(),
  naReasons: z.optional(some),
  reasons: z.optional(some),
  doors: z.optional(z.array(Door).check(z.minLength(1))),
  card: z.optional(Slug),
  why: Line,
  ...cited,
};

export const ConfirmItem = z.strictObject({ ...asked, kind: z.literal('confirm') });

export const ReadingItem = z.strictObject({
  ...asked,
  kind: z.literal('reading'),
  unit: z.enum(['°C', 'g', 'kg', 'mL', 'mg/L', 'pH', '%', 's', 'min', 'h', 'days', 'containers', 'm/s']),
  min: z.optional(Limit),
  max: z.optional(Limit),
  last: z.boolean(),
});

export const ChoiceItem = z.strictObject({
  ...asked,
  kind: z.literal('choice'),
  choices: z.array(Choice).check(z.minLength(2), z.maxLength(7)),
  ordered: z.optional(z.literal(true)),
});

export const Item = z.discriminatedUnion('kind', [ConfirmItem, ReadingItem, ChoiceItem]);

export const Step = z.enum([
  'acid-dilution',
  'leach',
  'filtration',
  'cementation',
  'chloride-test',
  'ammonia-test',
  'washing-drying-weighing',
  'transfer',
  'neutralisation',
  'sludge-filtering',
  'hand-over',
  'inspection',
  'readiness',
]);

const hours = z.int().check(z.gte(1), z.lte(168));

const Shape = z.strictObject({
  id: Slug,
  version: z.int().check(z.gte(1)),
  title: Line,
  purpose: Line,
  step: Step,
  moment: z.enum(['start', 'running']),
  validHours: hours,
  /** Longest validity when a time of return is stated; absent: a stated time never lengthens it. */
  longestHours: z.optional(hours),
  mode: z.enum(['read-do', 'do-confirm', 'challenge-response']),
  secondPerson: z.boolean(),
  requires: z.array(Slug),
  begin: Line,
  mayStart: Line,
  hang: Line,
  already: Line,
  items: z.array(Item).check(z.minLength(1)),
});

export type Door = z.infer<typeof Door>;
export type Choice = z.infer<typeof Choice>;
export type Item = z.infer<typeof Item>;
export type ReadingItem = z.infer<typeof ReadingItem>;
export type ChoiceItem = z.infer<typeof ChoiceItem>;
export type Step = z.infer<typeof Step>;
export type Checklist = z.infer<typeof Shape>;

/** The ways an item can be answered that stop it, by the word used in a door's `for`. */
export function stopsOf(item: Item): readonly string[] {
  if (!item.stop) return [];
  if (item.kind === 'confirm') return ['no'];
  if (item.kind === 'choice')
    return item.choices.filter((choice) => choice.stops).map(({ answer }) => answer);
  return [...(item.min === undefined ? [] : ['below']), ...(item.max === undefined ? [] : ['above'])];
}

/** What to do now after a stop, the way to make it right first. */
export const doorsFor = (item: Item, stop: string): readonly Door[] =>
  (item.doors ?? []).filter((door) => door.for === undefined || door.for.includes(stop));

type Fault = { readonly path: readonly (string | number)[]; readonly code: string };

const words = (line: string): number => line.trim().split(/\s+/).length;
const repeated = (all: readonly string[]): readonly number[] =>
  all.flatMap((one, index) => (all.indexOf(one) < index ? [index] : []));

function readingFaults(item: ReadingItem): readonly Fault[] {
  if (item.min === undefined && item.max === undefined) return [{ path: ['min'], code: 'no-limit' }];
  if (item.min === undefined || item.max === undefined) return [];
  return new Decimal(item.min).lt(item.max) ? [] : [{ path: ['max'], code: 'max-not-above-min' }];
}

function choiceFaults(item: ChoiceItem): readonly Fault[] {
  const faults: Fault[] = repeated(item.choices.map(({ answer }) => answer)).map((index) => ({
    path: ['choices', index, 'answer'],
    code: 'same-answer-twice',
  }));
  const stops = item.choices.filter((choice) => choice.stops).length;
  if (item.stop !== stops > 0) faults.push({ path: ['stop'], code: 'stop-does-not-match-choices' });
  if (stops === item.choices.length) faults.push({ path: ['choices'], code: 'every-answer-stops' });
  item.choices.forEach((choice, index) => {
    if (choice.stops && choice.asksReason)
      faults.push({ path: ['choices', index], code: 'stop-asks-reason' });
  });
  return faults;
}

/** A person is told what makes it right; during and after a step, putting off is a right way too. */
function doorFaults(item: Item): readonly Fault[] {
  const stops = stopsOf(item);
  const faults: Fault[] = [];
  for (const stop of stops) {
    const doors = doorsFor(item, stop);
    if (doors.length > 3) faults.push({ path: ['doors'], code: 'too-many-doors' });
    if (
      !doors.some(({ leads }) => leads === 'answer-again' || (item.when !== undefined && leads === 'put-off'))
    )
      faults.push({ path: ['doors'], code: 'stop-without-way-right' });
  }
  item.doors?.forEach((door, index) => {
    if (stops.length === 0) faults.push({ path: ['doors', index], code: 'door-without-stop' });
    if (door.for?.some((stop) => !stops.includes(stop)))
      faults.push({ path: ['doors', index, 'for'], code: 'door-for-no-stop' });
    if (door.leads === 'open-card' && item.card === undefined)
      faults.push({ path: ['doors', index, 'leads'], code: 'no-card-to-open' });
  });
  return faults;
}

/** An answer that is not in order but does not stop must be able to say why. */
const needsReasons = (item: Item): boolean =>
  item.kind === 'choice' ? item.choices.some((choice) => choice.asksReason) : !item.stop;

function itemFaults(item: Item): readonly Fault[] {
  const faults: Fault[] = [...doorFaults(item)];
  if (words(item.ask) > 9) faults.push({ path: ['ask'], code: 'ask-over-nine-words' });
  if (words(item.look) > 12) faults.push({ path: ['look'], code: 'look-over-twelve-words' });
  if (needsReasons(item) && item.reasons === undefined)
    faults.push({ path: ['reasons'], code: 'no-reasons' });
  if (item.kind === 'reading') faults.push(...readingFaults(item));
  if (item.kind === 'choice') faults.push(...choiceFaults(item));
  return faults;
}

/** A condition names an answer that can have been given earlier. */
function conditionFaults(list: Checklist): readonly Fault[] {
  return list.items.flatMap((item, index) => {
    if (item.onlyIf === undefined) return [];
    const { item: id, answer } = item.onlyIf;
    const earlier = list.items.slice(0, index).find((one) => one.id === id);
    const met = earlier?.kind === 'choice' && earlier.choices.some((choice) => choice.answer === answer);
    return met ? [] : [{ path: ['items', index, 'onlyIf'], code: 'condition-never-met' }];
  });
}

const names = (item: Item): boolean => item.kind === 'choice' && item.choices.some((choice) => choice.names);

/** Everything wrong with a list that the shape alone does not show. */
function faultsOf(list: Checklist): readonly Fault[] {
  const faults: Fault[] = list.items.flatMap((item, index) =>
    itemFaults(item).map(({ path, code }) => ({ path: ['items', index, ...path], code })),
  );
  for (const index of repeated(list.items.map(({ id }) => id)))
    faults.push({ path: ['items', index, 'id'], code: 'same-id-twice' });
  for (const when of [undefined, 'during', 'after'])
    if (list.items.filter((item) => item.when === when).length > 9)
      faults.push({ path: ['items'], code: 'over-nine-at-one-pause' });
  if (!list.items.some((item) => item.when === undefined))
    faults.push({ path: ['items'], code: 'nothing-asked-before' });
  if (list.secondPerson && !list.items.some(names))
    faults.push({ path: ['secondPerson'], code: 'nobody-named' });
  if (list.longestHours !== undefined && list.longestHours < list.validHours)
    faults.push({ path: ['longestHours'], code: 'shorter-than-valid' });
  return [...faults, ...conditionFaults(list)];
}

export const Checklist = Shape.check((checked) => {
  for (const { path, code } of faultsOf(checked.value))
    checked.issues.push({ code: 'custom', message: code, path: [...path], input: checked.value });
});
