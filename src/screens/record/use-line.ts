/** One entry with what became of it: from the state, or from the disk where the state does not hold it any more. */
import { useEffect, useMemo, useState } from 'preact/hooks';
import { type ToldLine, toldIn, toldLines } from '../../ledger/told-lines';
import { useShell } from '../shell';

export type FoundLine =
  | { readonly is: 'reading' }
  | { readonly is: 'missing' }
  | { readonly is: 'there'; readonly line: ToldLine };

export function useLine(id: string): FoundLine {
  const { state, whole } = useShell();
  const held = useMemo(() => {
    const line = state.value.history.find(({ entry }) => entry.id === id);
    return line && toldIn(state.value, [line])[0];
  }, [state.value, id]);
  const [read, setRead] = useState<FoundLine>({ is: 'reading' });
  useEffect(() => {
    if (held) return;
    let wanted = true;
    void whole.entry(id).then((found) => {
      if (!wanted) return;
      const { entry, changes } = found.ok ? found.value : { entry: null, changes: [] };
      const [line] = entry ? toldLines([entry], changes) : [];
      setRead(line ? { is: 'there', line } : { is: 'missing' });
    });
    return () => {
      wanted = false;
    };
  }, [held, id, whole]);
  return held ? { is: 'there', line: held } : read;
}
