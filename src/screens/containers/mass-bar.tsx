/** A mass of base as a range: the low end for the first portions, the high end for buying. */
import type { Figure } from '../../quantities/figure';
import { printed } from '../../quantities/format';
import { RangeBar } from '../../ui/range-bar';
import { useShell } from '../shell';
import { words } from '../words';
import { containerWords as w } from './words';

type Props = {
  readonly mass: Figure<'g'>;
  /** What the ends are for, where it is not a base to buy. */
  readonly lowUse?: string;
  readonly highUse?: string;
};

export function MassBar({ mass, lowUse = w.firstPortions, highUse = w.buy }: Props) {
  const { sign } = useShell();
  const p = printed(mass, sign.value);
  if (p.low === undefined || p.high === undefined) return null;
  const share = mass.value.minus(mass.low).div(mass.high.minus(mass.low)).toNumber();
  return (
    <RangeBar
      low={p.low}
      likely={p.value}
      high={p.high}
      unit={p.unit}
      lowUse={lowUse}
      highUse={highUse}
      likelyShare={share}
      name={`${p.low} ${words.to} ${p.high} ${p.unit}; ${p.value} ${p.unit}`}
    />
  );
}
