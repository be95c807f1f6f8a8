/** Keeps the screen lit while a list is gone through, where the browser can; the list works without. */
import { useEffect } from 'preact/hooks';

async function ask(): Promise<WakeLockSentinel | null> {
  try {
    return (await navigator.wakeLock?.request('screen')) ?? null;
  } catch (error) {
    // Battery saver or a page out of view: the screen goes dark as always.
    if (error instanceof DOMException) return null;
    throw error;
  }
}

export function useStayAwake(): void {
  useEffect(() => {
    let held: WakeLockSentinel | null = null;
    let over = false;
    const hold = async (): Promise<void> => {
      if (document.visibilityState !== 'visible') return;
      const lock = await ask();
      if (over) await lock?.release();
      else held = lock;
    };
    const again = (): void => void hold();
    again();
    // The browser lets go of it whenever the page is out of view.
    document.addEventListener('visibilitychange', again);
    return () => {
      over = true;
      document.removeEventListener('visibilitychange', again);
      void held?.release();
    };
  }, []);
}

/** A tick in the hand where the phone has one; what changes on the screen says the same. */
export function tick(): void {
  navigator.vibrate?.(10);
}
