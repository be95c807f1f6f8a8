/** Whether all that Today tells is worked out; until then it is, in small steps, whenever the page has nothing else to do. */
import { useEffect, useState } from 'preact/hooks';
import { pressingInSteps } from '../../ledger/pressing';
import { idle } from '../../ui/idle';
import { useShell } from '../shell';

/** Of so many containers it is worked out as the page is drawn. */
const few = 8;
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
    let callOff: () => void;
    const slice = (leftMs: number): void => {
      const until = performance.now() + leftMs;
      while (performance.now() < until)
        if (steps.next().done) {
          worked.add(state);
          drawAgain({});
          return;
        }
      callOff = idle(slice);
    };
    callOff = idle(slice);
    return () => callOff();
  }, [state.value, told]);
  return told;
}
