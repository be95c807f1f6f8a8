/** What contradicts the plan, in words: the finding, its causes, what to do. */
import { causesOf, type NextStep, nextAfter } from '../../chemistry/treatment/pot-contradictions';
import type { Contradiction } from '../../ledger/run-outlook';
import { type DecimalSign, printed } from '../../quantities/format';
import { phDigits } from './run-figures';
import { gramsText } from './run-plot';
import { runWords as w } from './run-words';

const thin = '\u202f';
const a = w.against;

function againstText(one: Contradiction, sign: DecimalSign): string {
  const ph = (value: number): string => phDigits(value, sign);
  switch (one.code) {
    case 'outside-known': {
      if (!one.expected || !one.point) return a.outside;
      const { low, high, value, unit } = printed(one.expected, sign);
      return a.outsideAt(
        `${gramsText(one.point.grams, sign)}${thin}g`,
        `${low ?? value} to ${high ?? value}${thin}${unit}`,
      );
    }
    case 'against-others':
      return a.others(ph(one.low), ph(one.high));
    case 'do-not-go-together':
      return a.notTogether;
    case 'no-rise':
      return a.noRise(ph(one.rise));
    case 'falls':
      return a.falls(ph(one.by));
    case 'above-reach':
      return a.aboveReach(ph(one.reach));
    case 'ammonia':
      return a.ammonia;
    case 'too-warm':
      return a.tooWarm(ph(one.rise), printed(one.most, sign).high ?? printed(one.most, sign).value);
  }
}

type Several = readonly Contradiction[];

const unique = <T>(all: readonly T[]): readonly T[] => [...new Set(all)];

/** What was found, the newest first, each once. */
export const findings = (all: Several, sign: DecimalSign): readonly string[] =>
  unique(all.toReversed().map((one) => againstText(one, sign)));

const codesOf = (all: Several) => unique(all.toReversed().map(({ code }) => code));

/** "It may be: …", the likeliest of each first. */
export const causesText = (all: Several): string =>
  a.mayBe(
    unique(codesOf(all).flatMap((code) => causesOf[code]))
      .map((cause) => a.causes[cause])
      .join('; '),
  );

/** What to do in the order of the words: what keeps people from harm first. */
export function stepsFor(all: Several): readonly string[] {
  const wanted = new Set(codesOf(all).flatMap((code) => nextAfter[code]));
  return (Object.keys(a.steps) as NextStep[]).filter((step) => wanted.has(step)).map((step) => a.steps[step]);
}
