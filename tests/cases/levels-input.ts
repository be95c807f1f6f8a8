/** The waste of a case as levels of elements. What no rule here knows is left out and told. */
import * as z from 'zod/mini';
import type { Figure } from '../../src/quantities/figure';
import { type Element, type ElementLevels, levelElements } from '../../src/rules/element-levels';
import { Amount, Amounts, figureOf, Ph, phOf } from './amount';
import { stateNamed } from './mixture-input';

const Flag = z.optional(z.nullable(z.boolean()));
/** Besides these, a key that tells of solids in percent, of ammonia, and of sulfide or cyanide, however it is called. */
export const LevelsInput = z.looseObject({
  state: z.optional(z.nullable(z.pipe(z.string(), z.transform(stateNamed)))),
  aqueous: Flag,
  pH: Ph,
  dissolved_mg_L: Amounts,
  filtered_mg_L: Amounts,
  filtrate_mg_L: Amounts,
  total_mg_L: Amounts,
  total_mg_kg: Amounts,
  tclp_mg_L: Amounts,
  wet_mg_L: Amounts,
  nitrateBearing: Flag,
  open: z.optional(z.array(z.string())),
});
type LevelsInput = z.infer<typeof LevelsInput>;

const isElement = (symbol: string): symbol is Element => levelElements.some((e) => e === symbol);

export function levelsIn<U extends 'mg/L' | 'mg/kg'>(
  from: string,
  amounts: z.infer<typeof Amounts>,
  unit: U,
): ReadonlyMap<Element, Figure<U>> {
  return new Map(
    Object.entries(amounts ?? {}).flatMap(([symbol, amount]): [Element, Figure<U>][] =>
      isElement(symbol) && amount !== null ? [[symbol, figureOf(`${symbol}, ${from}`, amount, unit)]] : [],
    ),
  );
}

/** Named with null and nowhere with a number: not determined. */
export function openIn(...all: readonly z.infer<typeof Amounts>[]): readonly Element[] {
  const named = all.flatMap((amounts) => Object.entries(amounts ?? {}));
  const known = new Set(named.filter(([, amount]) => amount !== null).map(([symbol]) => symbol));
  return [...new Set(named.map(([symbol]) => symbol))].filter((s) => !known.has(s)).filter(isElement);
}

export const strangersIn = (...all: readonly z.infer<typeof Amounts>[]): readonly string[] =>
  all.flatMap((amounts) => Object.keys(amounts ?? {})).filter((symbol) => !isElement(symbol));

/** The value of the first key that is called so. */
const called = (input: Readonly<Record<string, unknown>>, name: RegExp): unknown =>
  Object.entries(input).find(([key]) => name.test(key))?.[1];

function solidsOf(input: LevelsInput): { readonly solids?: Figure<'%'> } {
  const solids = z.safeParse(Amount, called(input, /solids/i));
  return solids.success ? { solids: figureOf('solids', solids.data, '%') } : {};
}

export function levelsOf(input: LevelsInput): ElementLevels {
  const filtered = { ...input.filtrate_mg_L, ...input.filtered_mg_L, ...input.dissolved_mg_L };
  const liquid = Object.keys(filtered).length > 0 || input.total_mg_L;
  const state = input.state ?? (liquid ? 'liquid' : 'solid');
  // Of a liquid that nobody filtered, no less than all of it can be meant.
  const passes = state === 'liquid' ? { ...input.total_mg_L, ...filtered } : filtered;
  return {
    state,
    aqueous: input.aqueous ?? state === 'liquid',
    ...phOf(input.pH),
    ...solidsOf(input),
    filtered: levelsIn('filtered', passes, 'mg/L'),
    total: levelsIn('total', input.total_mg_kg, 'mg/kg'),
    tclp: levelsIn('TCLP', input.tclp_mg_L, 'mg/L'),
    wet: levelsIn('WET', input.wet_mg_L, 'mg/L'),
    open: [
      ...openIn(passes, input.total_mg_kg, input.tclp_mg_L, input.wet_mg_L),
      ...(input.open ?? []).filter(isElement),
    ],
    nitrateBearing: input.nitrateBearing ?? null,
    ammoniacalSilver: called(input, /ammonia/i) === true,
    sulfideOrCyanide: called(input, /sul(f|ph)ide|cyanide/i) === true,
  };
}
