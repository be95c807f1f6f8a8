/** A marked line: a mark and what it means, where a state stands outside a list of rows. */
import type { ComponentChildren } from 'preact';
import { Mark, type MarkKind } from './marks';
import styles from './notice.module.css';

export type NoticeProps = {
  readonly mark: MarkKind;
  readonly children: ComponentChildren;
  readonly second?: ComponentChildren;
  readonly share?: number | undefined;
  /** `alert` is read out at once: for what appears in answer to a tap. */
  readonly role?: 'alert' | 'status' | 'note' | undefined;
  readonly size?: 'small' | 'margin' | undefined;
};

export const Notice = ({ mark, children, second, share, role, size = 'margin' }: NoticeProps) => (
  <div class={`${styles.notice} ${styles[size]}`} role={role}>
    <Mark kind={mark} share={share} sizePx={size === 'small' ? 24 : 36} />
    <div>
      <p class={styles.words}>{mark === 'wrong' ? <mark>{children}</mark> : children}</p>
      {second !== undefined && <p class={styles.second}>{second}</p>}
    </div>
  </div>
);
