/** How many things are due now, on the icon of the app where it is installed and the phone shows such a number. */
import { effect, type ReadonlySignal } from '@preact/signals';
import { dueNow } from '../ledger/pressing';
import type { State } from '../ledger/state';
import type { RecordName } from '../storage/database';
import { now, zone } from './clock';

/** A browser tab has no icon of its own. */
const installed = (): boolean =>
  window.matchMedia('(display-mode: standalone), (display-mode: fullscreen), (display-mode: minimal-ui)')
    .matches;

/** The phone may refuse, at once or later: the number is a courtesy, and Today has what it counts. */
function show(count: number): void {
  try {
    const shown = count === 0 ? navigator.clearAppBadge?.() : navigator.setAppBadge?.(count);
    shown?.catch(() => undefined);
  } catch {
    // Refused at once.
  }
}

type Counted = { readonly name: RecordName; readonly state: ReadonlySignal<State> };

/** From now on until the returned function is called. What is invented is not counted, and leaves the number as it is. */
export function badgeWhatIsDue({ name, state }: Counted): () => void {
  if (name === 'demo' || !installed()) return () => undefined;
  let last: number | undefined;
  return effect(() => {
    const count = dueNow(state.value, now.value, zone);
    if (count !== last) show(count);
    last = count;
  });
}
