/** Under the ways of knowing one thing: which is used, whether two disagree, and one more. */
import { howKnownWords } from '../../chemistry/evidence-words';
import type { Evidenced } from '../../chemistry/liquor';
import type { Figure } from '../../quantities/figure';
import { Button } from '../../ui/button';
import { Notice } from '../../ui/notice';
import { shown } from '../amounts';
import { useShell } from '../shell';
import styles from './evidence-lines.module.css';
import { logWords as w } from './words';

type Props = {
  readonly name: string;
  /** Absent while nothing can be read. */
  readonly known: Evidenced<{ readonly perLitre: Figure }> | undefined;
  readonly disputed: boolean;
  /** One more can be asked for. */
  readonly more: boolean;
  readonly onMore: () => void;
};

export function WaysFoot({ name, known, disputed, more, onMore }: Props) {
  const { sign } = useShell();
  const several = known !== undefined && known.others.length > 0;
  const text = known && shown(known.best.perLitre, sign.value);
  return (
    <>
      {several && text && (
        <p class={styles.used} aria-live="polite">
          {w.usedWay(
            howKnownWords[known.best.by] ?? known.best.by,
            `${text.range ?? text.value}\u202f${text.unit ?? ''}`,
          )}
        </p>
      )}
      {disputed && (
        <Notice mark="wrong" size="small" role="status">
          {w.disagree}
        </Notice>
      )}
      {more && (
        <Button look="plain" onTap={onMore}>
          {w.anotherWay(name)}
        </Button>
      )}
    </>
  );
}
