/**
 * A sample titrated with the base at hand, scaled up: base for the container = base for the sample × volume ÷ sample. Its own
 * estimate, beside the model's and under the same rules: the narrowest is used, two that cannot both be true are told. The
 * model only carries it from the pH at which the sample ended to the pH that is aimed at.
 */
import Decimal from 'decimal.js';
import { minus, over, plus, times } from '../../quantities/expression';
import { type Figure, read, workedOut } from '../../quantities/figure';
import type { Written } from '../../quantities/written';
import { potReadings } from '../../reference/pot-readings-tables';
import { type BaseId, bases, evidence } from '../../reference/tables';
import type { StatedPurity } from '../base-needed';
import { ranged, sourceOf } from '../constants';
import { bestOf, type Disagreement, disagreements } from '../disagreement';
import { type Known, type Mass, type StatedSpread, usualSpread, weighed } from '../evidence';
import { volumeRead } from '../liquor';
import type { Load } from '../load';
import { type AgainstPh, againstPh, baseAt, slopeAt } from './against-ph';
import { type BaseTo, baseTo } from './base-to';
import { modelOff } from './model-off';
import { gramsPerMole } from './pot-knowledge';
import type { Instrument } from './pot-readings';
import { likelyTurn, type TreatedPot, treatedPot, turnsOf } from './treated-pot';

export type BenchTest = {
  /** Names the test. */
  readonly origin: string;
  readonly sampleVolume: Written<'L' | 'mL' | 'US gal'>;
  /** Of a measuring cylinder, say; that of a scale on a vessel else. */
  readonly sampleSpread?: StatedSpread | undefined;
  readonly base: BaseId;
  /** Base that the sample took, as sold. */
  readonly mass: Mass;
  /** Purity of that base; used for what it says of the load alone. */
  readonly stated?: StatedPurity | undefined;
  readonly endPh: Written<'1'>;
  readonly instrument: Instrument;
};

/** Base for the container, g as sold, known in one way. */
export type BaseKnown = Known<'g', 'g/L'> & { readonly by: 'bench-test' | 'model'; readonly index: number };

export type BenchTold = {
  /** For all of the container to the pH at which the sample ended. */
  readonly toEnd: Figure<'g'>;
  /** Hydroxide that acid and metals of the container took up to there: what the test says of the load. */
  readonly hydroxide: Figure<'mol'>;
  readonly model: BaseTo;
  /** To the target, the way that is used first; absent where neither tells. */
  readonly best?: BaseKnown;
  readonly others: readonly BaseKnown[];
  readonly disagreements: readonly Disagreement<'g'>[];
};

/**
 * @param target pH aimed at
 * @returns undefined for a sample of nothing, or one that took nothing
 */
export function benchTest(test: BenchTest, load: Load, target: number): BenchTold | undefined {
  if (Number(test.sampleVolume.value) === 0 || Number(test.mass.value) === 0) return undefined;
  const toEnd = scaledUp(test, load);
  const hydroxide = workedOut({
    sentence: `Acid and metals in all, up to pH ${test.endPh.value}`,
    unit: 'mol',
    formula: over(toEnd, gramsPerMole(test.base, test.stated)),
  });
  const model = baseTo(test.base, load, target, test.stated);
  const known = [fromTest(test, load, toEnd, target), model.ok ? model.needed.mass : undefined].flatMap(
    (all, index) => (all ? [ofLoad(all, index === 0 ? 'bench-test' : 'model', load)] : []),
  );
  const sorted = bestOf<'g', BaseKnown>(known);
  return {
    toEnd,
    hydroxide,
    model,
    ...(sorted ? { best: sorted.best } : {}),
    others: sorted?.others ?? [],
    disagreements: sorted ? disagreements(sorted) : [],
  };
}

const ofLoad = (all: Figure<'g'>, by: BaseKnown['by'], load: Load): BaseKnown => ({
  by,
  index: 0,
  all,
  perLitre: workedOut({ sentence: 'Base a litre', unit: 'g/L', formula: over(all, load.volume) }),
});

/** Base of the sample × volume ÷ sample, and how well the sample stands for the rest. */
function scaledUp({ origin, mass, sampleVolume, sampleSpread, endPh }: BenchTest, load: Load): Figure<'g'> {
  const used = weighed(mass, `${origin}/mass`, 'Base that the sample took');
  const sample = volumeRead(sampleVolume, `${origin}/sample`, 'Sample taken', sampleSpread);
  const alike = ranged(
    'bench-sample',
    'How well the sample stands for the rest',
    potReadings.benchSample,
    '1',
  );
  return workedOut({
    sentence: `Base for all of it to pH ${endPh.value}, by the bench test`,
    unit: 'g',
    formula: times(over(times(used, load.volume), sample), alike),
    note: 'As sold, of the same sack: purity and grit are in it.',
  });
}

/** Undefined where the model does not know how to come from the end of the test to the target. */
function fromTest(test: BenchTest, load: Load, toEnd: Figure<'g'>, target: number): Figure<'g'> | undefined {
  const pot = treatedPot(load, test.base);
  const curve = pot && againstPh(pot, likelyTurn);
  if (!pot || !curve?.ok) return undefined;
  const on = onFrom(test, pot, curve.value, target);
  return (
    on &&
    workedOut({
      sentence: `${bases[test.base].name} to pH ${target}, by the bench test`,
      unit: 'g',
      formula: times(toEnd, on),
    })
  );
}

/** Base to the target over base to where the sample ended, by the model at what is likely. */
function onFrom(test: BenchTest, pot: TreatedPot, curve: AgainstPh, target: number): Figure<'1'> | undefined {
  const row = evidence[test.instrument === 'paper' ? 'ph-paper' : 'ph-meter'];
  const end = Number(test.endPh.value);
  const [to, from] = [baseAt(curve, curve.amounts, target), baseAt(curve, curve.amounts, end)];
  if (!Number.isFinite(to) || !Number.isFinite(from) || from <= 0) return undefined;
  const endPh = read({
    origin: `${test.origin}/end-ph`,
    sentence: 'pH at which the sample ended',
    written: test.endPh,
    unit: '1',
    how: 'reading',
    spread: usualSpread(test.instrument === 'paper' ? 'ph-paper' : 'ph-meter'),
    sources: [sourceOf(row)],
  });
  const parts = pot.parts.map(({ amount }, k) => ({
    of: { op: 'figure' as const, figure: amount },
    slope: new Decimal((slopeAt(curve, k, target) - (to / from) * slopeAt(curve, k, end)) / from),
  }));
  const ratio = workedOut({
    sentence: 'Base to the target over base to where the sample ended, by the model',
    unit: '1',
    formula: {
      op: 'reading',
      table: 'the equilibrium model',
      at: [
        {
          of: { op: 'figure', figure: endPh },
          slope: new Decimal((-to / from ** 2) * steepness(curve, end, Number(row.value))),
        },
        ...parts,
      ],
      value: new Decimal(to / from),
      unit: '1',
    },
    sources: [sourceOf({ source: 'equilibrium-model', status: 'computed' })],
  });
  return workedOut({
    sentence: 'From where the sample ended to the target',
    unit: '1',
    formula: plus(
      1,
      times(
        minus(ratio, 1),
        modelOff(pot, Math.min(end, target), 'How far the model may be off between the two', turnsOf(pot)),
      ),
    ),
  });
}

/** mol of base for a unit of pH, over the range of the reading; up to what the base reaches. */
function steepness(curve: AgainstPh, pH: number, range: number): number {
  const reach = curve.pH.at(-1) ?? pH;
  const [low, high] = [pH - range, Math.min(pH + range, reach)];
  return (
    (baseAt(curve, curve.amounts, high) - baseAt(curve, curve.amounts, low)) / Math.max(high - low, range)
  );
}
