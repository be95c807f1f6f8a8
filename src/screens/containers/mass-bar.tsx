/** A mass of base as a range: the low end for the first portions, the high end for buying. */
import type { Figure } from '../../quantities/figure';
import { printed } from '../../quantities/format';
import { RangeBar } from '../../ui/range-bar';
import { useShell } from '../shell';
import { words } from '../words';
import { containerWords as w } from './words';

export function MassBar({ mass }: { readonly mass: Figure<'g'> }) {
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
      lowUse={w.firstPortions}
      highUse={w.buy}
      likelyShare={share}
      name={`${p.low} ${words.to} ${p.high} ${p.unit}; ${p.value} ${p.unit}`}
    />
  );
}
