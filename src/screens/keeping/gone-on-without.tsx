/** What somebody decided to go on without: shown until it comes back. */
import { gapLength } from '../../ledger/chains';
import type { Without } from '../../storage/marker';
import { Mark } from '../../ui/marks';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { momentText } from '../amounts';
import { useShell } from '../shell';
import { notWholeWords as w } from './words';

export function withoutText(one: Without): string {
  switch (one.what) {
    case 'record':
      return w.without.record(one.entries);
    case 'missing':
      return w.without.missing(gapLength(one));
    case 'lost':
      return w.without.lost(one.entries);
    case 'entry':
      return w.without.entry(one.counter);
    case 'head':
      return w.without.head;
  }
}

export function useGoneOnWithout(): readonly Without[] {
  const found = useShell().marker();
  return found.state === 'there' ? found.marker.without : [];
}

/** On top of all entries: that some are not among them, or not as they were written. */
export function HistoryLacks() {
  // The note of a last entry is no entry.
  const [first, ...more] = useGoneOnWithout().filter(({ what }) => what !== 'head');
  if (!first) return null;
  return (
    <Rows>
      <Row
        mark={<Mark kind="unknown" />}
        title={w.historyLacks(withoutText(first), more.length)}
        second={w.historyLacksSecond}
        href="#/record/not-whole"
      />
    </Rows>
  );
}

/** Nothing unless what can be read of a damaged entry may be in a figure. */
export function FiguresInDoubtRow() {
  if (!useGoneOnWithout().some(({ what }) => what === 'entry')) return null;
  return (
    <Row
      mark={<Mark kind="unknown" />}
      title={w.doubtTitle}
      second={w.doubtSecond}
      href="#/record/not-whole"
    />
  );
}

export function GoneOnWithout() {
  const { now } = useShell();
  const without = useGoneOnWithout();
  if (without.length === 0) return null;
  return (
    <>
      <Part rule title={w.withoutTitle}>
        <p>{w.withoutSecond}</p>
      </Part>
      <Part width="edge">
        <Rows label={w.withoutTitle}>
          {without.map((one, at) => (
            <Row
              key={`${one.at} ${at}`}
              mark={<Mark kind="unknown" />}
              title={withoutText(one)}
              second={w.withoutWhen(momentText(one.at, now.value))}
              href={one.what === 'entry' && one.id !== null ? `#/record/entry/${one.id}` : undefined}
            />
          ))}
        </Rows>
      </Part>
    </>
  );
}
