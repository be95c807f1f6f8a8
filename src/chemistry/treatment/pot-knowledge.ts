/** What is known of a pot: before any reading, and after some. Plain numbers; `learnt-figures.ts` makes figures of them. */
import { plus, times } from '../../quantities/expression';
import { type Figure, workedOut } from '../../quantities/figure';
import type { BaseId } from '../../reference/tables';
import { overTheModel, perHydroxide, type StatedPurity } from '../base-needed';
import type { NoEquilibrium } from '../equilibrium/solve';
import type { Load } from '../load';
import { type AgainstPh, againstPh, reachOf, solvedAt } from './against-ph';
import { careful, type Fit, fitted, type Pace, quick } from './fit';
import { type KnownBefore, knownBefore, placed } from './known-before';
import { besideShapes, modelOff, shapes } from './model-off';
import { phOffsets } from './pot-readings';
import { among, amountsAt, type Expected, expectedAt, type Place, type Seen } from './shown-ph';
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
  /** One for each way in which copper may come down, the likely one first. */
  readonly curves: readonly AgainstPh[];
  readonly known: KnownBefore;
  /** Fits of the readings that were fitted before, so that one more takes one fit more. */
  readonly fits: Map<string, PotAfter>;
};

export type PotAfter = {
  readonly seen: readonly Seen[];
  readonly curve: AgainstPh;
  readonly fit: Fit;
  /** The same readings if copper comes down another way, and how probable that is beside this one. */
  readonly besides: readonly { readonly curve: AgainstPh; readonly fit: Fit; readonly weight: number }[];
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
  return pot ? knownOf(asked, pot) : { ok: false, why: { code: 'acid-open' } };
}

/** @param pot the load with the base asked for, with what stages before made of it */
export function knownOf(asked: PotAsked, pot: TreatedPot): Before {
  const curves: AgainstPh[] = [];
  for (const turn of shapes(pot)) {
    const curve = againstPh(pot, turn);
    if (!curve.ok) return { ok: false, why: { code: 'model-failed', failure: curve.failure } };
    curves.push(curve.value);
  }
  const [curve] = curves;
  if (!curve) throw new Error('no turn');
  const reach = reachOf(curve);
  if (asked.pH > reach) return { ok: false, why: { code: 'stalls', pH: reach } };
  const known = knownBefore(
    [
      ...pot.parts.map(({ amount }) => amount),
      gramsPerMole(asked.base, asked.stated),
      modelOff(
        pot,
        among(asked.pH) ? asked.pH : 6.5,
        'How far the model may be off as metals come down',
        besideShapes(pot),
      ),
      modelOff(pot, among(asked.pH) ? 9 : asked.pH, 'How far the model may be off beyond', besideShapes(pot)),
    ],
    phOffsets,
  );
  return { ok: true, pot: { asked, pot, curve, curves, known, fits: new Map() } };
}

/** The pot after readings, fitted once for each row of them. */
export function potAfter(before: PotBefore, seen: readonly Seen[]): PotAfter {
  const key = JSON.stringify(seen);
  const kept = before.fits.get(key);
  if (kept) return kept;
  const last = seen.at(-1);
  const after = last ? afterSome(before, seen, last) : unread(before);
  before.fits.set(key, after);
  return after;
}

const unread = ({ curves, known }: PotBefore): PotAfter =>
  weighed(
    [],
    curves.map((curve) => ({ curve, fit: fitted(curve, known, []) })),
  );

type OneWay = { readonly curve: AgainstPh; readonly fit: Fit };

/**
 * How sure the readings make one of a way: by exp(−strain ÷ 2), were model and noise all that is told of them; they are not, so
 * a way is given up far more slowly, and altogether only four standard uncertainties behind.
 */
const cautious = 8;
const outOfQuestion = 16;

/** The way that the readings strain least, and the others beside it. */
function weighed(seen: readonly Seen[], ways: readonly OneWay[]): PotAfter {
  const [best, ...others] = [...ways].sort((a, b) => a.fit.strain - b.fit.strain);
  if (!best) throw new Error('no way');
  const likelihood = ({ fit }: OneWay): number => {
    const behind = fit.strain - best.fit.strain;
    return behind > outOfQuestion ? 0 : Math.exp(-behind / cautious);
  };
  const all = ways.reduce((sum, way) => sum + likelihood(way), 0);
  return { seen, ...best, besides: others.map((way) => ({ ...way, weight: likelihood(way) / all })) };
}

/** A fit that is strained by more may have stopped short of a better one. */
const strained = 12;

/** pH that may be expected of a reading, whichever way copper comes down. */
export function expectedOf({ known }: PotBefore, without: PotAfter, last: Seen): Expected {
  const each = [without, ...without.besides].map(({ curve, fit }) => expectedAt(curve, known, last, fit));
  return { low: Math.min(...each.map(({ low }) => low)), high: Math.max(...each.map(({ high }) => high)) };
}

/** A way that is strained by so much more than another is not worth solving anew. */
const hopeless = 60;

/**
 * From what was known, not from the fit before, since a fit that begins narrow stays where it is; from there only where it
 * comes out strained.
 */
function afterSome(before: PotBefore, seen: readonly Seen[], last: Seen): PotAfter {
  const without = potAfter(before, seen.slice(0, -1));
  const expected = expectedOf(before, without, last);
  const open = unread(before).fit;
  const ways = everyWay(before, seen, quick, () => [open]);
  if (ways.some(({ fit }) => fit.strain < strained)) return { ...weighed(seen, ways), expected };
  const again = everyWay(before, seen, careful, (curve) => {
    const { fit } = [without, ...without.besides].find((way) => way.curve.turn === curve.turn) ?? without;
    // Where the others alone hold the fit on the flat before a leap, the last one alone leads it over.
    return [open, { ...fit, left: open.left }, fit, fitted(curve, before.known, [last], open)];
  });
  return { ...weighed(seen, again), expected };
}

/** Each way in which copper may come down, fitted from the best of some starts and then on the curve solved for what is likely. */
function everyWay(
  before: PotBefore,
  seen: readonly Seen[],
  pace: Pace,
  starts: (curve: AgainstPh) => readonly Place[],
): readonly OneWay[] {
  const near = before.curves.map((curve) => {
    const fits = starts(curve).map((start) => fitted(curve, before.known, seen, start, pace));
    return { curve, fit: fits.reduce((a, b) => (b.strain < a.strain ? b : a)) };
  });
  const least = Math.min(...near.map(({ fit }) => fit.strain));
  return near.map((way) =>
    way.fit.strain > least + hopeless
      ? way
      : solvedAnew(before, seen, way, pace === quick ? undefined : pace),
  );
}

function solvedAnew(
  { pot, known }: PotBefore,
  seen: readonly Seen[],
  { curve, fit }: OneWay,
  pace?: Pace,
): OneWay {
  const anew = solvedAt(pot, curve, amountsAt(placed(known, fit.place), pot.parts.length));
  return anew.ok ? { curve: anew.value, fit: fitted(anew.value, known, seen, fit, pace) } : { curve, fit };
}

/** mol of each part at a place. */
export const amountsIn = ({ known, pot }: PotBefore, place: readonly number[]): number[] =>
  amountsAt(placed(known, place), pot.parts.length);
