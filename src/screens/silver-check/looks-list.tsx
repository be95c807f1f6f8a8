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

/** What takes the worth from it, and what is done next. */
export function NextSteps({ verdict }: Props) {
  const lines = [
    ...new Set([
      ...verdict.speaks.flatMap(({ seen }) => (seen.speaks === 'fits' ? [] : (seen.next ?? []))),
      ...outcomeNext[verdict.outcome],
    ]),
  ];
  return (
    <Part rule title={w.verdict.next}>
      <ul class={styles.next}>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </Part>
  );
}

export const LooksList = ({ verdict }: Props) => (
  <>
    <Part rule title={w.verdict.working}>
      <ol class={styles.looks}>
        {verdict.speaks.map((one) => (
          <Sight key={one.look.look} {...one} />
        ))}
      </ol>
    </Part>
    {verdict.unlooked.length > 0 && (
      <Part rule title={w.verdict.unlooked}>
        <ul class={styles.looks}>
          {verdict.unlooked.map(({ look, ask }) => (
            <li key={look}>{ask}</li>
          ))}
        </ul>
      </Part>
    )}
  </>
);
