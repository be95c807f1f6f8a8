/** What is known of a pot: before any reading, and after some. Plain numbers; `learnt-figures.ts` makes figures of them. */
import { plus, times } from '../../quantities/expression';
import { type Figure, workedOut } from '../../quantities/figure';
import { type BaseId, liquor } from '../../reference/tables';
import { overTheModel, perHydroxide, type StatedPurity } from '../base-needed';
import { ranged } from '../constants';
import type { NoEquilibrium } from '../equilibrium/solve';
import type { Load } from '../load';
import { type AgainstPh, againstPh, reachOf, solvedAt } from './against-ph';
import { type Fit, fitted } from './fit';
import { type KnownBefore, knownBefore, placed } from './known-before';
import { phOffsets } from './pot-readings';
import { amountsAt, type Expected, expectedAt, type Seen } from './shown-ph';
import { type TreatedPot, treatedPot } from './treated-pot';

export type PotAsked = {
  /** As it was before any base went in. */
  readonly load: Load;
  readonly base: BaseId;
  /** Purity of the base in the workshop. */
  readonly stated?: StatedPurity | undefined;
  /** To which it is to come. */
  readonly pH: number;
};

export type PotBefore = {
  readonly asked: PotAsked;
  readonly pot: TreatedPot;
  readonly curve: AgainstPh;
  readonly known: KnownBefore;
  /** Fits of the readings that were fitted before, so that one more takes one fit more. */
  readonly fits: Map<string, PotAfter>;
};

export type PotAfter = {
  readonly seen: readonly Seen[];
  readonly curve: AgainstPh;
  readonly fit: Fit;
  /** pH that all before the last reading let expect at its dose; absent where nothing was read. */
  readonly expected?: Expected;
};

export type Before =
  | { readonly ok: true; readonly pot: PotBefore }
  | {
      readonly ok: false;
      readonly why:
        | { readonly code: 'acid-open' }
        /** The base ends at this pH, whatever goes in. */
        | { readonly code: 'stalls'; readonly pH: number }
        | { readonly code: 'model-failed'; readonly failure: NoEquilibrium };
    };

/** g as sold, with the usual excess, that give a mole of hydroxide. */
export const gramsPerMole = (base: BaseId, stated?: StatedPurity): Figure<'g/mol'> =>
  workedOut({
    sentence: 'As sold with the usual excess, for one mole of base',
    unit: 'g/mol',
    formula: times(perHydroxide(base, stated), plus(1, overTheModel(base))),
  });

/** What is known before the first reading. Takes about as long as ten readings do: once for a pot. */
export function potBefore(asked: PotAsked): Before {
  const pot = treatedPot(asked.load, asked.base);
  if (!pot) return { ok: false, why: { code: 'acid-open' } };
  const curve = againstPh(pot);
  if (!curve.ok) return { ok: false, why: { code: 'model-failed', failure: curve.failure } };
  const reach = reachOf(curve.value);
  if (asked.pH > reach) return { ok: false, why: { code: 'stalls', pH: reach } };
  const known = knownBefore(
    [
      ...pot.parts.map(({ amount }) => amount),
      gramsPerMole(asked.base, asked.stated),
      ranged('model-dose/below-8', 'How far the model may be off below pH 8', liquor.modelDose.below8, '1'),
      ranged('model-dose/from-8', 'How far the model may be off', liquor.modelDose.from8, '1'),
    ],
    phOffsets,
  );
  return { ok: true, pot: { asked, pot, curve: curve.value, known, fits: new Map() } };
}

/** The pot after readings, fitted once for each row of them. */
export function potAfter(before: PotBefore, seen: readonly Seen[]): PotAfter {
  const key = JSON.stringify(seen);
  const kept = before.fits.get(key);
  if (kept) return kept;
  const after =
    seen.length === 0 ? unread(before) : oneMore(before, potAfter(before, seen.slice(0, -1)), seen);
  before.fits.set(key, after);
  return after;
}

const unread = ({ curve, known }: PotBefore): PotAfter => ({
  seen: [],
  curve,
  fit: fitted(curve, known, []),
});

/** A fit that readings and what was known strain by more than this is tried from the start as well. */
const strained = 16;

/** Goes on from the fit without the last reading. */
function oneMore(before: PotBefore, without: PotAfter, seen: readonly Seen[]): PotAfter {
  const last = seen.at(-1);
  const expected = last && { expected: expectedAt(without.curve, before.known, last, without.fit) };
  const on = fittedTwice(before, without, seen);
  if (on.fit.strain < strained) return { ...on, ...expected };
  const anew = fittedTwice(before, unread(before), seen);
  return { ...(anew.fit.strain < on.fit.strain ? anew : on), ...expected };
}

/** The second time on the curve solved for what is likely after the first. */
function fittedTwice(before: PotBefore, from: PotAfter, seen: readonly Seen[]): PotAfter {
  const first = fitted(from.curve, before.known, seen, from.fit);
  const anew = solvedAt(before.pot, from.curve, amountsIn(before, first.place));
  if (!anew.ok) return { seen, curve: from.curve, fit: first };
  return { seen, curve: anew.value, fit: fitted(anew.value, before.known, seen, first) };
}

/** mol of each part at a place. */
export const amountsIn = ({ known, pot }: PotBefore, place: readonly number[]): number[] =>
  amountsAt(placed(known, place), pot.parts.length);
