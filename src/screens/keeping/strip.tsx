/** What is typed lives on this page only. Said where somebody types: on pages with ways out of their own. */
export function NotKeptStrip() {
  const { draftsKept } = useShell();
  if (draftsKept.value) return null;
  return (
    <aside aria-label={w.notKept}>
      <Rows>
        <Row mark={<Mark kind="unknown" />} title={w.notKept} second={w.notKeptSecond} />
      </Rows>
    </aside>
  );
}

/** On every page but the emergency cards, while nothing may be written. */
import { Mark } from '../../ui/marks';
import { Row, Rows } from '../../ui/row';
import { useShell } from '../shell';
import { notWholeWords as w } from './words';

/** @param leads where the page has its own ways out only, it is told and leads nowhere */
export function NotWholeStrip({ leads }: { readonly leads: boolean }) {
  const { trouble, path, state } = useShell();
  const [place, page] = path.value;
  // Without a workshop every other place is the page that tells it.
  const isTold = place === 'record' ? page === 'not-whole' || page === 'restore' : !state.value.workshop;
  if (trouble.value.length === 0 || isTold || place === 'sos') return null;
  const words = trouble.value.some(({ code }) => code === 'gone') ? w.stripGone : w.strip;
  return (
    <aside aria-label={words}>
      <Rows>
        <Row
          mark={<Mark kind="wrong" />}
          title={words}
          second={w.stripSecond}
          marked
          href={leads ? '#/record/not-whole' : undefined}
        />
      </Rows>
    </aside>
  );
}
