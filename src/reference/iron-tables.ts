/** Copper onto iron first: reactions, and what is usual of it. Apart from tables.ts, which has what every page needs. */
import * as z from 'zod/mini';
import { checked } from './checked';
import ironJson from './iron.json';
import { type BaseId, baseIds, Constant, Num, Ranged, told } from './tables';

export const iron = checked(
  () =>
    z.strictObject({
      reactions: z.strictObject({
        cementing: z.strictObject({ Cu: z.string(), Ag: z.string(), Pd: z.string() }),
        ironThree: z.string(),
        acid: z.strictObject({ nitricOxide: z.string(), ammonium: z.string(), hydrogen: z.string() }),
        /** Iron(II) with base, as air gets at it. */
        intoAir: z.string(),
        ...told,
      }),
      /** Moles of iron that a mole of free acid dissolves. */
      ironForAcid: Ranged,
      /** Moles of ammonium, of nitric oxide, for a mole of free acid that iron takes. */
      ammonium: Ranged,
      nitricOxide: Ranged,
      /** Hydroxides that ammonium takes above pH 8, and the bases that do not come to that. */
      ammoniumTakes: z.strictObject({
        hydroxide: Num,
        notWith: z.array(z.enum(baseIds as [BaseId, ...BaseId[]])),
        ...told,
        note: z.string(),
      }),
      /** Free acid as it is usual when the iron goes in. */
      acidBroughtTo: Ranged,
      copperLeft: Ranged,
      /** Iron put in, over what dissolves. */
      excess: Ranged,
      /** Iron that is used up, as a multiple of what the reactions take: air turns the rest to rust. */
      air: Ranged,
      ironTwo: z.strictObject({
        hydroxide: Num,
        charge: Num,
        solid: z.string(),
        /** Bases that do not bring it down. */
        leftBy: z.array(z.enum(baseIds as [BaseId, ...BaseId[]])),
        ...told,
      }),
      partialVolume: Constant,
      cautions: z.array(z.strictObject({ text: z.string(), ...told })),
    }),
  ironJson,
);
