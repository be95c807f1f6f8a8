/** Says on every page that the workshop shown is invented: nobody may take its figures for their own. */
import type { ComponentChildren } from 'preact';
import styles from './demo-ribbon.module.css';

export type DemoRibbonProps = {
  /** E.g. "Invented demo workshop". */
  readonly children: ComponentChildren;
  readonly href?: string | undefined;
  /** Words of the link, e.g. "Leave". */
  readonly leave?: string | undefined;
};

export const DemoRibbon = ({ children, href, leave }: DemoRibbonProps) => (
  <aside class={styles.ribbon} aria-label={typeof children === 'string' ? children : undefined}>
    <span>{children}</span>
    {href !== undefined && <a href={href}>{leave}</a>}
  </aside>
);
