/** A trial on the bench scaled up to its container, beside what the model says of the same pH with the same base. */
import { volumeRead } from '../chemistry/liquor';
import { type BaseTo, baseTo } from '../chemistry/treatment/base-to';
import { minus, over, times } from '../quantities/expression';
import { type Figure, read, within, workedOut } from '../quantities/figure';
import { containerFigures } from './container-figures';
import type { BenchTested } from './entries/treatments';
import { purityStated } from './purity-stated';
import type { State } from './state';

export type BenchTrial = Pick<BenchTested, 'sampleVolume' | 'agent' | 'mass' | 'purity' | 'endPh'>;

export type BenchEstimate = {
  /** Absent where the container holds nothing liquid. */
  readonly fromTest?: Figure<'g'>;
  /** Absent where no base may be worked out for what is in it. */
  readonly fromModel?: BaseTo;
  /** The two do not meet within their ranges. */
  readonly disagree: boolean;
};

/** Base of the trial × volume of the container ÷ volume of the sample. */
function scaledUp({ mass, sampleVolume }: BenchTrial, volume: Figure<'L'>): Figure<'g'> {
  const used = read({
    origin: 'bench/mass',
    sentence: 'Base used on the sample',
    written: mass,
    unit: 'g',
    how: 'weighing',
    spread: () => within(0),
  });
  const sample = volumeRead(sampleVolume, 'bench/sample', 'Sample taken');
  return workedOut({
    sentence: 'Base for all of it, by the bench test',
    unit: 'g',
    formula: over(times(used, volume), sample),
    note: 'As sold, from the same sack, if the sample was like the rest.',
  });
}

function contradict(a: Figure<'g'>, b: Figure<'g'>): boolean {
  const [more, less] = a.value.gte(b.value) ? [a, b] : [b, a];
  const between = workedOut({
    sentence: 'Between the two',
    unit: 'g',
    formula: minus(more, less),
    signed: true,
  });
  return between.low.gt(0);
}

/** @param trial one that is being written, or one that stands in the record */
export function benchEstimate(state: State, containerId: string, trial: BenchTrial): BenchEstimate {
  const { load, noBase } = containerFigures(state, containerId);
  if (!load) return { disagree: false };
  const fromTest = scaledUp(trial, load.volume);
  const stated = trial.purity
    ? { purity: trial.purity, origin: 'bench/purity' }
    : purityStated(state, trial.agent);
  const fromModel =
    noBase === null ? baseTo(trial.agent, load, Number(trial.endPh.value), stated) : undefined;
  return {
    fromTest,
    ...(fromModel ? { fromModel } : {}),
    disagree: fromModel?.ok ? contradict(fromTest, fromModel.needed.mass) : false,
  };
}
