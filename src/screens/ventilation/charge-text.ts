/** A charge in one line, as it was written. */
import { type DecimalSign, formatWritten } from '../../quantities/format';
import type { Written } from '../../quantities/written';
import { metals } from '../../reference/tables';
import type { WrittenCharge } from '../../safety/ventilation/station-schema';
import { ventilationWords as w } from './words';

/** @example "50 g copper; 1.0 L of 7.9 mol/L; 2 h" */
export function chargeText(charge: WrittenCharge, sign: DecimalSign): string {
  if (charge.step === 'acid-dilution' || charge.step === 'filtration') return w.steps[charge.step];
  const text = (of: Written) => `${formatWritten(of, sign)}\u202f${of.unit}`;
  const { volume, strength } = charge.acid;
  const told = charge.step === 'leach' ? charge.metals : undefined;
  const masses =
    told?.known === 'total'
      ? [`${text(told.mass)} ${w.someMetal}`]
      : (told?.masses.map(({ metal, mass }) => `${text(mass)} ${metals[metal].name}`) ?? []);
  return [
    ...(told ? [masses.join(', ')] : []),
    w.useAcid(text(volume), text(strength)),
    text(charge.release),
  ].join('; ');
}
