/**
 * The waste of a case as a mixture: mass percent by substance, or grams in a litre with the density; metals of a liquor stand
 * as their nitrates. Water and what is not classified need not be named; null is not determined.
 */
import Decimal from 'decimal.js';
import * as z from 'zod/mini';
import { plus } from '../../src/quantities/expression';
import { type Figure, workedOut } from '../../src/quantities/figure';
import { nitrateOf, type SubstanceId, substanceIds, substances } from '../../src/reference/substances-tables';
import type { Mixture } from '../../src/rules/mixture';
import { Amounts, figureOf, Ph, phOf } from './amount';

/** Paste and cake are sludge; slurry pours. */
export function stateNamed(written: string): Mixture['state'] {
  const words = written.toLowerCase();
  if (/sludge|paste|cake/.test(words)) return 'sludge';
  return /solid|dry|powder|salt|crust|paper/.test(words) ? 'solid' : 'liquid';
}

export const MixtureInput = z.object({
  /** Also in words: "wet solid", "filter cake", "slurry". */
  state: z._default(z.pipe(z.string(), z.transform(stateNamed)), 'liquid'),
  aqueous: z.optional(z.nullable(z.boolean())),
  pH: Ph,
  densityKgPerL: z.optional(z.nullable(z.union([z.string(), z.number()]))),
  massPercent: Amounts,
  elementMassPercent: Amounts,
  gramPerL: Amounts,
  elementGramPerL: Amounts,
  open: z.optional(z.array(z.string())),
});
type MixtureInput = z.infer<typeof MixtureInput>;

/** Water is what is left; "rest" is water. */
const isWater = (name: string): boolean => /^(water|rest|remainder|balance)$/i.test(name);

function substanceCalled(name: string): SubstanceId {
  const id = substanceIds.find((one) => one === name);
  if (!id) throw new Error(`no substance that this knows: ${name}`);
  return id;
}

function nitrateCalled(symbol: string): SubstanceId {
  const id = nitrateOf.get(symbol);
  if (!id) throw new Error(`no nitrate that this knows: ${symbol}`);
  return id;
}

/** Grams of the substance that stand for a gram of its metal. */
const perMetal = (id: SubstanceId): Decimal => new Decimal(substances[id].metal?.factor ?? 1);

/** Percent for a gram in a litre. A liquor that states no density is as light as water, so that its shares are high. */
const perLitre = (density: MixtureInput['densityKgPerL']): Decimal =>
  new Decimal(1).div(new Decimal(density ?? 1).times(10));

type Part = { readonly id: SubstanceId; readonly share: Figure<'%'> | null };

export function mixtureOf(input: MixtureInput): Mixture {
  const litre = perLitre(input.densityKgPerL);
  const partsOf = (
    named: z.infer<typeof Amounts>,
    idOf: (name: string) => SubstanceId,
    factor: (id: SubstanceId) => Decimal,
  ) =>
    Object.entries(named ?? {})
      .filter(([name]) => !isWater(name))
      .map(([name, amount]): Part => {
        const id = idOf(name);
        return {
          id,
          share: amount === null ? null : figureOf(`${id} from ${name}`, amount, '%', factor(id)),
        };
      });
  const parts = [
    ...partsOf(input.massPercent, substanceCalled, () => new Decimal(1)),
    ...partsOf(input.elementMassPercent, nitrateCalled, perMetal),
    ...partsOf(input.gramPerL, substanceCalled, () => litre),
    ...partsOf(input.elementGramPerL, nitrateCalled, (id) => perMetal(id).times(litre)),
  ];
  const shares = new Map<SubstanceId, Figure<'%'>>();
  for (const { id, share } of parts) {
    const before = shares.get(id);
    if (share)
      shares.set(id, before ? workedOut({ sentence: id, unit: '%', formula: plus(before, share) }) : share);
  }
  const named = (input.open ?? []).map((name) => nitrateOf.get(name) ?? substanceCalled(name));
  const open = [...new Set([...parts.filter(({ share }) => share === null).map(({ id }) => id), ...named])];
  return {
    state: input.state,
    aqueous: input.aqueous ?? input.state === 'liquid',
    ...phOf(input.pH),
    shares,
    open,
  };
}
