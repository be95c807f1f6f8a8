/**
 * Cases of kind `eu-hp`: the properties that calculation gives, as a set, and the sums they rest on. What a test or judgement
 * decides, and what is open, is told and not in the set.
 */
import * as z from 'zod/mini';
import { calculatedHps, euHp, type Term } from '../../src/reference/eu-hp-tables';
import { sumOf } from '../../src/rules/eu-hp/by-calculation';
import { euHpCandidates } from '../../src/rules/eu-hp/candidates';
import type { Mixture } from '../../src/rules/mixture';
import { MixtureInput, mixtureOf } from './mixture-input';
import { type Check, comparedAsPrinted, type Outcome } from './outcome';
import { sameSet } from './sets';

const tolerance = 0.01;

export const EuHpCase = z.object({
  id: z.string(),
  kind: z.literal('eu-hp'),
  input: MixtureInput,
  expected: z.object({
    hp: z.optional(z.array(z.string())),
    sums: z.optional(z.record(z.string(), z.union([z.string(), z.number()]))),
  }),
});
type EuHpCase = z.infer<typeof EuHpCase>;

const waysIn: Readonly<Record<string, string>> = {
  ...{ oral: 'H30', dermal: 'H31', inhal: 'H33', inhalation: 'H33' },
};

/** "H314" and "H314_1A" by statement and category; "AT3_inhal" by category and way in, whatever its statement. */
function termsNamed(name: string): readonly Term[] {
  const all = calculatedHps.flatMap((hp) => euHp.byCalculation[hp].limits.flatMap(({ of }) => of));
  const acute = /^AT([1-4])_(\w+)$/.exec(name);
  const [code = '', category] = name.split('_');
  const found = acute
    ? all.find((t) => t.category === acute[1] && t.code.startsWith(waysIn[acute[2] ?? ''] ?? '-'))
    : all.find((t) => t.code === code);
  if (!found) throw new Error(`no sum that this knows: ${name}`);
  const of = acute ? found.category : category;
  return [
    {
      code: found.code,
      times: '1',
      ...(found.cutOff ? { cutOff: found.cutOff } : {}),
      ...(of ? { category: of } : {}),
    },
  ];
}

const sumNamed = (mixture: Mixture, name: string): number =>
  sumOf(mixture, termsNamed(name))?.value.toNumber() ?? 0;

export function evaluateEuHp({ input, expected }: EuHpCase): Outcome {
  const mixture = mixtureOf(input);
  const candidates = euHpCandidates(mixture);
  const standing = (wanted: string) =>
    candidates.filter((c) => c.standing === wanted).map(({ code }) => code);
  const hp = standing('fires');
  const sums = Object.fromEntries(
    Object.keys(expected.sums ?? {}).map((name) => [name, sumNamed(mixture, name)]),
  );
  const checks: Check[] = [];
  if (expected.hp) checks.push(sameSet('HP', expected.hp, hp));
  for (const [name, value] of Object.entries(expected.sums ?? {}))
    checks.push(comparedAsPrinted(`sum ${name}`, value, sums[name] ?? 0, tolerance));
  if (checks.length === 0) checks.push({ ok: false, line: 'nothing expected' });
  return {
    checks,
    computed: {
      hp,
      byJudgement: standing('judgement'),
      open: standing('open'),
      close: standing('close'),
      sums,
    },
    notes: ['judgement', 'open', 'close'].map((one) => `${one}: ${standing(one).join(' ') || 'none'}`),
  };
}
