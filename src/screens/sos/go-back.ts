import type { Shell } from '../shell';

/** To where the person came from; opened from outside, to the start. */
export function goBack(go: Shell['go']): void {
  if (window.history.length > 1) window.history.back();
  else go('today', 'replace');
}
