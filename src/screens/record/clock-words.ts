/** What clocks, and tests for silver, say in the history. */
import type { BodyOf } from '../../ledger/entries/body';
import type { State } from '../../ledger/state';

export const clockName: Readonly<Record<BodyOf<'clock-started'>['of'], string>> = {
  rinse: 'Rinse',
  'ammonia-silver': 'Ammonia and silver: destroy it',
  'check-in': 'Call back',
  purge: 'Air clearing',
  look: 'Next look',
};

/** A clock by what it is for; undefined where there is none of that name. */
export const clockText = (state: State, id: string): string | undefined => {
  const clock = state.clocks.get(id)?.body;
  return clock && clockName[clock.of];
};

export const clockEnd: Readonly<Record<BodyOf<'clock-stopped'>['how'], string>> = {
  done: 'done',
  'not-needed': 'not needed',
};

export const silverOutcome: Readonly<Record<BodyOf<'silver-checked'>['outcome'], string>> = {
  silver: 'silver confirmed',
  'not-silver': 'not silver',
  'not-conclusive': 'not conclusive',
};

export const verdictText: Readonly<Record<BodyOf<'ventilation-checked'>['verdict'], string>> = {
  enough: 'the place is enough',
  split: 'split the charge',
  none: 'no place for it',
};
