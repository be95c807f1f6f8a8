/**
 * Cases of kind `rcra-characteristic`: codes that fire, as a set; codes to be shown as needing judgement, neither asserted nor
 * ruled out: all that a person judges must be named, and what is open may be; the total screen by code or element.
 */
import * as z from 'zod/mini';
import { rcra, toxicityCodes } from '../../src/reference/rcra-tables';
import { rcraCandidates } from '../../src/rules/rcra/candidates';
import { totalScreen } from '../../src/rules/rcra/toxicity';
import { LevelsInput, levelsOf, strangersIn } from './levels-input';
import type { Check, Outcome } from './outcome';
import { listed, sameSet } from './sets';

const Codes = z.optional(z.array(z.string()));

export const RcraCharacteristicCase = z.object({
  id: z.string(),
  kind: z.literal('rcra-characteristic'),
  input: LevelsInput,
  expected: z.object({
    codes: Codes,
    review: Codes,
    open: Codes,
    totalScreen: z.optional(z.record(z.string(), z.string())),
  }),
});
type RcraCharacteristicCase = z.infer<typeof RcraCharacteristicCase>;

/** What a person judges must stand there, and nothing that is neither judged nor open. */
function reviewed(expected: readonly string[], judged: readonly string[], open: readonly string[]): Check {
  const ok =
    judged.every((code) => expected.includes(code)) &&
    expected.every((code) => judged.includes(code) || open.includes(code));
  return {
    ok,
    line: `review: expected ${listed(expected)}, computed ${listed(judged)}, open ${listed(open)}`,
  };
}

const codeCalled = (name: string): string =>
  toxicityCodes.find((code) => code === name || rcra.toxicity[code].element === name) ?? name;

export function evaluateRcraCharacteristic({ input, expected }: RcraCharacteristicCase): Outcome {
  const levels = levelsOf(input);
  const candidates = rcraCandidates(levels);
  const standing = (wanted: string) =>
    candidates.filter((c) => c.standing === wanted).map(({ code }) => code);
  const [codes, review, open] = [standing('fires'), standing('judgement'), standing('open')];
  const screen: ReadonlyMap<string, string> = totalScreen(levels);
  const checks: Check[] = [];
  if (expected.codes) checks.push(sameSet('codes', expected.codes, codes));
  if (expected.review) checks.push(reviewed(expected.review, review, open));
  if (expected.open) checks.push(sameSet('open', expected.open, open));
  for (const [name, said] of Object.entries(expected.totalScreen ?? {})) {
    const computed = screen.get(codeCalled(name)) ?? 'not screened';
    checks.push({
      ok: computed === said,
      line: `total screen ${name}: expected ${said}, computed ${computed}`,
    });
  }
  if (checks.length === 0) checks.push({ ok: false, line: 'nothing expected' });
  const strangers = strangersIn(input.dissolved_mg_L, input.total_mg_kg, input.tclp_mg_L);
  return {
    checks,
    computed: { codes, review, open, close: standing('close'), totalScreen: Object.fromEntries(screen) },
    notes: strangers.map((symbol) => `${symbol}: no rule here knows it`),
  };
}
