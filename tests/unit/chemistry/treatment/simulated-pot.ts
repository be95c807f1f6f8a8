/** Pots that are run on paper: what is really in them is known, what the workshop believes lies 30 % off, readings are noisy. */
import { Pot, type Titration } from '../../../../src/chemistry/equilibrium/pot';
import { carbonDioxide } from '../../../../src/chemistry/equilibrium/system';
import { weighed } from '../../../../src/chemistry/evidence';
import { liquorFrom } from '../../../../src/chemistry/liquor';
import { loadOf } from '../../../../src/chemistry/load';
import { doseTo } from '../../../../src/chemistry/treatment/dose-to';
import type { StageDone } from '../../../../src/chemistry/treatment/pot-after-stages';
import { gramsPerMole, type PotBefore, potBefore } from '../../../../src/chemistry/treatment/pot-knowledge';
import type { PotReading } from '../../../../src/chemistry/treatment/pot-readings';
import { carbonateIn, withStage } from '../../../../src/chemistry/treatment/stage-before';
import {
  type Amounts,
  chargeOfPot,
  likely,
  likelyTurn,
  type TreatedPot,
  type Turn,
  titrationOf,
  treatedPot,
  turnsOf,
} from '../../../../src/chemistry/treatment/treated-pot';
import type { BaseId, Metal } from '../../../../src/reference/tables';

export const target = 9.5;

/** 10 L of a barren liquor, each amount believed to within half of itself: 30 % off is a little over one standard uncertainty. */
const believed: readonly (readonly [Metal, low: string, high: string])[] = [
  ['Cu', '6', '18'],
  ['Ni', '2', '6'],
  ['Zn', '0.5', '1.5'],
  ['Fe', '0.25', '0.75'],
];
export const load = loadOf(
  liquorFrom({
    origin: 'simulated',
    volume: { value: '10.0', unit: 'L' },
    findings: believed.map(([metal, low, high]) => ({
      by: 'assumed',
      metal,
      low: { value: low, unit: 'g/L' },
      high: { value: high, unit: 'g/L' },
    })),
    freeAcid: [
      { by: 'assumed', low: { value: '0.25', unit: 'mol/L' }, high: { value: '0.75', unit: 'mol/L' } },
    ],
  }),
  'simulated',
);

export function potWith(base: BaseId): PotBefore {
  const before = potBefore({ load, base, pH: target });
  if (!before.ok) throw new Error(before.why.code);
  return before.pot;
}

/** Seeded numbers from 0 to 1: Tommy Ettinger's mulberry32. */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

const normal = (random: () => number): number =>
  Math.sqrt(-2 * Math.log(random() + 1e-12)) * Math.cos(2 * Math.PI * random());

/** What is wrong with a run: the bag holds something else, or the electrode has died after the second reading. */
export type Wrong = 'nothing' | 'limestone' | 'filler' | 'ammonia' | 'dead electrode';

export type Run = {
  /** g of the believed base that truly bring it to the target, were nothing wrong. */
  readonly truly: number;
  readonly readings: readonly PotReading[];
};

const noise = 0.1;
const off = 0.3;

/** Every amount 30 % too high or too low, by chance. */
const really = (pot: TreatedPot, random: () => number): Amounts =>
  new Map([...likely(pot)].map(([of, n]) => [of, n * (random() < 0.5 ? 1 - off : 1 + off)]));

function titrationWith(before: PotBefore, amounts: Amounts, wrong: Wrong, turn: Turn) {
  const { pot } = before;
  const titration = titrationOf(wrong === 'limestone' ? { ...pot, base: 'limestone' } : pot, amounts, turn);
  if (wrong !== 'ammonia') return titration;
  const substances = new Map([...titration.liquor.substances, ['NH4NO3', 0.2 * chargeOfPot(amounts)]]);
  return { ...titration, liquor: { ...titration.liquor, substances } };
}

/** Mol of hydroxide in a gram of what is in the bag, over what is believed. */
const worth: Partial<Record<Wrong, number>> = { limestone: 37.046 / 50.043, filler: 0.001 };

/**
 * @param shares of the true dose at which the pot is read
 * @param seed another one is another run
 */
export function simulatedRun(
  before: PotBefore,
  shares: readonly number[],
  seed: number,
  wrong: Wrong = 'nothing',
): Run {
  const random = seeded(seed);
  const amounts = really(before.pot, random);
  const perMole = Number(before.known.unsure[before.pot.parts.length]?.figure.value);
  // Purity and grit are not what is believed either: 4 %, the standard uncertainty that is told of them.
  const gramsPerMole = perMole * Math.exp(0.04 * normal(random));
  // Whichever way copper and nickel come down in it.
  const turns = turnsOf(before.pot);
  const turn = turns[Math.floor(random() * turns.length)] ?? likelyTurn;
  const dose = doseTo(before.pot, amounts, target, turn);
  if (dose.found !== 'dose') throw new Error(dose.found);
  const titration = titrationWith(before, amounts, wrong, turn);
  const each = { moles: dose.base * (worth[wrong] ?? 1), grams: dose.base * gramsPerMole };
  let died = Number.NaN;
  const readings = readAt(titration, shares, each, `run/${seed}`, random).map((reading, i): PotReading => {
    if (i === 2) died = Number(reading.pH.value);
    if (wrong !== 'dead electrode' || i <= 2) return reading;
    return { ...reading, pH: { value: (died + 0.01 * normal(random)).toFixed(2), unit: '1' } };
  });
  return { truly: each.grams, readings };
}

/** Readings with their noise at shares of a dose. */
function readAt(
  titration: Titration,
  shares: readonly number[],
  dose: { readonly moles: number; readonly grams: number },
  origin: string,
  random: () => number,
): readonly PotReading[] {
  const solver = new Pot(titration);
  let gone = 0;
  return shares.map((share, i) => {
    const solved = solver.at(share * dose.moles, gone);
    if (!solved.ok) throw new Error(solved.failure.code);
    if (titration.gas === 'leaves') gone += solved.value.solids.get(carbonDioxide) ?? 0;
    return {
      origin: `${origin}/${i}`,
      dose: { value: (share * dose.grams).toFixed(0), unit: 'g' },
      pH: { value: Math.max(0, solved.value.pH + noise * normal(random)).toFixed(2), unit: '1' },
      instrument: 'meter',
    };
  });
}

export const limestoneTo = 4.9;

/** Limestone first, then lime; of the carbonate that limestone leaves any share may have been driven out. */
export function simulatedStages(seed: number): Run & { readonly done: StageDone } {
  const random = seeded(seed);
  const [stone, lime] = (['limestone', 'hydrated-lime'] as const).map((base) => treatedPot(load, base));
  if (!stone || !lime) throw new Error('no pot');
  const turns = turnsOf(stone);
  const turn = turns[Math.floor(random() * turns.length)] ?? likelyTurn;
  const stage = (pot: TreatedPot, amounts: Amounts, pH: number, shares: readonly number[]) => {
    const dose = doseTo(pot, amounts, pH, turn);
    if (dose.found !== 'dose') throw new Error(dose.found);
    const perMole = gramsPerMole(pot.base).value.toNumber() * Math.exp(0.04 * normal(random));
    const grams = dose.base * perMole;
    const each = { moles: dose.base, grams };
    const titration = titrationOf(pot, amounts, turn);
    return { dose, grams, readings: readAt(titration, shares, each, `${pot.base}/${seed}`, random) };
  };
  const amounts = really(stone, random);
  const first = stage(stone, amounts, limestoneTo, [0.25, 0.5, 0.75, 0.9, 1]);
  const left = carbonateIn(first.dose.at) * random();
  const after = withStage(amounts, 'limestone', first.dose.base, left);
  const second = stage(lime, after, target, [0, 0.4, 0.8, 1]);
  const dose = weighed({ value: first.grams.toFixed(0), unit: 'g' }, 'limestone', 'Limestone so far');
  return {
    truly: second.grams,
    readings: second.readings,
    done: { base: 'limestone', pH: limestoneTo, dose, readings: first.readings },
  };
}

/** Tenths of the true dose, up to so many. */
export const tenths = (count: number): readonly number[] =>
  Array.from({ length: count }, (_, i) => (i + 1) / 10);
