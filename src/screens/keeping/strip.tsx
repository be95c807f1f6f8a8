/** Told on top of a page, on every one but the emergency cards: that nothing is written, or that what is typed is not kept. */
import { Button } from '../../ui/button';
import { Mark } from '../../ui/marks';
import { Row, Rows } from '../../ui/row';
import { useShell } from '../shell';
import { notWholeWords as w } from './words';

/** @param leads where the page has its own ways out only, it is told and leads nowhere */
export function NotWholeStrip({ leads }: { readonly leads: boolean }) {
  const { trouble, outdated, path, state } = useShell();
  const [place, page] = path.value;
  // Without a workshop every other place is the page that tells it.
  const isTold = place === 'record' ? page === 'not-whole' || page === 'restore' : !state.value.workshop;
  if (trouble.value.length === 0 || outdated.value || isTold || place === 'sos') return null;
  const words = trouble.value.some(({ code }) => code === 'gone') ? w.stripGone : w.strip;
  return (
    <aside aria-label={words}>
      <Rows>
        <Row
          mark={<Mark kind="wrong" />}
          title={words}
          second={leads ? w.stripSecond : w.stripSecondAtWork}
          marked
          href={leads ? '#/record/not-whole' : undefined}
        />
      </Rows>
    </aside>
  );
}

/** Where a restore has just ended, its own page leads to the record. */
export function OutdatedStrip() {
  const { outdated, loadAnew, path } = useShell();
  const [place, page] = path.value;
  if (!outdated.value || place === 'sos' || (place === 'record' && page === 'restore')) return null;
  return (
    <aside aria-label={w.outdated}>
      <Rows>
        <Row
          mark={<Mark kind="wrong" />}
          title={w.outdated}
          second={w.outdatedSecond}
          marked
          below={
            <Button look="primary" onTap={loadAnew}>
              {w.loadAnew}
            </Button>
          }
        />
      </Rows>
    </aside>
  );
}

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

/** The form of this page was changed in another window. What stands on either page is lost by nothing but a tap here. */
export function ElsewhereStrip() {
  const { changedElsewhere } = useShell();
  const changed = changedElsewhere.value;
  if (!changed) return null;
  const { there, takeOver } = changed;
  return (
    <aside aria-label={w.elsewhere[there]}>
      <Rows>
        <Row
          mark={<Mark kind="unknown" />}
          title={w.elsewhere[there]}
          second={w.elsewhereSecond[there]}
          below={<Button onTap={takeOver}>{w.takeOver[there]}</Button>}
        />
      </Rows>
    </aside>
  );
}
