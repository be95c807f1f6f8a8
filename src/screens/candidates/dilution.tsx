/** Stands wherever a number is held against a limit: adding water is no way under it. */
import type { Law } from '../../ledger/entries/local-rules';
import { dilution } from '../../reference/dilution-tables';
import { Part } from '../../ui/page';
import { sourceText } from '../source-text';
import styles from './candidates.module.css';
import { candidateWords as w } from './words';

export const DilutionPart = ({ laws }: { readonly laws: readonly Law[] }) => (
  <Part rule title={w.dilution}>
    {laws.map((law) => (
      <div key={law}>
        <p>{dilution[law].rule}</p>
        <p class={styles.quiet}>{sourceText(dilution[law])}</p>
      </div>
    ))}
  </Part>
);
