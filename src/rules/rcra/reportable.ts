/** How much of a substance or a waste code, let out within 24 hours, is to be reported (40 CFR 302.4). */
import { constant } from '../../chemistry/constants';
import type { Figure } from '../../quantities/figure';
import { rcra } from '../../reference/rcra-tables';

/** null: the list here does not name it, which is no word on whether the law does. */
export function reportableQuantity(named: string): Figure<'lb'> | null {
  const { values, unit, source, status } = rcra.reportable;
  const value = values[named];
  if (value === undefined) return null;
  return constant(
    `rcra/reportable/${named}`,
    `Reportable quantity of ${named}`,
    { value, unit, uncertainty: '0', source, status },
    unit,
  );
}
