/** How far the dose of the model may be off: its constants, and the turns a pot may take that the fit does not try one by one. */
import Decimal from 'decimal.js';
import { between, type Figure, given } from '../../quantities/figure';
import { liquor } from '../../reference/tables';
import { sourceOf } from '../constants';
import { doseTo } from './dose-to';
import { baseBefore, likely, likelyTurn, type TreatedPot, type Turn, turnsOf } from './treated-pot';

/**
 * The ways in which a pot may come down of which each has a curve of another shape, all else being likely: those of its copper, and
 * after a stage before, where most of the copper is down already, those of its nickel too.
 */
export const shapes = (pot: TreatedPot): readonly Turn[] =>
  turnsOf(pot).filter(
    ({ nickel, gas }) => gas === likelyTurn.gas && (isGoneOn(pot) || nickel === likelyTurn.nickel),
  );

/** The ways that a pot may take beside those. */
export const besideShapes = (pot: TreatedPot): readonly Turn[] =>
  turnsOf(pot).filter(
    ({ copperFirst, nickel }) =>
      copperFirst === likelyTurn.copperFirst && (!isGoneOn(pot) || nickel === likelyTurn.nickel),
  );

const isGoneOn = ({ parts }: TreatedPot): boolean => parts.some(({ of }) => baseBefore(of));

/**
 * At a pH, over some turns, the likely one first. A turn in which the pH is not reached tells nothing of the base to it.
 */
export function modelOff(pot: TreatedPot, pH: number, sentence: string, turns: readonly Turn[]): Figure<'1'> {
  const { modelDose } = liquor;
  const doses = turns.flatMap((turn) => {
    const dose = doseTo(pot, likely(pot), pH, turn);
    return dose.found === 'dose' ? [dose.base] : [];
  });
  const first = doses[0] ?? 0;
  const shares = first > 0 ? doses.map((dose) => dose / first) : [1];
  return given({
    // Of this pot alone: another goes its own way.
    origin: `model-off/${pot.base}/${pH}/${first}/${turns.length}`,
    sentence,
    value: 1,
    unit: '1',
    how: 'constant',
    spread: between(
      new Decimal(modelDose.low).times(Math.min(...shares)),
      new Decimal(1),
      new Decimal(modelDose.high).times(Math.max(...shares)),
    ),
    decimals: 0,
    sources: [sourceOf(modelDose)],
    ...(modelDose.note === undefined ? {} : { note: modelDose.note }),
  });
}
