/**
 * Figures of what readings left: each follows what was known before and every reading by the slopes of the fit, so its range
 * is the fit's own, and its working names all that it rests on.
 */
import Decimal from 'decimal.js';
import type { Expression } from '../../quantities/expression';
import { type Figure, workedOut } from '../../quantities/figure';
import type { Unit } from '../../quantities/unit';
import { bases } from '../../reference/tables';
import { sourceOf } from '../constants';
import { baseAt, slopeAt } from './against-ph';
import { beside, offAt, untwisted } from './fit';
import { placed } from './known-before';
import { amountsIn, type PotAfter, type PotBefore } from './pot-knowledge';
import { type PotReading, phFigure } from './pot-readings';

/** A pot, the readings and what they made of it. */
export type Told = {
  readonly before: PotBefore;
  readonly after: PotAfter;
  readonly readings: readonly PotReading[];
};

const source = sourceOf({ source: 'equilibrium-model', status: 'computed' });

/** How a number follows what was known and the readings, from its slopes against the logarithms that the fit moves. */
function follows({ before, after }: Told, slopes: readonly number[]) {
  const { root } = before.known;
  const { gain, slopes: lines } = after.fit;
  const count = after.seen.length;
  const inward = root[0]?.map((_, k) => slopes.reduce((sum, s, i) => sum + s * (root[i]?.[k] ?? 0), 0)) ?? [];
  const readings = Array.from({ length: count }, (_, r) =>
    inward.reduce((sum, s, k) => sum + s * (gain[k]?.[r] ?? 0), 0),
  );
  const against = lines.map((line) => untwisted(root, line));
  const known = slopes.map((s, i) => s - readings.reduce((sum, g, r) => sum + g * (against[r]?.[i] ?? 0), 0));
  return { known, readings };
}

function formulaOf<U extends Unit>(
  told: Told,
  value: number,
  slopes: readonly number[],
  unit: U,
): Expression {
  const { before, after, readings } = told;
  const by = follows(told, slopes);
  const known = before.known.unsure.flatMap(({ figure, spread, own }, i) =>
    own === 0
      ? []
      : [
          {
            of: { op: 'figure' as const, figure },
            slope: new Decimal(((by.known[i] ?? 0) * spread) / own),
          },
        ],
  );
  const seen = readings.map((reading, r) => ({
    of: {
      op: 'figure' as const,
      figure: phFigure(reading, (after.fit.bend[r] ?? 0) + (after.fit.byDose[r] ?? 0)),
    },
    slope: new Decimal(by.readings[r] ?? 0),
  }));
  const n = readings.length;
  const table = n === 0 ? 'the equilibrium model' : `the model refitted to ${n} reading${n === 1 ? '' : 's'}`;
  return { op: 'reading', table, at: [...known, ...seen], value: new Decimal(value), unit };
}

/** The quantity numbered `i` among those that the fit moves. */
function learntOf<U extends 'mol' | 'g/mol'>(told: Told, i: number, sentence: string, unit: U): Figure<U> {
  const value = Math.exp(placed(told.before.known, told.after.fit.place)[i] ?? 0);
  const slopes = told.before.known.unsure.map((_, k) => (k === i ? value : 0));
  return workedOut({ sentence, unit, formula: formulaOf(told, value, slopes, unit), sources: [source] });
}

export const partLearnt = (told: Told, k: number, sentence: string): Figure<'mol'> =>
  learntOf(told, k, sentence, 'mol');

export const gramsPerMoleLearnt = (told: Told): Figure<'g/mol'> =>
  learntOf(
    told,
    told.before.pot.parts.length + beside.gramsPerMole,
    'As sold for one mole of base, by the readings',
    'g/mol',
  );

/** Grams as sold up to a pH in plain numbers, with the slopes against the logarithms that the fit moves. */
export function gramsAt(
  { before, after }: Pick<Told, 'before' | 'after'>,
  pH: number,
  place = after.fit.place,
) {
  const x = placed(before.known, place);
  const amounts = amountsIn(before, place);
  const parts = amounts.length;
  const [per, off] = [parts + beside.gramsPerMole, offAt(parts, pH)];
  const each = Math.exp((x[per] ?? 0) + (x[off] ?? 0));
  const grams = baseAt(after.curve, amounts, pH) * each;
  const slopes = x.map((_, i) => {
    if (i < parts) return slopeAt(after.curve, i, pH) * (amounts[i] ?? 0) * each;
    return i === per || i === off ? grams : 0;
  });
  return { grams, slopes };
}

/** Base as sold up to a pH, g; undefined above what the base reaches. */
export function gramsTo(told: Told, pH: number): Figure<'g'> | undefined {
  const { grams, slopes } = gramsAt(told, pH);
  if (!Number.isFinite(grams)) return undefined;
  return workedOut({
    sentence: `${bases[told.before.asked.base].name} to pH ${pH}, by all readings`,
    unit: 'g',
    formula: formulaOf(told, grams, slopes, 'g'),
    sources: [source],
    note: 'What was known before, moved as far as the readings ask for it and no further.',
  });
}
