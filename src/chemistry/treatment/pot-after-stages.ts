/**
 * What is known of a pot that stages before brought up: amounts as their readings taught them, the hydroxide that they gave, and
 * what is left of their carbonate. They hang together by what they rest on, so what one stage teaches narrows the next.
 */
import { over, plus, times } from '../../quantities/expression';
import { type Figure, workedOut } from '../../quantities/figure';
import { bases } from '../../reference/tables';
import type { StatedPurity } from '../base-needed';
import { titrate } from '../equilibrium/titration';
import { gramsPerMoleLearnt, modelOffLearnt, partLearnt, toldOf } from './learnt-figures';
import type { Contradiction } from './pot-contradictions';
import { type Before, knownOf, type PotAsked, type PotBefore, potAfter } from './pot-knowledge';
import { nameOfPart } from './pot-learning';
import { type PotReading, seenIn } from './pot-readings';
import { contradictionsIn } from './readings-against';
import { carbonateIn, forCarbonate, type StageAsked } from './stage-before';
import { type Amounts, likely, type PotPart, type TreatedPot, titrationOf, treatedPot } from './treated-pot';

/** A stage that is over. */
export type StageDone = StageAsked & {
  readonly stated?: StatedPurity | undefined;
  /** All that went in, as sold. */
  readonly dose: Figure<'g'>;
  readonly readings: readonly PotReading[];
};

export type AfterStages =
  | Before
  | {
      readonly ok: false;
      readonly why: {
        /** The readings of a stage before contradict what was known: nothing is carried on from them. */
        readonly code: 'stage-contradicted';
        /** From 0. */
        readonly stage: number;
        readonly contradictions: readonly Contradiction[];
      };
    };

/** What is known before the first reading of a stage. @param done stages before it, in order */
export function potAfterStages(asked: PotAsked, done: readonly StageDone[]): AfterStages {
  let parts: readonly PotPart[] | undefined;
  for (const [stage, one] of done.entries()) {
    const before = knownWith({ load: asked.load, base: one.base, stated: one.stated, pH: one.pH }, parts);
    if (!before.ok) return before;
    const after = potAfter(before.pot, one.readings.map(seenIn));
    const contradictions = contradictionsIn(before.pot, after);
    if (contradictions.length > 0)
      return { ok: false, why: { code: 'stage-contradicted', stage, contradictions } };
    parts = partsAfter(before.pot, one);
  }
  return knownWith(asked, parts);
}

function knownWith(asked: PotAsked, parts: readonly PotPart[] | undefined): Before {
  const pot = treatedPot(asked.load, asked.base);
  if (!pot) return { ok: false, why: { code: 'acid-open' } };
  return knownOf(asked, parts ? { ...pot, parts } : pot);
}

/** The parts of a pot after a stage, as its readings left them. */
function partsAfter(before: PotBefore, stage: StageDone): readonly PotPart[] {
  const told = toldOf(before, potAfter(before, stage.readings.map(seenIn)), stage.readings);
  const learnt = before.pot.parts.map(({ of }, k) => ({
    of,
    amount: partLearnt(told, k, `${nameOfPart(of)}, by the readings of the stage before`),
  }));
  const last = stage.readings.at(-1);
  const put = workedOut({
    sentence: `Given by ${bases[stage.base].name.toLowerCase()} before`,
    unit: 'mol',
    formula: over(
      stage.dose,
      times(gramsPerMoleLearnt(told), modelOffLearnt(told, last ? Number(last.pH.value) : stage.pH)),
    ),
    note: 'In all, as the model takes it.',
  });
  return withPut({ ...before.pot, parts: learnt }, stage, put);
}

function withPut(pot: TreatedPot, stage: StageDone, put: Figure<'mol'>): readonly PotPart[] {
  const key = `${stage.base} before` as const;
  const same = pot.parts.find(({ of }) => of === key)?.amount;
  const all = same ? workedOut({ sentence: put.sentence, unit: 'mol', formula: plus(same, put) }) : put;
  const others = pot.parts.filter(({ of }) => of !== key && of !== 'carbonate');
  const left = carbonateAfter(pot, likely(pot), put.value.toNumber());
  // Halfway: the readings tell whether it was driven out.
  const carbonate = forCarbonate(stage, 'Carbonate that the stage before leaves', left, left / 2);
  return [
    ...others,
    { of: key, amount: all },
    ...(left > 0 ? [{ of: 'carbonate' as const, amount: carbonate }] : []),
  ];
}

/** Steps in which a stage is gone over again. */
const steps = 40;

function carbonateAfter(pot: TreatedPot, amounts: Amounts, put: number): number {
  const titrated = titrate(
    titrationOf(pot, amounts),
    Array.from({ length: steps + 1 }, (_, i) => (put * i) / steps),
  );
  const last = titrated.ok ? titrated.value.at(-1) : undefined;
  return last ? carbonateIn(last.at) : 0;
}
