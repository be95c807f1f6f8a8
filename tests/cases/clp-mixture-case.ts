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
import { type Check, comparedAsPrinted, digits, type Outcome } from './outcome';
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

const routes: readonly (readonly [RegExp, string])[] = [
  [/dust|mist|aerosol/, 'dust'],
  [/vapou?r/, 'vapour'],
  [/gas/, 'gas'],
  [/oral/, 'oral'],
  [/dermal/, 'dermal'],
];

/** Routes are written in more than one way: "(inhalation dust/mist)", "inhal dust or mist". */
function plain(code: string): string {
  const [, category, words = '', statement] = /^(Acute Tox\. \d)(.*)\b(H\d{3})$/.exec(code.trim()) ?? [];
  if (!category) return code.trim();
  const route = routes.find(([said]) => said.test(words.toLowerCase()))?.[1];
  return [category, route, statement].filter(Boolean).join(' ');
}

const withoutRoute = (code: string): string => code.replace(/ (oral|dermal|dust|vapour|gas)(?= H)/, '');

/** A class that a case names with no route means the one that has its category and statement. */
function same(name: string, expected: readonly string[], computed: readonly string[]): Check {
  const said = expected.map(plain);
  const found = computed.map(plain);
  return sameSet(
    name,
    said,
    found.map((code) => (said.includes(withoutRoute(code)) ? withoutRoute(code) : code)),
  );
}

/** Nitric acid as an oxidiser, by its entry's own limit or by what is in it: one flag. */
const asFlag = (flag: string): string =>
  /^Ox\. Liq\. \d|^Ox\. test: contains HNO3/.test(flag) ? 'Ox. test: contains HNO3' : flag;

const signalOf = (word: string | null): string | null =>
  word === null || /^(none|no|-)?$/i.test(word.trim()) ? null : word;

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
  if (byTestFlags) checks.push(same('by test', byTestFlags.map(asFlag), computed.byTestFlags.map(asFlag)));
  for (const name of numberChecks) {
    const said = expected[name];
    if (said === undefined) continue;
    checks.push(comparedAsPrinted(name, said, computed[name], tolerance));
  }
  for (const name of rowChecks)
    for (const [key, said] of Object.entries(expected[name] ?? {})) {
      const row: Readonly<Record<string, number>> = computed[name];
      checks.push(comparedAsPrinted(`${name} ${key}`, said, row[key] ?? null, tolerance));
    }
  if (pictograms) checks.push(same('pictograms', pictograms, computed.pictograms));
  if (signalWord !== undefined)
    checks.push({
      ok: signalOf(signalWord) === computed.signalWord,
      line: `signal word: expected ${signalWord}, computed ${computed.signalWord}`,
    });
  if (checks.length === 0) checks.push({ ok: false, line: 'nothing expected' });
  return { checks, computed, notes: [] };
}
