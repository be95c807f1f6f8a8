/** On every page but the emergency cards, while nothing may be written. */
import { Mark } from '../../ui/marks';
import { Row, Rows } from '../../ui/row';
import { useShell } from '../shell';
import { notWholeWords as w } from './words';

/** @param leads where the page has its own ways out only, it is told and leads nowhere */
export function NotWholeStrip({ leads }: { readonly leads: boolean }) {
  const { trouble, path } = useShell();
  const [place, page] = path.value;
  const isTold = place === 'record' && (page === 'not-whole' || page === 'restore');
  if (trouble.value.length === 0 || isTold || place === 'sos') return null;
  return (
    <aside aria-label={w.strip}>
      <Rows>
        <Row
          mark={<Mark kind="wrong" />}
          title={w.strip}
          second={w.stripSecond}
          marked
          href={leads ? '#/record/not-whole' : undefined}
        />
      </Rows>
    </aside>
  );
}
