/** A charge as the form of the check holds it. */
import * as z from 'zod/mini';
import { limitIds } from '../../reference/exposure-limits-tables';
import { dissolution, type Metal } from '../../reference/tables';
import type { WrittenCharge } from '../../safety/ventilation/station-schema';
import { Typed, typed } from '../form';

export const massUnits = ['g', 'kg', 'mg', 'lb'] as const;
export const volumeUnits = ['L', 'mL', 'US gal'] as const;
export const strengthUnits = ['%', 'mol/L', 'kg/L'] as const;
export const timeUnits = ['h', 'min', 'days'] as const;

/** Metals that make gas in nitric acid. */
export const gassing = Object.keys(dissolution.reactions) as readonly Metal[];

const gassingMetals = z.enum(gassing as [Metal, ...Metal[]]);
const limits = z.enum([...limitIds, 'own']);
const mixings = z.enum(['usual', '1', '3', '5', '10', 'own']);

export const VentilationDraft = z.object({
  step: z.enum(['leach', 'cementation', 'acid-dilution', 'filtration']),
  known: z.enum(['each', 'total']),
  masses: z.array(z.object({ metal: gassingMetals, mass: Typed })),
  total: Typed,
  volume: Typed,
  strength: Typed,
  release: Typed,
  share: Typed,
  within: Typed,
  /** Absent until somebody has chosen. */
  limit: z.optional(limits),
  ownLimit: Typed,
  whose: z.string(),
  mixing: mixings,
  ownMixing: Typed,
});
export type VentilationDraft = z.infer<typeof VentilationDraft>;
export type Step = VentilationDraft['step'];

/** @param part what it is for, as in its address */
export const draftName = (part: string, list: string): string => `ventilation/${part}/${list}`;

export const emptyCharge = (step: Step): VentilationDraft => ({
  step,
  known: 'each',
  masses: [],
  total: typed('g'),
  volume: typed('L'),
  strength: typed('%'),
  release: typed('h'),
  share: typed('%'),
  within: typed('min'),
  ownLimit: typed('ppm'),
  whose: '',
  mixing: 'usual',
  ownMixing: typed('1'),
});

const shown = ({ value, unit }: { readonly value: string; readonly unit: string }): Typed => ({
  typed: value,
  unit,
});

const isMixing = (value: string): value is '1' | '3' | '5' | '10' => ['1', '3', '5', '10'].includes(value);

/** The lines of a charge that was checked before: all but what a person looks at anew is as it was. */
export function draftOf(charge: WrittenCharge): VentilationDraft {
  const empty = emptyCharge(charge.step);
  if (charge.step === 'acid-dilution' || charge.step === 'filtration') return empty;
  const { limit, mixing, peak } = charge;
  const metals = charge.step === 'leach' ? charge.metals : undefined;
  return {
    ...empty,
    ...(metals?.known === 'total' ? { known: 'total', total: shown(metals.mass) } : {}),
    ...(metals?.known === 'each'
      ? { masses: metals.masses.map(({ metal, mass }) => ({ metal, mass: shown(mass) })) }
      : {}),
    volume: shown(charge.acid.volume),
    strength: shown(charge.acid.strength),
    release: shown(charge.release),
    ...(peak ? { share: shown(peak.share), within: shown(peak.within) } : {}),
    ...(typeof limit === 'string'
      ? { limit }
      : { limit: 'own', ownLimit: shown(limit.at), whose: limit.whose }),
    ...(mixing === undefined
      ? {}
      : isMixing(mixing.value)
        ? { mixing: mixing.value }
        : { mixing: 'own', ownMixing: shown(mixing) }),
  };
}
