/** What a meter showed the last time. */
import type { State } from './state';

export type LastReading = { readonly answer: string; readonly unit: string | undefined; readonly at: string };

/** The newest reading of an item in a finished checklist or walk; null when there is none. */
export function lastReading(state: State, list: string, item: string): LastReading | null {
  const inLists = [...state.checklists.values()]
    .filter(({ body }) => body.checklist.id === list)
    .flatMap(({ body }) => body.answers)
    .filter(
      (answer) => answer.item === item && answer.kind === 'reading' && answer.answer !== 'not-applicable',
    )
    .map(({ answer, unit, at }) => ({ answer, unit, at }));
  const onWalks = [...state.walks.values()].flatMap(({ finished }) =>
    finished?.body.list.id === list
      ? finished.body.readings
          .filter(({ look }) => look === item)
          .map(({ value, unit }) => ({ answer: value, unit, at: finished.at }))
      : [],
  );
  return [...inLists, ...onWalks].reduce<LastReading | null>(
    (last, one) => (last && last.at > one.at ? last : one),
    null,
  );
}
