/** A test strip read to the nearest of its printed steps. */
import Decimal from 'decimal.js';
import { between, type Spread } from '../quantities/figure';
import { inUnit, type Quantity } from '../quantities/quantity';
import { limits, type StripSteps, usualSpread } from './evidence';

/**
 * The colour lay nearer to this step than to its neighbours: anywhere between the middles to them, evenly by ratio, since
 * the steps of a strip grow by ratios. A middle m is a limit, so the standard uncertainty on that side is |ln(m/value)|/√3
 * (JCGM 100:2008, 4.3.7, in the logarithm). Next to nothing there is no ratio: the middle is half the step. A side whose
 * neighbour nobody gave has the usual spread of a strip.
 */
export function stripSpread({ below, above }: StripSteps): (value: Quantity<'g/L'>) => Spread {
  return (value) => {
    const usual = usualSpread('strip')(value);
    const middle = (step: Decimal): Decimal => Decimal.sqrt(step.times(value));
    const end = (step: Decimal): Decimal => value.times(middle(step).div(value).pow(limits));
    const least = below && inUnit(below, 'g/L');
    const most = above && inUnit(above, 'g/L');
    const low = least?.isZero() ? value.minus(value.div(2).times(limits)) : least && end(least);
    return between(low ?? value.minus(usual.minus), value, most ? end(most) : value.plus(usual.plus));
  };
}
