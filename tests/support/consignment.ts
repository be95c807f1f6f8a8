/** Consignments for tests: shares in per cent, exact or with their two ends. */
import { between, exact, type Figure, given } from '../../src/quantities/figure';
import type { Unit } from '../../src/quantities/unit';
import type { SubstanceId } from '../../src/reference/substances-tables';
import type { Consignment } from '../../src/rules/transport/consignment';

type Value = string | readonly [low: string, high: string];

export function stated<U extends Unit>(origin: string, value: Value, unit: U): Figure<U> {
  const [low, high] = typeof value === 'string' ? [value, value] : value;
  const spread = low === high ? exact : between(low, low, high);
  return given({ origin, sentence: origin, value: low, unit, how: 'stated', spread });
}

type Told = Omit<Partial<Consignment>, 'mixture'> & {
  readonly state?: 'liquid' | 'solid' | 'sludge';
  readonly pH?: Value;
  readonly shares?: Partial<Record<SubstanceId, Value>>;
  readonly open?: readonly SubstanceId[];
};

export function consignment({ state = 'liquid', pH, shares = {}, open = [], ...rest }: Told): Consignment {
  const all = Object.entries(shares) as [SubstanceId, Value][];
  return {
    rcraCodes: [],
    ...rest,
    mixture: {
      state,
      aqueous: state === 'liquid',
      ...(pH === undefined ? {} : { pH: stated('pH', pH, '1') }),
      shares: new Map(all.map(([id, share]) => [id, stated(id, share, '%')])),
      open,
    },
  };
}
