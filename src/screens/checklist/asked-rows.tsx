/** What a step still asks while it runs and after it: a row each, wherever the step is looked at. */
import { askedLater } from '../../ledger/asked-later';
import { Mark } from '../../ui/marks';
import { Row } from '../../ui/row';
import { useShell } from '../shell';
import { words } from './words';

/** @param entry the list behind the step; nothing where all of it is answered */
export function AskedRows({ entry }: { readonly entry: string | null }) {
  const { state } = useShell();
  const asked = askedLater(state.value, entry);
  return (
    <>
      {asked?.open.map(({ id, ask, when }) => (
        <Row
          key={id}
          mark={<Mark kind="unknown" />}
          title={words.later.row(when ?? 'during', ask)}
          second={words.later.notYet}
          href={`#/later/${asked.told.entryId}/${id}`}
        />
      ))}
    </>
  );
}

/** "Not asked: Mix temperature now." What ends a step says it, and lets it end. */
export function useNotAsked(entry: string | null): string | null {
  const { state } = useShell();
  const open = askedLater(state.value, entry)?.open ?? [];
  return open.length === 0 ? null : words.later.notAsked(open.map(({ ask }) => ask));
}
