/** A trial on the bench scaled up to its container, beside what the model says for the same base. */

import type { BaseTo } from '../chemistry/treatment/base-to';
import { benchTest } from '../chemistry/treatment/bench-test';
import type { Figure } from '../quantities/figure';
import { containerFigures, type NoBase } from './container-figures';
import type { BenchTested } from './entries/treatments';
import { purityStated } from './purity-stated';
import type { State } from './state';

export type BenchTrial = Pick<
  BenchTested,
  'sampleVolume' | 'agent' | 'mass' | 'purity' | 'endPh' | 'instrument'
>;

export type BenchEstimate = {
  /** g as sold for all that is in it, to the pH at which the sample ended; absent where `none` says why. */
  readonly fromTest?: Figure<'g'>;
  /** The same to the pH that is aimed at; absent where that is the same, or the model cannot carry it there. */
  readonly toTarget?: Figure<'g'>;
  /** By the model to the pH that is aimed at; absent where nothing is worked out for what is in it. */
  readonly fromModel?: BaseTo;
  /** The two cannot both be true. */
  readonly disagree: boolean;
  readonly none: NoBase | 'empty' | null;
};

/**
 * @param trial one that is being written, or one that stands in the record
 * @param target pH aimed at; the one at which the sample ended where absent
 */
export function benchEstimate(
  state: State,
  containerId: string,
  trial: BenchTrial,
  target?: number,
): BenchEstimate {
  const { load, noBase } = containerFigures(state, containerId);
  if (noBase === 'ammonia') return { disagree: false, none: noBase };
  const { agent: base, mass, sampleVolume, endPh, instrument, purity } = trial;
  const stated = purity ? { purity, origin: 'bench/purity' } : purityStated(state, base);
  const test = { origin: 'bench', base, mass, sampleVolume, endPh, instrument, stated };
  const end = Number(endPh.value);
  const told = load && benchTest(test, load, target ?? end);
  if (!told) return { disagree: false, none: 'empty' };
  if (noBase !== null) return { fromTest: told.toEnd, disagree: false, none: null };
  const ways = told.best ? [told.best, ...told.others] : [];
  const carried = ways.find(({ by }) => by === 'bench-test')?.all;
  return {
    fromTest: told.toEnd,
    ...(carried && target !== undefined && target !== end ? { toTarget: carried } : {}),
    fromModel: told.model,
    disagree: told.disagreements.length > 0,
    none: null,
  };
}
