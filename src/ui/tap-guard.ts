/** Water on the glass taps again where the finger was: for a moment after a change nothing counts. */
import { useRef } from 'preact/hooks';

const settleMs = 400;

/**
 * @param shown names what stands on the screen; a change starts the moment anew
 * @returns wraps a tap, so that one in that moment is ignored
 */
export function useTapGuard(shown: string, moment: () => string) {
  const since = useRef<{ readonly shown: string; readonly at: number } | null>(null);
  if (since.current?.shown !== shown) since.current = { shown, at: Date.parse(moment()) };
  const { at } = since.current;
  return <A extends readonly unknown[]>(tap: (...given: A) => void) =>
    (...given: A): void => {
      const passed = Date.parse(moment()) - at;
      // A clock that was set back must not lock the page.
      if (passed < 0 || passed >= settleMs) tap(...given);
    };
}
