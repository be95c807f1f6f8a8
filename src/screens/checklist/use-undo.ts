/** What was done last and can be taken back still; null after a while. */
import { useEffect, useState } from 'preact/hooks';

const undoMs = 5_000;

export function useUndo<T extends object>() {
  const [undo, setUndo] = useState<T | null>(null);
  useEffect(() => {
    if (!undo) return;
    const timer = setTimeout(() => setUndo(null), undoMs);
    return () => clearTimeout(timer);
  }, [undo]);
  return [undo, setUndo] as const;
}
