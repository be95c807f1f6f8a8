/**
 * Cases of kind `california`: elements at or above the soluble (STLC) and the total threshold (TTLC), and whether anything
 * makes it a hazardous waste of the State. Where nothing does and something is open, null is right as well as false.
 */
import * as z from 'zod/mini';
import { californiaCandidates } from '../../src/rules/california/candidates';
import { LevelsInput, levelsOf, strangersIn } from './levels-input';
import type { Check, Outcome } from './outcome';
import { sameSet } from './sets';

const Elements = z.optional(z.array(z.string()));

export const CaliforniaCase = z.object({
  id: z.string(),
  kind: z.literal('california'),
  input: LevelsInput,
  expected: z.object({
    stlc: Elements,
    ttlc: Elements,
    corrosive: z.optional(z.boolean()),
    stateHazardous: z.optional(z.nullable(z.boolean())),
  }),
});
type CaliforniaCase = z.infer<typeof CaliforniaCase>;

export function evaluateCalifornia({ input, expected }: CaliforniaCase): Outcome {
  const candidates = californiaCandidates(levelsOf(input));
  const codes = (standing: string) =>
    candidates.filter((c) => c.standing === standing).map(({ code }) => code);
  const fires = codes('fires');
  const elements = (of: string) =>
    fires.filter((code) => code.startsWith(of)).map((code) => code.slice(of.length + 1));
  const [stlc, ttlc, corrosive] = [elements('STLC'), elements('TTLC'), fires.includes('Corrosive')];
  const open = codes('open');
  const stateHazardous = fires.length > 0;
  const checks: Check[] = [];
  if (expected.stlc) checks.push(sameSet('STLC', expected.stlc, stlc));
  if (expected.ttlc) checks.push(sameSet('TTLC', expected.ttlc, ttlc));
  if (expected.corrosive !== undefined)
    checks.push({
      ok: expected.corrosive === corrosive,
      line: `corrosive: expected ${expected.corrosive}, computed ${corrosive}`,
    });
  if (expected.stateHazardous !== undefined) {
    const undecided = !stateHazardous && open.length > 0;
    const ok = expected.stateHazardous === stateHazardous || (expected.stateHazardous === null && undecided);
    checks.push({
      ok,
      line: `state hazardous: expected ${expected.stateHazardous}, computed ${stateHazardous}`,
    });
  }
  if (checks.length === 0) checks.push({ ok: false, line: 'nothing expected' });
  return {
    checks,
    computed: { stlc, ttlc, corrosive, stateHazardous, open },
    notes: [
      ...open.map((code) => `open: ${code}`),
      ...strangersIn(input.wet_mg_L, input.total_mg_kg, input.dissolved_mg_L).map(
        (s) => `${s}: no rule here knows it`,
      ),
    ],
  };
}
