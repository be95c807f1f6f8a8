/**
 * Every entry about one thing, the newest first. What the state still holds is there at once; where the record on the disk
 * is longer, the rest is looked for in all of it.
 */
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { gathering, linesAbout, type Thing } from '../../ledger/entries-about';
import { type ToldLine, toldIn, toldLines } from '../../ledger/told-lines';
import type { StoreFailure } from '../../storage/failure';
import type { HowFar } from '../../storage/pages-of-entries';
import { Button } from '../../ui/button';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { ProgressBar } from '../../ui/progress-bar';
import { Row, Rows } from '../../ui/row';
import { Frame } from '../frame';
import { LongRows } from '../long-rows';
import { useShell } from '../shell';
import { failureWords, words } from '../words';
import { HistoryDoors } from './doors';
import { entryWords as w } from './entry-words';
import { percentOf } from './how-far';
import { lineRow } from './line';

/** How many entries lie on the disk that the state does not hold; none while that is not known. */
function useOlder(): number {
  const { state, corrupted, whole } = useShell();
  const [count, setCount] = useState(0);
  const held = state.value.log.length + corrupted.value.length;
  // Counted again when something was added.
  useEffect(() => {
    void whole.count().then((counted) => {
      if (counted.ok) setCount(counted.value);
    });
  }, [whole, held]);
  return Math.max(0, count - held);
}

type Search =
  | { readonly is: 'not-begun' }
  | { readonly is: 'looking'; readonly howFar: HowFar }
  | { readonly is: 'done'; readonly lines: readonly ToldLine[] }
  | { readonly is: 'failed'; readonly failure: StoreFailure };

function useSearch(thing: Thing) {
  const { whole } = useShell();
  const [search, setSearch] = useState<Search>({ is: 'not-begun' });
  const running = useRef<AbortController | null>(null);
  const cancel = () => {
    running.current?.abort();
    running.current = null;
    setSearch({ is: 'not-begun' });
  };
  useEffect(() => () => running.current?.abort(), []);
  const begin = async (): Promise<void> => {
    const controller = new AbortController();
    const { signal } = controller;
    running.current = controller;
    setSearch({ is: 'looking', howFar: { done: 0, of: 1 } });
    const tell = (howFar: HowFar): void => {
      if (!signal.aborted) setSearch({ is: 'looking', howFar });
    };
    const found = await whole.lookThrough({ ...gathering(thing), tell, signal });
    if (signal.aborted) return;
    setSearch(
      found.ok
        ? { is: 'done', lines: toldLines(found.value.entries, found.value.changes) }
        : { is: 'failed', failure: found.failure },
    );
  };
  return { search, begin, cancel };
}

function Older({ older, search, begin, cancel }: ReturnType<typeof useSearch> & { readonly older: number }) {
  if (search.is === 'failed')
    return (
      <Notice mark="unknown" role="alert">
        {failureWords(search.failure)}
      </Notice>
    );
  if (search.is === 'looking')
    return (
      <>
        <ProgressBar name={w.looking} says={w.looking} percent={percentOf(search.howFar)} />
        <Button onTap={cancel}>{w.stopLooking}</Button>
      </>
    );
  return search.is === 'done' ? (
    <p role="status">{w.allOfIt}</p>
  ) : (
    <Button second={w.lookThroughSecond(older)} onTap={() => void begin()}>
      {w.lookThrough}
    </Button>
  );
}

type ThingHistoryProps = { readonly thing: Thing; readonly title: string; readonly back: string };

export function ThingHistory({ thing, title, back }: ThingHistoryProps) {
  const { state } = useShell();
  const older = useOlder();
  const looked = useSearch(thing);
  const held = useMemo(
    () => toldIn(state.value, linesAbout(state.value, thing)),
    [state.value, thing.is, thing.id],
  );
  const lines = looked.search.is === 'done' ? looked.search.lines : held;
  const newestFirst = useMemo(() => lines.toReversed(), [lines]);
  return (
    <Frame title={title} second={w.thingSecond} ways={[{ label: words.back, href: back }]}>
      <Part rule width="edge">
        {newestFirst.length === 0 ? (
          <Rows>
            <Row title={older > 0 && looked.search.is !== 'done' ? w.longOver : w.nothingOfIt} />
          </Rows>
        ) : (
          <LongRows of={newestFirst} row={lineRow} label={title} />
        )}
      </Part>
      {older > 0 && (
        <Part>
          <Older older={older} {...looked} />
        </Part>
      )}
      <Part rule width="edge">
        <HistoryDoors />
      </Part>
    </Frame>
  );
}
