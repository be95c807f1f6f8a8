/** A question of our own as a form holds it, and what is written of it. */
import * as z from 'zod/mini';
import { Unit } from '../../safety/checklist-item';
import { type Checklist, isWalk } from '../../safety/checklist-schema';
import { faultOf, type OwnChange, type OwnItem } from '../../safety/own-lists';
import { Typed, typed } from '../form';
import { ownFaultWords, ownItemFault, ownItemPlace } from '../own-fault-words';
import { given } from '../tried';
import { words } from '../words';
import { limitsRead } from './limit-field';
import { addWords } from './words';

const Answer = z.object({ answer: z.string(), stops: z.boolean() });

export const AddFields = z.object({
  kind: z.enum(['', 'confirm', 'reading', 'choice']),
  ask: z.string(),
  look: z.string(),
  yes: z.string(),
  when: z.enum(['', 'before', 'during', 'after']),
  /** In the list of the walk instead of `when`; a draft of an earlier version has none. */
  of: z._default(z.enum(['', 'container', 'place']), ''),
  stop: z.enum(['', 'yes', 'no']),
  unit: z.enum(['', ...Unit.options]),
  low: Typed,
  high: Typed,
  answers: z.array(Answer),
  reason: z.string(),
});
export type AddFields = z.infer<typeof AddFields>;

const noAnswer = { answer: '', stops: false };

export const emptyAdd = (): AddFields => ({
  kind: '',
  ask: '',
  look: '',
  yes: '',
  when: '',
  of: '',
  stop: '',
  unit: '',
  low: typed(''),
  high: typed(''),
  answers: [noAnswer, noAnswer],
  reason: '',
});

/** Most answers that a question can have. */
export const mostAnswers = 8;
export const oneMore = (answers: AddFields['answers']): AddFields['answers'] => [...answers, noAnswer];

const written = (answers: AddFields['answers']): AddFields['answers'] =>
  answers.filter(({ answer }) => answer.trim() !== '');

/** The part of the question that goes with its kind; null while something of it is missing or wrong. */
function byKind(fields: AddFields) {
  const stop = fields.stop === 'yes';
  if (fields.kind === 'confirm')
    return fields.stop === '' ? null : ({ kind: 'confirm', stop, ...given('yes', fields.yes) } as const);
  if (fields.kind === 'reading') {
    const limits = limitsRead(fields.low, fields.high);
    return limits && fields.unit !== '' && fields.stop !== ''
      ? ({ kind: 'reading', stop, unit: fields.unit, ...limits } as const)
      : null;
  }
  const answers = written(fields.answers);
  if (fields.kind !== 'choice' || answers.length < 2) return null;
  const choices = answers.map(({ answer, stops }) => ({
    answer: answer.trim(),
    ...(stops ? { stops: true as const } : {}),
  }));
  return { kind: 'choice', stop: choices.some(({ stops }) => stops), choices } as const;
}

/** When it is asked, or on the walk of what; null while that is missing. */
function asked(list: Checklist, { when, of }: AddFields): Pick<OwnItem, 'when' | 'of'> | null {
  if (isWalk(list)) return of === '' ? null : { of };
  if (when === '') return null;
  return when === 'before' ? {} : { when };
}

/** Null while something is missing. @param id a new one */
export function addedItem(list: Checklist, fields: AddFields, id: string): OwnChange | null {
  const part = byKind(fields);
  const [ask, reason] = [fields.ask.trim(), fields.reason.trim()];
  const time = asked(list, fields);
  if (!part || ask === '' || reason === '' || !time) return null;
  const item: OwnItem = {
    id: `own-${id}`,
    ask,
    reason,
    ...given('look', fields.look),
    ...time,
    ...part,
  };
  return { change: 'item-added', list: list.id, item };
}

type Place = 'kind' | 'ask' | 'look' | 'when' | 'stop' | 'unit' | 'high' | 'answers' | 'reason';

/** What is wrong at each field; what the list itself refuses stands where it can be mended. */
export function addFaults(list: Checklist, fields: AddFields): Partial<Record<Place, string>> {
  const { kind, ask, reason, stop, unit, answers } = fields;
  const faults: Partial<Record<Place, string>> = {
    ...(kind === '' ? { kind: words.choice.missing } : {}),
    ...(ask.trim() === '' ? { ask: words.text.missing } : {}),
    ...(reason.trim() === '' ? { reason: words.text.missing } : {}),
    ...(asked(list, fields) === null ? { when: words.choice.missing } : {}),
    ...(kind !== 'choice' && kind !== '' && stop === '' ? { stop: words.choice.missing } : {}),
    ...(kind === 'reading' && unit === '' ? { unit: words.choice.missing } : {}),
    ...(kind === 'choice' && written(answers).length < 2 ? { answers: addWords.twoAnswers } : {}),
  };
  const change = addedItem(list, fields, 'draft');
  const refused = change && faultOf(list, change);
  const codes = refused?.code === 'item-not-in-order' ? refused.faults : [];
  if (refused?.code === 'over-nine') faults.when = ownFaultWords(refused);
  for (const code of codes) faults[ownItemPlace(code)] ??= ownItemFault(code);
  return faults;
}
