/** What happens when two meet: what, what is right instead, and by a tap where that is from. */
import type { ComponentChildren } from 'preact';
import type { Severity } from '../../reference/reactivity-tables';
import type { Cited } from '../../safety/cited';
import type { Meeting } from '../../safety/must-not-meet/meetings';
import { codesText, effectOf, insteadOf, moreOf, rulingName } from '../../safety/must-not-meet/words';
import { statusWords } from '../../safety/words';
import { Mark } from '../../ui/marks';
import { sentence } from '../checklist/words';
import { thingInside, thingName } from '../words';
import styles from './apart.module.css';
import { apartWords as w } from './words';

const Sourced = ({ cited }: { readonly cited: Cited }) => (
  <>
    <p>{`${w.source}: ${cited.source}.`}</p>
    <p>{`${sentence(statusWords[cited.status])}.`}</p>
    {cited.seen !== undefined && <p>{`${w.seen}: ${cited.seen}`}</p>}
  </>
);

const Marked = (props: { readonly severity: Severity; readonly children: ComponentChildren }) => (
  <li class={styles.ruling}>
    <Mark kind={props.severity === 'refuse' ? 'stop' : 'wrong'} word={w.severity[props.severity]} />
    <div class={styles.said}>{props.children}</div>
  </li>
);

function Ruling({ meeting }: { readonly meeting: Meeting }) {
  const { a, b, codes, cited, severity } = meeting;
  return (
    <Marked severity={severity}>
      <p class={styles.pair}>{`${thingName(a)}, ${thingInside(b)}`}</p>
      <p class={styles.effect}>{effectOf(meeting)}</p>
      {[moreOf(meeting), insteadOf(meeting)].map((text) => text !== undefined && <p key={text}>{text}</p>)}
      <details>
        <summary>{rulingName(meeting)}</summary>
        {codes.length > 0 && <p>{w.codes(codesText(codes))}</p>}
        <Sourced cited={cited} />
      </details>
    </Marked>
  );
}

/** Cells of the chart of one weight, which have one source. */
function Cells({ cells }: { readonly cells: readonly Meeting[] }) {
  const [first] = cells;
  if (!first) return null;
  return (
    <Marked severity={first.severity}>
      {cells.map((meeting) => (
        <p key={meeting.by}>
          <b>{`${meeting.by}. `}</b>
          {effectOf(meeting)}
        </p>
      ))}
      <details>
        <summary>{w.cells(cells.length)}</summary>
        <Sourced cited={first.cited} />
      </details>
    </Marked>
  );
}

const isPrinted = ({ ruling }: Meeting): boolean => ruling.kind === 'chart' && !ruling.cell.suspected;

/** Each ruling once, whichever two things it was found for: what is refused first. */
export function Rulings({ meetings }: { readonly meetings: readonly Meeting[] }) {
  const once = meetings.filter(({ by }, i) => meetings.findIndex((other) => other.by === by) === i);
  const of = (severity: Severity) => once.filter((meeting) => meeting.severity === severity);
  return (
    <ul class={styles.rulings}>
      {[of('refuse'), of('mind')].flatMap((all) => [
        ...all.filter((m) => !isPrinted(m)).map((meeting) => <Ruling key={meeting.by} meeting={meeting} />),
        <Cells key={`cells ${all[0]?.severity}`} cells={all.filter(isPrinted)} />,
      ])}
    </ul>
  );
}
