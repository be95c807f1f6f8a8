/** The working of a test: each sight, what it speaks for, the reaction behind it, and who says so. */
import { sources } from '../../reference/tables';
import type { Verdict } from '../../safety/silver-check';
import { statusWords } from '../../safety/words';
import { Part } from '../../ui/page';
import { equationText } from './equation-text';
import styles from './silver-check.module.css';
import { outcomeNext, speaksText, silverWords as w } from './words';

type Props = { readonly verdict: Verdict };

function Sight({ look, seen }: Verdict['speaks'][number]) {
  const { title, edition } = sources[seen.source];
  return (
    <li class={styles.look}>
      <span class={styles.ask}>{look.ask}</span>
      <span class={styles.seen}>{`${seen.answer}: ${speaksText(look, seen)}`}</span>
      <span>{seen.says}</span>
      {seen.equation !== undefined && <span class={styles.equation}>{equationText(seen.equation)}</span>}
      <span class={styles.source}>{`${title} (${edition}): ${statusWords[seen.status]}.`}</span>
    </li>
  );
}

/** Why it is not conclusive: what leaves it open, and what nobody looked at. */
function Doubts({ verdict: { doubts, unlooked } }: Props) {
  if (doubts.length + unlooked.length === 0) return null;
  return (
    <Part rule title={w.verdict.why}>
      <ul class={styles.next}>
        {doubts.map(({ look, seen }) => (
          <li key={look.look}>{`${look.ask} ${seen.answer}. ${seen.says}`}</li>
        ))}
        {unlooked.map(({ look, ask }) => (
          <li key={look}>{`${ask} ${w.verdict.unlooked}.`}</li>
        ))}
      </ul>
    </Part>
  );
}

/** What takes the worth from it, and what is done next. */
export function NextSteps({ verdict }: Props) {
  const lines = [
    ...new Set([
      ...verdict.speaks.flatMap(({ seen }) => (seen.speaks === 'fits' ? [] : (seen.next ?? []))),
      ...outcomeNext[verdict.outcome],
    ]),
  ];
  return (
    <>
      {verdict.outcome === 'not-conclusive' && <Doubts verdict={verdict} />}
      <Part rule title={w.verdict.next}>
        <ul class={styles.next}>
          {lines.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </Part>
    </>
  );
}

export const LooksList = ({ verdict }: Props) => (
  <Part rule title={w.verdict.working}>
    <ol class={styles.looks}>
      {verdict.speaks.map((one) => (
        <Sight key={one.look.look} {...one} />
      ))}
    </ol>
  </Part>
);
