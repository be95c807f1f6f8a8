/** What is wrong with a list or an item that its shape alone does not show. */
import Decimal from 'decimal.js';
import { asksWhere, type ChoiceItem, doorsFor, type Item, type ReadingItem, stopsOf } from './checklist-item';

/** `path` leads to the field from the item or list that was looked at. */
export type Fault = { readonly path: readonly (string | number)[]; readonly code: string };

/** As many as a person goes through with care at one pause. */
export const mostAtOnePause = 9;

const words = (line: string): number => line.trim().split(/\s+/).length;
const repeated = (all: readonly string[]): readonly number[] =>
  all.flatMap((one, index) => (all.indexOf(one) < index ? [index] : []));

function readingFaults(item: ReadingItem): readonly Fault[] {
  if (item.min === undefined && item.max === undefined) return [{ path: ['min'], code: 'no-limit' }];
  if (item.min === undefined || item.max === undefined) return [];
  return new Decimal(item.min).lt(item.max) ? [] : [{ path: ['max'], code: 'max-not-above-min' }];
}

/** An answer that the app gives has one choice for each result, and only "enough" goes on. */
function resultFaults({ answeredBy, choices }: ChoiceItem): readonly Fault[] {
  const results = choices.flatMap(({ result }) => (result === undefined ? [] : [result]));
  if (answeredBy === undefined)
    return results.length === 0 ? [] : [{ path: ['choices'], code: 'result-without-check' }];
  if (results.length < choices.length || new Set(results).size < 3)
    return [{ path: ['choices'], code: 'result-missing' }];
  const astray = choices.some(({ result, stops }) => (result === 'enough') === (stops === true));
  return astray ? [{ path: ['choices'], code: 'result-does-not-match-stop' }] : [];
}

/** What is no base of the plan's list is in order under no plan. */
function baseFaults({ expects, choices }: ChoiceItem): readonly Fault[] {
  const bases = choices.flatMap(({ base }) => (base === undefined ? [] : [base]));
  if (expects === undefined)
    return bases.length === 0 ? [] : [{ path: ['choices'], code: 'base-not-expected' }];
  if (repeated(bases).length > 0) return [{ path: ['choices'], code: 'same-base-twice' }];
  const open = choices.some(({ base, stops }) => base === undefined && !stops);
  return open ? [{ path: ['choices'], code: 'no-base-does-not-stop' }] : [];
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
  return [...faults, ...resultFaults(item), ...baseFaults(item)];
}

/**
 * A person is told what makes it right; during and after a step, putting off is a right way too. On the walk nothing is
 * answered again: it is said what was done.
 */
function doorFaults(item: Item): readonly Fault[] {
  const stops = stopsOf(item);
  const faults: Fault[] = [];
  for (const stop of stops) {
    const doors = doorsFor(item, stop);
    if (doors.length > 3) faults.push({ path: ['doors'], code: 'too-many-doors' });
    const right = item.of === undefined ? 'answer-again' : 'say-done';
    if (!doors.some(({ leads }) => leads === right || (item.when !== undefined && leads === 'put-off')))
      faults.push({ path: ['doors'], code: 'stop-without-way-right' });
  }
  item.doors?.forEach((door, index) => {
    if (stops.length === 0) faults.push({ path: ['doors', index], code: 'door-without-stop' });
    if (door.for?.some((stop) => !stops.includes(stop)))
      faults.push({ path: ['doors', index, 'for'], code: 'door-for-no-stop' });
    if (door.leads === (item.of === undefined ? 'say-done' : 'answer-again'))
      faults.push({ path: ['doors', index, 'leads'], code: 'leads-nowhere-here' });
    if (door.leads === 'open-card' && item.card === undefined)
      faults.push({ path: ['doors', index, 'leads'], code: 'no-card-to-open' });
  });
  return faults;
}

/** The looks of a walk are asked each for itself, all of them, and of something; no other list is walked. */
export const walkFaults = (items: readonly Item[], isWalk: boolean): readonly Fault[] =>
  items.flatMap(({ of, when, onlyIf }, index) => [
    ...((of !== undefined) === isWalk ? [] : [{ path: ['items', index, 'of'], code: 'of-what-it-is-asked' }]),
    ...(of !== undefined && (when ?? onlyIf) !== undefined
      ? [{ path: ['items', index], code: 'walk-asks-always' }]
      : []),
  ]);

/** An answer that is not in order but does not stop must be able to say why. */
const needsReasons = (item: Item): boolean =>
  item.kind === 'choice' ? item.choices.some((choice) => choice.asksReason) : !item.stop;

export function itemFaults(item: Item): readonly Fault[] {
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
function conditionFaults(items: readonly Item[]): readonly Fault[] {
  return items.flatMap((item, index) => {
    if (item.onlyIf === undefined) return [];
    const { item: id, answer } = item.onlyIf;
    const earlier = items.slice(0, index).find((one) => one.id === id);
    const met = earlier?.kind === 'choice' && earlier.choices.some((choice) => choice.answer === answer);
    return met ? [] : [{ path: ['items', index, 'onlyIf'], code: 'condition-never-met' }];
  });
}

/** The app answers it: what it works out, and the station, which it asks once. */
const isAnsweredByApp = (item: Item): boolean =>
  (item.kind === 'choice' && item.answeredBy !== undefined) || asksWhere(item);

/**
 * The most questions that a person answers at one pause: of those asked only after a certain answer, the most that one
 * answer brings; none that the app answers.
 */
export function askedAtMost(items: readonly Item[], when: Item['when']): number {
  const byPerson = items.filter((item) => item.when === when && !isAnsweredByApp(item));
  const most = new Map<string, number>();
  for (const { onlyIf } of byPerson) {
    if (onlyIf === undefined) continue;
    const alike = byPerson.filter(
      (one) => one.onlyIf?.item === onlyIf.item && one.onlyIf.answer === onlyIf.answer,
    ).length;
    most.set(onlyIf.item, Math.max(alike, most.get(onlyIf.item) ?? 0));
  }
  const always = byPerson.filter(({ onlyIf }) => onlyIf === undefined).length;
  return [...most.values()].reduce((sum, one) => sum + one, always);
}

/** Faults of the questions of a list, each for itself and together. */
export function itemsFaults(items: readonly Item[]): readonly Fault[] {
  const faults: Fault[] = items.flatMap((item, index) =>
    itemFaults(item).map(({ path, code }) => ({ path: ['items', index, ...path], code })),
  );
  for (const index of repeated(items.map(({ id }) => id)))
    faults.push({ path: ['items', index, 'id'], code: 'same-id-twice' });
  for (const when of [undefined, 'during', 'after'] as const)
    if (askedAtMost(items, when) > mostAtOnePause)
      faults.push({ path: ['items'], code: 'over-nine-at-one-pause' });
  if (!items.some((item) => item.when === undefined))
    faults.push({ path: ['items'], code: 'nothing-asked-before' });
  return [...faults, ...conditionFaults(items)];
}
