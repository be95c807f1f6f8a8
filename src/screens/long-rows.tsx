/**
 * Rows of a list that may be long: those of the first screens at once, the rest in helpings while nothing else is to be done, until
 * all of them are there for eye, keyboard and screen reader. Who comes back finds as many as reach to where they were.
 */
import { Component, type ComponentChildren } from 'preact';
import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import { Rows } from '../ui/row';
import { useShell } from './shell';

/** About as many as a phone shows at once, and few enough to be drawn between two frames. */
const helping = 10;

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

/** Calls once the page rests. @returns a function that calls it off */
function whenIdle(act: () => void): () => void {
  if (typeof requestIdleCallback === 'undefined') {
    const timer = setTimeout(act, 30);
    return () => clearTimeout(timer);
  }
  const handle = requestIdleCallback(act, { timeout: 500 });
  return () => cancelIdleCallback(handle);
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
  useEffect(
    () => (shown < helpings.length ? whenIdle(() => setDrawn({ of, shown: shown + 1 })) : undefined),
    [shown, helpings, of],
  );
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
