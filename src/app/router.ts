/** Addresses behind "#/": any static host serves them, from any folder. */
import { signal } from '@preact/signals';

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
