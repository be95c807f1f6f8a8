/** The way back to a set that is being put together, from the page on which one of its gaps is mended. */
import * as z from 'zod/mini';
import { Button } from '../../ui/button';
import { useShell } from '../shell';
import { setHref } from './set-address';
import { setWords as w } from './set-words';

const Left = z.object({ set: z.string(), count: z.int() });

const name = 'papers-left';

/** `leave` is told as a gap is opened; `back` once the set is looked at again, or the papers are left. */
export function useWayBack() {
  const { draft } = useShell();
  return {
    leave: (set: string, count: number): void => draft.keep(name, { set, count }),
    back: (): void => draft.drop(name),
  };
}

/** Nothing where no set was left, on the pages of the papers, and where somebody needs help. */
export function WayBack() {
  const { draft, path } = useShell();
  const [place = ''] = path.value;
  const left = ['papers', 'sos'].includes(place) ? null : draft.read(name, Left);
  return (
    left && (
      <aside aria-label={w.back}>
        <Button href={setHref(left.set)} second={w.backSecond(left.count)}>
          {w.back}
        </Button>
      </aside>
    )
  );
}
