/** Told of an entry that is not as it was sealed: worked out from the entry itself, whatever was found or decided before. */
import { useMemo } from 'preact/hooks';
import type { Entry } from '../../ledger/entries/entry';
import type { ToldLine } from '../../ledger/told-lines';
import { wrongInItself } from '../../ledger/verify';
import { Button } from '../../ui/button';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { useGoneOnWithout } from '../keeping/gone-on-without';
import { useShell } from '../shell';
import { asSealedWords as w } from './entry-words';

export const useIsAsSealed = (entry: Entry): boolean => useMemo(() => wrongInItself(entry) === null, [entry]);

/** On top of its page: what it says, or what counts of it now, is in doubt. */
export function NotAsSealed({ line }: { readonly line: ToldLine }) {
  const isAsSealed = useIsAsSealed(line.entry);
  const areItsChanges = useMemo(
    () => line.changes.every(({ entry }) => wrongInItself(entry) === null),
    [line.changes],
  );
  if (isAsSealed && areItsChanges) return null;
  return (
    <Part>
      <Notice mark="wrong" role="note" second={isAsSealed ? w.changeSecond : w.second}>
        {isAsSealed ? w.change : w.title}
      </Notice>
      <Button href="#/record/restore">{w.restore}</Button>
    </Part>
  );
}

/** Whether one that cannot be read is there all the same. */
export function useIsUnreadable(id: string): boolean {
  const { corrupted, trouble } = useShell();
  const without = useGoneOnWithout();
  return (
    corrupted.value.some((one) => one.id === id) ||
    without.some((one) => one.what === 'entry' && one.id === id) ||
    trouble.value.some(
      (one) => one.code === 'damaged' && one.wrong.some((wrong) => wrong.what === 'entry' && wrong.id === id),
    )
  );
}
