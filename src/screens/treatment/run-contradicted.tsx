/** Readings that contradict the plan: which, what may be behind it, what to do before any more goes in. */
import type { Contradiction, Outlook } from '../../ledger/run-outlook';
import { Notice } from '../../ui/notice';
import { Part } from '../../ui/page';
import { Row, Rows } from '../../ui/row';
import { momentText } from '../amounts';
import { useShell } from '../shell';
import styles from './run.module.css';
import { causesText, findings, stepsFor } from './run-against';
import { readText } from './run-texts';
import { runWords as w } from './run-words';

/** The reading that shows it, to be looked at or corrected. */
function Reading({ one }: { readonly one: Contradiction }) {
  const { sign, now } = useShell();
  const reading = 'point' in one ? one.point?.reading : undefined;
  if (!reading) return null;
  return (
    <Row
      title={readText(reading.body, sign.value)}
      second={`${momentText(reading.at, now.value)}. ${w.against.correct}`}
      href={`#/record/entry/${reading.entryId}`}
    />
  );
}

export function Contradicted({ outlook }: { readonly outlook: Outlook }) {
  const { sign } = useShell();
  const { contradictions } = outlook;
  const newest = contradictions.at(-1);
  if (!newest) return null;
  return (
    <>
      <Notice
        mark="wrong"
        role="status"
        second={findings(contradictions, sign.value).map((finding) => (
          <span key={finding} class={styles.finding}>
            {finding}
          </span>
        ))}
      >
        {w.contradicted}
      </Notice>
      <Part title={w.against.todo}>
        <ol class={styles.steps}>
          {stepsFor(contradictions).map((step) => (
            <li key={step}>{step}</li>
          ))}
        </ol>
        <p>{causesText(contradictions)}</p>
      </Part>
      <Rows>
        <Reading one={newest} />
      </Rows>
    </>
  );
}
