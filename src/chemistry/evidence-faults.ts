/**
 * Evidence that contradicts itself: caught at the form, and taken for not determined where it is in the record all the
 * same, by a correction or from elsewhere.
 */
import Decimal from 'decimal.js';
import { inUnit } from '../quantities/quantity';
import type { Unit } from '../quantities/unit';
import type { Written } from '../quantities/written';
import { acidStrength } from './acid-strength';
import type { MetalEvidence } from './evidence';
import type { AcidEvidence } from './free-acid';
import type { WrittenMoisture } from './residue';

export type EvidenceFault =
  | { readonly code: 'after-more-than-before' }
  | { readonly code: 'high-below-low' }
  | { readonly code: 'residue-above-feed' }
  /** The step beside the one that was read is not beside it. */
  | { readonly code: 'steps-out-of-order' }
  /** One end a litre, the other in all. */
  | { readonly code: 'units-differ' }
  | { readonly code: 'ph-out-of-range' }
  | { readonly code: 'over-hundred-percent' }
  | { readonly code: 'dry-above-wet' }
  | { readonly code: 'nothing-in-sample' }
  | {
      readonly code: 'strength-outside-table';
      readonly low: string;
      readonly high: string;
      readonly unit: string;
    };

const isLess = <U extends Unit>(a: Written<Unit>, b: Written<Unit>, unit: U): boolean =>
  inUnit(a, unit).lt(inUnit(b, unit));

const unitOf = (written: { readonly unit: string }): 'g/L' | 'g' =>
  written.unit.endsWith('/L') ? 'g/L' : 'g';

function stripFault({ concentration, steps }: Extract<MetalEvidence, { by: 'strip' }>): EvidenceFault | null {
  const { below, above } = steps ?? {};
  const inOrder =
    (!below || isLess(below, concentration, 'g/L')) && (!above || isLess(concentration, above, 'g/L'));
  return inOrder ? null : { code: 'steps-out-of-order' };
}

/** What is wrong with a metal's evidence; null when it can be true. */
export function metalFault(found: MetalEvidence): EvidenceFault | null {
  if (found.by === 'copper-weighed' && isLess(found.before, found.after, 'g'))
    return { code: 'after-more-than-before' };
  if (found.by === 'feed-minus-residue' && isLess(found.feed, found.residue, 'g'))
    return { code: 'residue-above-feed' };
  if (found.by === 'strip') return stripFault(found);
  if (found.by === 'assumed') {
    const unit = unitOf(found.low);
    if (unit !== unitOf(found.high)) return { code: 'units-differ' };
    if (isLess(found.high, found.low, unit)) return { code: 'high-below-low' };
  }
  return null;
}

/** What is wrong with the evidence of free acid; null when it can be true. */
export function acidFault(found: AcidEvidence): EvidenceFault | null {
  switch (found.by) {
    case 'assumed':
      return isLess(found.high, found.low, 'mol/L') ? { code: 'high-below-low' } : null;
    case 'ph':
      return new Decimal(found.ph.value).gt(14) ? { code: 'ph-out-of-range' } : null;
    case 'titration-volumes':
      return inUnit(found.sample, 'L').isZero() ? { code: 'nothing-in-sample' } : null;
    case 'charged-minus-consumed': {
      const strength = acidStrength(found.strength, 'check');
      if (strength.ok) return null;
      const { low, high } = strength.failure;
      return { code: 'strength-outside-table', low, high, unit: found.strength.unit };
    }
    default:
      return null;
  }
}

/** What is wrong with a moisture; null when it can be true. */
export function moistureFault(found: WrittenMoisture): EvidenceFault | null {
  switch (found.by) {
    case 'dried-sample':
      if (inUnit(found.wet, 'g').isZero()) return { code: 'nothing-in-sample' };
      return isLess(found.wet, found.dry, 'g') ? { code: 'dry-above-wet' } : null;
    case 'stated':
      return new Decimal(found.percent.value).gt(100) ? { code: 'over-hundred-percent' } : null;
    case 'assumed':
      if (new Decimal(found.high.value).gt(100)) return { code: 'over-hundred-percent' };
      return isLess(found.high, found.low, '%') ? { code: 'high-below-low' } : null;
    case 'not-determined':
      return null;
  }
}
