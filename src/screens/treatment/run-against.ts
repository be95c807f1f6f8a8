/** What contradicts the plan, in words: the finding, its causes, what to do. */
import { causesOf, nextAfter } from '../../chemistry/treatment/pot-contradictions';
import type { Contradiction } from '../../ledger/run-outlook';
import type { RunningStage } from '../../ledger/treatment-run';
import { type DecimalSign, printed } from '../../quantities/format';
import { phDigits } from './run-figures';
import { gramsText } from './run-plot';
import { runWords as w } from './run-words';

const thin = '\u202f';
const a = w.against;

export function againstText(one: Contradiction, stage: RunningStage, sign: DecimalSign): string {
  const ph = (value: number): string => phDigits(value, sign);
  switch (one.code) {
    case 'more-in-than-needed':
      return a.moreIn(`${gramsText(stage.grams, sign)}${thin}g`, `${gramsText(one.most.high, sign)}${thin}g`);
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

/** "It may be: …" */
export function causesText({ code }: Contradiction): string {
  const causes = code === 'more-in-than-needed' ? causesOf['outside-known'] : causesOf[code];
  return a.mayBe(causes.map((cause) => a.causes[cause]).join('; '));
}

export function stepsFor({ code }: Contradiction): readonly string[] {
  const steps = code === 'more-in-than-needed' ? nextAfter['outside-known'] : nextAfter[code];
  return steps.map((step) => a.steps[step]);
}
