/** A limit as a row: it opens where it was published, or how it was worked out. */
import { limitShown } from '../../paperwork/ground-words';
import type { Figure } from '../../quantities/figure';
import { FigureValue } from '../../ui/figure-value';
import { Row } from '../../ui/row';
import { useShell } from '../shell';
import { candidateWords as w } from './words';

export function LimitRow({ limit, href }: { readonly limit: Figure; readonly href: string }) {
  const { sign } = useShell();
  return (
    <Row
      title={w.limit(limit.sentence)}
      figure={<FigureValue {...limitShown(limit, sign.value)} />}
      href={href}
      equals={limit.formula !== undefined}
    />
  );
}
