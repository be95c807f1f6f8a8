/** Amounts of a container, or of all, as text. */
import { notDetermined } from '../words';
import type { PaperFigure } from './paper-figure';
import { paperWords } from './paper-words';
import { rangeText } from './printed';
import type { Load, Quantity } from './set-data';
import { setPaperWords as w } from './set-paper-words';

type Amount = 'none' | typeof notDetermined | PaperFigure;

const likely = (amount: Amount): string =>
  typeof amount === 'string' ? amount : paperWords.withUnit(amount.likely, amount.unit);

export const withRange = (amount: Amount): string => (amount === 'none' ? w.none : rangeText(amount));

/** "9.80 L", "9.80 L, 1.92 kg", likely values alone. */
export function holdsText({ liquid, solid }: Pick<Quantity, 'liquid' | 'solid'>): string {
  const told = [liquid, solid].filter((amount) => amount !== 'none').map(likely);
  return told.length === 0 ? w.none : [...new Set(told)].join(', ');
}

export const massText = ({ mass }: Pick<Quantity, 'mass'>): string => likely(mass);

/** Liquid, wet solids and mass of all, each with its range and with whose is missing. */
export const loadFacts = ({ liquid, solid, mass, withoutLiquid, withoutMass }: Load) => [
  { term: w.liquid, says: w.atLeast(withRange(liquid), liquid === notDetermined ? [] : withoutLiquid) },
  { term: w.solid, says: withRange(solid) },
  { term: w.mass, says: w.atLeast(withRange(mass), mass === notDetermined ? [] : withoutMass) },
];
