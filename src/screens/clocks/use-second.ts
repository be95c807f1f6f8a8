/** The moment, moved on every second while somebody counts on it. */
import { useEffect, useState } from 'preact/hooks';
import { useShell } from '../shell';

const everyMs = 1_000;

/** UTC with milliseconds. @param runs none is counted while it is false */
export function useSecond(runs: boolean): string {
  const { moment } = useShell();
  const [, again] = useState(0);
  useEffect(() => {
    if (!runs) return;
    const timer = setInterval(() => again((n) => n + 1), everyMs);
    return () => clearInterval(timer);
  }, [runs]);
  return moment();
}
