/** Amounts in L and g, side by side. */
import Decimal from 'decimal.js';
import { inUnit, quantity } from '../quantities/quantity';
import type { Amount } from './entries/containers';
import type { StreamLogged } from './entries/streams';
import type { Held, Mass, StreamState, Volume } from './state';

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

/** How fine a vessel or a scale can be read here: decimals of a litre and of a gram. */
const readable = { L: 3, g: 1 } as const;

const asRead = (value: Decimal, unit: 'L' | 'g'): string => value.toDecimalPlaces(readable[unit]).toFixed();

/** As a vessel or a scale would show it. */
export const readably = (value: Decimal, unit: 'L' | 'g'): Amount => ({ value: asRead(value, unit), unit });

/**
 * What of a stream is still to be placed, as it would be written: all of it in the unit it was logged in, a rest in
 * L or g as finely as that can be read.
 * @example 1.3 US gal logged, 1.00 L placed // { value: '3.921', unit: 'L' }
 */
export function restToPlace({ body, placed, unplaced }: StreamState): Amount {
  const { liquid, solid } = body;
  if (isNothing(placed) && liquid) return liquid.volume;
  if (isNothing(placed) && solid) return solid.wetMass;
  return unplaced.volume.isZero() ? readably(unplaced.mass, 'g') : readably(unplaced.volume, 'L');
}

/** By how much `a` is more than `b`: what no vessel and no scale can show is nothing. */
export function readableDifference(a: Held, b: Held): Held {
  const { volume, mass } = less(a, b);
  return {
    volume: volume.toDecimalPlaces(readable.L).isZero() ? noVolume : volume,
    mass: mass.toDecimalPlaces(readable.g).isZero() ? noMass : mass,
  };
}

/** What of a stream is in no container yet; all of it, however little, when nothing was placed. */
export const stillUnplaced = (amount: Held, placed: Held): Held =>
  isNothing(placed) ? amount : readableDifference(amount, placed);

const volumeUnits = ['L', 'mL', 'US gal'] as const;
const massUnits = ['g', 'kg', 'lb'] as const;

/**
 * In which units something can be taken out of what is held by the ledger; both kinds where it holds both, or nothing:
 * then the ledger knows less than the person.
 */
export function unitsOf({ volume, mass }: Held): readonly [Amount['unit'], ...Amount['unit'][]] {
  if (volume.isZero() === mass.isZero()) return [...volumeUnits, ...massUnits];
  return volume.isZero() ? massUnits : volumeUnits;
}

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

/** An entry has room for this many decimals; what is less is rounding. */
const writtenDecimals = 9;

/** Everything that is held, as it would be written: the volume, the mass, or both. */
export function writtenWhole({ volume, mass }: Held): readonly Amount[] {
  const as = (value: Decimal): string => value.toDecimalPlaces(writtenDecimals, Decimal.ROUND_UP).toFixed();
  return [
    ...(volume.isZero() ? [] : [{ value: as(volume), unit: 'L' } as const]),
    ...(mass.isZero() ? [] : [{ value: as(mass), unit: 'g' } as const]),
  ];
}

/** Less than an entry can say. */
export const isRounding = ({ volume, mass }: Held): boolean =>
  [volume, mass].every((value) => value.lt(new Decimal(10).pow(-writtenDecimals)));
