/** Readings that contradict the plan: what was found, what may be behind it, what to do before any more goes in. */
import type { Figure } from '../../quantities/figure';

/** Readings are counted from 0, in the order in which they were taken. */
export type Contradiction =
  /** Nothing within four standard uncertainties of what was known brings this pH at this dose. `expected`: dose that does. */
  | { readonly code: 'outside-known'; readonly reading: number; readonly expected?: Figure<'g'> }
  /** The same by the readings before it: the pH that they let expect at this dose. */
  | { readonly code: 'against-others'; readonly reading: number; readonly low: number; readonly high: number }
  /** All readings up to this one together lie further from any amounts than chance puts them. `off`, in squares of standard uncertainties, where chance makes it about `count`. */
  | {
      readonly code: 'do-not-go-together';
      readonly reading: number;
      readonly off: number;
      readonly count: number;
    }
  /** Two readings are the same, though at least so much rise in pH lies between their doses. */
  | { readonly code: 'no-rise'; readonly from: number; readonly reading: number; readonly rise: number }
  /** pH fell by so much as base went in. */
  | { readonly code: 'falls'; readonly from: number; readonly reading: number; readonly by: number }
  /** Higher than this base goes in this pot. */
  | { readonly code: 'above-reach'; readonly reading: number; readonly reach: number }
  /** Ammonia explains the readings, metals do not: as a share of all that takes base, and in mol. */
  | { readonly code: 'ammonia'; readonly share: number; readonly moles: number }
  | {
      readonly code: 'too-warm';
      readonly reading: number;
      /** K; `most` is if nothing were lost. */
      readonly rise: number;
      readonly most: Figure<'K'>;
    };

export type Cause =
  | 'load-wrong'
  | 'dose-miswritten'
  | 'wrong-reagent'
  | 'spent-reagent'
  | 'electrode'
  | 'not-mixed'
  | 'ammonia';

export type NextStep = 'stop' | 'wait' | 'stir' | 'calibrate' | 'test-a-sample' | 'air' | 'test-for-ammonia';

/** What may be behind each, likeliest first. */
export const causesOf: Readonly<Record<Contradiction['code'], readonly Cause[]>> = {
  'outside-known': ['load-wrong', 'dose-miswritten', 'wrong-reagent', 'electrode'],
  'against-others': ['not-mixed', 'electrode', 'dose-miswritten', 'spent-reagent'],
  'do-not-go-together': ['wrong-reagent', 'electrode', 'load-wrong', 'spent-reagent', 'not-mixed'],
  'no-rise': ['wrong-reagent', 'electrode', 'spent-reagent', 'not-mixed'],
  falls: ['not-mixed', 'electrode', 'dose-miswritten'],
  'above-reach': ['wrong-reagent', 'electrode'],
  ammonia: ['ammonia', 'load-wrong'],
  'too-warm': ['wrong-reagent', 'load-wrong', 'dose-miswritten'],
};

const inOrder: readonly NextStep[] = ['stop', 'wait', 'stir', 'calibrate', 'test-a-sample'];

/** What to do before any more goes in, in order. */
export const nextAfter: Readonly<Record<Contradiction['code'], readonly NextStep[]>> = {
  'outside-known': inOrder,
  'against-others': inOrder,
  'do-not-go-together': inOrder,
  'no-rise': inOrder,
  falls: inOrder,
  'above-reach': ['stop', 'calibrate', 'test-a-sample'],
  ammonia: ['stop', 'air', 'test-for-ammonia', 'test-a-sample'],
  'too-warm': ['stop', 'wait', 'test-a-sample'],
};

/** Something to think of that does not stop the run: pots stand and cool. Causes: it stood, another reagent, not mixed. */
export type Doubt = {
  readonly code: 'too-cool';
  readonly reading: number;
  /** K so far; `least` if nothing were lost and only the acid gave heat. */
  readonly rise: number;
  readonly least: Figure<'K'>;
};
