/** An extreme pH makes a mixture corrosive whatever the sums say (CLP Annex I, 3.2.3.1.2 and 3.3.3.1.2). */
import Decimal from 'decimal.js';
import type { Figure } from '../../quantities/figure';
import { clp } from '../../reference/clp-tables';
import type { Ground } from '../candidate';
import { limitOf } from './found';

const acid = limitOf('pH up to which a mixture counts as corrosive', clp.extremePh.acid, '1');
const alkali = limitOf('pH from which on a mixture counts as corrosive', clp.extremePh.alkali, '1');

/** So near to a limit is close. Our own choice, no rule of law. */
const near = new Decimal('0.5');

/** Each end of the range is put to the limit on its side. */
export function extremePh(
  pH: Figure<'1'>,
): { readonly standing: 'fires' | 'close'; readonly ground: Ground } | null {
  const below = acid.value.minus(pH.low);
  const above = pH.high.minus(alkali.value);
  const limit = below.gt(above) ? acid : alkali;
  const past = Decimal.max(below, above);
  if (past.lt(near.negated())) return null;
  const ground: Ground = { figure: pH, limit, ...(limit === acid ? { end: 'low' } : {}) };
  return { standing: past.lt(0) ? 'close' : 'fires', ground };
}
