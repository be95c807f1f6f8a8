/** Lists and answers that the tests share. */

import type { Item } from '../../../src/safety/checklist-item';
import { answer, begin, type Standing, standing } from '../../../src/safety/checklist-run';
import type { Checklist } from '../../../src/safety/checklist-schema';
import { checklists } from '../../../src/safety/checklists';
import type { Context, Given, Run } from '../../../src/safety/run-schema';

export const context: Context = {
  person: 'Maren',
  batchId: 'B-18',
  place: { id: 'hood', name: 'Hood by the window' },
};

export const T0 = '2026-05-12T10:18:00.000Z';

/** `T0` and so many seconds. */
export const past = (seconds: number): string =>
  new Date(Date.parse(T0) + Math.round(seconds * 1000)).toISOString();

export function listNamed(id: string): Checklist {
  const list = checklists.get(id);
  if (!list) throw new Error(`no list ${id}`);
  return list;
}

/** An answer that is in order. */
export function goodAnswer(item: Item): Given {
  if (item.kind === 'confirm') return { kind: 'confirm', yes: true };
  if (item.kind === 'reading') return { kind: 'reading', written: item.min ?? item.max ?? '0' };
  if (item.answeredBy) return { kind: 'worked-out', result: 'enough', from: 'the ventilation check' };
  const good = item.choices.find((choice) => !choice.stops && !choice.asksReason);
  return {
    kind: 'choice',
    answer: good?.answer ?? '',
    ...(good?.names ? { who: { name: 'Tobias', at: past(3600) } } : {}),
  };
}

export function must<T>(outcome: { ok: true; value: T } | { ok: false; failure: unknown }): T {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.failure));
  return outcome.value;
}

/** Answers in order, a question every `gap` seconds, until `stopBefore` is the open item or the list is complete. */
export function walk(id: string, stopBefore?: string, gap = 5): Standing {
  let now = standing(begin(listNamed(id), context, T0));
  for (let second = gap; now.state === 'next' && now.item.id !== stopBefore; second += gap)
    now = must(answer(now.run, goodAnswer(now.item), past(second)));
  return now;
}

export const runAt = (id: string, item: string): Run => walk(id, item).run;
