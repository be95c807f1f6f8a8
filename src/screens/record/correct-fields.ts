/** A correction as a form holds it: each quantity and free text of the entry, the moment, and the reason. */
import { format, isValid, parse } from 'date-fns';
import * as z from 'zod/mini';
import type { PlainBody } from '../../ledger/entries/body';
import type { IntentionOf } from '../../ledger/intention';
import type { HistoryLine } from '../../ledger/state';
import { type FieldRead, readTyped, Typed } from '../form';
import { missing } from '../tried';
import { words } from '../words';
import { entryWords } from './entry-words';
import { type Correctable, changesBetween, correctable, keyOf, type Path, withValues } from './leaves';

export const CorrectFields = z.object({
  numbers: z.record(z.string(), Typed),
  texts: z.record(z.string(), z.string()),
  when: z.string(),
  reason: z.string(),
});
export type CorrectFields = z.infer<typeof CorrectFields>;

const clock = "yyyy-MM-dd'T'HH:mm";
const onTheWall = (iso: string): string => format(new Date(iso), clock);

/** What counts now, ready to be changed. */
export function correctFieldsOf(body: PlainBody, at: string): CorrectFields {
  const numbers: Record<string, Typed> = {};
  const texts: Record<string, string> = {};
  for (const part of correctable(body))
    if (part.is === 'quantity') numbers[keyOf(part.path)] = { typed: part.value, unit: part.unit };
    else texts[keyOf(part.path)] = part.value;
  return { numbers, texts, when: onTheWall(at), reason: '' };
}

export const readPart = (part: Correctable, fields: CorrectFields): FieldRead<string> =>
  readTyped(fields.numbers[keyOf(part.path)] ?? { typed: '', unit: '' });

export function textPartFault(part: Correctable, fields: CorrectFields): string | undefined {
  if (part.is === 'quantity' || part.mayGo) return undefined;
  return missing(fields.texts[keyOf(part.path)] ?? '');
}

/** The moment typed, or what was there when it was left alone: the form knows no seconds. */
export function momentOf({ when }: CorrectFields, at: string): string | null {
  if (when === onTheWall(at)) return at;
  const read = parse(when, clock, new Date(at));
  return isValid(read) ? read.toISOString() : null;
}

function valuesOf(body: PlainBody, fields: CorrectFields): ReadonlyMap<Path, unknown> | null {
  const values = new Map<Path, unknown>();
  for (const part of correctable(body)) {
    if (part.is === 'quantity') {
      const read = readPart(part, fields);
      if (read.state !== 'written') return null;
      values.set(part.path, read.written);
    } else {
      const typed = (fields.texts[keyOf(part.path)] ?? '').trim();
      if (typed === '' && !part.mayGo) return null;
      values.set(part.path, typed === '' ? undefined : typed);
    }
  }
  return values;
}

export type CorrectionRead =
  | { readonly ok: true; readonly intention: IntentionOf<'correct-entry'> }
  /** `fault` is null where the faults stand at the fields. */
  | { readonly ok: false; readonly fault: string | null };

/** @param line the entry and what of it counts now */
export function readCorrection(
  line: HistoryLine,
  body: PlainBody,
  fields: CorrectFields,
  now: string,
): CorrectionRead {
  const values = valuesOf(body, fields);
  const at = momentOf(fields, line.at);
  if (!values || at === null || at > now || fields.reason.trim() === '') return { ok: false, fault: null };
  const corrected = withValues(body, values);
  if (!corrected) return { ok: false, fault: entryWords.broken };
  const same = changesBetween(body, corrected).length === 0 && at === line.at;
  if (same) return { ok: false, fault: entryWords.unchanged };
  return {
    ok: true,
    intention: {
      do: 'correct-entry',
      corrects: line.entry.id,
      body: corrected,
      ...(at === line.at ? {} : { happenedAt: at }),
      reason: fields.reason,
    },
  };
}

export const whenFault = (fields: CorrectFields, at: string, now: string): string | undefined => {
  const moment = momentOf(fields, at);
  return moment === null || moment > now ? entryWords.whenWrong : undefined;
};

export const reasonFault = ({ reason }: CorrectFields): string | undefined =>
  missing(reason, words.text.missing);
