/**
 * Washing of a residue: each wash of volume v is mixed with the liquor h that the residue holds and drained or poured off
 * until h is held again. With perfect mixing h ÷ (h + v) stays, and after n washes that to the power of n; a real wash
 * takes out a share of that (reference/washing.json). What sits on the solid or has not dissolved is not washed out.
 */
import { minus, over, plus, power, times } from '../quantities/expression';
import { exact, type Figure, given, workedOut } from '../quantities/figure';
import { type Metal, metals } from '../reference/tables';
import { type WashWay, washing } from '../reference/washing-tables';
import { ranged } from './constants';
import { densityOf } from './density';
import { capital } from './evidence';
import { type Load, metalsPresent } from './load';
import type { HeldLiquor } from './residue';

/** A residue as it is about to be washed. */
export type Washable = {
  /** What is dissolved in the liquor it holds. */
  readonly load: Load;
  /** Liquor it holds before each wash and after it. */
  readonly stays: Figure<'L'>;
  /** Water that first brings it to that level, where it settles instead of draining. */
  readonly makeUp?: Figure<'L'>;
  readonly dry: Figure<'g'>;
  readonly way: WashWay;
  /** What a wash takes out, of what perfect mixing would. */
  readonly evenness: Figure<'1'>;
};

const perfect = given({
  origin: 'washing/perfect',
  sentence: 'Perfect mixing',
  value: 1,
  unit: '1',
  how: 'assumed',
  spread: exact,
  decimals: 0,
});

const evennessOf = (way: WashWay): Figure<'1'> =>
  ranged(`washing/${way}`, 'What a wash takes out, of what perfect mixing would', washing.evenness[way], '1');

/**
 * @param pouredOffTo where the solid settles: liquor in and over it once the clear is poured off. The first wash brings
 * it to that level. Undefined when that is less than the drained residue holds: it was drier before.
 */
export function washable(
  residue: { readonly wetMass: Figure<'g'>; readonly held: HeldLiquor },
  pouredOffTo?: Figure<'L'>,
): Washable | undefined {
  const { held, wetMass } = residue;
  if (held.volume.value.lte(0)) return undefined;
  const dry = workedOut({
    sentence: 'Residue, dry',
    unit: 'g',
    formula: minus(wetMass, times(held.volume, densityOf(held.load))),
  });
  if (!pouredOffTo)
    return {
      load: held.load,
      stays: held.volume,
      dry,
      way: 'drained',
      evenness: evennessOf('drained'),
    };
  if (pouredOffTo.value.lt(held.volume.value)) return undefined;
  const makeUp = workedOut({
    sentence: 'Water that brings it to the level poured off to',
    unit: 'L',
    formula: minus(pouredOffTo, held.volume),
  });
  return {
    load: held.load,
    stays: pouredOffTo,
    makeUp,
    dry,
    way: 'settled',
    evenness: evennessOf('settled'),
  };
}

/** The same residue, every wash mixing perfectly: the least that any washing leaves. */
export const mixedPerfectly = (washed: Washable): Washable => ({ ...washed, evenness: perfect });

/** What one wash of `volume` leaves of what was dissolved. */
const leftByOne = ({ stays, evenness }: Washable, volume: Figure<'L'>): Figure<'1'> =>
  workedOut({
    sentence: 'Share that one wash leaves',
    unit: '1',
    formula: minus(1, times(evenness, over(volume, plus(stays, volume)))),
  });

/** What `count` washes of `volume` leave of what was dissolved, as a share. */
export const leftAfter = (washed: Washable, volume: Figure<'L'>, count: number): Figure<'1'> =>
  workedOut({
    sentence: 'Share that stays after all washes',
    unit: '1',
    formula: power(leftByOne(washed, volume), count),
  });

export type MetalWashed = {
  readonly metal: Metal;
  readonly before: Figure<'g'>;
  readonly stays: Figure<'g'>;
  readonly perDryMass: Figure<'mg/kg'>;
  readonly perLitre: Figure<'mg/L'>;
  readonly inWashWater: Figure<'g'>;
};

export type Washed = {
  readonly share: Figure<'1'>;
  readonly metals: readonly MetalWashed[];
  readonly acidStays?: Figure<'mol'>;
  /** All of it together, with what is dissolved in it. */
  readonly washWater: Load;
  /** Water used: with settling, what first brings it to the level comes on top. */
  readonly water: Figure<'L'>;
};

function metalWashed(washed: Washable, share: Figure<'1'>, metal: Metal): MetalWashed[] {
  const before = washed.load.metals.get(metal)?.figure;
  if (!before) return [];
  const name = capital(metals[metal].name);
  const stays = workedOut({
    sentence: `${name} that stays in the liquor of the residue`,
    unit: 'g',
    formula: times(before, share),
  });
  return [
    {
      metal,
      before,
      stays,
      perDryMass: workedOut({
        sentence: `${name} that stays, of the dry residue`,
        unit: 'mg/kg',
        formula: over(stays, washed.dry),
        note: 'Only what was dissolved: metal on the solid and in it comes on top.',
      }),
      perLitre: workedOut({
        sentence: `${name} in the liquor it holds`,
        unit: 'mg/L',
        formula: over(stays, washed.stays),
      }),
      inWashWater: workedOut({
        sentence: `${name} in the wash water`,
        unit: 'g',
        formula: times(before, minus(1, share)),
      }),
    },
  ];
}

export const washWaterMade = (volume: Figure<'L'>, count: number): Figure<'L'> =>
  workedOut({ sentence: 'Wash water made', unit: 'L', formula: times(count, volume) });

/** What `count` washes of `volume` leave, and what they make. */
export function washed(residue: Washable, volume: Figure<'L'>, count: number): Washed {
  const share = leftAfter(residue, volume, count);
  const made = washWaterMade(volume, count);
  const all = metalsPresent(residue.load).flatMap((m) => metalWashed(residue, share, m));
  const acid = residue.load.freeAcid.figure;
  const { openIn } = residue.load.freeAcid;
  const acidGone =
    acid &&
    workedOut({
      sentence: 'Free nitric acid in the wash water',
      unit: 'mol',
      formula: times(acid, minus(1, share)),
    });
  const inWater = new Map(
    [...residue.load.metals].map(([metal, { figure: _, ...open }]) => {
      const figure = all.find((m) => m.metal === metal)?.inWashWater;
      return [metal, { ...(figure ? { figure } : {}), ...open }] as const;
    }),
  );
  return {
    share,
    metals: all,
    ...(acid
      ? {
          acidStays: workedOut({
            sentence: 'Free nitric acid that stays in the liquor of the residue',
            unit: 'mol',
            formula: times(acid, share),
          }),
        }
      : {}),
    washWater: {
      volume: made,
      metals: inWater,
      freeAcid: { ...(acidGone ? { figure: acidGone } : {}), openIn },
    },
    water: residue.makeUp
      ? workedOut({ sentence: 'Water used', unit: 'L', formula: plus(made, residue.makeUp) })
      : made,
  };
}
