/** How many things are due now, on the icon of the app where it is installed and the phone shows such a number. */
import { effect, type ReadonlySignal } from '@preact/signals';
import { countingDue } from '../ledger/pressing';
import type { State } from '../ledger/state';
import type { RecordName } from '../storage/database';
import { now, zoneNow } from './clock';

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

/** So long the page has for itself after something new, ms: it is drawn before anything is counted. */
const restMs = 1000;

/** From now on until the returned function is called, a while after each change. What is invented is not counted, and leaves the number as it is. */
export function badgeWhatIsDue({ name, state }: Counted): () => void {
  if (name === 'demo' || !installed()) return () => undefined;
  let last: number | undefined;
  return effect(() => {
    const counting = countingDue(state.value, now.value, zoneNow());
    const next = (): void => {
      const { done, value } = counting.next();
      if (!done) timer = setTimeout(next, 0);
      else if (value !== last) {
        show(value);
        last = value;
      }
    };
    let timer = setTimeout(next, restMs);
    return () => clearTimeout(timer);
  });
}
