/** How far a paper is, as a page shows it. */
import type { Progress, Stage } from '../../paperwork/progress';
import { paperWords as w } from './words';

export type HowFar = {
  readonly says: string;
  /** Whole, from 0 to 100; never falls while a paper is made. */
  readonly percent: number;
};

/** Where on the bar a stage begins and ends, %: about as long as each takes for a set with its working (`npm run bench`). */
const spans: Readonly<Record<Stage, readonly [from: number, to: number]>> = {
  reading: [1, 5],
  gathering: [5, 35],
  setting: [35, 70],
  drawing: [70, 92],
  closing: [92, 100],
};

/** Before the first word of the worker. */
export const notBegun: HowFar = { says: w.beginning, percent: 0 };

export function howFar({ stage, done, of }: Progress): HowFar {
  const [from, to] = spans[stage];
  return { says: w.stages[stage](done, of), percent: Math.round(from + ((to - from) * done) / of) };
}
