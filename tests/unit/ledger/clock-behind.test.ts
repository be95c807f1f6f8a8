import { expect, it } from 'vitest';
import { writtenAhead } from '../../../src/ledger/clock-behind';
import { emptyState } from '../../../src/ledger/state';
import { at, can, written } from './scribe';

it('a clock that stands before the last entry is noticed, one of two phones that is minutes behind is not', () => {
  const state = written(can(1), can(2));
  expect(writtenAhead(state, at(1 - 24 * 60))).toBe(at(1));
  expect(writtenAhead(state, at(1 - 6))).toBe(at(1));
  expect(writtenAhead(state, at(1 - 5))).toBeNull();
  expect(writtenAhead(state, at(60))).toBeNull();
});

it('where nothing is written yet nothing is told', () => {
  expect(writtenAhead(emptyState, at(0))).toBeNull();
});
