/** A row with a figure: one that was worked out opens its working, one that was read or published stands as it is. */
import type { Figure } from '../quantities/figure';
import { FigureValue } from '../ui/figure-value';
import { Row } from '../ui/row';
import { shown } from './amounts';
import { useShell } from './shell';

export type FigureRowProps = {
  readonly title: string;
  readonly second?: string | undefined;
  readonly figure: Figure;
  /** Address of its working. */
  readonly href: string;
};

export function FigureRow({ title, second, figure, href }: FigureRowProps) {
  const { sign } = useShell();
  return (
    <Row
      title={title}
      {...(second === undefined ? {} : { second })}
      figure={<FigureValue {...shown(figure, sign.value)} />}
      href={href}
      equals={figure.formula !== undefined}
    />
  );
}
