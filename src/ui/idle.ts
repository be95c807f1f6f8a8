/** Calls once the page has nothing else to do. @returns a function that calls it off */
export function idle(act: () => void): () => void {
  if (typeof requestIdleCallback === 'undefined') {
    const timer = setTimeout(act);
    return () => clearTimeout(timer);
  }
  const asked = requestIdleCallback(act);
  return () => cancelIdleCallback(asked);
}
