/** One answer to one item: what it is worth, and what is still missing from it. */
import Decimal from 'decimal.js';
import { type NumberFailure, readNumber } from '../quantities/written';
import { type ChoiceItem, type Item, type ReadingItem, stopsOf } from './checklist-item';
import type { Answered, Given, Who } from './run-schema';

export type AnswerFailure =
  | { readonly code: 'wrong-kind'; readonly wanted: Item['kind'] }
  | { readonly code: 'no-such-answer'; readonly answer: string }
  | { readonly code: 'not-a-reading'; readonly failure: NumberFailure }
  /** A slip of the finger: nothing in a workshop shows that. */
  | { readonly code: 'impossible-reading' }
  | { readonly code: 'not-applicable-refused' }
  /** The app works this out: a person cannot tap it. */
  | { readonly code: 'only-worked-out' }
  /** A reading out of range, a "no" or an answer of that kind goes in with a reason; these are offered. */
  | { readonly code: 'reason-missing'; readonly reasons: readonly string[] }
  | { readonly code: 'name-missing' }
  | { readonly code: 'time-missing' };

export type Judged =
  | {
      readonly ok: true;
      readonly value: Pick<Answered, 'answer' | 'verdict' | 'reason' | 'who' | 'byApp'>;
      readonly stop?: string;
    }
  | { readonly ok: false; readonly failure: AnswerFailure };

const refused = (failure: AnswerFailure): Judged => ({ ok: false, failure });
const inOrder = (answer: string, who?: Who): Judged => ({
  ok: true,
  value: { answer, verdict: 'in-order', ...(who === undefined ? {} : { who }) },
});

/** Not in order: a stop if the item has one for it, else it needs a reason and stays visible. */
function amiss(item: Item, answer: string, how: string, reason: string | undefined): Judged {
  const said = reason?.trim() ?? '';
  const kept = said === '' ? {} : { reason: said };
  if (stopsOf(item).includes(how))
    return { ok: true, value: { answer, verdict: 'stops', ...kept }, stop: how };
  if (said === '') return refused({ code: 'reason-missing', reasons: item.reasons ?? [] });
  return { ok: true, value: { answer, verdict: 'noted', ...kept } };
}

/** Digits as written, with a point; a minus sign is allowed, since a store can freeze. */
export function readSigned(written: string): ReturnType<typeof readNumber> {
  const [, minus, digits] = /^\s*([-−]?)\s*(.*)$/s.exec(written) ?? ['', '', written];
  const read = readNumber(digits ?? '');
  return read.ok && minus !== '' && !new Decimal(read.value).isZero()
    ? { ok: true, value: `-${read.value}` }
    : read;
}

/** Between which a meter or thermometer can show anything at all. Source: reasoned. */
const possible: Readonly<Record<string, { readonly low: string; readonly high: string }>> = {
  '°C': { low: '-60', high: '400' },
  pH: { low: '-2', high: '16' },
};

function reading(item: ReadingItem, written: string, reason: string | undefined): Judged {
  const read = readSigned(written);
  if (!read.ok) return refused({ code: 'not-a-reading', failure: read.failure });
  const value = new Decimal(read.value);
  const bounds = possible[item.unit];
  if (bounds && (value.lt(bounds.low) || value.gt(bounds.high)))
    return refused({ code: 'impossible-reading' });
  if (item.min !== undefined && value.lt(item.min)) return amiss(item, read.value, 'below', reason);
  if (item.max !== undefined && value.gt(item.max)) return amiss(item, read.value, 'above', reason);
  return inOrder(read.value);
}

/** The choice that stands for what the app worked out. */
function workedOut(item: ChoiceItem, given: Given & { kind: 'worked-out' }): Judged {
  const chosen = item.choices.find(({ result }) => result === given.result);
  if (!chosen) return refused({ code: 'no-such-answer', answer: given.result });
  const judged = chosen.stops ? amiss(item, chosen.answer, chosen.answer, undefined) : inOrder(chosen.answer);
  return judged.ok ? { ...judged, value: { ...judged.value, byApp: given.from } } : judged;
}

function choice(item: ChoiceItem, given: Given & { kind: 'choice' }): Judged {
  if (item.answeredBy !== undefined) return refused({ code: 'only-worked-out' });
  const chosen = item.choices.find(({ answer }) => answer === given.answer);
  if (!chosen) return refused({ code: 'no-such-answer', answer: given.answer });
  if (chosen.stops || chosen.asksReason) return amiss(item, chosen.answer, chosen.answer, given.reason);
  if (!chosen.names) return inOrder(chosen.answer);
  const name = given.who?.name.trim() ?? '';
  if (name === '') return refused({ code: 'name-missing' });
  const at = given.who?.at;
  if (chosen.names === 'person-and-time' && at === undefined) return refused({ code: 'time-missing' });
  return inOrder(chosen.answer, { name, ...(at === undefined ? {} : { at }) });
}

/** What `given` is worth as an answer to `item`. Limits belong to the range: a reading at the limit is in order. */
export function judge(item: Item, given: Given): Judged {
  if (given.kind === 'not-applicable') {
    const reason = given.reason.trim();
    if (!item.naReasons) return refused({ code: 'not-applicable-refused' });
    if (reason === '') return refused({ code: 'reason-missing', reasons: item.naReasons });
    return { ok: true, value: { answer: 'not-applicable', verdict: 'not-applicable', reason } };
  }
  if (item.kind === 'confirm' && given.kind === 'confirm')
    return given.yes ? inOrder(item.yes ?? 'yes') : amiss(item, 'no', 'no', given.reason);
  if (item.kind === 'reading' && given.kind === 'reading') return reading(item, given.written, given.reason);
  if (item.kind === 'choice' && given.kind === 'choice') return choice(item, given);
  if (item.kind === 'choice' && given.kind === 'worked-out' && item.answeredBy !== undefined)
    return workedOut(item, given);
  return refused({ code: 'wrong-kind', wanted: item.kind });
}

/** The way in which a kept answer stops its item: the word of a door's `for`. */
export function stopOf(answered: Answered): string {
  if (answered.kind !== 'reading') return answered.answer;
  return answered.min !== undefined && new Decimal(answered.answer).lt(answered.min) ? 'below' : 'above';
}
