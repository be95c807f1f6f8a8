/** Whether all that Today tells is worked out; until then it is, in small steps, while the page answers. */
import { useEffect, useState } from 'preact/hooks';
import { pressingInSteps } from '../../ledger/pressing';
import { useShell } from '../shell';

/** Of so many containers it is worked out as the page is drawn. */
const few = 8;
/** How long a slice of steps takes at the most, ms, but for its last step: short beside what a finger notices. */
const sliceMs = 10;

/** Records of which it was worked out once: what an entry changes about it is quick. */
const worked = new WeakSet<object>();

export function useAllTold(): boolean {
  const { state, now, zone } = useShell();
  const [, drawAgain] = useState({});
  const here = [...state.value.containers.values()].filter(({ goneSince }) => goneSince === null).length;
  const told = here <= few || worked.has(state);
  useEffect(() => {
    if (told) {
      worked.add(state);
      return;
    }
    const steps = pressingInSteps(state.value, now.value, zone);
    let timer: ReturnType<typeof setTimeout>;
    const slice = (): void => {
      const until = performance.now() + sliceMs;
      while (performance.now() < until)
        if (steps.next().done) {
          worked.add(state);
          drawAgain({});
          return;
        }
      timer = setTimeout(slice, 0);
    };
    timer = setTimeout(slice, 0);
    return () => clearTimeout(timer);
  }, [state.value, told]);
  return told;
}
