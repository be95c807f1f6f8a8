/** The index of the record as it is now: made in small parts, so that the page stays at hand, and once for each state. */
import { useEffect, useState } from 'preact/hooks';
import type { DayNumber } from '../../ledger/asked-days';
import { type IndexPart, indexPart, newestFirst } from '../../ledger/find';
import { type FoundRow, foundRows } from '../../ledger/found-rows';
import { putAwayRows } from '../../ledger/put-away';
import type { State } from '../../ledger/state';
import { useShell } from '../shell';
import { say } from './say';

/** Where the phone is, as every day on a screen. */
function dayOf(at: string): DayNumber {
  const date = new Date(at);
  return date.getFullYear() * 10_000 + (date.getMonth() + 1) * 100 + date.getDate();
}

const rowsAPart = 250;

/** So long, in ms, is worked at a time: the rest of a frame is for the page. */
const slice = 6;

export type Index = { readonly parts: readonly IndexPart[]; readonly percent: number };

/** Gives how far it is, in percent, and at last the index. */
function* indexing(state: State, today: DayNumber): Generator<number, readonly IndexPart[]> {
  const rows: FoundRow[] = [];
  const here = new Set<string>();
  for (const { row, of } of foundRows(state)) {
    rows.push(row);
    here.add(row.id);
    yield (50 * rows.length) / of;
  }
  const sorted = newestFirst([...rows, ...putAwayRows(state).filter(({ id }) => !here.has(id))]);
  const parts: IndexPart[] = [];
  for (let at = 0; at < sorted.length; at += rowsAPart) {
    yield 50 + (50 * at) / sorted.length;
    parts.push(indexPart(sorted.slice(at, at + rowsAPart), { say, dayOf, today }));
  }
  return parts;
}

type Made = { readonly state: State; readonly today: DayNumber; readonly parts: readonly IndexPart[] };

/** Outlives the page: who comes back finds it made. */
let last: Made | null = null;

/** `parts` are those of the state before while the new ones are made; none on the first time. */
export function useIndex(): Index {
  const { state, now } = useShell();
  const of = state.value;
  const today = dayOf(now.value);
  const [made, setMade] = useState(last);
  const [percent, setPercent] = useState(0);
  const ready = made?.state === of && made.today === today;
  useEffect(() => {
    if (ready) return;
    const work = indexing(of, today);
    let timer: ReturnType<typeof setTimeout>;
    const goOn = (): void => {
      const until = performance.now() + slice;
      let step = work.next();
      while (!step.done && performance.now() < until) step = work.next();
      if (step.done) {
        last = { state: of, today, parts: step.value };
        setMade(last);
      } else {
        setPercent(Math.floor(step.value));
        timer = setTimeout(goOn);
      }
    };
    timer = setTimeout(goOn);
    return () => clearTimeout(timer);
  }, [of, today, ready]);
  return { parts: made?.parts ?? [], percent: ready ? 100 : percent };
}
