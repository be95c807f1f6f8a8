/** Addresses behind "#/": any static host serves them, from any folder. */
import { signal } from '@preact/signals';
import type { Here } from '../screens/shell';

const partsOf = (hash: string): readonly string[] =>
  hash
    .replace(/^#\/?/, '')
    .split('/')
    .filter((part) => part !== '')
    .map(decoded);

/** An address that a person mistyped is shown as it is, not a fault. */
function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch (error) {
    if (error instanceof URIError) return part;
    throw error;
  }
}

const current = signal(partsOf(window.location.hash));

/** Parts of the address, following the browser's own back and forward. */
export const path = current as { readonly value: readonly string[] } & typeof current;

/** What pages keep, by the name of their step in the history of this window. */
const kept = new Map<string, Map<string, unknown>>();
const mostKept = 50;
let steps = 0;

function keep(step: string, what: string, value: unknown): void {
  const page = kept.get(step) ?? new Map<string, unknown>();
  // Put behind the others, so that the first is the one longest not kept.
  kept.delete(step);
  kept.set(step, page.set(what, value));
  for (const oldest of kept.keys()) if (kept.size > mostKept) kept.delete(oldest);
}

/** The name of the step that the window is at; a step that was never stood on gets one. */
function stepName(): string {
  const { step } = (window.history.state ?? {}) as { readonly step?: unknown };
  if (typeof step === 'string') return step;
  steps += 1;
  // No step of before a reload has the same.
  const name = `${performance.timeOrigin} ${steps}`;
  window.history.replaceState({ step: name }, '');
  return name;
}

/** What the page that stands now keeps for coming back to it. */
export function here(): Here {
  const name = stepName();
  return {
    read: (what) => kept.get(name)?.get(what),
    keep: (what, value) => keep(name, what, value),
  };
}

// A page is drawn after its step was taken, and goes itself to where it was.
window.history.scrollRestoration = 'manual';

window.addEventListener('hashchange', () => {
  current.value = partsOf(window.location.hash);
});

/** Goes to "today", "containers/…"; `replace` leaves no step to go back to. */
export function go(to: string, how?: 'replace'): void {
  const hash = `#/${to}`;
  if (how === 'replace') {
    window.history.replaceState(null, '', hash);
    current.value = partsOf(hash);
  } else window.location.hash = hash;
}
