/** What was told, term by term; what nobody told is left out. */
import styles from '../record/record.module.css';

export function Facts({ of }: { readonly of: readonly (readonly [string, string | undefined])[] }) {
  const told = of.filter(([, fact]) => fact !== undefined && fact !== '');
  return told.length === 0 ? null : (
    <dl class={styles.facts}>
      {told.map(([term, fact]) => (
        <div key={term}>
          <dt>{term}</dt>
          <dd>{fact}</dd>
        </div>
      ))}
    </dl>
  );
}
