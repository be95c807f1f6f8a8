/**
 * Cases of kind `clp-mixture`: what is in a waste, by mass percent or in grams to the litre with a density; metals enter as
 * their nitrates without water. Every value that is expected is compared; numbers within 1 %.
 */
import * as z from 'zod/mini';
import type { Figure } from '../../src/quantities/figure';
import { classify } from '../../src/rules/clp/classify';
import { hazardText } from '../../src/rules/clp/hazard';
import { labelElements } from '../../src/rules/clp/label';
import { MixtureInput, mixtureOf } from './mixture-input';
import { type Check, compared, digits, type Outcome, relative } from './outcome';
import { sameSet } from './sets';

const Num = z.union([z.string().check(z.regex(/^-?\d+(\.\d+)?$/)), z.number()]);
const Row = z.record(z.string(), z.nullable(Num));

export const ClpMixtureCase = z.object({
  id: z.string(),
  kind: z.literal('clp-mixture'),
  input: MixtureInput,
  expected: z.looseObject({
    calculated: z.optional(z.array(z.string())),
    phRule: z.optional(z.array(z.string())),
    byTestFlags: z.optional(z.array(z.string())),
    ateOral_mg_kg: z.optional(z.nullable(Num)),
    ateDermal_mg_kg: z.optional(z.nullable(Num)),
    ateVapour_mg_L: z.optional(z.nullable(Num)),
    ateDustMist_mg_L: z.optional(z.nullable(Num)),
    aquaticAcuteSum: z.optional(z.nullable(Num)),
    aquaticChronicSum: z.optional(z.nullable(Num)),
    skinFractions: z.optional(Row),
    eyeFractions: z.optional(Row),
    pictograms: z.optional(z.array(z.string())),
    signalWord: z.optional(z.nullable(z.string())),
    massPercent: z.optional(Row),
  }),
});
type ClpMixtureCase = z.infer<typeof ClpMixtureCase>;

const figureValue = (figure: Figure | null): number | null => figure && digits(figure.value.toNumber());
/** Nothing that counts: the sum is nothing. */
const sumOf = (figure: Figure | null): number => figureValue(figure) ?? 0;

export function clpMixture(input: ClpMixtureCase['input']) {
  const mixture = mixtureOf(input);
  const { calculated, phRule, byTest, estimates, aquatic, skin, eye } = classify(mixture);
  const { pictograms, signalWord } = labelElements([...calculated, ...phRule]);
  return {
    calculated: calculated.map(hazardText),
    phRule: phRule.map(hazardText),
    byTestFlags: byTest,
    ateOral_mg_kg: figureValue(estimates.oral),
    ateDermal_mg_kg: figureValue(estimates.dermal),
    ateVapour_mg_L: figureValue(estimates.vapour),
    ateDustMist_mg_L: figureValue(estimates['dust or mist']),
    aquaticAcuteSum: sumOf(aquatic.acute),
    aquaticChronicSum: sumOf(aquatic.chronic),
    skinFractions: {
      '1A': sumOf(skin['1A']),
      '1B': sumOf(skin['1B']),
      '1C': sumOf(skin['1C']),
      '2': sumOf(skin['2']),
    },
    eyeFractions: { '1': sumOf(eye['1']), '2': sumOf(eye['2']) },
    pictograms,
    signalWord,
    massPercent: Object.fromEntries([...mixture.shares].map(([id, share]) => [id, sumOf(share)])),
  };
}

/** Routes are written in more than one way: "(inhalation dust/mist)", "inhalation dust or mist". */
const plain = (code: string): string =>
  code
    .replace(/\((oral|dermal|inhal[^)]*)\)/, '$1')
    .replace(/dusts? ?(\/|,|or|and)? ?mists?/i, 'dust')
    .replace(/\binhal\b/, 'inhalation');

const same = (name: string, expected: readonly string[], computed: readonly string[]): Check =>
  sameSet(name, expected.map(plain), computed.map(plain));

const numberChecks = [
  'ateOral_mg_kg',
  'ateDermal_mg_kg',
  'ateVapour_mg_L',
  'ateDustMist_mg_L',
  'aquaticAcuteSum',
  'aquaticChronicSum',
] as const;
const rowChecks = ['skinFractions', 'eyeFractions', 'massPercent'] as const;
const tolerance = 0.01;

const numeric = (value: string | number | null): number | null => (value === null ? null : Number(value));

export function evaluateClpMixture({ input, expected }: ClpMixtureCase): Outcome {
  const computed = clpMixture(input);
  const checks: Check[] = [];
  const { calculated, phRule, byTestFlags, pictograms, signalWord } = expected;
  if (calculated) checks.push(same('calculated', calculated, computed.calculated));
  if (phRule) {
    // What the calculation gives already is not added by the pH, whether or not a case names it twice.
    const added = phRule.filter((code) => !computed.calculated.includes(code));
    checks.push(same('by pH', added, computed.phRule));
  }
  if (byTestFlags) checks.push(same('by test', byTestFlags, computed.byTestFlags));
  for (const name of numberChecks) {
    const said = expected[name];
    if (said === undefined) continue;
    checks.push(compared(name, numeric(said), computed[name], relative, tolerance));
  }
  for (const name of rowChecks)
    for (const [key, said] of Object.entries(expected[name] ?? {})) {
      const row: Readonly<Record<string, number>> = computed[name];
      checks.push(compared(`${name} ${key}`, numeric(said), row[key] ?? null, relative, tolerance));
    }
  if (pictograms) checks.push(same('pictograms', pictograms, computed.pictograms));
  if (signalWord !== undefined)
    checks.push({
      ok: signalWord === computed.signalWord,
      line: `signal word: expected ${signalWord}, computed ${computed.signalWord}`,
    });
  if (checks.length === 0) checks.push({ ok: false, line: 'nothing expected' });
  return { checks, computed, notes: [] };
}
