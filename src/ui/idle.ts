/** So long a page is busy at the most, ms, where the browser does not say: short beside what a finger notices. */
const fewMs = 10;

/** Nothing waits longer than this for a page that always has something to do, ms. Status: reasoned. */
const longestMs = 2000;

/**
 * Calls once the page has nothing else to do.
 * @param act is given how long it may take, ms: nobody waits for the page in that time, as far as the browser can tell
 * @returns a function that calls it off
 */
export function idle(act: (leftMs: number) => void): () => void {
  if (typeof requestIdleCallback === 'undefined') {
    const timer = setTimeout(() => act(fewMs));
    return () => clearTimeout(timer);
  }
  const asked = requestIdleCallback((deadline) => act(Math.max(fewMs, deadline.timeRemaining())), {
    timeout: longestMs,
  });
  return () => cancelIdleCallback(asked);
}
