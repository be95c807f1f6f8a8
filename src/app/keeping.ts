/** Asks the browser to keep the record, once there is something in it, where that puts no question to anybody. */
import { effect, type ReadonlySignal } from '@preact/signals';
import type { State } from '../ledger/state';
import { isWorthKeeping } from '../screens/keeping/use-keeping';
import type { RecordName } from '../storage/database';
import { asksSilently, askToKeep } from '../storage/persist';

type Kept = { readonly name: RecordName; readonly state: ReadonlySignal<State> };

/** Once for each start: a browser grants to a much used app what it refused to a new one. @returns ends it */
export function keepWhenWorthIt({ name, state }: Kept): () => void {
  if (name === 'demo' || !asksSilently()) return () => undefined;
  let asked = false;
  return effect(() => {
    if (asked || !isWorthKeeping(state.value)) return;
    asked = true;
    void askToKeep();
  });
}
