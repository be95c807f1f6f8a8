/** A page that comes back into view, thaws, or is shown again from the browser's memory may have slept through whatever was said to it. */
export function onComingBack(listen: () => void): () => void {
  if (typeof document === 'undefined') return () => undefined;
  const isSeen = (): void => {
    if (document.visibilityState === 'visible') listen();
  };
  document.addEventListener('visibilitychange', isSeen);
  document.addEventListener('resume', listen);
  window.addEventListener('pageshow', listen);
  return () => {
    document.removeEventListener('visibilitychange', isSeen);
    document.removeEventListener('resume', listen);
    window.removeEventListener('pageshow', listen);
  };
}
