/** What the bench tests of a container that still hold say for all that is in it, with the model fetched when there is one. */
import { useEffect, useState } from 'preact/hooks';
import type { State } from '../../ledger/state';
import type { Figure } from '../../quantities/figure';

type Said = ReadonlyMap<string, Figure<'g'>>;

const none: Said = new Map();

const notHere = (cause: unknown): void => console.warn('the model is not on the phone yet', cause);

/** By entry; worked out after the page is drawn, one after the other. */
export function useBench(state: State, containerId: string): Said {
  const [found, setFound] = useState<{ readonly of: State; readonly said: Said }>();
  useEffect(() => {
    const tests = state.containers.get(containerId)?.benchTests.filter((t) => t.staleSince === null) ?? [];
    if (tests.length === 0) return;
    let left = false;
    void import('../../ledger/before-treatment').then(async ({ benchOf }) => {
      let said: Said = none;
      for (const { entryId } of tests) {
        await new Promise((turn) => setTimeout(turn));
        if (left) return;
        const mass = benchOf(state, containerId, entryId)?.estimate.fromTest;
        if (mass) said = new Map([...said, [entryId, mass]]);
        setFound({ of: state, said });
      }
    }, notHere);
    return () => {
      left = true;
    };
  }, [state, containerId]);
  return found?.of === state ? found.said : none;
}
