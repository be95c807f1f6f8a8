/** Rules in words, each with where it stands and whether somebody of us read it there. */
import type { Citation } from '../../rules/candidate';
import { containerWords } from '../containers/words';
import styles from './candidates.module.css';
import { candidateWords as w } from './words';

export const Cited = ({ citation: { rule, cite, status, readIn } }: { readonly citation: Citation }) => (
  <div>
    <p>{rule}</p>
    <p class={styles.quiet}>
      {cite}: {containerWords.working.status[status]}. {readIn === undefined ? '' : w.readIn(readIn)}
    </p>
  </div>
);

export const CitedRules = ({ rules }: { readonly rules: readonly Citation[] }) => (
  <ul class={styles.list}>
    {rules.map((citation) => (
      <li key={citation.rule}>
        <Cited citation={citation} />
      </li>
    ))}
  </ul>
);
