/** Amounts in L and g, side by side. */
import { inUnit, quantity } from '../quantities/quantity';
import type { Amount } from './entries/containers';
import type { StreamLogged } from './entries/streams';
import type { Held, Mass, Volume } from './state';

export const noVolume: Volume = quantity(0, 'L');
export const noMass: Mass = quantity(0, 'g');
export const nothing: Held = { volume: noVolume, mass: noMass };

export const plus = (a: Held, b: Held): Held => ({
  volume: quantity(a.volume.plus(b.volume), 'L'),
  mass: quantity(a.mass.plus(b.mass), 'g'),
});

/** `a` less `b`, never below zero. */
export const less = (a: Held, b: Held): Held => ({
  volume: quantity(a.volume.gt(b.volume) ? a.volume.minus(b.volume) : 0, 'L'),
  mass: quantity(a.mass.gt(b.mass) ? a.mass.minus(b.mass) : 0, 'g'),
});

export const isNothing = ({ volume, mass }: Held): boolean => volume.isZero() && mass.isZero();

/** Whether an amount was written as a volume. */
export const isVolume = (amount: Amount): amount is Extract<Amount, { unit: 'L' | 'mL' | 'US gal' }> =>
  amount.unit === 'L' || amount.unit === 'mL' || amount.unit === 'US gal';

export const asHeld = (amount: Amount): Held =>
  isVolume(amount)
    ? { volume: inUnit(amount, 'L'), mass: noMass }
    : { volume: noVolume, mass: inUnit(amount, 'g') };

/** What a stream came to when it was logged. */
export const loggedAmount = ({ liquid, solid }: StreamLogged): Held => ({
  volume: liquid ? inUnit(liquid.volume, 'L') : noVolume,
  mass: solid ? inUnit(solid.wetMass, 'g') : noMass,
});

/**
 * The amount placed, in the terms of the stream: a liquid that was weighed is turned into a volume when its density
 * was measured, V = m/ρ. Null when a liquid was weighed or a solid was given as a volume and nothing links the two.
 */
export function placedAmount(amount: Amount, stream: StreamLogged): Held | null {
  if (isVolume(amount)) return stream.liquid ? asHeld(amount) : null;
  if (stream.solid) return asHeld(amount);
  const density = stream.liquid?.density;
  if (!density) return null;
  const gramsPerLitre = inUnit(density, 'g/L');
  if (gramsPerLitre.isZero()) return null;
  return { volume: quantity(inUnit(amount, 'g').div(gramsPerLitre), 'L'), mass: noMass };
}
