/**
 * Rows of a list that may be long: those of the first screens at once, the rest in helpings while nothing else is to be done, until
 * all of them are there for eye, keyboard and screen reader. Who comes back finds as many as reach to where they were.
 */
import { Component, type ComponentChildren } from 'preact';
import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import { idle } from '../ui/idle';
import { Rows } from '../ui/row';
import { useShell } from './shell';

/** About as many as a phone shows at once, and few enough to be drawn between two frames. */
const helping = 8;

type HelpingProps<T> = { readonly of: readonly T[]; readonly row: (one: T) => ComponentChildren };

/** Drawn again only with the list itself, not when another helping comes. */
class Helping<T> extends Component<HelpingProps<T>> {
  override shouldComponentUpdate({ of, row }: HelpingProps<T>): boolean {
    return of !== this.props.of || row !== this.props.row;
  }
  override render({ of, row }: HelpingProps<T>) {
    return of.map(row);
  }
}

/** So long, ms, nothing is drawn after a finger moved the page or wrote something: what it does comes first. */
const pause = 250;

let lastMoved = Number.NEGATIVE_INFINITY;

/**
 * Calls once the page rests, or at once where the end of what is drawn comes near.
 * @returns a function that calls it off
 */
function whenAtRest(list: HTMLElement | null, act: () => void, first: boolean): () => void {
  let off = false;
  let timer: ReturnType<typeof setTimeout>;
  const run = (): void => {
    if (off) return;
    off = true;
    window.removeEventListener('scroll', moved);
    act();
  };
  const wait = (): void => {
    clearTimeout(timer);
    timer = setTimeout(() => idle(run), pause);
  };
  function moved(): void {
    lastMoved = performance.now();
    const below = (list?.getBoundingClientRect().bottom ?? 0) - window.innerHeight;
    if (below < window.innerHeight) run();
    else wait();
  }
  window.addEventListener('scroll', moved, { passive: true });
  if (first || performance.now() - lastMoved < pause) wait();
  else idle(run);
  return () => {
    off = true;
    clearTimeout(timer);
    window.removeEventListener('scroll', moved);
  };
}

/** How many rows lie above the lower edge of the window. */
function reached(list: HTMLElement): number {
  let [low, high] = [0, list.children.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    const top = list.children[middle]?.getBoundingClientRect().top ?? 0;
    if (top < window.innerHeight) low = middle + 1;
    else high = middle;
  }
  return low;
}

type LongRowsProps<T> = HelpingProps<T> & {
  /** Names the list, for screen readers and for coming back to it. */
  readonly label: string;
  /** Another list is another answer: it begins with few rows again. Otherwise it is the same list, a little other. */
  readonly anew?: boolean;
};

/** @param props.row gives a `<Row>` with a key */
export function LongRows<T>({ of, row, label, anew = false }: LongRowsProps<T>) {
  const { here } = useShell();
  const [kept] = useState(here);
  const around = useRef<HTMLDivElement>(null);
  const helpings = useMemo(
    () =>
      Array.from({ length: Math.ceil(of.length / helping) }, (_, i) =>
        of.slice(i * helping, (i + 1) * helping),
      ),
    [of],
  );
  const [drawn, setDrawn] = useState(() => {
    const before = kept.read(`rows of ${label}`);
    return { of, shown: typeof before === 'number' ? Math.ceil(before / helping) + 1 : 1 };
  });
  const shown = anew && drawn.of !== of ? 1 : drawn.shown;
  useLayoutEffect(
    () => () => {
      const list = around.current?.querySelector('ul');
      if (list) kept.keep(`rows of ${label}`, reached(list));
    },
    [kept, label],
  );
  useEffect(() => {
    if (shown >= helpings.length) return;
    const more = () => setDrawn({ of, shown: shown + 1 });
    // The first ones wait, so that typing and the page that was just opened are not held up; then one follows the other.
    return whenAtRest(around.current, more, shown === 1);
  }, [shown, helpings, of]);
  return (
    <div ref={around}>
      <Rows label={label} long>
        {helpings.slice(0, shown).map((some, i) => (
          <Helping key={i} of={some} row={row} />
        ))}
      </Rows>
    </div>
  );
}
