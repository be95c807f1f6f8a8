/** The form of copper onto iron as a draft, and what it comes to. */
import * as z from 'zod/mini';
import { type IronFirst, type IronFirstResult, ironFirst } from '../../chemistry/iron-first';
import { contentsOf } from '../../ledger/contents-followed';
import type { State } from '../../ledger/state';
import { exact, type Figure, given } from '../../quantities/figure';
import type { BaseId } from '../../reference/tables';
import { type FieldRead, readTyped, Typed, typed } from '../form';

/** The lime stage of the trade. */
const lime: BaseId = 'hydrated-lime';

export const IronDraft = z.object({ acid: z.enum(['brought-down', 'as-it-is']), excess: Typed });
export type IronDraft = z.infer<typeof IronDraft>;

export const draftName = (containerId: string): string => `iron-${containerId}`;
export const emptyIron = (): IronDraft => ({ acid: 'brought-down', excess: typed('%') });

const excessOf = (value: string): Figure<'%'> =>
  given({
    origin: 'iron/excess-stated',
    sentence: 'Iron over what is used up',
    value,
    unit: '%',
    how: 'stated',
    spread: exact,
    decimals: value.split('.')[1]?.length ?? 0,
  });

/** The field as it reads, and what it comes to; undefined where the container holds no free liquor. */
export function readIron(
  state: State,
  containerId: string,
  draft: IronDraft,
): { readonly excess: FieldRead<'%'>; readonly result: IronFirstResult | undefined } {
  const excess = readTyped<'%'>(draft.excess, { most: 1000 });
  const { liquid } = contentsOf(state, containerId);
  if (!liquid) return { excess, result: undefined };
  const purity = state.bases.get(lime)?.body.purity;
  return {
    excess,
    result: ironFirst(liquid, {
      acid: draft.acid,
      base: lime,
      purity: purity && { purity, origin: `purity/${lime}` },
      ...(excess.state === 'written' ? { excess: excessOf(excess.written.value) } : {}),
    }),
  };
}

/** The figures by the name that stands in the address of their working. */
export function namedFigures(f: IronFirst): ReadonlyMap<string, Figure> {
  const named: [string, Figure | undefined][] = [
    ['iron', f.iron],
    ['per-copper', f.ironPerCopper],
    ['copper', f.copper],
    ['cement', f.cement],
    ['copper-left', f.copperLeftPerLitre],
    ['going-on', f.ironGoingOn],
    ['going-on-litre', f.ironGoingOnPerLitre],
    ['ammonium', f.ammonium],
    ['nitric-oxide', f.nitricOxide],
    ['lime-first', f.baseFirst],
    ['lime-after', f.baseAfter],
    ['lime-all', f.withIron.mass],
    ['lime-without', f.without.mass],
    ['lime-change', f.baseChange],
    ['sludge-with', f.withIron.sludge],
    ['sludge-without', f.without.sludge],
    ['sludge-change', f.sludgeChange],
  ];
  return new Map(named.filter((pair): pair is [string, Figure] => pair[1] !== undefined));
}
