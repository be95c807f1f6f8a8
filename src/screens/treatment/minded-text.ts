/** What is to be minded of a metal, with how much of it stays by the figures, never by a rule of thumb beside them. */
import type { WhichPh } from '../../chemistry/treatment/which-ph';
import type { Minded } from '../../ledger/before-treatment';
import type { DecimalSign } from '../../quantities/format';
import type { Metal } from '../../reference/tables';
import { spanAt } from './decades';
import { aimText } from './pot-plot';
import { treatmentWords as w } from './words';

function leftText(which: WhichPh | undefined, metal: Metal, pH: number, sign: DecimalSign): string {
  const span = which && spanAt(which, metal, pH, sign);
  return span ? w.baseLeaves(aimText(pH, sign), `${span.value}\u202f${span.unit}`) : w.measureAfter;
}

/** @param which absent where the model does not tell */
export function mindedText(
  what: Minded,
  which: WhichPh | undefined,
  pH: number | undefined,
  sign: DecimalSign,
): string {
  const left = (metal: Metal): string =>
    pH === undefined ? w.measureAfter : leftText(which, metal, pH, sign);
  if (what === 'silver') return w.mindedLeft.silver(left('Ag'));
  if (what === 'lead') return w.mindedLeft.lead(left('Pb'));
  return w.minded[what];
}
