/** The line at the top: the hour, and that there is no network (which is no fault here). */
import styles from './page.module.css';

export type TopLineProps = { readonly clock: string; readonly network?: string | undefined };

export const TopLine = ({ clock, network }: TopLineProps) => (
  <p class={styles.top}>
    <span>{clock}</span>
    {network !== undefined && <span>{network}</span>}
  </p>
);
