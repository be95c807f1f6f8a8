/**
 * Figures of what readings left: each follows what was known before and every reading by the slopes of the fit, so its range
 * is the fit's own, and its working names all that it rests on.
 */
import Decimal from 'decimal.js';
import type { Expression } from '../../quantities/expression';
import { type Figure, given, within, workedOut } from '../../quantities/figure';
import type { Unit } from '../../quantities/unit';
import { bases } from '../../reference/tables';
import { sourceOf } from '../constants';
import { baseAt, slopeAt } from './against-ph';
import { placed } from './known-before';
import { through, throughInverse } from './matrices';
import { amountsIn, type PotAfter, type PotBefore } from './pot-knowledge';
import { type PotReading, phFigure } from './pot-readings';
import { beside, offAt } from './shown-ph';

/** A pot and what readings made of it. */
export type Told = {
  readonly before: PotBefore;
  readonly after: PotAfter;
  /** pH of each reading, with all that keeps it from telling more. */
  readonly shown: readonly Figure<'1'>[];
};

export const toldOf = (before: PotBefore, after: PotAfter, readings: readonly PotReading[]): Told => ({
  before,
  after,
  shown: readings.map((reading, r) =>
    phFigure(reading, (after.fit.bend[r] ?? 0) + (after.fit.byDose[r] ?? 0)),
  ),
});

const source = sourceOf({ source: 'equilibrium-model', status: 'computed' });

/** How a number follows what was known and the readings, from its slopes against the logarithms that the fit moves. */
function follows({ before, after }: Told, slopes: readonly number[]) {
  const { root } = before.known;
  const { gain, slopes: lines } = after.fit;
  const count = after.seen.length;
  const inward = through(slopes, root);
  const readings = Array.from({ length: count }, (_, r) =>
    inward.reduce((sum, s, k) => sum + s * (gain[k]?.[r] ?? 0), 0),
  );
  const against = lines.map((line) => throughInverse(line, root));
  const known = slopes.map((s, i) => s - readings.reduce((sum, g, r) => sum + g * (against[r]?.[i] ?? 0), 0));
  return { known, readings };
}

type Way = Pick<PotAfter, 'curve' | 'fit'>;

/** What it would be if copper came down another way, by how probable that is. */
function whichWay({ after }: Told, value: number, valueBy: (way: Way) => number) {
  const variance = after.besides.reduce((sum, way) => {
    const other = valueBy(way);
    return Number.isFinite(other) ? sum + way.weight * (other / value - 1) ** 2 : sum;
  }, 0);
  if (variance === 0 || value <= 0) return [];
  const figure = given({
    origin: `way-of-copper/${valueBy(after)}`,
    sentence: 'Which way copper comes down',
    value: 1,
    unit: '1',
    how: 'assumed',
    spread: within(2 * Math.sqrt(variance)),
    decimals: 0,
    sources: [source],
    note: 'As basic nitrate first, or as hydroxide at once; each is fitted, and weighed by how well the readings go with it.',
  });
  return [{ of: { op: 'figure' as const, figure }, slope: new Decimal(value) }];
}

function formulaOf<U extends Unit>(
  told: Told,
  value: number,
  slopes: readonly number[],
  unit: U,
  valueBy: (way: Way) => number,
): Expression {
  const { before, shown } = told;
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
  const seen = shown.map((figure, r) => ({
    of: { op: 'figure' as const, figure },
    slope: new Decimal(by.readings[r] ?? 0),
  }));
  const which = whichWay(told, value, valueBy);
  const n = shown.length;
  const table = n === 0 ? 'the equilibrium model' : `the model refitted to ${n} reading${n === 1 ? '' : 's'}`;
  return { op: 'reading', table, at: [...known, ...seen, ...which], value: new Decimal(value), unit };
}

/** The quantity numbered `i` among those that the fit moves. */
function learntOf<U extends 'mol' | 'g/mol' | '1'>(
  told: Told,
  i: number,
  sentence: string,
  unit: U,
): Figure<U> {
  const valueBy = ({ fit }: Way): number => Math.exp(placed(told.before.known, fit.place)[i] ?? 0);
  const value = valueBy(told.after);
  const slopes = told.before.known.unsure.map((_, k) => (k === i ? value : 0));
  return workedOut({
    sentence,
    unit,
    formula: formulaOf(told, value, slopes, unit, valueBy),
    sources: [source],
  });
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

/** How far the dose of the model turned out to be off at a pH. */
export const modelOffLearnt = (told: Told, pH: number): Figure<'1'> =>
  learntOf(told, offAt(told.before.pot.parts.length, pH), 'How far the model is off, by the readings', '1');

/** Grams as sold up to a pH in plain numbers, with the slopes against what the fit moves. The pH is that of the model. */
export function gramsAt(
  before: PotBefore,
  after: Pick<PotAfter, 'curve' | 'fit'>,
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
  const { grams, slopes } = gramsAt(told.before, told.after, pH);
  if (!Number.isFinite(grams)) return undefined;
  return workedOut({
    sentence: `${bases[told.before.asked.base].name} to pH ${pH}, by all readings`,
    unit: 'g',
    formula: formulaOf(told, grams, slopes, 'g', (way) => gramsAt(told.before, way, pH).grams),
    sources: [source],
    note: 'What was known before, moved as far as the readings ask for it and no further.',
  });
}
